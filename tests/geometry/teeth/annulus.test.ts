// An annulus measured on its drawn hole, against the closed forms of the involute and against the outside wheel whose
// teeth fill its spaces.
import { describe, expect, it } from "vitest";
import { signedAreaMmSq } from "../../../geometry/planar/outline.ts";
import { formOf, profileOf, toothOutline } from "../../../geometry/teeth/forms.ts";
import { inv } from "../../../geometry/teeth/involute-function.ts";
import { halfAngleAt, pointsOf, teeth } from "./sample.ts";

const ring = (said: object = {}) => teeth({ count: 48, internal: true, ...said });
const FINE = 1e-6;

describe("an annulus", () => {
  it("[TEETH9] has its tips inside and its roots outside: a hole from 23 to 25.25 mm for 48 teeth of module 1", () => {
    const radii = pointsOf(toothOutline(ring(), 0.01)).map((p) => Math.hypot(...p));
    expect(Math.min(...radii)).toBeCloseTo(23, 9);
    expect(Math.max(...radii)).toBeCloseTo(25.25, 9);
    expect(signedAreaMmSq(toothOutline(ring(), 0.01))).toBeGreaterThan(Math.PI * 23 ** 2);
  });
  it.each([[0, 0], [0.4, 0.05], [-0.3, 0.1]])("[TEETH9] leaves the spaces that the teeth of an outside wheel of its count would fill (shift %d, thinning %d)", (shift, thinning) => {
    // Wheel and ring of one count, one tooth in one space: their flanks lie on one another; thinned, half of both aside.
    const hole = toothOutline(ring({ shift, thinning }), FINE), wheel = toothOutline(teeth({ count: 48, shift, thinning }), FINE);
    for (const radius of [23.6, 24, 24.4]) {
      const space = Math.PI / 48 - halfAngleAt(radius, hole);
      expect(Math.abs(radius * (space - halfAngleAt(radius, wheel)) - thinning * (radius / 24))).toBeLessThan(1e-5);
    }
  });
  it("[TEETH9] has teeth thicker by inv α_r going outward: s/2r − inv α + inv α_r", () => {
    const alpha = Math.PI / 9, hole = toothOutline(ring(), FINE);
    for (const r of [23.2, 24, 24.8])
      expect(halfAngleAt(r, hole)).toBeCloseTo(Math.PI / 96 - inv(alpha) + inv(Math.acos((24 * Math.cos(alpha)) / r)), 6);
  });
  it("[TEETH9] of few teeth ends them at the base circle, where no involute goes further in", () => {
    const t = ring({ count: 20 });
    expect(formOf(t).tipRadius(t)).toBe(9);
    expect(profileOf(t).leastRadius).toBeCloseTo(10 * Math.cos(Math.PI / 9), 9);
  });
  it("[TEETH9] has a corner of 0.38 modules that runs smoothly into flank and root", () => {
    const { pieces } = profileOf(ring({ module: 2 }));
    expect(pieces.map((p) => p.name)).toEqual(["root", "fillet", "flank", "top"]);
    for (let i = 0; i < 2; i++) {
      const a = pieces[i]!.at(pieces[i]!.to), b = pieces[i + 1]!.at(pieces[i + 1]!.from);
      expect(a.nx * b.nx + a.ny * b.ny).toBeCloseTo(1, 9);
    }
    const fillet = pieces[1]!, a = fillet.at(fillet.from), b = fillet.at(fillet.to);
    // On a circle, normals that differ by so much stand so far apart.
    expect(Math.hypot(b.x - a.x, b.y - a.y) / Math.hypot(b.nx - a.nx, b.ny - a.ny)).toBeCloseTo(0.76, 9);
  });
  it("[TEETH9] takes involute flanks whatever its form says, and says so", () => {
    const clock = ring({ form: "cycloidal", thinning: 0 });
    expect([...toothOutline(clock, 0.01)]).toEqual([...toothOutline(ring(), 0.01)]);
    expect(formOf(clock).doesNotCover.join(" ")).toMatch(/involute teeth whatever its form/);
  });
  it("[TEETH15] whose spaces close before the root, or whose teeth close before the tip, ends there", () => {
    const deep = profileOf(ring({ count: 12, pressureAngleDeg: 35, shift: 0 }));
    expect(deep.greatestRadius).toBeLessThanOrEqual(7.25);
    const thin = profileOf(ring({ count: 30, thinning: 1.2 }));
    expect(thin.pieces.at(-1)!.name).toBe("flank");
    expect(thin.leastRadius).toBeGreaterThan(14);
  });
});
