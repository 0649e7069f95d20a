import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { orderOfEntry, whatGoesBefore, type Before } from "../../../geometry/assembly/before.ts";
import { platesThrough } from "../../../geometry/assembly/through.ts";
import { entryOf } from "../../../geometry/examine/entry.ts";
import type { Arbor, Collet, Instrument, Join } from "../../../geometry/instrument.ts";
import { workOut } from "../../../geometry/workout.ts";

const collet = (id: string, z: number, diameter: number, by?: Join["by"]): Collet => ({ id, kind: "collet", z, thickness: 1, diameter, ...(by ? { join: { by } } : {}) });
const arbor = (id: string, x: number, parts: Collet[], more: Partial<Arbor> = {}): Arbor => ({ id, x, y: 0, diameter: 2, foot: 0, head: 20, parts, ...more });
const movementOf = (arbors: Arbor[], openings: { x: number; y: number; diameter: number }[] = []) => workOut({
  endshake: 1, name: "dry fit", arbors, engagements: [], input: { arbor: arbors[0]?.id ?? "", days: 1, sense: "clockwise" },
  frame: { plates: [{ id: "front", z: 10, thickness: 2, outline: { circle: { diameter: 100 } }, openings }], pillars: [] },
} satisfies Instrument);
const order = (...arbors: Arbor[]) => entryOf(movementOf(arbors)).assembly;
const before = (first: number, then: number): Before => ({ first, then, under: "", over: "" });

describe("what goes in before what", () => {
  it("[ENTRY1] a wheel under another that it overlaps in plan goes in first", () => {
    expect(order(arbor("A", 0, [collet("A1", 8, 20)]), arbor("B", 15, [collet("B1", 3, 20)]))).toEqual([["B"], ["A"]]);
    expect(order(arbor("A", 0, [collet("A1", 8, 20)]), arbor("B", 25, [collet("B1", 3, 20)]))).toEqual([["A"], ["B"]]);
  });
  it("[ENTRY2] each over the other: they go in together", () => {
    const a = arbor("A", 0, [collet("A1", 8, 20), collet("A2", 2, 20)]);
    expect(order(a, arbor("B", 15, [collet("B1", 5, 20)]))).toEqual([["A", "B"]]);
  });
  it("[ENTRY2] a closed ring of three is tight and names them", () => {
    const ring = [arbor("A", 0, [collet("A1", 2, 16), collet("A2", 8, 16)]), arbor("B", 14, [collet("B1", 4, 16)]), arbor("C", 7, [collet("C1", 6, 16)], { y: 12 })];
    const sheet = entryOf(movementOf(ring));
    expect(sheet.assembly).toEqual([["A", "B", "C"]]);
    expect(sheet.findings.filter((f) => f.severity === "tight").map((f) => f.between)).toEqual([["A", "B", "C"]]);
  });
  it("[ENTRY1] a pipe is neither under nor over the arbor within it, but its wheels and the arbor's are", () => {
    const pipe = arbor("E", 0, [collet("E1", 14, 20)], { diameter: 4, foot: 5, head: 16, rides: { on: "A", radius: 0, angle: 0 } });
    expect(whatGoesBefore(movementOf([arbor("A", 0, []), pipe]))).toEqual([]);
    expect(order(arbor("A", 0, [collet("A1", 2, 20)]), pipe)).toEqual([["A"], ["E"]]);
  });

  it("[ENTRY3] every arbor stands in the order once, after all that go before it, unless they go in together", () => {
    const graph = fc.integer({ min: 1, max: 12 }).chain((n) => fc.tuple(fc.constant(n), fc.array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1)), { maxLength: 30 })));
    fc.assert(fc.property(graph, ([n, arrows]) => {
      const all = arrows.filter(([a, b]) => a !== b).map(([a, b]) => before(a, b));
      const groups = orderOfEntry(n, all);
      expect(groups.flat().sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i));
      const at = (i: number) => groups.findIndex((g) => g.includes(i));
      for (const b of all) expect(at(b.first)).toBeLessThanOrEqual(at(b.then));
      const reaches = (from: number, to: number): boolean => {
        const seen = new Set([from]), open = [from];
        for (let v = open.pop(); v !== undefined; v = open.pop()) for (const b of all) if (b.first === v && !seen.has(b.then)) { seen.add(b.then); open.push(b.then); }
        return seen.has(to);
      };
      for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) expect(at(i) === at(j)).toBe(i === j || (reaches(i, j) && reaches(j, i)));
    }), { seed: 101, numRuns: 200 });
  });
});

describe("through a plate", () => {
  const through = (openings: { x: number; y: number; diameter: number }[], below: Collet, above: Collet) =>
    platesThrough(movementOf([arbor("A", 0, [below, above])], openings), 0).map((t) => t.trapped);
  it("[ENTRY4] wider parts on both sides trap an arbor, unless those of one side come off by screw, pin or square", () => {
    expect(through([], collet("low", 5, 9), collet("high", 15, 9))).toEqual([true]);
    expect(through([], collet("low", 5, 9), collet("high", 15, 9, "pin"))).toEqual([false]);
    expect(through([], collet("low", 5, 9, "square"), collet("high", 15, 9, "rivet"))).toEqual([false]);
    expect(through([], collet("low", 5, 9, "soft solder"), collet("high", 15, 9, "press"))).toEqual([true]);
  });
  it("[ENTRY4] an opening as wide as the parts of one side lets them through", () => {
    expect(through([{ x: 0, y: 0, diameter: 9 }], collet("low", 5, 9), collet("high", 15, 12))).toEqual([false]);
    expect(through([{ x: 0, y: 0, diameter: 8.9 }], collet("low", 5, 9), collet("high", 15, 12))).toEqual([true]);
  });
  it("[ENTRY4] an arbor that ends in the plate does not reach through it", () => {
    expect(platesThrough(movementOf([arbor("A", 0, [collet("low", 5, 9)], { head: 12 })]), 0)).toEqual([]);
  });
});
