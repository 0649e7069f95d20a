import { describe, expect, it } from "vitest";
import { turned, turnedIn } from "../../../geometry/mesh/lathe.ts";
import { areaMmSq, volumeMmCu } from "../../../geometry/mesh/measures.ts";
import { expectClosed, expectVolume } from "./expect.ts";

/** Area of a regular polygon of n corners over that of its circle. */
const filled = (n: number): number => (n / (2 * Math.PI)) * Math.sin((2 * Math.PI) / n);

describe("turned solids", () => {
  it("[MESH2] a cylinder is closed and has the volume of its polygon to 1e-4 of it", () => {
    const mesh = turnedIn({ points: [[0, 1], [3, 1], [3, 6], [0, 6]], closed: false }, 64);
    expectClosed(mesh);
    expectVolume(mesh, Math.PI * 9 * 5 * filled(64), 1e-4);
  });
  it("[MESH2] a tube is closed, has one hole through it and its volume is the difference of two cylinders", () => {
    const mesh = turnedIn({ points: [[4, 0], [4, 10], [3, 10], [3, 0]], closed: true }, 96);
    expectClosed(mesh, 1, 1);
    expectVolume(mesh, Math.PI * 7 * 10 * filled(96), 1e-3);
  });
  it("[MESH2] a cone, whose tip is a single corner, has a third of the cylinder's volume", () => {
    const mesh = turnedIn({ points: [[0, 0], [2, 0], [0, 5]], closed: false }, 48);
    expectClosed(mesh);
    expectVolume(mesh, (Math.PI * 4 * 5 * filled(48)) / 3, 1e-4);
  });
  it("[MESH3] a finer chord brings volume and skin nearer to the closed form, from below", () => {
    const profile = { points: [[0, 0], [5, 0], [5, 2], [0, 2]] as const, closed: false };
    const volume = Math.PI * 25 * 2, skin = 2 * Math.PI * 25 + 2 * Math.PI * 5 * 2;
    let before = 1;
    for (const chordMm of [0.1, 0.01, 0.001]) {
      const mesh = turned(profile, chordMm);
      const short = volume - volumeMmCu(mesh);
      expect(short).toBeGreaterThan(0);
      // A ring of the chord's thickness all round is the most that can be missing.
      expect(short).toBeLessThan(2 * Math.PI * 5 * 2 * chordMm);
      expect(skin - areaMmSq(mesh)).toBeGreaterThan(0);
      expect(short).toBeLessThan(before * volume);
      before = short / volume;
    }
  });
  it("[MESH4] the wall is smooth round about and sharp at its rims: normals lie along the radius to 1e-6", () => {
    const mesh = turnedIn({ points: [[0, 0], [2, 0], [2, 3], [0, 3]], closed: false }, 24);
    let wall = 0;
    for (let i = 0; i < mesh.weld.length; i++) {
      const [x = 0, y = 0] = mesh.positions.subarray(3 * i), [nx = 0, ny = 0, nz = 0] = mesh.normals.subarray(3 * i);
      if (Math.abs(nz) > 0.5) { expect(Math.abs(nz)).toBeGreaterThan(1 - 1e-6); continue; }
      wall++;
      expect(Math.hypot(nx - x / 2, ny - y / 2, nz)).toBeLessThan(1e-6);
    }
    expect(wall).toBe(48);
  });
});
