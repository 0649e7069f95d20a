// How far two convex things in even motion certainly stay apart while their phases stray by no more than half a box. A way
// that parts them now goes on parting them: along it every corner moves as the sum of circles, whose speeds are known and
// whose bends are bounded. Near a least gap, where speeds vanish, that is far better than what the greatest speed allows.
// Source: Taylor's theorem with its remainder; the separation of convex outlines along any direction is at most their distance.
import { TAU } from "../numeric/angle.ts";
import { TOUCH_MM } from "../numeric/tolerance.ts";
import type { Convex } from "../planar/apart.ts";

/** A vector that turns about its foot: as it stands (mm), and its turns for one turn of each phase. */
export interface Turned { x: number; y: number; readonly times: Float64Array }

export interface Body {
  readonly outline: Convex;
  /** Longest corner, mm. */
  readonly reach: number;
  /** How it stands turned, and its turns for one turn of each phase. */
  cos: number;
  sin: number;
  readonly times: Float64Array;
}

/** mm; `links` lead from a's axis to b's, end to end. `halves`: turns by which each phase may stray to either side. */
export function leastWhile(a: Body, b: Body, links: readonly Turned[], halves: readonly number[]): number {
  return Math.max(seenFrom(a, b, links, 1, halves), seenFrom(b, a, links, -1, halves)) - a.outline.radius - b.outline.radius;
}

const speeds = new Float64Array(64);
let corners = new Float64Array(64);

/** Along the best of the owner's edges, and along the line between the two nearest corners, as the owner sees the other. */
function seenFrom(owner: Body, other: Body, links: readonly Turned[], sign: 1 | -1, halves: readonly number[]): number {
  const n = halves.length, { cos, sin } = owner;
  let x = 0, y = 0, bend = other.reach * strayed(other.times, owner.times, halves) ** 2;
  speeds.fill(0, 0, 2 * n);
  for (const link of links) {
    const lx = sign * (cos * link.x + sin * link.y), ly = sign * (cos * link.y - sin * link.x);
    x += lx;
    y += ly;
    bend += Math.hypot(lx, ly) * strayed(link.times, owner.times, halves) ** 2;
    for (let j = 0; j < n; j++) {
      const w = TAU * (link.times[j] - owner.times[j]);
      speeds[2 * j] -= w * ly;
      speeds[2 * j + 1] += w * lx;
    }
  }
  const own = owner.outline.corners, theirs = other.outline.corners;
  const c = other.cos * cos + other.sin * sin, s = other.sin * cos - other.cos * sin;
  if (corners.length < theirs.length) corners = new Float64Array(theirs.length);
  for (let k = 0; k < theirs.length; k += 2) {
    corners[k] = c * theirs[k] - s * theirs[k + 1];
    corners[k + 1] = s * theirs[k] + c * theirs[k + 1];
  }
  const along = (nx: number, ny: number): number => {
    let most = -Infinity, least = Infinity;
    for (let k = 0; k < own.length; k += 2) most = Math.max(most, nx * own[k] + ny * own[k + 1]);
    for (let k = 0; k < theirs.length; k += 2) {
      let at = nx * (x + corners[k]) + ny * (y + corners[k + 1]);
      for (let j = 0; j < n; j++) {
        const w = TAU * (other.times[j] - owner.times[j]);
        at -= halves[j] * Math.abs(nx * (speeds[2 * j] - w * corners[k + 1]) + ny * (speeds[2 * j + 1] + w * corners[k]));
      }
      if (at < least) least = at;
    }
    return least - most;
  };
  let best = -Infinity, ex = 0, ey = 0;
  if (own.length >= 6) for (let i = 0, j = own.length - 2; i < own.length; j = i, i += 2) {
    const dx = own[i] - own[j], dy = own[i + 1] - own[j + 1], length = Math.hypot(dx, dy), nx = dy / length, ny = -dx / length;
    let least = Infinity;
    for (let k = 0; k < theirs.length; k += 2) least = Math.min(least, nx * (x + corners[k] - own[j]) + ny * (y + corners[k + 1] - own[j + 1]));
    if (least > best) { best = least; ex = nx; ey = ny; }
  }
  let bound = best === -Infinity ? -Infinity : along(ex, ey), nearest = Infinity, vx = 0, vy = 0;
  for (let i = 0; i < own.length; i += 2) for (let k = 0; k < theirs.length; k += 2) {
    const dx = x + corners[k] - own[i], dy = y + corners[k + 1] - own[i + 1], distance = Math.hypot(dx, dy);
    if (distance < nearest) { nearest = distance; vx = dx; vy = dy; }
  }
  if (best < 0 && own.length >= 6) return bound - bend / 2;
  if (nearest > TOUCH_MM) bound = Math.max(bound, along(vx / nearest, vy / nearest));
  return bound - bend / 2;
}

/** Radians by which what turns so, as seen from what turns so, can stray. */
function strayed(times: Float64Array, from: Float64Array, halves: readonly number[]): number {
  let rad = 0;
  for (let j = 0; j < halves.length; j++) rad += TAU * Math.abs(times[j] - from[j]) * halves[j];
  return rad;
}
