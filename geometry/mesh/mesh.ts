// A closed triangle mesh, ready to be drawn and to be measured. Every directed edge between corners has exactly one
// twin the other way round; triangles wind anticlockwise seen from outside, so the enclosed volume is positive.
// A corner of the solid has one vertex for each smooth surface that meets there, so that creases stay sharp when
// drawn; `weld` says which vertices are one corner. Topology is in the indices, never found by comparing places.

export interface Mesh {
  /** x, y, z in mm, stride 3, one triple a vertex; in the frame of the thing's own axis, heights those of the frame. */
  readonly positions: Float32Array;
  /** Unit normals outward, stride 3, one triple a vertex. */
  readonly normals: Float32Array;
  /** Three vertices a triangle, anticlockwise from outside. */
  readonly indices: Uint32Array;
  /** Corner of each vertex, 0 … corners − 1. */
  readonly weld: Uint32Array;
  readonly corners: number;
  /** Corners − edges + triangles as meant: 2 for each shell, less 2 for each hole through it. */
  readonly euler: number;
}

/** Degrees. Where a wall or a turned profile bends by more it is a crease: over the 30° of a circle of 12 chords. */
export const CREASE_DEG = 35;
export const CREASE_COS = Math.cos((CREASE_DEG * Math.PI) / 180);

/** Several closed shells as one mesh. */
export function joined(meshes: readonly Mesh[]): Mesh {
  const sum = (size: (m: Mesh) => number) => meshes.reduce((total, m) => total + size(m), 0);
  const positions = new Float32Array(sum((m) => m.positions.length));
  const normals = new Float32Array(positions.length);
  const weld = new Uint32Array(positions.length / 3);
  const indices = new Uint32Array(sum((m) => m.indices.length));
  let vertex = 0, index = 0, corner = 0;
  for (const m of meshes) {
    positions.set(m.positions, 3 * vertex);
    normals.set(m.normals, 3 * vertex);
    for (let i = 0; i < m.weld.length; i++) weld[vertex + i] = m.weld[i] + corner;
    for (let i = 0; i < m.indices.length; i++) indices[index + i] = m.indices[i] + vertex;
    vertex += m.weld.length;
    index += m.indices.length;
    corner += m.corners;
  }
  return { positions, normals, indices, weld, corners: corner, euler: sum((m) => m.euler) };
}

/** A mesh turned about z. */
export function turnedBy(mesh: Mesh, rad: number): Mesh {
  const cos = Math.cos(rad), sin = Math.sin(rad);
  const turn = (v: Float32Array) => v.map((_, i) => (i % 3 === 0 ? cos * v[i] - sin * v[i + 1] : i % 3 === 1 ? sin * v[i - 1] + cos * v[i] : v[i]));
  return { ...mesh, positions: turn(mesh.positions), normals: turn(mesh.normals) };
}
