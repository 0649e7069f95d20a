import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { circleOutline, circleSteps, placed, reversed, signedAreaMmSq } from "../../../geometry/planar/outline.ts";

const square = Float64Array.of(0, 0, 2, 0, 2, 2, 0, 2);

describe("an outline", () => {
  it("[PLANAR1] has the sign of its sense round: a square of 2 mm", () => {
    expect(signedAreaMmSq(square)).toBe(4);
    expect(signedAreaMmSq(reversed(square))).toBe(-4);
    expect([...reversed(square)]).toEqual([0, 2, 2, 2, 2, 0, 0, 0]);
  });
  it("[PLANAR1] keeps lengths and area where it is turned and moved", () => {
    const number = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(fc.property(number, number, number, (turn, x, y) => {
      const moved = placed(square, turn, x, y);
      expect(signedAreaMmSq(moved)).toBeCloseTo(4, 9);
      expect(Math.hypot(moved[2]! - moved[0]!, moved[3]! - moved[1]!)).toBeCloseTo(2, 12);
      expect(moved[0]).toBe(x);
    }), { seed: 20261125 });
  });
  it("[PLANAR1] turned a quarter carries +x to +y", () => {
    const [, , x, y] = placed(square, Math.PI / 2, 10, 0);
    expect(x).toBeCloseTo(10, 12);
    expect(y).toBeCloseTo(2, 12);
  });
});

describe("a circle", () => {
  it("[PLANAR2] has its corners on it and keeps the chord error with no chord to spare", () => {
    fc.assert(fc.property(fc.double({ min: 0.05, max: 200, noNaN: true }), fc.constantFrom(0.001, 0.01, 0.1), (radius, chord) => {
      const o = circleOutline(radius, chord, 3, -4), n = o.length / 2;
      for (let i = 0; i < n; i++) expect(Math.hypot(o[2 * i]! - 3, o[2 * i + 1]! + 4)).toBeCloseTo(radius, 9);
      const sagitta = (steps: number) => radius * (1 - Math.cos(Math.PI / steps));
      if (n > 12) {
        expect(sagitta(n)).toBeLessThanOrEqual(chord * (1 + 1e-9));
        expect(sagitta(n - 1)).toBeGreaterThan(chord * (1 - 1e-9));
      } else expect(sagitta(12)).toBeLessThanOrEqual(Math.max(chord, radius / 20));
      expect(signedAreaMmSq(o)).toBeGreaterThan(0);
    }), { seed: 20261125 });
  });
  it("[PLANAR2] has an answer for no error at all and for a circle smaller than the error", () => {
    expect(circleSteps(1, 0)).toBeLessThan(3000);
    expect(circleSteps(0.001, 0.01)).toBe(12);
    expect(circleSteps(0, 0.01)).toBe(12);
  });
});
