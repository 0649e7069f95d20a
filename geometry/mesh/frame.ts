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

const CURVE_CHORDS = 10, BEAD_CHORDS = 10;

/** A turned pillar: seats at both ends, a hollowed neck, a belly between beads; nowhere wider than its diameter. */
export const pillarMesh = (pillar: Pillar, chordMm: number): Mesh => turned(pillarProfile(pillar), chordMm);

/** r, z from foot to head, symmetrical about the middle. */
export function pillarProfile(pillar: Pillar): Profile {
  const radius = pillar.diameter / 2, low = Math.min(pillar.from, pillar.to), length = Math.abs(pillar.to - pillar.from);
  // The middle is the top of a bead: where its two halves meet, r = 1.
  const half = PILLAR.map(([r, z]): [number, number] => [r * radius, z * length]);
  const lower = half.map(([r, z]): [number, number] => [r, low + z]);
  const upper = half.slice(0, -1).map(([r, z]): [number, number] => [r, low + length - z]).reverse();
  return { points: [[0, low], ...lower, ...upper, [0, low + length]], closed: false };
}

/** Half a pillar, in radii and lengths: seat, cavetto to the neck, bead, swelling to the half bead at the middle. */
const PILLAR: readonly (readonly [number, number])[] = [
  [1, 0], [1, 0.065], ...round(1, 0.065, 0.92, 0.085), [0.78, 0.085], [0.78, 0.095], ...curve(0.78, 0.095, 0.58, 0.19), [0.66, 0.19],
  [0.66, 0.2], ...bead(0.66, 0.82, 0.2, 0.24), [0.66, 0.25], [0.6, 0.25], ...curve(0.6, 0.25, 0.86, 0.435), [0.92, 0.435], [0.92, 0.445],
  ...bead(0.92, 1, 0.445, 0.555).slice(0, BEAD_CHORDS / 2),
];

/** Points after the first of a curve that leaves and arrives along the axis. */
function curve(r0: number, z0: number, r1: number, z1: number): [number, number][] {
  return Array.from({ length: CURVE_CHORDS }, (_, i) => {
    const t = (i + 1) / CURVE_CHORDS;
    return [r0 + t * t * (3 - 2 * t) * (r1 - r0), z0 + t * (z1 - z0)];
  });
}

/** Points after the first of a quarter of an ellipse that leaves along the axis. */
function round(r0: number, z0: number, r1: number, z1: number): [number, number][] {
  return Array.from({ length: BEAD_CHORDS / 2 }, (_, i) => {
    const a = ((i + 1) / BEAD_CHORDS) * Math.PI;
    return [r1 + (r0 - r1) * Math.cos(a), z0 + (z1 - z0) * Math.sin(a)];
  });
}

/** Points after the first of a bead: half an ellipse from r0 out to r1 and back. */
function bead(r0: number, r1: number, z0: number, z1: number): [number, number][] {
  return Array.from({ length: BEAD_CHORDS }, (_, i) => {
    const a = ((i + 1) / BEAD_CHORDS) * Math.PI;
    return [r0 + (r1 - r0) * Math.sin(a), (z0 + z1) / 2 - ((z1 - z0) / 2) * Math.cos(a)];
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
