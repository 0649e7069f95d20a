// A flat figure carried along z: caps and walls. Walls are smooth along curves and sharp at corners. Lengths in mm.
import type { Region } from "../planar/outline.ts";
import { flatOf, type Flat } from "./flat.ts";
import { CREASE_COS, type Mesh } from "./mesh.ts";

/** The region between z0 and z1 (z0 below). */
export const prism = (region: Region, z0Mm: number, z1Mm: number): Mesh => prismOf(flatOf(region), z0Mm, z1Mm);

/** Likewise from a figure already cut; `top`, where given, is where its points stand at z1 (a tapered prism). */
export function prismOf(flat: Flat, z0Mm: number, z1Mm: number, top: Float64Array = flat.points): Mesh {
  const points = flat.points.length / 2, edge = flat.loops.reduce((total, n) => total + n, 0);
  const sharp = sharpPoints(flat);
  const wallVertices = edge + sharp.total;
  const vertices = 2 * points + 2 * wallVertices;
  const positions = new Float32Array(3 * vertices), normals = new Float32Array(3 * vertices), weld = new Uint32Array(vertices);
  const cap = flat.triangles, indices = new Uint32Array(2 * cap.length + 6 * edge);
  for (let i = 0; i < points; i++) {
    const low = 3 * i, high = 3 * (points + i);
    positions[low] = flat.points[2 * i]; positions[low + 1] = flat.points[2 * i + 1]; positions[low + 2] = z0Mm;
    positions[high] = top[2 * i]; positions[high + 1] = top[2 * i + 1]; positions[high + 2] = z1Mm;
    normals[low + 2] = -1;
    normals[high + 2] = 1;
    weld[i] = i;
    weld[points + i] = points + i;
  }
  for (let i = 0; i < cap.length; i += 3) {
    indices[i] = cap[i]; indices[i + 1] = cap[i + 2]; indices[i + 2] = cap[i + 1];
    const j = cap.length + i;
    indices[j] = points + cap[i]; indices[j + 1] = points + cap[i + 1]; indices[j + 2] = points + cap[i + 2];
  }
  const walls: Walls = { flat, top, sharp: sharp.flags, heightMm: z1Mm - z0Mm, points, positions, normals, weld, indices };
  let vertex = 2 * points, index = 2 * cap.length, first = 0;
  for (const n of flat.loops) {
    vertex = wallOf(walls, first, n, vertex, index);
    index += 6 * n;
    first += n;
  }
  return { positions, normals, indices, weld, corners: 2 * points, euler: 4 - 2 * flat.loops.length };
}

interface Walls {
  flat: Flat; top: Float64Array; sharp: Uint8Array; heightMm: number; points: number;
  positions: Float32Array; normals: Float32Array; weld: Uint32Array; indices: Uint32Array;
}

/** The wall of one loop; gives the next free vertex. Below and above are laid in pairs: 2k at z0, 2k + 1 at z1. */
function wallOf(w: Walls, first: number, n: number, vertexAt: number, indexAt: number): number {
  const normal = new Float64Array(3), before = new Float64Array(3);
  edgeNormal(w, first + n - 1, first, before);
  let vertex = vertexAt, index = indexAt;
  let firstArriving = 0, leavingBefore = 0;
  for (let i = 0; i < n; i++) {
    const p = first + i;
    edgeNormal(w, p, i + 1 === n ? first : p + 1, normal);
    let arriving = vertex;
    if (w.sharp[p] === 1) {
      putPair(w, vertex, p, before[0], before[1], before[2]);
      arriving = vertex;
      vertex += 2;
      putPair(w, vertex, p, normal[0], normal[1], normal[2]);
    } else putPair(w, vertex, p, before[0] + normal[0], before[1] + normal[1], before[2] + normal[2]);
    if (i === 0) firstArriving = arriving;
    else { putQuad(w.indices, index, leavingBefore, arriving); index += 6; }
    leavingBefore = vertex;
    vertex += 2;
    before.set(normal);
  }
  putQuad(w.indices, index, leavingBefore, firstArriving);
  return vertex;
}

function putQuad(indices: Uint32Array, at: number, from: number, to: number): void {
  indices[at] = from; indices[at + 1] = to; indices[at + 2] = to + 1;
  indices[at + 3] = from; indices[at + 4] = to + 1; indices[at + 5] = from + 1;
}

function putPair(w: Walls, vertex: number, p: number, nx: number, ny: number, nz: number): void {
  const { positions, normals, weld, points } = w;
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
  for (let up = 0; up < 2; up++) {
    const corner = p + up * points, v = 3 * (vertex + up);
    positions[v] = positions[3 * corner]; positions[v + 1] = positions[3 * corner + 1]; positions[v + 2] = positions[3 * corner + 2];
    normals[v] = nx / length; normals[v + 1] = ny / length; normals[v + 2] = nz / length;
    weld[vertex + up] = corner;
  }
}

/** Unit normal of the wall over the edge from a to b: to the right of it, leaning as the top leans. */
function edgeNormal(w: Walls, a: number, b: number, out: Float64Array): void {
  const p = w.flat.points;
  const dx = p[2 * b] - p[2 * a], dy = p[2 * b + 1] - p[2 * a + 1];
  const length = Math.sqrt(dx * dx + dy * dy) || 1;
  const nx = dy / length, ny = -dx / length;
  const nz = -((w.top[2 * a] - p[2 * a]) * nx + (w.top[2 * a + 1] - p[2 * a + 1]) * ny) / w.heightMm;
  const scale = 1 / Math.sqrt(1 + nz * nz);
  out[0] = nx * scale; out[1] = ny * scale; out[2] = nz * scale;
}

/** Which points of the edges are corners, where the wall breaks. */
function sharpPoints(flat: Flat): { readonly flags: Uint8Array; readonly total: number } {
  const p = flat.points, flags = new Uint8Array(flat.loops.reduce((total, n) => total + n, 0));
  let total = 0, first = 0;
  for (const n of flat.loops) {
    let b = first + n - 1;
    let ux = p[2 * b] - p[2 * (b - 1)], uy = p[2 * b + 1] - p[2 * (b - 1) + 1];
    for (let i = 0; i < n; i++) {
      const c = first + i;
      const vx = p[2 * c] - p[2 * b], vy = p[2 * c + 1] - p[2 * b + 1];
      if (ux * vx + uy * vy < CREASE_COS * Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy))) { flags[b] = 1; total++; }
      ux = vx; uy = vy; b = c;
    }
    first += n;
  }
  return { flags, total };
}
