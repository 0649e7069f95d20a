// Outside checks: manifold-3d 3.5 (Apache-2.0) and three-mesh-bvh 0.9 (MIT), as installed.
import { describe, expect, it } from "vitest";
import { meshOf, thingsOf } from "../../../geometry/mesh/things.ts";
import { roundOf } from "../../../geometry/mesh/lathe.ts";
import { joined, type Mesh } from "../../../geometry/mesh/mesh.ts";
import { areaMmSq, volumeMmCu } from "../../../geometry/mesh/measures.ts";
import { prism } from "../../../geometry/mesh/prism.ts";
import { circleOutline, reversed } from "../../../geometry/planar/outline.ts";
import { harbour } from "./harbour.ts";
import { manifold, skinDistance, solidOf } from "./solid.ts";

const moved = (mesh: Mesh, x: number, y: number, z: number): Mesh =>
  ({ ...mesh, positions: mesh.positions.map((v, i) => v + ([x, y, z][i % 3] ?? 0)) });

describe("other libraries", () => {
  it("[MESH1] [MESH2] manifold-3d takes every thing of a movement as a solid and measures the same volume and skin, to 1e-4 of it", async () => {
    const m = await manifold(), movement = harbour();
    for (const { id } of thingsOf(movement)) {
      const mesh = meshOf(movement, id);
      if (mesh === null) throw new Error(`${id} has no mesh`);
      const solid = solidOf(m, mesh);
      expect([id, solid.status()]).toEqual([id, "NoError"]);
      const volume = volumeMmCu(mesh), skin = areaMmSq(mesh);
      expect(Math.abs(solid.volume() - volume)).toBeLessThan(1e-4 * volume);
      expect(Math.abs(solid.surfaceArea() - skin)).toBeLessThan(1e-4 * skin);
      solid.delete();
    }
  });
  it("[MESH1] manifold-3d counts the same holes through a plate", async () => {
    const m = await manifold();
    const holes = [[10, 10], [30, 10], [20, 25]].map(([x, y]) => reversed(circleOutline(3, 0.01, x, y)));
    const solid = solidOf(m, prism({ outside: Float64Array.of(0, 0, 40, 0, 40, 40, 0, 40), holes }, 0, 2));
    expect(solid.genus()).toBe(3);
  });
  it("[MESH3] drawn discs and rings stand as far apart as their radii say, to twice the chord error", async () => {
    const m = await manifold(), chordMm = 0.005;
    const cases: readonly (readonly [string, Mesh, Mesh, number])[] = [
      ["two discs side by side", roundOf(5, 0, 0, 2, chordMm), moved(roundOf(3, 0, 0, 2, chordMm), 8.4, 0, 0), 0.4],
      ["two discs one over the other", roundOf(5, 0, 0, 2, chordMm), moved(roundOf(3, 0, 0, 2, chordMm), 2, 1, 2.7), 0.7],
      ["a post in a ring", roundOf(9, 6, 0, 2, chordMm), moved(roundOf(2, 0, -5, 5, chordMm), 3, 1, 0), 6 - 2 - Math.hypot(3, 1)],
      ["a disc over the rim of another", roundOf(5, 0, 0, 2, chordMm), moved(roundOf(3, 0, 0, 2, chordMm), 8.3, 0, 2.4), 0.5],
    ];
    for (const [name, a, b, gapMm] of cases) {
      expect([name, Math.abs(skinDistance(a, b) - gapMm) < 2 * chordMm]).toEqual([name, true]);
      expect([name, Math.abs(solidOf(m, a).minGap(solidOf(m, b), 2) - gapMm) < 2 * chordMm]).toEqual([name, true]);
    }
  });
  it("[MESH1] shells that only touch stay one mesh of several shells", async () => {
    const m = await manifold();
    const two = joined([roundOf(2, 0, 0, 1, 0.01), roundOf(1, 0, 1, 3, 0.01)]);
    expect(two.euler).toBe(4);
    expect(solidOf(m, two).decompose().length).toBe(2);
  });
});
