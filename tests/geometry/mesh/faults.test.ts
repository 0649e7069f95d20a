import { describe, expect, it } from "vitest";
import { faultsOfMesh } from "../../../geometry/mesh/faults.ts";
import { turnedIn } from "../../../geometry/mesh/lathe.ts";
import type { Mesh } from "../../../geometry/mesh/mesh.ts";

const whole = (): Mesh => turnedIn({ points: [[0, 0], [2, 0], [2, 3], [0, 3]], closed: false }, 12);
/** A copy with one thing done to it. */
const spoiled = (spoil: (m: { -readonly [K in keyof Mesh]: Mesh[K] }) => void): readonly string[] => {
  const m = whole();
  const copy = { ...m, positions: m.positions.slice(), normals: m.normals.slice(), indices: m.indices.slice(), weld: m.weld.slice() };
  spoil(copy);
  return faultsOfMesh(copy);
};

describe("the check of a mesh", () => {
  it("[MESH1] finds nothing in a sound one", () => expect(faultsOfMesh(whole())).toEqual([]));
  it("[MESH1] finds a triangle left out: edges without a twin, and another Euler number", () => {
    const faults = spoiled((m) => { m.indices = m.indices.slice(3); });
    expect(faults.join("; ")).toContain("3 directed edges have no twin");
    expect(faults.join("; ")).toContain("Euler");
  });
  it("[MESH1] finds a triangle turned over", () => {
    const faults = spoiled((m) => { m.indices.subarray(0, 3).reverse(); });
    expect(faults.join("; ")).toContain("more than once");
  });
  it("[MESH1] finds the whole inside out by its volume", () => {
    const faults = spoiled((m) => { for (let i = 0; i < m.indices.length; i += 3) m.indices.subarray(i, i + 3).reverse(); });
    expect(faults).toHaveLength(1);
    expect(faults[0]).toContain("positive volume");
  });
  it("[MESH1] finds a vertex torn from its corner", () => {
    const faults = spoiled((m) => { m.positions[3 * 20] = (m.positions[3 * 20] ?? 0) + 0.001; });
    expect(faults.join("; ")).toContain("stand away from their corner");
  });
  it("[MESH1] finds a triangle without area, an index beyond the vertices and a number that is none", () => {
    expect(spoiled((m) => { m.indices[1] = m.indices[0] ?? 0; }).join("; ")).toContain("no area");
    expect(spoiled((m) => { m.indices[0] = 1e6; }).join("; ")).toContain("beyond");
    expect(spoiled((m) => { m.positions[0] = NaN; }).join("; ")).toContain("finite");
    expect(spoiled((m) => { m.euler = 0; }).join("; ")).toContain("Euler number of 0 was meant");
  });
});
