// The one check of what a mesh promises. Empty where it holds; otherwise a sentence for each promise that is broken.
import { twiceArea, volumeMmCu } from "./measures.ts";
import type { Mesh } from "./mesh.ts";

/** Every promise of the type: sizes, finite places, welds, twins, no degenerate triangle, positive volume, Euler number. */
export function faultsOfMesh(mesh: Mesh): readonly string[] {
  const sizes = faultsOfSizes(mesh);
  if (sizes.length > 0) return sizes;
  const faults = [...faultsOfWeld(mesh), ...faultsOfTriangles(mesh)];
  const { edges, alone, doubled } = countEdges(mesh);
  if (doubled > 0) faults.push(`${doubled} directed edges stand there more than once`);
  if (alone > 0) faults.push(`${alone} directed edges have no twin`);
  const volume = volumeMmCu(mesh);
  if (!(volume > 0)) faults.push(`a positive volume was expected, not ${volume} mm³`);
  const euler = mesh.corners - edges + mesh.indices.length / 3;
  if (euler !== mesh.euler) faults.push(`an Euler number of ${mesh.euler} was meant, and it is ${euler}`);
  return faults;
}

function faultsOfSizes(mesh: Mesh): string[] {
  const vertices = mesh.weld.length, faults: string[] = [];
  if (mesh.positions.length !== 3 * vertices) faults.push(`${3 * vertices} coordinates were expected, not ${mesh.positions.length}`);
  if (mesh.normals.length !== 3 * vertices) faults.push(`${3 * vertices} numbers of normals were expected, not ${mesh.normals.length}`);
  if (mesh.indices.length % 3 !== 0) faults.push(`${mesh.indices.length} indices are no whole triangles`);
  if (mesh.indices.some((i) => i >= vertices)) faults.push(`an index points beyond the ${vertices} vertices`);
  if (mesh.weld.some((c) => c >= mesh.corners)) faults.push(`a weld points beyond the ${mesh.corners} corners`);
  if (!mesh.positions.every(Number.isFinite) || !mesh.normals.every(Number.isFinite)) faults.push("a number is not finite");
  return faults;
}

function faultsOfWeld(mesh: Mesh): string[] {
  const vertexOf = new Int32Array(mesh.corners).fill(-1), faults: string[] = [];
  let torn = 0, unused = 0;
  for (const vertex of mesh.indices) {
    const corner = mesh.weld[vertex];
    if (vertexOf[corner] < 0) vertexOf[corner] = vertex;
    for (let k = 0; k < 3; k++)
      if (mesh.positions[3 * vertex + k] !== mesh.positions[3 * vertexOf[corner] + k]) { torn++; break; }
  }
  for (const v of vertexOf) if (v < 0) unused++;
  if (torn > 0) faults.push(`${torn} vertices stand away from their corner`);
  if (unused > 0) faults.push(`${unused} corners belong to no triangle`);
  return faults;
}

function faultsOfTriangles(mesh: Mesh): string[] {
  const faults: string[] = [];
  let degenerate = 0;
  for (let i = 0; i < mesh.indices.length; i += 3) if (twiceArea(mesh, i) === 0) degenerate++;
  if (degenerate > 0) faults.push(`${degenerate} triangles have no area`);
  return faults;
}

function countEdges(mesh: Mesh): { readonly edges: number; readonly alone: number; readonly doubled: number } {
  const seen = new Set<number>();
  let doubled = 0, alone = 0;
  const { indices, weld, corners } = mesh;
  for (let i = 0; i < indices.length; i++) {
    const a = weld[indices[i]], b = weld[indices[i % 3 === 2 ? i - 2 : i + 1]];
    const key = a * corners + b;
    if (seen.has(key)) doubled++;
    seen.add(key);
  }
  for (const key of seen) if (!seen.has((key % corners) * corners + Math.floor(key / corners))) alone++;
  return { edges: (seen.size + alone) / 2, alone, doubled };
}
