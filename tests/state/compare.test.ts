import { describe, expect, it } from "vitest";
import { examine, type Instrument, workOut } from "../../geometry/index.ts";
import { compare, isAlike, type Version } from "../../src/state/compare.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

const versionOf = (instrument: Instrument): Version => {
  const movement = workOut(instrument);
  return { movement, sheet: examine(movement, { all: false }) };
};
const withB = (change: object): Instrument => ({ ...SLIPWAY, arbors: SLIPWAY.arbors.map((a) => (a.id === "B" ? { ...a, ...change } : a)) });
const PILLAR = { id: "P9", x: 44, y: 12, diameter: 8, from: 0, to: 30 };

describe("two versions compared", () => {
  it("are alike where nothing but the order of keys differs", () => {
    expect(isAlike(compare(versionOf(SLIPWAY), versionOf(JSON.parse(JSON.stringify(SLIPWAY)) as Instrument)))).toBe(true);
  });

  it("tell an arbor that moved, from where to where and how far, and nothing else of it as changed", () => {
    const told = compare(versionOf(SLIPWAY), versionOf(withB({ x: 33, y: 4 })));
    expect(told.moved).toEqual([{ arbor: "B", from: { x: 30, y: 0 }, to: { x: 33, y: 4 }, byMm: 5 }]);
    expect(told.changed).toEqual([]);
  });

  it("tell every field that changed, came or went by the thing and the field", () => {
    const told = compare(versionOf(SLIPWAY), versionOf({ ...withB({ diameter: 3.25, name: "Second" }), name: "Ebb clock" }));
    const diameter = SLIPWAY.arbors.find((a) => a.id === "B")!.diameter;
    expect(told.changed).toContainEqual({ of: "", field: "name", from: SLIPWAY.name, to: "Ebb clock" });
    expect(told.changed).toContainEqual({ of: "B", field: "diameter", from: String(diameter), to: "3.25" });
  });

  it("tell what was added and which findings it gained; the other way round, taken away and cured", () => {
    const [without, with_] = [versionOf(SLIPWAY), versionOf({ ...SLIPWAY, frame: { ...SLIPWAY.frame, pillars: [...SLIPWAY.frame.pillars, PILLAR] } })];
    const on = compare(without, with_), back = compare(with_, without);
    expect(on.added).toEqual(["P9"]);
    expect(on.gained.some((f) => f.severity === "foul" && f.between.includes("P9"))).toBe(true);
    expect(back.taken).toEqual(on.added);
    expect(back.cured).toEqual(on.gained);
    expect(back.eased).toEqual(on.graver.map(() => expect.anything()));
  });
});
