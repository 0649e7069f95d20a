// Our meshes as solids of two other libraries, which serve as oracles in tests only.
import Module, { type Manifold, type ManifoldToplevel } from "manifold-3d";
import { BufferAttribute, BufferGeometry, Matrix4 } from "three";
import { MeshBVH } from "three-mesh-bvh";
import type { Mesh } from "../../../geometry/mesh/mesh.ts";

let loaded: Promise<ManifoldToplevel> | null = null;
/** manifold-3d, loaded once. */
export function manifold(): Promise<ManifoldToplevel> {
  loaded ??= Module().then((m) => { m.setup(); return m; });
  return loaded;
}

/** Corners and triangles alone, as topology says. */
function welded(mesh: Mesh): { positions: Float32Array; triangles: Uint32Array } {
  const positions = new Float32Array(3 * mesh.corners);
  mesh.weld.forEach((corner, v) => positions.set(mesh.positions.subarray(3 * v, 3 * v + 3), 3 * corner));
  return { positions, triangles: mesh.indices.map((v) => mesh.weld[v] ?? 0) };
}

/** The solid of manifold-3d; it throws where the mesh is not one. */
export function solidOf(m: ManifoldToplevel, mesh: Mesh): Manifold {
  const { positions, triangles } = welded(mesh);
  return new m.Manifold(new m.Mesh({ numProp: 3, vertProperties: positions, triVerts: triangles }));
}

/** Smallest distance of two meshes' skins by three-mesh-bvh, mm. */
export function skinDistance(a: Mesh, b: Mesh): number {
  const [one, other] = [a, b].map((mesh) => {
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", new BufferAttribute(mesh.positions.slice(), 3));
    geometry.setIndex(new BufferAttribute(mesh.indices.slice(), 1));
    return geometry;
  }) as [BufferGeometry, BufferGeometry];
  const tree = new MeshBVH(one);
  Object.assign(other, { boundsTree: new MeshBVH(other) });
  const found = tree.closestPointToGeometry(other, new Matrix4());
  return found?.distance ?? Infinity;
}
