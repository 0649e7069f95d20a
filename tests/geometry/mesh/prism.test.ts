import { describe, expect, it } from "vitest";
import { flatOf, flatOfToothed } from "../../../geometry/mesh/flat.ts";
import { prism, prismOf } from "../../../geometry/mesh/prism.ts";
import { circleOutline, reversed, signedAreaMmSq, type Outline } from "../../../geometry/planar/outline.ts";
import { expectClosed, expectVolume, seeded } from "./expect.ts";

/** A star of n points, which needs no tooth form: five points a tooth, repeated exactly. */
function star(n: number, root: number, tip: number): Outline {
  const out: number[] = [];
  for (let i = 0; i < n; i++)
    for (const [at, r] of [[-0.5, root], [-0.3, root], [-0.1, tip], [0.1, tip], [0.3, root]] as const) {
      const a = (2 * Math.PI * (i + at)) / n;
      out.push(r * Math.cos(a), r * Math.sin(a));
    }
  return Float64Array.from(out);
}

describe("prisms", () => {
  it("[MESH2] a square plate with two round holes is closed and has the area of its outlines times its thickness", () => {
    const outside = Float64Array.of(0, 0, 40, 0, 40, 30, 0, 30);
    const holes = [reversed(circleOutline(4, 0.01, 10, 15)), reversed(circleOutline(6, 0.01, 28, 15))];
    const mesh = prism({ outside, holes }, -2, 1);
    expectClosed(mesh, 1, 2);
    expectVolume(mesh, 3 * (1200 + holes.reduce((sum, h) => sum + signedAreaMmSq(h), 0)), 1e-2);
  });
  it("[MESH2] points in line with their neighbours, and doubled points, leave no gap between cap and wall", () => {
    const outside = Float64Array.of(0, 0, 10, 0, 20, 0, 20, 0, 20, 10, 20, 20, 10, 20, 0, 20, 0, 10);
    const mesh = prism({ outside, holes: [Float64Array.of(5, 10, 5, 15, 10, 15, 15, 15, 15, 10, 15, 5, 5, 5)] }, 0, 2);
    expectClosed(mesh, 1, 1);
    expectVolume(mesh, 2 * (400 - 100), 1e-3);
  });
  it("[MESH2] plates with random holes are closed (200 of them, seed 41)", () => {
    const random = seeded(41);
    for (let trial = 0; trial < 200; trial++) {
      const holes: Outline[] = [], places: number[][] = [];
      for (let k = 0; k < 12; k++) {
        // Half of them on a grid, so that holes stand in line.
        const x = trial % 2 ? 4 + 52 * random() : 10 * Math.round(1 + 4 * random()), y = trial % 2 ? 4 + 32 * random() : 10 * Math.round(1 + 2 * random());
        const r = 0.5 + 2.4 * random();
        if (places.some(([px = 0, py = 0, pr = 0]) => Math.hypot(px - x, py - y) < pr + r + 0.1)) continue;
        places.push([x, y, r]);
        holes.push(reversed(circleOutline(r, 0.05, x, y)));
      }
      expectClosed(prism({ outside: Float64Array.of(0, 0, 60, 0, 60, 40, 0, 40), holes }, 0, 3), 1, holes.length);
    }
  });
  it("[MESH2] [MESH5] a wheel cut tooth by tooth is the same solid as one cut whole", () => {
    for (const n of [3, 6, 8, 30, 96]) {
      const outline = star(n, 0.8 * n, 0.8 * n + 1);
      const bore = reversed(circleOutline(0.25 * n, 0.01));
      const repeated = prismOf(flatOfToothed(outline, n, [bore]), 1, 3);
      const cut = prismOf(flatOf({ outside: outline, holes: [bore] }), 1, 3);
      expectClosed(repeated, 1, 1);
      expectClosed(cut, 1, 1);
      const area = signedAreaMmSq(outline) + signedAreaMmSq(bore);
      expectVolume(repeated, 2 * area, 1e-5 * area);
      expectVolume(cut, 2 * area, 1e-5 * area);
      if (n > 6) expect(repeated.corners).toBeGreaterThan(cut.corners);
    }
  });
  it("[MESH5] an outline that does not repeat, or leaves no room under its roots, is cut whole", () => {
    const uneven = star(12, 10, 12);
    uneven[0] = 10.5;
    const bore = reversed(circleOutline(9.7, 0.01));
    const a = flatOfToothed(uneven, 12, []), b = flatOfToothed(star(12, 10, 12), 12, [bore]);
    expect(a.points.length).toBe(uneven.length);
    expectClosed(prismOf(a, 0, 1));
    expectClosed(prismOf(b, 0, 1), 1, 1);
  });
  it("[MESH4] walls are smooth along a circle and sharp at the corners of a square", () => {
    const round = prism({ outside: circleOutline(5, 0.01), holes: [] }, 0, 1);
    const square = prism({ outside: Float64Array.of(-1, -1, 1, -1, 1, 1, -1, 1), holes: [] }, 0, 1);
    expect(round.weld.length).toBe(2 * round.corners);
    expect(square.weld.length).toBe(3 * square.corners);
    for (const mesh of [round, square])
      for (let i = 0; i < mesh.weld.length; i++)
        expect(Math.abs(Math.hypot(...mesh.normals.subarray(3 * i, 3 * i + 3)) - 1)).toBeLessThan(1e-6);
  });
});
