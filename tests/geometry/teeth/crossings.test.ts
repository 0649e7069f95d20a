import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { reversed, signedAreaMmSq } from "../../../geometry/planar/outline.ts";
import { crossingOutlines, crossingsFault } from "../../../geometry/teeth/crossings.ts";
import { crossingEdges, pointsOf } from "./sample.ts";

describe("crossings", () => {
  it("[TEETH16] leave a rim under the roots, a hub, and arms of their width, the first on +x", () => {
    const holes = crossingOutlines({ arms: 5, rim: 3, arm: 4, hub: 14 }, 40, 0.001);
    expect(holes.length).toBe(5);
    const points = holes.flatMap(pointsOf), radii = points.map((p) => Math.hypot(...p));
    expect(Math.max(...radii)).toBeCloseTo(37, 9);
    expect(Math.min(...radii)).toBeCloseTo(7, 2);
    for (let arm = 0; arm < 5; arm++) {
      const a = (2 * Math.PI * arm) / 5;
      const aside = points.filter(([x, y]) => x * Math.cos(a) + y * Math.sin(a) > 0).map(([x, y]) => Math.abs(y * Math.cos(a) - x * Math.sin(a)));
      expect(Math.min(...aside)).toBeCloseTo(2, 9);
    }
  });
  it("[TEETH16] of four arms without corners would have the area of the ring less the arms; corners take a little of that", () => {
    const area = -crossingOutlines({ arms: 4, rim: 2, arm: 3, hub: 16 }, 30, 0.0005).reduce((sum, o) => sum + signedAreaMmSq(o), 0);
    // Of each arm, the part between two circles: ∫ of chord heights, in closed form.
    const strip = (r: number) => 1.5 * Math.sqrt(r * r - 1.5 ** 2) + r * r * Math.asin(1.5 / r);
    const sharp = Math.PI * (28 ** 2 - 8 ** 2) - 4 * (strip(28) - strip(8));
    // Sixteen corners of 1.5 mm, each about (1 − π/4) r²; the inner ones stand blunter, and take less.
    const corners = 16 * (1 - Math.PI / 4) * 1.5 ** 2;
    expect(sharp - area).toBeGreaterThan(0.8 * corners);
    expect(sharp - area).toBeLessThan(corners);
  });
  it("[TEETH16] end in a round between two arms that run together before the hub", () => {
    const [hole] = crossingOutlines({ arms: 8, rim: 2, arm: 5, hub: 4 }, 40, 0.001);
    // A corner of 2.5 mm between edges 2.5 mm from the arms' middles, 22.5° to either side: innermost at 5 / sin 22.5° − 2.5.
    const least = Math.min(...pointsOf(hole!).map((p) => Math.hypot(...p)));
    expect(least).toBeCloseTo(5 / Math.sin(Math.PI / 8) - 2.5, 9);
  });
  it("[TEETH16] are clockwise, cross nothing and keep to their own sector, for any figures that leave room", () => {
    const figures = fc.record({
      arms: fc.integer({ min: 2, max: 12 }), rim: fc.double({ min: 0.2, max: 10, noNaN: true }), arm: fc.double({ min: 0.2, max: 12, noNaN: true }),
      hub: fc.double({ min: 0.5, max: 60, noNaN: true }),
    });
    let drawn = 0;
    fc.assert(fc.property(figures, fc.double({ min: 3, max: 80, noNaN: true }), (crossings, root) => {
      const holes = crossingOutlines(crossings, root, 0.01);
      expect(crossingsFault(crossings, root) === null).toBe(holes.length > 0);
      if (holes.length === 0) return;
      drawn++;
      expect(holes.length).toBe(crossings.arms);
      expect(signedAreaMmSq(holes[0]!)).toBeLessThan(0);
      expect(crossingEdges(reversed(holes[0]!))).toBeNull();
      for (const [x, y] of pointsOf(holes[0]!)) {
        expect(Math.hypot(x, y)).toBeLessThan(root - crossings.rim + 1e-9);
        expect(Math.hypot(x, y)).toBeGreaterThan(crossings.hub / 2 - 0.011);
        expect(y).toBeGreaterThan(crossings.arms === 2 ? crossings.arm / 2 - 1e-9 : 0);
      }
    }), { seed: 20261125, numRuns: 400 });
    expect(drawn).toBeGreaterThan(100);
  });
  it("[TEETH16] that leave no room are none, and why is said", () => {
    expect(crossingsFault({ arms: 5, rim: 30, arm: 4, hub: 24 }, 40)).toMatch(/rim of 30 mm and a hub of 24 mm leave no opening/);
    expect(crossingsFault({ arms: 12, rim: 2, arm: 12, hub: 10 }, 20)).toMatch(/12 arms of 12 mm fill the wheel/);
    expect(crossingsFault({ arms: 1, rim: 2, arm: 2, hub: 10 }, 20)).toMatch(/two arms or more/);
    expect(crossingsFault({ arms: 5, rim: 0, arm: 2, hub: 10 }, 20)).toMatch(/some metal/);
    expect(crossingOutlines({ arms: 12, rim: 2, arm: 12, hub: 10 }, 20, 0.01)).toEqual([]);
  });
});
