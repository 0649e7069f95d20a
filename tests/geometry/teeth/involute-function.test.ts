// Values: check against the printed handbook tables of inv (0.014904 at 20°, 0.005545 at 14.5°, 0.029975 at 25°; any gear
// handbook, from memory), recomputed to 12 figures.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inv, inverseInv } from "../../../geometry/teeth/involute-function.ts";

const rad = (deg: number) => (deg * Math.PI) / 180;

describe("the involute function", () => {
  it.each([
    [1, 0.00000177240827], [5, 0.000222200926], [10, 0.00179405550903], [14.5, 0.00554484281671], [17.5, 0.00986616977998],
    [20, 0.0149043838673], [22.5, 0.0215144806744], [25, 0.0299753451564], [30, 0.0537514935913], [40, 0.14096793038], [45, 0.214601836603],
  ])("[TEETH2] of %d degrees agrees with the tables to 1e-11", (deg, value) => {
    expect(Math.abs(inv(rad(deg)) - value)).toBeLessThan(1e-11);
  });
  it.each([
    [0.001, 8.240624225], [0.005, 14.01665482], [0.01, 17.57677222], [0.02, 21.98110179], [0.0343165, 26.08865194], [0.05, 29.3377203],
    [0.1, 36.19142187], [0.2, 44.13794685],
  ])("[TEETH2] is turned round for %d to 1e-7 degrees", (value, deg) => {
    expect(Math.abs((inverseInv(value)! * 180) / Math.PI - deg)).toBeLessThan(1e-7);
  });
  it("[TEETH2] has an angle for every value from 0 up, and none below", () => {
    expect(inverseInv(0)).toBe(0);
    expect(inverseInv(-1e-12)).toBeNull();
    expect(inverseInv(NaN)).toBeNull();
    fc.assert(fc.property(fc.double({ min: 1e-12, max: 1e4, noNaN: true }), (value) => {
      const a = inverseInv(value)!;
      expect(a).toBeGreaterThan(0);
      expect(a).toBeLessThan(Math.PI / 2);
      expect(Math.abs(inv(a) / value - 1)).toBeLessThan(1e-9 * (1 + value));
    }), { seed: 20261125 });
  });
});
