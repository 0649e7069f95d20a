// Where the eye stands: pure geometry of the view, without three.js. Angles in radians, lengths in mm. z points to the
// dial side; azimuth turns the eye round z from six o'clock, tilt leans it from the dial side (0) over the edge (π/2)
// to the back (π). No angle is singular.
import type { Standing } from "../props.ts";

export interface View {
  readonly azimuthRad: number;
  readonly tiltRad: number;
  readonly distanceMm: number;
  /** What stands in the middle of the picture. */
  readonly target: Vec;
}
export type Vec = readonly [x: number, y: number, z: number];

/** A round bound about an axis along z. */
export interface Bound {
  readonly x: number;
  readonly y: number;
  readonly radiusMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

export const FIELD_RAD = (26 * Math.PI) / 180;
/** How much of the picture's width and height the movement may fill. */
const FILL = 0.9;
const QUARTER = { azimuthRad: (38 * Math.PI) / 180, tiltRad: (57 * Math.PI) / 180 };
const ANGLES: Record<Standing, { readonly azimuthRad: number; readonly tiltRad: number }> = {
  "dial side": { azimuthRad: 0, tiltRad: 0 },
  "back side": { azimuthRad: Math.PI, tiltRad: Math.PI },
  edge: { azimuthRad: 0, tiltRad: Math.PI / 2 },
  quarter: QUARTER,
};

export const right = (v: View): Vec => [Math.cos(v.azimuthRad), Math.sin(v.azimuthRad), 0];
export const up = (v: View): Vec => {
  const c = Math.cos(v.tiltRad);
  return [-Math.sin(v.azimuthRad) * c, Math.cos(v.azimuthRad) * c, Math.sin(v.tiltRad)];
};
/** From what is looked at towards the eye. */
export const towards = (v: Pick<View, "azimuthRad" | "tiltRad">): Vec => {
  const s = Math.sin(v.tiltRad);
  return [Math.sin(v.azimuthRad) * s, -Math.cos(v.azimuthRad) * s, Math.cos(v.tiltRad)];
};
export const eyeOf = (v: View): Vec => along(v.target, towards(v), v.distanceMm);

/** A standing view from which the whole bound is seen in a picture of that shape. */
export function standingView(standing: Standing, bound: Bound, aspect: number): View {
  return fitted(ANGLES[standing], bound, aspect);
}

/** The place may stand so far round from the eye; the view turns no farther than that asks. */
const ROUND_RAD = (70 * Math.PI) / 180;

/** A view from which a place is seen at the near side: from the edge more where heights quarrel, from behind below the back plate. */
export function viewOfPlace(place: Vec, way: "plan" | "height" | undefined, from: View, bound: Bound, aspect: number): View {
  const dx = place[0] - bound.x, dy = place[1] - bound.y;
  const central = Math.hypot(dx, dy) < 0.15 * bound.radiusMm;
  const off = central ? 0 : signed(Math.atan2(dx, -dy) - from.azimuthRad);
  const azimuthRad = from.azimuthRad + off - clamp(off, -ROUND_RAD, ROUND_RAD);
  const lean = way === "height" ? 1.33 : 0.95;
  const tiltRad = place[2] < 0 ? Math.PI - lean : lean;
  const whole = fitted({ azimuthRad, tiltRad }, bound, aspect);
  const mid = whole.target;
  return {
    ...whole,
    distanceMm: 0.9 * whole.distanceMm,
    target: [mid[0] + 0.4 * (place[0] - mid[0]), mid[1] + 0.4 * (place[1] - mid[1]), mid[2] + 0.4 * (place[2] - mid[2])],
  };
}

/** Between two views, t from 0 to 1 eased in and out, the shorter way round. */
export function between(a: View, b: View, t: number): View {
  const e = t <= 0 ? 0 : t >= 1 ? 1 : t < 0.5 ? 4 * t * t * t : 1 - (2 - 2 * t) ** 3 / 2;
  const mix = (p: number, q: number) => p + e * (q - p);
  return {
    azimuthRad: mix(a.azimuthRad, nearest(b.azimuthRad, a.azimuthRad)),
    tiltRad: mix(a.tiltRad, b.tiltRad),
    distanceMm: mix(a.distanceMm, b.distanceMm),
    target: [mix(a.target[0], b.target[0]), mix(a.target[1], b.target[1]), mix(a.target[2], b.target[2])],
  };
}

export function turnedBy(v: View, azimuthRad: number, tiltRad: number): View {
  return { ...v, azimuthRad: v.azimuthRad + azimuthRad, tiltRad: clamp(v.tiltRad + tiltRad, 0, Math.PI) };
}

/** Slides the picture by shares of its height (to the right and upwards). */
export function slidBy(v: View, across: number, upward: number): View {
  const heightMm = 2 * v.distanceMm * Math.tan(FIELD_RAD / 2);
  return { ...v, target: along(along(v.target, right(v), -across * heightMm), up(v), -upward * heightMm) };
}

/** Nearer by a factor above 1; what stands at (across, upward), in half heights from the middle, stays where it is. */
export function nearedBy(v: View, factor: number, bound: Bound, across = 0, upward = 0): View {
  const distanceMm = clamp(v.distanceMm / factor, 0.15 * bound.radiusMm, 20 * bound.radiusMm);
  const shiftMm = (v.distanceMm - distanceMm) * Math.tan(FIELD_RAD / 2);
  return { ...v, distanceMm, target: along(along(v.target, right(v), across * shiftMm), up(v), upward * shiftMm) };
}

/** "Seen from the dial side, turned 38°". */
export function sayView(v: View): string {
  const tiltDeg = (v.tiltRad * 180) / Math.PI;
  const side = tiltDeg < 80 ? "the dial side" : tiltDeg <= 100 ? "the edge" : "the back side";
  const from = tiltDeg > 100 ? Math.PI : 0;
  const turned = Math.round((signed(v.azimuthRad - from) * 180) / Math.PI);
  return `Seen from ${side}${Math.abs(turned) < 1 ? "" : `, turned ${turned < 0 ? "−" : ""}${Math.abs(turned)}°`}`;
}

/** Where the plane z = level meets a ray, or null where it runs along it or away from it. */
export function onLevel(origin: Vec, direction: Vec, levelMm: number): { x: number; y: number } | null {
  // Nearly edge-on a pixel would stand for metres: the drag is refused rather than wild.
  if (Math.abs(direction[2]) < 0.04 * Math.hypot(...direction)) return null;
  const t = (levelMm - origin[2]) / direction[2];
  return t > 0 ? { x: origin[0] + t * direction[0], y: origin[1] + t * direction[1] } : null;
}

function fitted(angles: { azimuthRad: number; tiltRad: number }, bound: Bound, aspect: number): View {
  const target: Vec = [bound.x, bound.y, (bound.lowMm + bound.highMm) / 2];
  const view: View = { ...angles, target, distanceMm: 1 };
  const [r, u, d] = [right(view), up(view), towards(view)];
  const half = Math.tan(FIELD_RAD / 2) * FILL;
  let distanceMm = 0;
  for (let i = 0; i < 64; i++) {
    const a = (Math.PI * i) / 32;
    for (const z of [bound.lowMm, bound.highMm]) {
      const p: Vec = [bound.radiusMm * Math.cos(a), bound.radiusMm * Math.sin(a), z - target[2]];
      distanceMm = Math.max(distanceMm, Math.abs(dot(p, u)) / half + dot(p, d), Math.abs(dot(p, r)) / (half * aspect) + dot(p, d));
    }
  }
  return { ...view, distanceMm };
}

const clamp = (x: number, low: number, high: number) => Math.min(high, Math.max(low, x));
const dot = (a: Vec, b: Vec) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along = (p: Vec, d: Vec, by: number): Vec => [p[0] + by * d[0], p[1] + by * d[1], p[2] + by * d[2]];
const signed = (rad: number) => Math.atan2(Math.sin(rad), Math.cos(rad));
const nearest = (rad: number, to: number) => to + signed(rad - to);
