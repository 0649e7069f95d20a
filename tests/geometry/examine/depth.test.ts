import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { depthOf } from "../../../geometry/depth/depth.ts";
import { depthFindings } from "../../../geometry/examine/depth.ts";
import { pairStand, pinion, stand, wheel } from "../depth/stand.ts";

const PLAIN = { runout: 0, sideshake: 0 };
const found = (distance: number, practice = {}, a = {}, b = {}) => depthFindings(pairStand(wheel("A1", 60, a), pinion("B1", 20, b), distance, practice))[0];

describe("depth of involute pairs", () => {
  it("[DEPTH1] comes nearer and farther by both run-outs and half of both sideshakes, measured ones before the practice's", () => {
    const deep = depthOf(pairStand(wheel("A1", 60), pinion("B1", 20), 40), 0);
    expect(deep.deepestMm).toBeCloseTo(40 - 0.06, 12);
    expect(deep.shallowestMm).toBeCloseTo(40 + 0.06, 12);
    const measured = depthOf(pairStand(wheel("A1", 60, { measured: { runout: 0.1 } }), pinion("B1", 20), 40), 0);
    expect(measured.deepestMm).toBeCloseTo(40 - 0.145, 12);
  });
  it("[DEPTH1] leaves out the sideshake that both axes share by riding on one arbor", () => {
    const movement = stand({
      arbors: [
        { id: "A", x: 0, y: 0, parts: [], sideshake: 0.5 },
        { id: "B", x: 0, y: 0, parts: [wheel("B1", 60)], rides: { on: "A", radius: 0, angle: 0 } },
        { id: "C", x: 40, y: 0, parts: [pinion("C1", 20)], rides: { on: "A", radius: 40, angle: 0 } },
      ],
      engagements: [{ driver: "B1", driven: "C1" }], practice: { runout: 0 },
    });
    expect(depthOf(movement, 0).deepestMm).toBeCloseTo(40 - 0.03, 12);
  });
  it("[DEPTH1] of an annulus is deepest when farthest", () => {
    const movement = pairStand(wheel("A1", 60, { internal: true, outsideDiameter: 70 }), pinion("B1", 30), 15);
    expect(depthOf(movement, 0).deepestMm).toBeCloseTo(15.06, 12);
    // Pinion's tip 16 in a root of 31.25; annulus's tip 29 over a root of 13.75.
    expect(depthOf(movement, 0).tipToRootAtDeepest).toBeCloseTo(0.19, 12);
  });

  it("[DEPTH5] is free at the computed distance with the practice's defaults", () => {
    expect(found(40)).toMatchObject({ severity: "free", between: ["A1", "B1"], at: { x: 30, y: 0 } });
    expect(found(40).gap).toBeCloseTo(0.1, 12);
  });
  it("[DEPTH5] fouls where backlash at the deepest is gone, and is tight where it is merely less than wanted as it stands", () => {
    // 0.1 mm from thinning at the computed distance; each 0.0137 mm nearer takes 0.01 mm.
    expect(found(39.93, PLAIN).severity).toBe("tight");
    expect(found(39.92).severity).toBe("foul");
    expect(found(39.95, PLAIN).severity).toBe("free");
    expect(found(40.15, PLAIN)).toMatchObject({ severity: "tight", says: "A1 and B1 are shallow: 0.21 mm of backlash as they stand, 0.05 mm to 0.2 mm is wanted" });
  });
  it("[DEPTH5] holds tip to root at the deepest to the practice", () => {
    const loose = { thinning: 0.3 };
    expect(found(39.76, PLAIN, loose, loose).says).toContain("are shallow");
    const wide = { ...PLAIN, backlash: [0, 1] as [number, number] };
    expect(found(39.86, wide, loose, loose).severity).toBe("free");
    expect(found(39.84, wide, loose, loose).severity).toBe("tight");
    expect(found(39.76, wide, loose, loose).severity).toBe("tight");
    expect(found(39.75, wide, loose, loose)).toMatchObject({ severity: "foul", says: "A1 and B1 are too deep: a tip meets a root at the deepest (0 mm)" });
  });
  it("[DEPTH5] fouls where the contact ratio at the shallowest is under 1", () => {
    const wide = { ...PLAIN, backlash: [0, 2] as [number, number] };
    const turn = [40.5, 40.9, 41, 41.2].map((d) => [found(d, wide).severity, (depthOf(pairStand(wheel("A1", 60), pinion("B1", 20), d, wide), 0).contactRatioAtShallowest ?? 0) < 1]);
    for (const [severity, isShort] of turn) expect(severity).toBe(isShort ? "foul" : "free");
    expect(new Set(turn.map(([, s]) => s)).size).toBe(2);
  });
  it("[DEPTH3] fouls where base circles overlap as it stands, at the deepest or at the shallowest, without a backlash where they overlap as it stands", () => {
    expect(found(30)).toMatchObject({ severity: "foul", says: "A1 and B1 stand so deep that their base circles leave no line of contact" });
    expect("gap" in found(30)).toBe(false);
    const annulus = depthFindings(pairStand(wheel("A1", 60, { internal: true, outsideDiameter: 70 }), pinion("B1", 30), 14.1))[0];
    expect(annulus.severity).toBe("foul");
    expect(annulus.gap).toBeGreaterThan(0);
  });
  it("[DEPTH5] says in words what cannot work, and leaves unequal pairs to `unequal`", () => {
    expect(found(60).says).toBe("A1 and B1 stand so far apart that they do not touch");
    const small = depthFindings(pairStand(wheel("A1", 20, { internal: true, outsideDiameter: 30 }), pinion("B1", 30), 5))[0];
    expect(small).toMatchObject({ severity: "foul", says: "A1 and B1 cannot work: the annulus is no larger than its pinion" });
    expect(depthFindings(pairStand(wheel("A1", 60), pinion("B1", 20, { module: 0.9 }), 40))).toEqual([]);
  });
  it("[DEPTH5] offers the computed distance where that cures the pair", () => {
    expect(found(39.9).remedies).toMatchObject([{ move: "B" }]);
    expect(found(39.9, { backlash: [0.4, 0.5] }).remedies).toEqual([]);
  });

  it("[DEPTH2] [DEPTH5] never loses backlash by opening, never gives what is not finite, and scales with the module", () => {
    const given = fc.record({
      z1: fc.integer({ min: 3, max: 200 }), z2: fc.integer({ min: 3, max: 200 }), opened: fc.double({ min: -3, max: 3, noNaN: true }),
      more: fc.double({ min: 0, max: 1, noNaN: true }), shift: fc.double({ min: -1, max: 1, noNaN: true }),
    });
    fc.assert(fc.property(given, ({ z1, z2, opened, more, shift }) => {
      const at = (d: number, module = 1) => depthOf(pairStand(wheel("A1", z1, { module, shift }), pinion("B1", z2, { module }), d * module, PLAIN), 0);
      const distance = (z1 + z2) / 2 + opened;
      const one = at(distance), farther = at(distance + more), twice = at(distance, 2);
      for (const v of [one.backlash, one.contactRatio, one.tipToRootAtDeepest, one.deepestMm]) if (v !== null) expect(Number.isFinite(v)).toBe(true);
      if (one.backlash !== null) {
        expect(farther.backlash ?? -Infinity).toBeGreaterThanOrEqual(one.backlash - 1e-9);
        expect(twice.backlash ?? NaN).toBeCloseTo(2 * one.backlash, 8);
        expect(twice.contactRatio ?? NaN).toBeCloseTo(one.contactRatio ?? NaN, 8);
      }
    }), { seed: 3 });
  });
});
