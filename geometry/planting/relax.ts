// Places that keep distances: the least movement (weighted least squares) that brings every span back to its length.
// Newton's step for the spans with the least weighted change of places; its normal equations are solved by Cholesky in
// envelope form, which costs little while spans are numbered along the train.
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";

/** |place a + shift − place b| = distance, over movable points 0 … n−1; −1 is a point that stands, put into the shift. */
export interface Bar {
  readonly a: number;
  readonly b: number;
  readonly distance: number;
  readonly shiftX: number;
  readonly shiftY: number;
}

/** x and y of each movable point, one after the other (mm). */
export type Points = Float64Array;

const MOST_STEPS = 24;
/** Of the greatest diagonal term: keeps spans that say the same thing twice from dividing by nothing. */
const DAMPING = 1e-10;

/** Greatest miss (mm) of any bar. */
export function missOf(points: Points, bars: readonly Bar[]): number {
  let most = 0;
  for (const bar of bars) most = Math.max(most, Math.abs(lengthOf(points, bar) - bar.distance));
  return most;
}

/** Brings all bars to their lengths, in place, moving light points (small weight) first. True if it could. */
export function restore(points: Points, bars: readonly Bar[], ease: Float64Array): boolean {
  const step = new Float64Array(points.length);
  let miss = missOf(points, bars);
  for (let i = 0; i < MOST_STEPS && miss > AT_LIMIT_MM; i++) {
    step.fill(0);
    project(points, bars, ease, step, true);
    const before = points.slice();
    let scale = 1, next = Infinity;
    for (; scale > 0.01; scale /= 2) {
      for (let k = 0; k < points.length; k++) points[k] = before[k] + scale * step[k];
      next = missOf(points, bars);
      if (next < miss) break;
    }
    if (!(next < miss)) {
      points.set(before);
      return false;
    }
    miss = next;
  }
  return miss <= AT_LIMIT_MM;
}

/**
 * Changes a wished-for step into the nearest one that keeps every bar to first order (`closing`: that also closes what
 * it misses), nearest as weighed by the inverse of `ease` (one a point). Gives the force in each bar.
 */
export function project(points: Points, bars: readonly Bar[], ease: Float64Array, step: Float64Array, closing: boolean): Float64Array {
  const rows = bars.map((bar) => rowOf(points, bar));
  const right = new Float64Array(bars.length);
  rows.forEach(({ ux, uy, miss }, i) => {
    const { a, b } = bars[i];
    let along = closing ? miss : 0;
    if (a >= 0) along += ux * step[2 * a] + uy * step[2 * a + 1];
    if (b >= 0) along -= ux * step[2 * b] + uy * step[2 * b + 1];
    right[i] = along;
  });
  const force = solveEnvelope(bars, rows, ease, right);
  rows.forEach(({ ux, uy }, i) => {
    const { a, b } = bars[i];
    if (a >= 0) { step[2 * a] -= ease[a] * ux * force[i]; step[2 * a + 1] -= ease[a] * uy * force[i]; }
    if (b >= 0) { step[2 * b] += ease[b] * ux * force[i]; step[2 * b + 1] += ease[b] * uy * force[i]; }
  });
  return force;
}

interface Direction { readonly ux: number; readonly uy: number; readonly miss: number }

function rowOf(points: Points, bar: Bar): Direction {
  const x = (bar.a < 0 ? 0 : points[2 * bar.a]) + bar.shiftX - (bar.b < 0 ? 0 : points[2 * bar.b]);
  const y = (bar.a < 0 ? 0 : points[2 * bar.a + 1]) + bar.shiftY - (bar.b < 0 ? 0 : points[2 * bar.b + 1]);
  const length = Math.hypot(x, y);
  return length === 0 ? { ux: 1, uy: 0, miss: -bar.distance } : { ux: x / length, uy: y / length, miss: length - bar.distance };
}

function lengthOf(points: Points, bar: Bar): number {
  const x = (bar.a < 0 ? 0 : points[2 * bar.a]) + bar.shiftX - (bar.b < 0 ? 0 : points[2 * bar.b]);
  const y = (bar.a < 0 ? 0 : points[2 * bar.a + 1]) + bar.shiftY - (bar.b < 0 ? 0 : points[2 * bar.b + 1]);
  return Math.hypot(x, y);
}

/** Solves (J E Jᵀ) force = right, where bars that share a point meet; each row is kept from its first term on. */
function solveEnvelope(bars: readonly Bar[], rows: readonly Direction[], ease: Float64Array, right: Float64Array): Float64Array {
  const count = bars.length;
  const matrix: Float64Array[] = [], first = new Int32Array(count);
  const firstAt = new Map<number, number>();
  let greatest = 0;
  bars.forEach((bar, i) => {
    let from = i;
    for (const p of [bar.a, bar.b]) {
      if (p < 0) continue;
      const at = firstAt.get(p);
      if (at === undefined) firstAt.set(p, i);
      else from = Math.min(from, at);
    }
    first[i] = from;
    const row = new Float64Array(i - from + 1);
    for (let j = from; j <= i; j++) row[j - from] = shared(bar, rows[i], bars[j], rows[j], ease);
    greatest = Math.max(greatest, row[i - from]);
    matrix.push(row);
  });
  for (let i = 0; i < count; i++) {
    const row = matrix[i], from = first[i];
    row[i - from] += DAMPING * greatest;
    for (let j = from; j <= i; j++) {
      const other = matrix[j], start = Math.max(from, first[j]);
      let sum = row[j - from];
      for (let k = start; k < j; k++) sum -= row[k - from] * other[k - first[j]];
      row[j - from] = j < i ? sum / other[j - first[j]] : Math.sqrt(Math.max(sum, DAMPING * greatest, Number.MIN_VALUE));
    }
  }
  const force = right.slice();
  for (let i = 0; i < count; i++) {
    for (let k = first[i]; k < i; k++) force[i] -= matrix[i][k - first[i]] * force[k];
    force[i] /= matrix[i][i - first[i]];
  }
  for (let i = count - 1; i >= 0; i--) {
    force[i] /= matrix[i][i - first[i]];
    for (let k = first[i]; k < i; k++) force[k] -= matrix[i][k - first[i]] * force[i];
  }
  return force;
}

function shared(bar: Bar, row: Direction, other: Bar, otherRow: Direction, ease: Float64Array): number {
  const dot = row.ux * otherRow.ux + row.uy * otherRow.uy;
  let sum = 0;
  if (bar.a >= 0) sum += bar.a === other.a ? ease[bar.a] : bar.a === other.b ? -ease[bar.a] : 0;
  if (bar.b >= 0) sum += bar.b === other.b ? ease[bar.b] : bar.b === other.a ? -ease[bar.b] : 0;
  return dot * sum;
}
