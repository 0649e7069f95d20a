// Plates, pillars and the case. Lengths in mm, in the frame; a pillar's mesh stands about its own axis.
import type { Case, Pillar, Plate } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { circleOutline, reversed, signedAreaMmSq, type Outline } from "../planar/outline.ts";
import { clearHoles, type RoundHole } from "./holes.ts";
import { turned, type Profile } from "./lathe.ts";
import type { Mesh } from "./mesh.ts";
import { prism } from "./prism.ts";

/** A plate with its openings and the pivot holes of every arbor that runs in it (pivot and sideshake). */
export function plateMesh(movement: Movement, plate: Plate, chordMm: number): Mesh {
  const outside = plateOutline(plate, chordMm);
  const holes = [...openingsOf(plate), ...pivotHolesOf(movement, plate)];
  return prism({ outside, holes: clearHoles(outside, holes, chordMm) }, plate.z, plate.z + plate.thickness);
}

/** The edge of a plate, anticlockwise. */
export function plateOutline(plate: Plate, chordMm: number): Outline {
  const o = plate.outline;
  if ("circle" in o) return circleOutline(o.circle.diameter / 2, chordMm, o.circle.x, o.circle.y);
  if ("rectangle" in o) {
    const { width, height, x = 0, y = 0 } = o.rectangle, w = width / 2, h = height / 2;
    return Float64Array.of(x - w, y - h, x + w, y - h, x + w, y + h, x - w, y + h);
  }
  const outline = Float64Array.from(o.polygon.flat());
  return signedAreaMmSq(outline) < 0 ? reversed(outline) : outline;
}

/** Where arbors pivot in a plate, and how wide their holes are drawn. */
export function pivotHolesOf(movement: Movement, plate: Plate): readonly RoundHole[] {
  return movement.arbors.flatMap((a) =>
    [a.arbor.pivots?.foot, a.arbor.pivots?.head].flatMap((pivot) =>
      pivot?.plate === plate.id ? [{ x: a.x, y: a.y, radius: (pivot.diameter + a.ownSideshake) / 2 }] : []));
}

const openingsOf = (plate: Plate): readonly RoundHole[] =>
  (plate.openings ?? []).map((o) => ({ x: o.x, y: o.y, radius: o.diameter / 2 }));

/** A turned pillar: seats at both ends, a hollowed neck, a belly between beads; nowhere wider than its diameter. */
export const pillarMesh = (pillar: Pillar, chordMm: number): Mesh => turned(pillarProfile(pillar), chordMm);

/** r, z from foot to head, symmetrical about the middle. */
export function pillarProfile(pillar: Pillar): Profile {
  const radius = pillar.diameter / 2, low = Math.min(pillar.from, pillar.to), length = Math.abs(pillar.to - pillar.from);
  const half = PILLAR.map(([r, z]): [number, number] => [r * radius, z * length]);
  const lower = half.map(([r, z]): [number, number] => [r, low + z]);
  const upper = half.slice(0, -1).map(([r, z]): [number, number] => [r, low + length - z]).reverse();
  return { points: [[0, low], ...lower, ...upper, [0, low + length]], closed: false };
}

/** Half a pillar, in radii and lengths: seat, fillet, ogee to the neck, bead, swelling to the middle. */
const PILLAR: readonly (readonly [number, number])[] = [
  [1, 0], [1, 0.07], [0.94, 0.085], [0.78, 0.09], [0.74, 0.105], ...curve(0.74, 0.105, 0.58, 0.19, 8),
  [0.7, 0.2], [0.78, 0.208], [0.82, 0.22], [0.78, 0.232], [0.7, 0.24], [0.62, 0.245], ...curve(0.62, 0.245, 0.86, 0.44, 10),
  [0.92, 0.45], [0.98, 0.465], [1, 0.485], [1, 0.5],
];

/** Points after the first of a level-ended curve. */
function curve(r0: number, z0: number, r1: number, z1: number, chords: number): [number, number][] {
  return Array.from({ length: chords }, (_, i) => {
    const t = (i + 1) / chords;
    return [r0 + t * t * (3 - 2 * t) * (r1 - r0), z0 + t * (z1 - z0)];
  });
}

/** A drum open towards the dial, its bottom as thick as its wall. */
export function caseMesh(box: Case, chordMm: number): Mesh {
  const inside = box.insideDiameter / 2, outside = inside + box.wall;
  const points: [number, number][] = [
    [0, box.floor - box.wall], [outside, box.floor - box.wall], [outside, box.rim], [inside, box.rim], [inside, box.floor], [0, box.floor],
  ];
  return turned({ points, closed: false }, chordMm);
}
