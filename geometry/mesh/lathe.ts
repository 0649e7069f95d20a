// A turned solid: a profile of straight lines carried round the z axis. Smooth round about; sharp along the profile
// where it bends by more than a crease. Lengths in mm.
import { circleSteps } from "../planar/outline.ts";
import { CREASE_COS, type Mesh } from "./mesh.ts";

/**
 * r, z of the profile, with the metal on its left when it is followed. `closed`: a ring away from the axis, its last
 * point joined to its first; otherwise it begins and ends on the axis (r = 0) and nowhere else touches it.
 */
export interface Profile {
  readonly points: readonly (readonly [number, number])[];
  readonly closed: boolean;
}

/** Chords of each circle within chordMm, so many that the widest circle is true. */
export function turned(profile: Profile, chordMm: number): Mesh {
  return turnedIn(profile, circleSteps(Math.max(...profile.points.map((p) => p[0])), chordMm));
}

/** A cylinder, or a ring where it has a bore; none where the bore would leave it no metal. */
export function roundOf(radiusMm: number, boreMm: number, z0Mm: number, z1Mm: number, chordMm: number): Mesh {
  const outside: [number, number][] = [[radiusMm, z0Mm], [radiusMm, z1Mm]];
  return boreMm > 0 && boreMm < radiusMm - 2 * chordMm
    ? turned({ points: [...outside, [boreMm, z1Mm], [boreMm, z0Mm]], closed: true }, chordMm)
    : turned({ points: [[0, z0Mm], ...outside, [0, z1Mm]], closed: false }, chordMm);
}

/** A profile turned with a stated number of chords round about. */
export function turnedIn(profile: Profile, steps: number): Mesh {
  const { points, closed } = profile;
  const segments = points.length - (closed ? 0 : 1);
  const corners = cornersOf(profile, steps);
  const bands = Array.from({ length: segments }, (_, i) => bandOf(profile, i));
  const rows = rowsOf(profile, bands, corners, steps);
  const positions = new Float32Array(3 * rows.vertices), normals = new Float32Array(3 * rows.vertices);
  const weld = new Uint32Array(rows.vertices);
  for (const row of rows.list) putRow(row, steps, positions, normals, weld);
  const indices = new Uint32Array(3 * bands.reduce((t, b) => t + (b.fromAxis || b.toAxis ? steps : 2 * steps), 0));
  let at = 0;
  for (let i = 0; i < segments; i++) at = putBand(indices, at, bands[i], rows.from[i], rows.to[i], steps);
  return { positions, normals, indices, weld, corners: corners.total, euler: closed ? 0 : 2 };
}

interface Band { readonly nr: number; readonly nz: number; readonly fromAxis: boolean; readonly toAxis: boolean }
interface Row { readonly at: number; readonly r: number; readonly z: number; readonly nr: number; readonly nz: number; readonly corner: number }

/** First corner of each profile point; a point on the axis is one corner, any other a ring of them. */
function cornersOf(profile: Profile, steps: number): { readonly first: readonly number[]; readonly total: number } {
  const first: number[] = [];
  let total = 0;
  for (const [r] of profile.points) { first.push(total); total += r === 0 ? 1 : steps; }
  return { first, total };
}

function bandOf(profile: Profile, i: number): Band {
  const [r0, z0] = profile.points[i], [r1, z1] = profile.points[(i + 1) % profile.points.length];
  const length = Math.hypot(r1 - r0, z1 - z0) || 1;
  // The metal is on the left, so outward is on the right.
  return { nr: (z1 - z0) / length, nz: -(r1 - r0) / length, fromAxis: r0 === 0, toAxis: r1 === 0 };
}

/** A row of vertices at each end of each band, shared by two bands where the profile bends gently. */
function rowsOf(profile: Profile, bands: readonly Band[], corners: { readonly first: readonly number[] }, steps: number) {
  const list: Row[] = [], from: number[] = new Array(bands.length), to: number[] = new Array(bands.length);
  const n = profile.points.length;
  let vertices = 0;
  const row = (i: number, nr: number, nz: number): number => {
    const [r, z] = profile.points[i], length = Math.hypot(nr, nz) || 1;
    list.push({ at: vertices, r, z, nr: nr / length, nz: nz / length, corner: corners.first[i] });
    vertices += steps;
    return vertices - steps;
  };
  for (let i = 0; i < n; i++) {
    const before = profile.closed ? (i + n - 1) % n : i - 1;
    const a = bands[before], b = bands[i];
    const smooth = a !== undefined && b !== undefined && a.nr * b.nr + a.nz * b.nz >= CREASE_COS;
    if (smooth) to[before] = from[i] = row(i, a.nr + b.nr, a.nz + b.nz);
    else {
      if (a !== undefined) to[before] = row(i, a.nr, a.nz);
      if (b !== undefined) from[i] = row(i, b.nr, b.nz);
    }
  }
  return { list, from, to, vertices };
}

function putRow(row: Row, steps: number, positions: Float32Array, normals: Float32Array, weld: Uint32Array): void {
  for (let k = 0; k < steps; k++) {
    const a = (2 * Math.PI * k) / steps, c = Math.cos(a), s = Math.sin(a), v = 3 * (row.at + k);
    positions[v] = row.r * c; positions[v + 1] = row.r * s; positions[v + 2] = row.z;
    normals[v] = row.nr * c; normals[v + 1] = row.nr * s; normals[v + 2] = row.nz;
    weld[row.at + k] = row.r === 0 ? row.corner : row.corner + k;
  }
}

function putBand(indices: Uint32Array, start: number, band: Band, from: number, to: number, steps: number): number {
  let at = start;
  for (let k = 0; k < steps; k++) {
    const next = k + 1 === steps ? 0 : k + 1;
    if (!band.fromAxis) { indices[at++] = from + k; indices[at++] = from + next; indices[at++] = to + next; }
    if (!band.toAxis) { indices[at++] = from + k; indices[at++] = to + next; indices[at++] = to + k; }
  }
  return at;
}
