// A filed square: four flats that lean in towards the nearer end of its arbor, and a slot through two of them for a
// cotter where one is asked for. On a pipe it keeps the pipe's bore. Lengths in mm.
import type { Arbor, Square } from "../instrument.ts";
import { toRad } from "../numeric/angle.ts";
import { flatOf } from "./flat.ts";
import { boreOutline } from "./holes.ts";
import { turnedBy, type Mesh } from "./mesh.ts";
import { prismOf } from "./prism.ts";

export function squareMesh(part: Square, arbor: Arbor, boreMm: number, chordMm: number): Mesh {
  const { low, high } = squareHalves(part, arbor);
  const slot = part.slot;
  const turned = (mesh: Mesh): Mesh => (part.angle === undefined ? mesh : turnedBy(mesh, toRad(part.angle)));
  if (slot !== undefined && boreMm === 0 && slot.width < 1.9 * Math.min(low, high) && slot.height < 0.95 * part.thickness)
    return turned(slotted(part.z, part.thickness, low, high, slot.width / 2, slot.height / 2));
  const [outside, narrow] = [low, Math.min(low, high)].map((h) => Float64Array.of(-h, -h, h, -h, h, h, -h, h));
  const flat = flatOf({ outside, holes: boreOutline(narrow, boreMm, chordMm) });
  const top = flat.points.map((v, i) => (i < 8 ? (v * high) / low : v));
  return turned(prismOf(flat, part.z, part.z + part.thickness, top));
}

/** mm: half the width across flats at the lower and at the upper face; `across` is the wider. */
export function squareHalves(part: Square, arbor: Arbor): { readonly low: number; readonly high: number } {
  const wide = part.across / 2;
  // However steep the taper, the narrow end keeps a tenth of the width.
  const narrow = Math.max(0.1 * wide, wide - part.thickness * Math.tan(toRad(Math.min(80, Math.max(0, part.taper)))));
  const towardsHead = part.z + part.thickness / 2 >= (arbor.foot + arbor.head) / 2;
  return towardsHead ? { low: wide, high: narrow } : { low: narrow, high: wide };
}

/** Four flats with a square-cornered slot of half width w (along y) and half height h through the two that face ±x. */
function slotted(z0: number, thickness: number, low: number, high: number, w: number, h: number): Mesh {
  const middle = z0 + thickness / 2;
  const halfAt = (z: number) => low + ((high - low) * (z - z0)) / thickness;
  const corners: number[][] = [];
  for (const [z, half] of [[z0, low], [z0 + thickness, high]] as const)
    corners.push([-half, -half, z], [half, -half, z], [half, half, z], [-half, half, z]);
  for (const side of [1, -1])
    for (const z of [middle - h, middle + h]) corners.push([side * halfAt(z), -w, z], [side * halfAt(z), w, z]);
  return flatSided(corners, SLOTTED_FACES, 0);
}

/**
 * Corners 0–3 below and 4–7 above, anticlockwise from (−, −); 8–11 the slot's mouth on +x (low −y, low +y, high −y,
 * high +y), 12–15 the same on −x. Each face in triangles, anticlockwise from outside.
 */
const SLOTTED_FACES: readonly (readonly number[])[] = [
  [0, 2, 1, 0, 3, 2], [4, 5, 6, 4, 6, 7],
  [0, 1, 5, 0, 5, 4], [2, 3, 7, 2, 7, 6],
  [1, 2, 9, 1, 9, 8, 2, 6, 11, 2, 11, 9, 6, 5, 10, 6, 10, 11, 5, 1, 8, 5, 8, 10],
  [3, 0, 12, 3, 12, 13, 0, 4, 14, 0, 14, 12, 4, 7, 15, 4, 15, 14, 7, 3, 13, 7, 13, 15],
  [8, 9, 13, 8, 13, 12], [10, 14, 15, 10, 15, 11], [8, 12, 14, 8, 14, 10], [9, 11, 15, 9, 15, 13],
];

/** A solid of flat faces: every face has its own vertices, with the normal of its first triangle. */
function flatSided(corners: readonly (readonly number[])[], faces: readonly (readonly number[])[], euler: number): Mesh {
  const positions: number[] = [], normals: number[] = [], indices: number[] = [], weld: number[] = [];
  for (const face of faces) {
    const vertexOf = new Map<number, number>();
    const normal = normalOf(face.slice(0, 3).map((c) => corners[c]));
    for (const c of face) {
      if (!vertexOf.has(c)) {
        vertexOf.set(c, weld.length);
        weld.push(c);
        positions.push(...corners[c]);
        normals.push(...normal);
      }
      indices.push(vertexOf.get(c) ?? 0);
    }
  }
  return {
    positions: Float32Array.from(positions), normals: Float32Array.from(normals), indices: Uint32Array.from(indices),
    weld: Uint32Array.from(weld), corners: corners.length, euler,
  };
}

function normalOf([a, b, c]: readonly (readonly number[])[]): number[] {
  const u = b.map((v, i) => v - a[i]), v = c.map((w, i) => w - a[i]);
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const length = Math.hypot(...n) || 1;
  return n.map((w) => w / length);
}
