import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areaOfLoops, crossingsOn, pathText, regionOf, type Circle } from "../../../geometry/planar/regions.ts";

const union = (circles: readonly Circle[]) => regionOf({ circles, segments: [] }, (x, y) => circles.some((c) => Math.hypot(x - c.x, y - c.y) <= c.radius));

describe("a region of arcs", () => {
  it("[PLANAR3] of two unit circles one apart has the area of both less their overlap, 2π/3 − √3/2", () => {
    const area = areaOfLoops(union([{ x: 0, y: 0, radius: 1 }, { x: 1, y: 0, radius: 1 }]));
    // Overlap of two unit circles one apart: closed form, 1.2283696986 mm².
    expect(area).toBeCloseTo(2 * Math.PI - 1.2283696986, 8);
  });

  it("[PLANAR3] of circles that only touch, lie apart or in one another is all of them, holes kept", () => {
    expect(areaOfLoops(union([{ x: 0, y: 0, radius: 1 }, { x: 2, y: 0, radius: 1 }]))).toBeCloseTo(2 * Math.PI, 6);
    expect(union([{ x: 0, y: 0, radius: 3 }, { x: 1, y: 0, radius: 1 }])).toHaveLength(1);
    const ring = regionOf({ circles: [{ x: 0, y: 0, radius: 3 }, { x: 0, y: 0, radius: 1 }], segments: [] }, (x, y) => Math.hypot(x, y) <= 3 && Math.hypot(x, y) >= 1);
    expect(ring).toHaveLength(2);
    expect(areaOfLoops(ring)).toBeCloseTo(8 * Math.PI, 9);
  });

  it("[PLANAR3] bounded by a line and a circle has the area of the segment of the circle", () => {
    // Radius 50, chord 40: sagitta 4.1742430504; area r² asin(20/50) − 20 √(50² − 20²).
    const d = Math.sqrt(50 ** 2 - 20 ** 2);
    const loops = regionOf({ circles: [{ x: 0, y: 0, radius: 50 }], segments: [{ x0: -99, y0: d, x1: 99, y1: d }] }, (x, y) => y >= d && Math.hypot(x, y) <= 50);
    expect(areaOfLoops(loops)).toBeCloseTo(2500 * Math.asin(0.4) - 20 * d, 8);
  });

  it("[PLANAR3] is closed, with the region on the left, and has the area that counting points gives", () => {
    const disc = fc.record({ x: fc.double({ min: -5, max: 5, noNaN: true }), y: fc.double({ min: -5, max: 5, noNaN: true }), radius: fc.double({ min: 0.5, max: 4, noNaN: true }) });
    fc.assert(fc.property(fc.array(disc, { minLength: 1, maxLength: 9 }), (circles) => {
      const loops = union(circles);
      for (const loop of loops) loop.forEach((p, i) => {
        const next = loop[(i + 1) % loop.length]!;
        expect(Math.hypot(next.x0 - p.x1, next.y0 - p.y1)).toBeLessThan(1e-5);
      });
      let inside = 0;
      const steps = 180;
      for (let i = 0; i < steps; i++) for (let j = 0; j < steps; j++) {
        const x = -9 + (18 * (i + 0.5)) / steps, y = -9 + (18 * (j + 0.5)) / steps;
        if (circles.some((c) => Math.hypot(x - c.x, y - c.y) <= c.radius)) inside++;
      }
      expect(Math.abs(areaOfLoops(loops) - (inside * 18 * 18) / steps ** 2)).toBeLessThan(1.5);
    }), { seed: 5, numRuns: 40 });
  });

  it("[PLANAR4] is written as a path of arcs, each of less than half a turn", () => {
    const text = pathText(union([{ x: 0, y: 0, radius: 2 }]));
    expect(text).toMatch(/^M-1\.\d+ -1\.732\d+A2 2 0 0 1 2 0A/);
    expect(text.match(/A/g)).toHaveLength(3);
    expect(text.endsWith("Z")).toBe(true);
  });

  it("[PLANAR4] crosses a circle at the closed-form places", () => {
    // Fixed centres 30 apart, radii 20 and 25: x 11.25, y ±16.535945694.
    const at = crossingsOn({ x: 0, y: 0, radius: 20 }, { circles: [{ x: 30, y: 0, radius: 25 }], segments: [] });
    expect(at.map((a) => 20 * Math.cos(a))).toEqual([expect.closeTo(11.25, 9), expect.closeTo(11.25, 9)]);
    expect(20 * Math.sin(at[0]!)).toBeCloseTo(16.535945694, 8);
  });
});
