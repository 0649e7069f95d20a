// The findings about engaged pairs that need nothing but their places: unequal, distance, reverted, undercut, run-off.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { distanceFindings } from "../../../geometry/examine/distance.ts";
import { revertedFindings } from "../../../geometry/examine/reverted.ts";
import { runOffFindings } from "../../../geometry/examine/run-off.ts";
import { undercutFindings } from "../../../geometry/examine/undercut.ts";
import { unequalFindings } from "../../../geometry/examine/unequal.ts";
import { faceOverlapOf } from "../../../geometry/depth/face.ts";
import { ratio } from "../../../geometry/numeric/ratio.ts";
import { lantern, pairStand, pinion, stand, wheel } from "../depth/stand.ts";

describe("unequal", () => {
  const severity = (a: object, b: object) => unequalFindings(pairStand(wheel("A1", 40, a), pinion("B1", 20, b), 30)).map((f) => f.severity);
  it("[DEPTH6] finds modules, forms and pressure angles that do not agree", () => {
    expect(severity({}, {})).toEqual(["free"]);
    expect(severity({ module: 0.8 }, {})).toEqual(["foul"]);
    expect(severity({ form: "cycloidal" }, {})).toEqual(["foul"]);
    expect(severity({ pressureAngle: 14.5 }, {})).toEqual(["foul"]);
  });
  it("[DEPTH6] does not judge a clock tooth by a pressure angle, nor a lantern by its form", () => {
    expect(severity({ form: "cycloidal", pressureAngle: 14.5 }, { form: "cycloidal" })).toEqual(["free"]);
    expect(unequalFindings(pairStand(wheel("A1", 40), lantern("B1", 8, 1.2), 24))[0].severity).toBe("free");
    expect(unequalFindings(pairStand(wheel("A1", 40), lantern("B1", 8, 1.2, { module: 0.9 }), 24))[0]).toMatchObject({
      severity: "foul", between: ["A1", "B1"], says: "A1 cannot run with B1: module 1 against 0.9",
    });
  });
});

describe("distance", () => {
  const at = (distance: number, ease = 0) => distanceFindings(pairStand(wheel("A1", 40), pinion("B1", 20), distance, {}, { ease }))[0];
  it("[DEPTH7] is tight beyond 0.005 mm either way, and not at 0.005 mm", () => {
    expect([29.994, 29.995, 30, 30.005, 30.006].map((d) => at(d).severity)).toEqual(["tight", "free", "free", "free", "tight"]);
  });
  it("[DEPTH7] counts the ease that was asked for", () => {
    expect(at(30.02, 0.02).severity).toBe("free");
    expect(at(30, 0.02)).toMatchObject({ severity: "tight", between: ["A1", "B1"], at: { x: 20, y: 0, z: 3 } });
  });
  it("[DEPTH7] offers a move along the line of centres that brings the distance right", () => {
    const { remedies: [cure] } = at(30.3);
    expect(cure).toMatchObject({ move: "B" });
    expect("x" in cure.by && 30.3 + cure.by.x).toBeCloseTo(30, 12);
  });
});

describe("reverted", () => {
  const work = (third: number, more: object = {}, carriers = {}, rates = {}) => stand({
    arbors: [
      { id: "A", x: 0, y: 0, parts: [pinion("A1", 20)] }, { id: "B", x: 30, y: 0, parts: [wheel("B1", 40), pinion("B2", 15)] },
      { id: "C", x: 0, y: 0, parts: [wheel("C1", third, more)], rides: { on: "A", radius: 0, angle: 0 } },
    ],
    engagements: [{ driver: "A1", driven: "B1" }, { driver: "B2", driven: "C1" }], carriers, rates,
  });
  it("[DEPTH8] finds pairs on the same two axes whose computed distances differ", () => {
    expect(revertedFindings(work(45))).toMatchObject([{ severity: "free", between: ["A1-B1", "B2-C1"] }]);
    expect(revertedFindings(work(44))).toMatchObject([{ severity: "foul", between: ["A1-B1", "B2-C1"] }]);
    expect(revertedFindings(work(45, { shift: 0.004 }))).toMatchObject([{ severity: "free" }]);
  });
  it("[DEPTH8] does not take a carried axis that is passing for one that stands there, unless its carrier stands still", () => {
    expect(revertedFindings(work(44, {}, { C: "B" }))).toEqual([]);
    expect(revertedFindings(work(44, {}, { C: "B" }, { B: ratio(0) }))).toMatchObject([{ severity: "foul" }]);
  });
  it("[DEPTH8] has nothing to say of one pair alone", () => expect(revertedFindings(pairStand(wheel("A1", 40), pinion("B1", 20)))).toEqual([]));
});

