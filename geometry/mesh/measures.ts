// What a closed mesh measures. Lengths in mm.
import type { Mesh } from "./mesh.ts";

/** mm³, positive where triangles wind anticlockwise from outside (divergence theorem, one tetrahedron a triangle). */
export function volumeMmCu(mesh: Mesh): number {
  const p = mesh.positions, t = mesh.indices;
  // From the first corner, not from the origin, so that a thing far from its axis loses no figures.
  const ox = p[0] ?? 0, oy = p[1] ?? 0, oz = p[2] ?? 0;
  let six = 0;
  for (let i = 0; i < t.length; i += 3) {
    const a = 3 * t[i], b = 3 * t[i + 1], c = 3 * t[i + 2];
    const ax = p[a] - ox, ay = p[a + 1] - oy, az = p[a + 2] - oz;
    const bx = p[b] - ox, by = p[b + 1] - oy, bz = p[b + 2] - oz;
    const cx = p[c] - ox, cy = p[c + 1] - oy, cz = p[c + 2] - oz;
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

/** mm² of skin. */
export function areaMmSq(mesh: Mesh): number {
  let twice = 0;
  for (let i = 0; i < mesh.indices.length; i += 3) twice += twiceArea(mesh, i);
  return twice / 2;
}

/** Twice the area of the triangle whose first index stands at i, mm². */
export function twiceArea(mesh: Mesh, i: number): number {
  const p = mesh.positions, a = 3 * mesh.indices[i], b = 3 * mesh.indices[i + 1], c = 3 * mesh.indices[i + 2];
  const ux = p[b] - p[a], uy = p[b + 1] - p[a + 1], uz = p[b + 2] - p[a + 2];
  const vx = p[c] - p[a], vy = p[c + 1] - p[a + 1], vz = p[c + 2] - p[a + 2];
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
}
