// Worked pairs of the metric gear handbook of the stock-gear makers (Elements of Metric Gear Technology, tables 4-1, 4-2,
// 4-4; from memory, recomputed to 30 figures).
import { describe, expect, it } from "vitest";
import { inv } from "../../../geometry/teeth/involute-function.ts";
import { pitchRadius, workingDistance } from "../../../geometry/teeth/forms.ts";
import { clockPinion, clockWheel, teeth } from "./sample.ts";

describe("the working distance", () => {
  it("[TEETH2] of the handbook's standard pairs is half the sum of the teeth", () => {
    expect(workingDistance(teeth({ module: 3, count: 12 }), teeth({ module: 3, count: 24 }))).toBe(54);
    expect(workingDistance(teeth({ module: 3, count: 16 }), teeth({ module: 3, count: 20 }))).toBe(54);
    expect(workingDistance(teeth({ count: 20 }), teeth({ count: 60 }))).toBe(40);
  });
  it("[TEETH2] of the handbook's shifted pair is 56.4998697 mm, whichever drives", () => {
    const a = teeth({ module: 3, count: 12, shift: 0.6 }), b = teeth({ module: 3, count: 24, shift: 0.36 });
    expect(Math.abs(workingDistance(a, b)! - 56.4998697)).toBeLessThan(1e-6);
    expect(workingDistance(b, a)).toBe(workingDistance(a, b));
  });
  it("[TEETH2] in an annulus takes the differences: inv of its working angle is inv α + 2 tan α (x₂ − x₁)/(z₂ − z₁)", () => {
    const ring = teeth({ count: 48, internal: true, shift: 0.5 }), pinion = teeth({ count: 16, shift: 0.2 });
    const a = workingDistance(pinion, ring)!, alpha = Math.PI / 9;
    const working = Math.acos((16 * Math.cos(alpha)) / a);
    expect(Math.abs(inv(working) - inv(alpha) - (2 * Math.tan(alpha) * 0.3) / 32)).toBeLessThan(1e-12);
    expect(a).toBeGreaterThan(16);
    expect(workingDistance(ring, pinion)).toBe(a);
    expect(workingDistance(teeth({ count: 16, shift: 0.3 }), teeth({ count: 48, internal: true, shift: 0.3 }))).toBe(16);
  });
  it("[TEETH2] of other forms, and of pairs that do not agree, is where the pitch circles touch", () => {
    expect(workingDistance(clockWheel(64, 8, { module: 0.8 }), clockPinion(8, 64, { module: 0.8 }))).toBeCloseTo(28.8, 12);
    expect(workingDistance(teeth({ form: "straight", shift: 0.4 }), teeth({ form: "straight", count: 40 }))).toBe(30);
    expect(workingDistance(clockWheel(60, 6), teeth({ form: "lantern", count: 6, trundleDiameter: 1.2 }))).toBe(33);
    expect(workingDistance(teeth({ module: 1 }), teeth({ module: 2 }))).toBe(30);
    expect(workingDistance(teeth({ shift: 0.5 }), teeth({ pressureAngleDeg: 14.5, count: 30 }))).toBe(25);
    expect(workingDistance(teeth({ form: "straight", count: 16 }), teeth({ form: "straight", count: 48, internal: true }))).toBe(16);
  });
  it("[TEETH2] is none for two annuli, for an annulus no larger than its mate and for shifts that leave no angle", () => {
    const ring = teeth({ count: 20, internal: true });
    expect(workingDistance(ring, ring)).toBeNull();
    expect(workingDistance(teeth({ count: 20 }), ring)).toBeNull();
    expect(workingDistance(ring, teeth({ count: 30 }))).toBeNull();
    expect(workingDistance(teeth({ count: 17, shift: -1 }), teeth({ count: 17, shift: -1 }))).toBeNull();
  });
  it("[TEETH2] grows with the sum of the shifts, and only that sum counts", () => {
    for (let x = -0.2; x < 1; x += 0.1) {
      const at = (a: number, b: number) => workingDistance(teeth({ shift: a }), teeth({ count: 31, shift: b }))!;
      expect(at(x + 0.1, 0)).toBeGreaterThan(at(x, 0));
      expect(at(x, 0.3)).toBeCloseTo(at(0.3, x), 10);
    }
  });
  it("[TEETH2] goes by pitch radii: half a module for every tooth", () => {
    expect(pitchRadius(teeth({ count: 96, module: 0.5 }))).toBe(24);
  });
});