describe("undercut", () => {
  const severity = (more: object, leaves: number) => undercutFindings(pairStand(wheel("A1", 40), pinion("B1", leaves, more), 30)).map((f) => f.severity);
  it("[DEPTH9] is judged for every involute part by its count and shift, whatever its topping", () => {
    expect(severity({}, 12)).toEqual(["free", "tight"]);
    expect(severity({ topping: 0.4 }, 12)).toEqual(["free", "tight"]);
    expect(severity({ shift: 0.3 }, 12)).toEqual(["free", "free"]);
    expect(severity({}, 17)).toEqual(["free", "tight"]);
    expect(severity({}, 18)).toEqual(["free", "free"]);
  });
  it("[DEPTH9] does not concern other forms, nor annuli", () => {
    expect(severity({ form: "cycloidal" }, 8)).toEqual(["free"]);
    expect(undercutFindings(pairStand(wheel("A1", 12, { internal: true, outsideDiameter: 20 }), pinion("B1", 18), 3))).toHaveLength(1);
  });
});

describe("run-off", () => {
  const faces = (z: number, more: object = {}, ride = false) => stand({
    arbors: [
      { id: "A", x: 0, y: 0, parts: [wheel("A1", 40)], endshake: 0.2 },
      { id: "B", x: 30, y: 0, parts: [pinion("B1", 20, { z, thickness: 3, ...more })], endshake: 0.4, ...(ride ? { rides: { on: "A", radius: 30, angle: 0 } } : {}) },
    ],
    engagements: [{ driver: "A1", driven: "B1" }],
  });
  it("[DEPTH10] takes the overlap of both faces at the worst of both shakes", () => {
    // Wheel from 2 to 4, pinion from 3.2 to 6.2: 0.8 as drawn, less 0.1 and 0.2.
    const [found] = runOffFindings(faces(3.2));
    expect(found.gap).toBeCloseTo(0.8, 12);
    expect(found.worst).toBeCloseTo(0.5, 12);
    expect(found).toMatchObject({ severity: "tight", wanted: 1, between: ["A1", "B1"] });
  });
  it("[DEPTH10] fouls where no overlap is left, and is free where there is as much as wanted", () => {
    expect([3.71, 3.7, 3.69, 2.71, 2.7].map((z) => runOffFindings(faces(z))[0].severity)).toEqual(["foul", "foul", "tight", "tight", "free"]);
  });
  it("[DEPTH10] leaves out what both arbors share, and takes a measured thickness", () => {
    expect(runOffFindings(faces(3.2, {}, true))[0].worst).toBeCloseTo(0.6, 12);
    expect(runOffFindings(faces(0, { measured: { thickness: 3.5 } }))[0].worst).toBeCloseTo(1.2, 12);
  });
  it("[DEPTH10] offers a lift of the driven that cures it", () => {
    const [found] = runOffFindings(faces(3.8));
    expect(found.remedies).toMatchObject([{ move: "B1" }]);
    const by = found.remedies[0].by as { z: number };
    expect(runOffFindings(faces(3.8 + by.z))[0].severity).toBe("free");
  });
  it("[DEPTH10] is the least over every way the two can lie within their shakes", () => {
    fc.assert(fc.property(fc.double({ min: -3, max: 6, noNaN: true }), fc.double({ min: 0.2, max: 6, noNaN: true }), (z, thickness) => {
      const { worst } = faceOverlapOf(faces(z, { thickness }), 0);
      let least = Infinity;
      for (let s = -0.3; s <= 0.30001; s += 0.05) least = Math.min(least, Math.min(4, z + thickness + s) - Math.max(2, z + s));
      expect(worst).toBeCloseTo(least, 9);
    }), { seed: 5 });
  });
});
