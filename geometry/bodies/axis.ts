// Where the axis of a body stands and how it is carried round, and so how near to and how far from one another two axes
// come at any turn. Lengths in mm. Of the turning of carriers only what turns alike is told apart: two swings at one
// exact rate keep their angle to one another for ever and are taken together, swings at different rates are each taken
// in any direction (certain, and reached unless their phases happen never to allow it).
import type { Movement } from "../movement.ts";
import { isZero, writeRatio } from "../numeric/ratio.ts";

/** Part of an axis's place that turns about its carrier: its vector with the input at 0, and the exact rate. */
export interface Swing {
  readonly rate: string;
  readonly x: number;
  readonly y: number;
}

/** All arbors run along z today; a direction is kept so that crossed axes have a place to stand. */
export interface Axis {
  /** The place that does not move: where the axis stands, less its swings. */
  readonly x: number;
  readonly y: number;
  readonly direction: readonly [number, number, number];
  readonly swings: readonly Swing[];
  /** Where it stands with the input at 0. */
  readonly atRest: { readonly x: number; readonly y: number };
}

export interface Reach {
  readonly least: number;
  readonly greatest: number;
}

const ALONG_Z = [0, 0, 1] as const;
const NO_SWINGS: readonly Swing[] = [];

/** An axis that stands still. */
export const standingAxis = (x: number, y: number): Axis =>
  ({ x, y, direction: ALONG_Z, swings: NO_SWINGS, atRest: { x, y } });

/** The axis of an arbor: a carrier swings it round only if it turns; one with rate 0, or none, carries nothing round. */
export function axisOf(movement: Movement, arbor: number): Axis {
  const worked = movement.arbors[arbor];
  if (worked.carrier === null) return standingAxis(worked.x, worked.y);
  const swings: Swing[] = [];
  let { x, y } = worked;
  let rider = worked;
  for (const on of worked.chain) {
    const carrier = movement.arbors[on];
    const radius = rider.arbor.rides?.radius ?? 0;
    if (radius > 0 && carrier.rate !== null && !isZero(carrier.rate)) {
      const swing = { rate: writeRatio(carrier.rate), x: rider.x - carrier.x, y: rider.y - carrier.y };
      swings.push(swing);
      x -= swing.x;
      y -= swing.y;
    }
    rider = carrier;
  }
  return { x, y, direction: ALONG_Z, swings, atRest: { x: worked.x, y: worked.y } };
}

/** Least and greatest distance of two axes over the whole turn of whatever carries them. */
export function axisReach(a: Axis, b: Axis): Reach {
  const standing = Math.hypot(a.x - b.x, a.y - b.y);
  if (a.swings.length === 0 && b.swings.length === 0) return { least: standing, greatest: standing };
  return armsReach(standing, swingLengths(a, b));
}

/** Least and greatest distance of an axis from a place in the frame. */
export function placeReach(a: Axis, x: number, y: number): Reach {
  const standing = Math.hypot(a.x - x, a.y - y);
  return a.swings.length === 0 ? { least: standing, greatest: standing } : armsReach(standing, swingLengths(a, null));
}

/** Least and greatest distance of an axis from its own place that does not move. */
export const ownReach = (a: Axis): Reach => armsReach(0, swingLengths(a, null));

/** How near to and far from its start a chain of arms can end, each in any direction. */
function armsReach(standing: number, lengths: readonly number[]): Reach {
  let sum = standing, longest = standing;
  for (const length of lengths) {
    sum += length;
    if (length > longest) longest = length;
  }
  return { least: Math.max(0, 2 * longest - sum), greatest: sum };
}

function swingLengths(a: Axis, b: Axis | null): number[] {
  const byRate = new Map<string, { x: number; y: number }>();
  const add = (swing: Swing, sign: 1 | -1) => {
    const sum = byRate.get(swing.rate);
    if (sum === undefined) byRate.set(swing.rate, { x: sign * swing.x, y: sign * swing.y });
    else { sum.x += sign * swing.x; sum.y += sign * swing.y; }
  };
  for (const swing of a.swings) add(swing, 1);
  if (b !== null) for (const swing of b.swings) add(swing, -1);
  return [...byRate.values()].map((s) => Math.hypot(s.x, s.y));
}
