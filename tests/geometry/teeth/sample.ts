// Teeth to test with, and plain measures of outlines that know nothing of how they were made.
import { theoreticalAddendum } from "../../../geometry/teeth/addendum.ts";
import type { Profile } from "../../../geometry/teeth/profile.ts";
import type { Teeth } from "../../../geometry/teeth/teeth.ts";

const PLAIN: Teeth = {
  form: "involute", role: "wheel", count: 20, module: 1, pressureAngleDeg: 20, shift: 0, thinning: 0, topping: 0, internal: false,
  trundleDiameter: 0, addendumFactor: null, mateCount: null, lanternMate: null, measuredTipRadius: null,
};

/** A standard involute wheel of 20 teeth, module 1, no thinning, but for what is said. */
export const teeth = (said: Partial<Teeth> = {}): Teeth => ({ ...PLAIN, ...said });

export const clockWheel = (count: number, leaves: number, said: Partial<Teeth> = {}): Teeth =>
  teeth({ form: "cycloidal", count, mateCount: leaves, addendumFactor: theoreticalAddendum(count, leaves), ...said });

export const clockPinion = (leaves: number, wheel: number, said: Partial<Teeth> = {}): Teeth =>
  teeth({ form: "cycloidal", role: "pinion", count: leaves, mateCount: wheel, addendumFactor: theoreticalAddendum(wheel, leaves), ...said });

export const lanternWheel = (count: number, trundles: number, trundleDiameter: number, said: Partial<Teeth> = {}): Teeth =>
  teeth({ form: "cycloidal", count, lanternMate: { count: trundles, trundleDiameter }, ...said });

export type Point = readonly [number, number];

export const pointsOf = (outline: Float64Array): Point[] =>
  Array.from({ length: outline.length / 2 }, (_, i) => [outline[2 * i]!, outline[2 * i + 1]!] as const);

/** The first two edges that cross or touch though they are no neighbours, or null: every pair is tried. */
export function crossingEdges(outline: Float64Array): string | null {
  const p = pointsOf(outline), n = p.length;
  const side = (a: Point, b: Point, c: Point) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  for (let i = 0; i < n; i++) {
    const a = p[i]!, b = p[(i + 1) % n]!;
    for (let j = i + 2; j < n - (i === 0 ? 1 : 0); j++) {
      const c = p[j]!, d = p[(j + 1) % n]!;
      if (Math.max(a[0], b[0]) < Math.min(c[0], d[0]) || Math.max(c[0], d[0]) < Math.min(a[0], b[0])) continue;
      if (Math.max(a[1], b[1]) < Math.min(c[1], d[1]) || Math.max(c[1], d[1]) < Math.min(a[1], b[1])) continue;
      if (side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0) return `${i} and ${j} of ${n} at ${a[0]}, ${a[1]}`;
    }
  }
  return null;
}

/** mm from a point to the nearest edge. */
export function distanceToOutline(x: number, y: number, outline: Float64Array): number {
  const p = pointsOf(outline);
  return p.reduce((least, a, i) => Math.min(least, distanceToSegment(x, y, a, p[(i + 1) % p.length]!)), Infinity);
}

export function distanceToSegment(x: number, y: number, [ax, ay]: Point, [bx, by]: Point): number {
  const dx = bx - ax, dy = by - ay;
  const share = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}

/** Whether a point lies inside, by the crossings of a ray. */
export function isInside(x: number, y: number, outline: Float64Array): boolean {
  const p = pointsOf(outline);
  let inside = false;
  p.forEach(([ax, ay], i) => {
    const [bx, by] = p[(i + 1) % p.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

/** Many points of half a tooth as it truly is, from the middle of the space to the middle of the tooth. */
export function truePoints(profile: Profile, eachPiece: number): Point[] {
  return profile.pieces.flatMap((piece) =>
    Array.from({ length: eachPiece + 1 }, (_, k) => {
      const { x, y } = piece.at(piece.from + (k / eachPiece) * (piece.to - piece.from));
      return [x, y] as const;
    }));
}

/** Half the thickness of the tooth on +x, as an angle (radians), where its outline crosses a radius. */
export function halfAngleAt(radius: number, outline: Float64Array): number {
  const p = pointsOf(outline);
  let nearest = Infinity;
  p.forEach((a, i) => {
    const b = p[(i + 1) % p.length]!;
    if ((Math.hypot(...a) - radius) * (Math.hypot(...b) - radius) > 0) return;
    const dx = b[0] - a[0], dy = b[1] - a[1];
    const square = dx * dx + dy * dy, half = a[0] * dx + a[1] * dy, rest = a[0] * a[0] + a[1] * a[1] - radius * radius;
    const root = Math.sqrt(Math.max(0, half * half - square * rest));
    for (const share of [(-half - root) / square, (-half + root) / square])
      if (share >= 0 && share <= 1) nearest = Math.min(nearest, Math.abs(Math.atan2(a[1] + share * dy, a[0] + share * dx)));
  });
  return nearest;
}
