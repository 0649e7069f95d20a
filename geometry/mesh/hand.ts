// Pointers as hands, and arms, as flat outlines about their own axis, pointing along +x. A hand never reaches out of the
// bar that the examiner follows (tail to tip, `width` wide), but for the round of its boss. Lengths in mm.
import type { Outline } from "../planar/outline.ts";
import { circleOutline, circleSteps } from "../planar/outline.ts";

/** Chords of each curve of a blade: its slow curves are true to a thousandth of its width with so many. */
const BLADE_CHORDS = 16;

/** A leaf-shaped blade from a round boss, and a tail that ends in a small round. */
export function handOutline(lengthMm: number, tailMm: number, widthMm: number, chordMm: number): Outline {
  const boss = widthMm / 2, neck = 0.34 * boss;
  const shoulder = Math.sqrt(boss * boss - neck * neck);
  const blade = lengthMm > 1.5 * boss ? bladeEdge(shoulder, lengthMm, neck, 0.62 * boss, 0.05 * boss) : null;
  const tail = tailMm > 2.2 * boss ? tailEdge(shoulder, tailMm, neck, 0.55 * boss, chordMm) : null;
  if (blade === null && tail === null) return circleOutline(boss, chordMm);
  // The half above the axis, from the tip round to the tail.
  const necks = Math.atan2(neck, shoulder);
  const fromRad = blade === null ? 0 : necks, toRad = tail === null ? Math.PI : Math.PI - necks;
  const upper = [
    ...(blade === null ? [[boss, 0] as const] : [...blade].reverse()),
    ...arc(0, boss, fromRad, toRad, chordMm),
    ...(tail === null ? [[-boss, 0] as const] : tail),
  ];
  return mirrored(upper);
}

/** A bar from the axis out to its length, square-ended there, round about the axis. */
export function armOutline(lengthMm: number, widthMm: number, chordMm: number): Outline {
  const half = widthMm / 2;
  return mirrored([[lengthMm, half], [0, half], ...arc(0, half, Math.PI / 2, Math.PI, chordMm), [-half, 0]]);
}

type Point = readonly [number, number];

/** Above the axis, from the boss out to the tip: waist, leaf, point. The ends of each piece are level. */
function bladeEdge(from: number, to: number, neck: number, leaf: number, tip: number): Point[] {
  const widest = from + 0.55 * (to - from);
  return [...level(from, neck, widest, leaf), ...level(widest, leaf, to, tip).slice(1)];
}

/** From the boss back to the end of the tail, which is a round of radius `end`. */
function tailEdge(from: number, to: number, neck: number, end: number, chordMm: number): Point[] {
  const centre = -(to - end), joint = Math.PI / 7;
  const bar = level(-from, neck, centre + end * Math.cos(joint), end * Math.sin(joint));
  return [...bar, ...arc(centre, end, joint, Math.PI, chordMm), [-to, 0]];
}

/** A curve from one point to another that leaves and arrives along the axis. */
function level(x0: number, y0: number, x1: number, y1: number): Point[] {
  return Array.from({ length: BLADE_CHORDS + 1 }, (_, i): Point => {
    const t = i / BLADE_CHORDS;
    return [x0 + t * (x1 - x0), y0 + t * t * (3 - 2 * t) * (y1 - y0)];
  });
}

/** Points of an arc about (centre, 0) strictly between two directions. */
function arc(centre: number, radius: number, fromRad: number, toRad: number, chordMm: number): Point[] {
  const steps = Math.max(2, Math.ceil((circleSteps(radius, chordMm) * (toRad - fromRad)) / (2 * Math.PI)));
  return Array.from({ length: steps - 1 }, (_, i): Point => {
    const a = fromRad + ((i + 1) / steps) * (toRad - fromRad);
    return [centre + radius * Math.cos(a), radius * Math.sin(a)];
  });
}

/** The whole from its upper half (anticlockwise), points on the axis taken once. */
function mirrored(upper: readonly Point[]): Outline {
  const lower = upper.filter(([, y]) => y > 0).map(([x, y]): Point => [x, -y]).reverse();
  return Float64Array.from([...upper, ...lower].flat());
}
