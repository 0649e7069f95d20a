import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyChanges, difference, reversedChanges } from "../../src/commands/diff.ts";

const json = fc.jsonValue({ maxDepth: 4 });

describe("a structural difference", () => {
  it("turns the one value into the other and back, whatever they are", () => {
    fc.assert(fc.property(json, json, (a, b) => {
      const changes = difference(a, b);
      expect(applyChanges(a, changes)).toEqual(b);
      expect(applyChanges(b, reversedChanges(changes))).toEqual(a);
    }), { seed: 20260113, numRuns: 400 });
  });

  it("is empty only between equal values", () => {
    fc.assert(fc.property(json, (a) => {
      expect(difference(a, structuredClone(a))).toEqual([]);
    }), { seed: 20260114, numRuns: 200 });
  });

  it("is one change where one length changed, however large the value around it", () => {
    const before = { arbors: Array.from({ length: 200 }, (_, i) => ({ id: `A${i}`, x: i })) };
    const after = { arbors: before.arbors.map((a) => (a.id === "A7" ? { ...a, x: 7.5 } : a)) };
    expect(difference(before, after)).toEqual([{ path: ["arbors", 7, "x"], from: 7, to: 7.5 }]);
  });

  it("shares with the old value everything that did not change", () => {
    const before = { frame: { plates: [1] }, arbors: [{ x: 1 }, { x: 2 }] };
    const after = applyChanges(before, [{ path: ["arbors", 1, "x"], from: 2, to: 3 }]);
    expect(after.arbors[1]).toEqual({ x: 3 });
    expect(after.frame).toBe(before.frame);
    expect(after.arbors[0]).toBe(before.arbors[0]);
    expect(before.arbors[1]).toEqual({ x: 2 });
  });

  it("is not misled by a field called __proto__", () => {
    const before = JSON.parse('{"a": 1}') as object, after = JSON.parse('{"a": 1, "__proto__": {"b": 2}}') as object;
    const changed = applyChanges(before, difference(before, after));
    expect(Object.keys(changed)).toEqual(["a", "__proto__"]);
    expect(Object.getPrototypeOf(changed)).toBe(Object.prototype);
  });
});
