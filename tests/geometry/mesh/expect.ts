// What every test of a mesh asks of it.
import { expect } from "vitest";
import { faultsOfMesh } from "../../../geometry/mesh/faults.ts";
import { volumeMmCu } from "../../../geometry/mesh/measures.ts";
import type { Mesh } from "../../../geometry/mesh/mesh.ts";

/** Closed, outward, welded, with the Euler number it says it has. */
export function expectClosed(mesh: Mesh, shells = 1, holes = 0): void {
  expect(faultsOfMesh(mesh)).toEqual([]);
  expect(mesh.euler).toBe(2 * shells - 2 * holes);
}

export function expectVolume(mesh: Mesh, wantedMmCu: number, withinMmCu: number): void {
  expect(Math.abs(volumeMmCu(mesh) - wantedMmCu)).toBeLessThan(withinMmCu);
}

/** The same numbers in a random order that is the same every time. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
