// Places that keep distances: the least movement (weighted least squares) that brings every bar back to its length.
// Newton's step on the bars with the least weighted change of places; its normal equations are solved by Cholesky in
// envelope form, which costs little while bars are numbered along the train.
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";

/** |place a + shift − place b| = distance, over movable points 0 … n−1; −1 is a point that stands, put into the shift. */
export interface Bar {
  readonly a: number;
  readonly b: number;
  /** mm, as are the shifts. */
  readonly distance: number;
  readonly shiftX: number;
  readonly shiftY: number;
}

/** x and y of each movable point, one after the other (mm). */
export type Points = Float64Array;

/** Bars made ready for many steps: what does not change with the places, and room to work in. */
export interface Truss {
  readonly bars: readonly Bar[];
  /** By point: how readily it moves (the inverse of its weight). */
  readonly ease: Float64Array;
  /** By bar: the first earlier bar it shares a point with, and where its row of the matrix begins. */
  readonly first: Int32Array;
  readonly start: Int32Array;
  /** Triples: row, column, and +1 or −1 times (its point + 1) for the point that the two bars share. */
  readonly meetings: Int32Array;
  readonly matrix: Float64Array;
  /** By bar: its direction now, and how much too long it is (mm). */
  readonly ux: Float64Array;
  readonly uy: Float64Array;
  readonly miss: Float64Array;
  readonly force: Float64Array;
  /** By coordinate. */
  readonly step: Float64Array;
  readonly before: Float64Array;
}

const MOST_STEPS = 24;
/** Of a bar's own term on the diagonal: keeps bars that say the same thing twice from dividing by nothing. */
const DAMPING = 1e-10;
/** A bar between two points that stand has no term at all; it must not divide by nothing. */
const LEAST_PIVOT = 1e-300;

export function trussOf(bars: readonly Bar[], ease: Float64Array): Truss {
  const count = bars.length;
  const first = new Int32Array(count), start = new Int32Array(count);
  const barsAt: number[][] = Array.from(ease, () => []);
  const meetings: number[] = [];
  let size = 0;
  bars.forEach((bar, i) => {
    first[i] = i;
    for (const [p, sign] of [[bar.a, 1], [bar.b, -1]]) {
      if (p < 0) continue;
      barsAt[p].push(i);
      for (const j of barsAt[p]) {
        first[i] = Math.min(first[i], j);
        meetings.push(i, j, sign * (bars[j].a === p ? 1 : -1) * (p + 1));
      }
    }
    start[i] = size - first[i];
    size += i - first[i] + 1;
  });
  return {
    bars, ease, first, start, meetings: Int32Array.from(meetings), matrix: new Float64Array(size),
    ux: new Float64Array(count), uy: new Float64Array(count), miss: new Float64Array(count), force: new Float64Array(count),
    step: new Float64Array(2 * ease.length), before: new Float64Array(2 * ease.length),
  };
}

/** Greatest miss (mm) of any bar; notes each bar's direction and miss. */
export function measure(truss: Truss, points: Points): number {
  const { bars, ux, uy, miss } = truss;
  let most = 0;
  for (let i = 0; i < bars.length; i++) {
    const { a, b, shiftX, shiftY, distance } = bars[i];
    const x = (a < 0 ? 0 : points[2 * a]) + shiftX - (b < 0 ? 0 : points[2 * b]);
    const y = (a < 0 ? 0 : points[2 * a + 1]) + shiftY - (b < 0 ? 0 : points[2 * b + 1]);
    const length = Math.sqrt(x * x + y * y);
    ux[i] = length === 0 ? 1 : x / length;
    uy[i] = length === 0 ? 0 : y / length;
    miss[i] = length - distance;
    most = Math.max(most, Math.abs(miss[i]));
  }
  return most;
}

/** Brings all bars to their lengths, in place, by the least weighted movement. True if it could; else nothing moves on. */
export function restore(truss: Truss, points: Points): boolean {
  const { step, before } = truss;
  let miss = measure(truss, points);
  for (let i = 0; i < MOST_STEPS && miss > AT_LIMIT_MM; i++) {
    step.fill(0);
    project(truss, step, true);
    before.set(points);
    let next = Infinity;
    for (let scale = 1; scale > 0.01 && !(next < miss); scale /= 2) {
      for (let k = 0; k < points.length; k++) points[k] = before[k] + scale * step[k];
      next = measure(truss, points);
    }
    if (!(next < miss)) return false;
    miss = next;
  }
  return miss <= AT_LIMIT_MM;
}

/**
 * Changes a wished-for step into the nearest one that keeps every bar, as last measured, to first order (`closing`: that
 * also closes what it misses); nearest by weight. The force left in each bar is in `truss.force`.
 */
export function project(truss: Truss, step: Float64Array, closing: boolean): void {
  const { bars, ease, ux, uy, miss, force } = truss;
  for (let i = 0; i < bars.length; i++) {
    const { a, b } = bars[i];
    let along = closing ? miss[i] : 0;
    if (a >= 0) along += ux[i] * step[2 * a] + uy[i] * step[2 * a + 1];
    if (b >= 0) along -= ux[i] * step[2 * b] + uy[i] * step[2 * b + 1];
    force[i] = along;
  }
  fill(truss);
  factor(truss);
  substitute(truss);
  for (let i = 0; i < bars.length; i++) {
    const { a, b } = bars[i];
    const fx = ux[i] * force[i], fy = uy[i] * force[i];
    if (a >= 0) { step[2 * a] -= ease[a] * fx; step[2 * a + 1] -= ease[a] * fy; }
    if (b >= 0) { step[2 * b] += ease[b] * fx; step[2 * b + 1] += ease[b] * fy; }
  }
}

/** The matrix J E Jᵀ: bars meet where they share a point. */
function fill({ meetings, matrix, start, ux, uy, ease }: Truss): void {
  matrix.fill(0);
  for (let m = 0; m < meetings.length; m += 3) {
    const i = meetings[m], j = meetings[m + 1], p = meetings[m + 2];
    const dot = ux[i] * ux[j] + uy[i] * uy[j];
    matrix[start[i] + j] += p > 0 ? dot * ease[p - 1] : -dot * ease[-p - 1];
  }
}

function factor({ bars, first, start, matrix }: Truss): void {
  for (let i = 0; i < bars.length; i++) {
    const row = start[i], from = first[i];
    const own = matrix[row + i] * (1 + DAMPING);
    for (let j = from; j < i; j++) {
      const other = start[j];
      let sum = matrix[row + j];
      for (let k = Math.max(from, first[j]); k < j; k++) sum -= matrix[row + k] * matrix[other + k];
      matrix[row + j] = sum / matrix[other + j];
    }
    let rest = own;
    for (let k = from; k < i; k++) rest -= matrix[row + k] * matrix[row + k];
    matrix[row + i] = Math.sqrt(Math.max(rest, DAMPING * own, LEAST_PIVOT));
  }
}

function substitute({ bars, first, start, matrix, force }: Truss): void {
  for (let i = 0; i < bars.length; i++) {
    for (let k = first[i]; k < i; k++) force[i] -= matrix[start[i] + k] * force[k];
    force[i] /= matrix[start[i] + i];
  }
  for (let i = bars.length - 1; i >= 0; i--) {
    force[i] /= matrix[start[i] + i];
    for (let k = first[i]; k < i; k++) force[k] -= matrix[start[i] + k] * force[i];
  }
}
