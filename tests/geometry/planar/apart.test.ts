import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { apart, bar, disc, hollowOf, standAt, type Convex, type Flat } from "../../../geometry/planar/apart.ts";

const solid = (outside: Convex): Flat => ({ outside: [outside], hollows: [] });
const here = standAt(0, 0, 0);
const near = (value: number, wanted: number) => expect(Math.abs(value - wanted)).toBeLessThan(1e-9);

describe("how far flat things stand apart", () => {
  it("[APART1] discs and bars by hand", () => {
    near(apart(solid(disc(2)), here, solid(disc(3)), standAt(10, 0, 0)), 5);
    near(apart(solid(disc(2)), here, solid(disc(3)), standAt(4, 0, 0)), -1);
    const hand = solid(bar(-5, 20, 4, 0));
    near(apart(hand, here, solid(disc(1)), standAt(10, 7, 0)), 4);
    near(apart(hand, here, solid(disc(1)), standAt(24, 5, 0)), 4);
    near(apart(hand, here, solid(disc(1)), standAt(10, 0.5, 0)), -2.5);
    near(apart(hand, here, hand, standAt(0, 10, 0)), 6);
    near(apart(hand, here, hand, standAt(0, 3, 0)), -1);
    near(apart(hand, here, solid(bar(0, 5, 2, Math.PI / 2)), standAt(10, 3, 0)), 1);
  });

  it("[APART2] within a hollow it is what is left to its edge", () => {
    const window: Flat = { outside: [disc(30)], hollows: [{ kind: "round", x: 15, y: 0, radius: 5 }] };
    near(apart(window, here, solid(disc(1)), standAt(16, 0, 0)), 3);
    near(apart(window, standAt(0, 0, Math.PI / 2), solid(disc(1)), standAt(0, 16, 0)), 3);
    near(apart(window, here, solid(disc(1)), standAt(15, 4.5, 0)), -0.5);
    const square: Flat = { outside: [disc(30)], hollows: [hollowOf(Float64Array.of(10, -5, 20, -5, 20, 5, 10, 5))] };
    near(apart(square, here, solid(disc(1)), standAt(18, 0, 0)), 1);
    near(apart(square, here, solid(bar(-2, 2, 1, 0)), standAt(15, 0, 0)), 3);
    expect(apart(square, here, solid(bar(-9, 9, 1, 0)), standAt(15, 0, 0))).toBeLessThan(0);
  });

  it("[APART1] an outline of several pieces: the least shift out of the whole of it, not out of a piece", () => {
    // An L: 20 × 4 along the bottom, 4 × 20 up the left.
    const outline = Float64Array.of(0, 0, 20, 0, 20, 4, 4, 4, 4, 20, 0, 20);
    const ell: Flat = { outline, hollows: [], outside: [{ corners: Float64Array.of(0, 0, 20, 0, 20, 4, 0, 4), radius: 0 }, { corners: Float64Array.of(0, 4, 4, 4, 4, 20, 0, 20), radius: 0 }] };
    near(apart(ell, here, solid(bar(-1, 1, 2, 0)), standAt(12, 3, 0)), -2);
    near(apart(ell, here, solid(bar(-1, 1, 2, 0)), standAt(2, 2, 0)), -3);
    near(apart(ell, here, solid(bar(-1, 1, 2, 0)), standAt(12, 9, 0)), 4);
    near(apart(ell, here, solid(disc(1)), standAt(2, 2, 0)), -3);
    near(apart(ell, here, solid(disc(1)), standAt(8, 4.5, 0)), -0.5);
  });

  const shape = fc.oneof(
    fc.integer({ min: 1, max: 5 }).map((r) => disc(r)),
    fc.tuple(fc.integer({ min: -6, max: 0 }), fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 9 })).map(([f, t, w, a]) => bar(f, t, w, a / 3)));
  const stand = fc.tuple(fc.integer({ min: -12, max: 12 }), fc.integer({ min: -12, max: 12 }), fc.integer({ min: 0, max: 20 })).map(([x, y, a]) => standAt(x, y, a / 3));

  it("[APART3] is the same from either side, and a shift by it along some way just touches", () => {
    fc.assert(fc.property(shape, stand, shape, stand, (a, p, b, q) => {
      const gap = apart(solid(a), p, solid(b), q);
      expect(Math.abs(gap - apart(solid(b), q, solid(a), p))).toBeLessThan(1e-9);
      let touched = Infinity;
      for (let i = 0; i < 720; i++) {
        const way = (i * Math.PI) / 360;
        const shifted = { ...q, x: q.x + Math.abs(gap) * Math.cos(way), y: q.y + Math.abs(gap) * Math.sin(way) };
        const then = apart(solid(a), p, solid(b), shifted);
        touched = Math.min(touched, Math.abs(then));
        if (gap < 0) expect(then).toBeLessThan(1e-6);
        else expect(then).toBeGreaterThan(-1e-6);
      }
      expect(touched).toBeLessThan(0.07); // ways half a degree apart, 15 mm off
    }), { seed: 91, numRuns: 150 });
  });

  it("[APART4] never changes faster than one of them moves", () => {
    fc.assert(fc.property(shape, stand, shape, stand, fc.integer({ min: 0, max: 12 }), (a, p, b, q, way) => {
      const moved = { ...q, x: q.x + 0.1 * Math.cos(way), y: q.y + 0.1 * Math.sin(way) };
      expect(Math.abs(apart(solid(a), p, solid(b), moved) - apart(solid(a), p, solid(b), q))).toBeLessThan(0.1 + 1e-9);
    }), { seed: 92, numRuns: 500 });
  });
});
