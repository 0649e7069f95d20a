// Plates, pillars and the case. Lengths in mm, in the frame; a pillar's mesh stands about its own axis.
import type { Case, Pillar, Plate } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { circleOutline, circleSteps, reversed, signedAreaMmSq, type Outline } from "../planar/outline.ts";
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
export const pillarMesh = (pillar: Pillar, chordMm: number): Mesh => turned(pillarProfile(pillar, chordMm), chordMm);

/** r, z from foot to head, symmetrical about the middle: seat, cavetto to the neck, bead, swelling to the bead at the middle. */
export function pillarProfile(pillar: Pillar, chordMm: number): Profile {
  const radius = pillar.diameter / 2, low = Math.min(pillar.from, pillar.to), length = Math.abs(pillar.to - pillar.from);
  const half: [number, number][] = [[radius, low]];
  const to = (r: number, z: number): void => { half.push([r * radius, low + z * length]); };
  const along = (curve: Curve, r: number, z: number): void => { half.push(...drawn(curve, half[half.length - 1], [r * radius, low + z * length], chordMm)); };
  to(1, 0.065); along(quarter, 0.92, 0.085); to(0.78, 0.085); to(0.78, 0.095); along(ogee, 0.58, 0.19); to(0.66, 0.19);
  to(0.66, 0.2); along(hollow, 0.82, 0.22); along(quarter, 0.66, 0.24); to(0.66, 0.25); to(0.6, 0.25); along(ogee, 0.86, 0.435);
  to(0.92, 0.435); to(0.92, 0.445); along(hollow, 1, 0.5);
  // The middle is the top of a bead, where the two halves meet.
  const upper = half.slice(0, -1).map(([r, z]): [number, number] => [r, 2 * low + length - z]).reverse();
  return { points: [[0, low], ...half, ...upper, [0, low + length]], closed: false };
}

/** Shares of the way in r and in z, for t from 0 to 1. */
type Curve = (t: number) => readonly [number, number];
/** Leaves and arrives along the axis. */
const ogee: Curve = (t) => [t * t * (3 - 2 * t), t];
/** A quarter of an ellipse that leaves along the axis, and one that arrives along it. */
const quarter: Curve = (t) => [1 - Math.cos((t * Math.PI) / 2), Math.sin((t * Math.PI) / 2)];
const hollow: Curve = (t) => [Math.sin((t * Math.PI) / 2), 1 - Math.cos((t * Math.PI) / 2)];

/**
 * Points after the first, so many that no chord is out by more than chordMm: a quarter ellipse as a circle of its larger
 * axis; an ogee, whose greatest sagitta is ¾ |dr| / n², as 2½ parts of a circle of that radius.
 */
function drawn(curve: Curve, from: readonly [number, number], to: readonly [number, number], chordMm: number): [number, number][] {
  const dr = to[0] - from[0], dz = to[1] - from[1];
  const chords = Math.ceil(curve === ogee ? circleSteps(Math.abs(dr), chordMm) / 2.5 : circleSteps(Math.max(Math.abs(dr), Math.abs(dz)), chordMm) / 4);
  return Array.from({ length: chords }, (_, i) => {
    const [r, z] = curve((i + 1) / chords);
    return [from[0] + r * dr, from[1] + z * dz];
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
