import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { meetCircles } from "../../../geometry/planar/circles.ts";

const place = fc.record({ x: fc.double({ min: -100, max: 100, noNaN: true }), y: fc.double({ min: -100, max: 100, noNaN: true }) });
const radius = fc.double({ min: 0.01, max: 100, noNaN: true });

describe("two circles", () => {
  it("[PLANAR1] meet at points that lie on both, the left one to the left of the way from the first to the second", () => {
    const m = meetCircles({ x: 0, y: 0 }, 5, { x: 6, y: 0 }, 5);
    expect(m.kind).toBe("meet");
    if (m.kind !== "meet") return;
    expect(m.left.x).toBeCloseTo(3, 12);
    expect(m.left.y).toBeCloseTo(4, 12);
    expect(m.right.y).toBeCloseTo(-4, 12);
  });
  it("[PLANAR1] that only touch meet in one point", () => {
    const m = meetCircles({ x: 1, y: 2 }, 20, { x: 31, y: 42 }, 30);
    expect(m.kind).toBe("meet");
    if (m.kind !== "meet") return;
    expect(m.left.x).toBeCloseTo(13, 6);
    expect(m.left.y).toBeCloseTo(18, 6);
    expect(Math.hypot(m.left.x - m.right.x, m.left.y - m.right.y)).toBeLessThan(1e-5);
  });
  it("[PLANAR1] that never meet give the place half way between them and by how much they miss", () => {
    expect(meetCircles({ x: 0, y: 0 }, 2, { x: 10, y: 0 }, 4)).toEqual({ kind: "apart", between: { x: 4, y: 0 }, missMm: 4 });
    expect(meetCircles({ x: 0, y: 0 }, 10, { x: 1, y: 0 }, 3)).toEqual({ kind: "within", between: { x: 7, y: 0 }, missMm: 6 });
    expect(meetCircles({ x: 0, y: 0 }, 3, { x: 1, y: 0 }, 10)).toEqual({ kind: "within", between: { x: -6, y: 0 }, missMm: 6 });
    expect(meetCircles({ x: 2, y: 2 }, 3, { x: 2, y: 2 }, 3)).toEqual({ kind: "concentric" });
  });
  it("[PLANAR1] meet on both circles, or leave on each side what they miss by, wherever they stand", () => {
    fc.assert(fc.property(place, radius, place, radius, (a, ra, b, rb) => {
      const m = meetCircles(a, ra, b, rb);
      if (m.kind === "concentric") return;
      const off = (p: { x: number; y: number }, c: { x: number; y: number }, r: number) => Math.abs(Math.hypot(p.x - c.x, p.y - c.y) - r);
      if (m.kind === "meet")
        for (const p of [m.left, m.right]) {
          // A grazing meeting magnifies rounding: the square root of it remains.
          expect(off(p, a, ra)).toBeLessThan(1e-5);
          expect(off(p, b, rb)).toBeLessThan(1e-5);
        }
      else {
        expect(off(m.between, a, ra)).toBeCloseTo(m.missMm / 2, 6);
        expect(off(m.between, b, rb)).toBeCloseTo(m.missMm / 2, 6);
      }
    }), { seed: 20261125, numRuns: 500 });
  });
});
