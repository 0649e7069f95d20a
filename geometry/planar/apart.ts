// How far two flat things stand apart: discs and convex corners (bars, squares), each perhaps with hollows through it in
// which the other may stand. Positive when clear; where they overlap, minus the least shift that would part them.
// Source: separating axes of convex polygons; where two overlap, the least shift is across an edge of one of them.
import { TOUCH_MM } from "../numeric/tolerance.ts";

/** Convex, about its own origin. Corners interleaved x, y in mm, anticlockwise, moved out all round by `radius`; one corner and a radius is a disc. */
export interface Convex {
  readonly corners: Float64Array;
  readonly radius: number;
}

/** A hollow: round, or a closed outline of any shape (interleaved x, y) within a round. */
export type Hollow =
  | { readonly kind: "round"; readonly x: number; readonly y: number; readonly radius: number }
  | { readonly kind: "outline"; readonly x: number; readonly y: number; readonly radius: number; readonly outline: Float64Array };

export interface Flat {
  /** Convex pieces that make it up; one, where it is convex itself. */
  readonly outside: readonly Convex[];
  /** Its own outline, where it is of several pieces. */
  readonly outline?: Float64Array;
  readonly hollows: readonly Hollow[];
}

/** Where a flat thing stands: its origin, and how far it is turned. */
export interface Stand { readonly x: number; readonly y: number; readonly cos: number; readonly sin: number }

export const disc = (radius: number, x = 0, y = 0): Convex => ({ corners: Float64Array.of(x, y), radius });

/** A bar along `angleRad`, from `from` to `to` mm along it, square-ended. */
export function bar(from: number, to: number, width: number, angleRad: number): Convex {
  const c = Math.cos(angleRad), s = Math.sin(angleRad), h = width / 2;
  const at = (u: number, v: number): [number, number] => [c * u - s * v, s * u + c * v];
  return { corners: Float64Array.from([...at(from, -h), ...at(to, -h), ...at(to, h), ...at(from, h)]), radius: 0 };
}

/** The convex outline round many corners. Source: A. M. Andrew, Another efficient algorithm for convex hulls in two dimensions (1979). */
export function hullOf(pieces: readonly Float64Array[]): Float64Array {
  const points = pieces.flatMap((p) => Array.from({ length: p.length / 2 }, (_, i) => [p[2 * i], p[2 * i + 1]] as const)).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (all: typeof points) => {
    const kept: typeof points = [];
    for (const c of all) {
      for (let n = kept.length; n >= 2; n--) {
        const a = kept[n - 2], b = kept[n - 1];
        if ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > TOUCH_MM) break;
        kept.pop();
      }
      kept.push(c);
    }
    return kept.slice(0, -1);
  };
  return Float64Array.from([...half(points), ...half([...points].reverse())].flat());
}

/** A hollow of any shape, with a circle round it. */
export function hollowOf(outline: Float64Array): Hollow {
  const [minX, maxX] = span(outline, 1, 0), [minY, maxY] = span(outline, 0, 1), x = (minX + maxX) / 2, y = (minY + maxY) / 2;
  let radius = 0;
  for (let k = 0; k < outline.length; k += 2) radius = Math.max(radius, Math.hypot(outline[k] - x, outline[k + 1] - y));
  return { kind: "outline", x, y, radius, outline };
}

export const standAt = (x: number, y: number, angleRad: number): Stand => ({ x, y, cos: Math.cos(angleRad), sin: Math.sin(angleRad) });

/** mm between two flat things as they stand: the better of outside one another and within a hollow of one. Not re-entrant: it works in scratch. */
export function apart(a: Flat, aStand: Stand, b: Flat, bStand: Stand): number {
  let best = Infinity;
  for (let j = 0; j < b.outside.length; j++) {
    const other = seen(b.outside[j].corners, bStand, aStand);
    for (let i = 0; i < a.outside.length; i++) {
      const gap = outsideGap(a.outside[i].corners, other) - a.outside[i].radius - b.outside[j].radius;
      if (gap < best) best = gap;
    }
  }
  if (best < 0 && (a.outline !== undefined || b.outline !== undefined)) best = -depthOfOverlap(a, aStand, b, bStand);
  for (const h of a.hollows) best = Math.max(best, allWithin(h, b, bStand, aStand, best));
  for (const h of b.hollows) best = Math.max(best, allWithin(h, a, aStand, bStand, best));
  return best;
}

function depthOfOverlap(a: Flat, aStand: Stand, b: Flat, bStand: Stand): number {
  if (a.outline !== undefined) return depthIn(a.outline, a.outside.map((p) => p.corners), seen(b.outside[0].corners, bStand, aStand), b.outside[0].radius);
  return b.outline === undefined ? 0 : depthOfOverlap(b, bStand, a, aStand);
}

/** One flat thing within a hollow of another, seen from where the other stands; no more than `enough` is said as that. */
function allWithin(hollow: Hollow, inner: Flat, innerStand: Stand, outerStand: Stand, enough: number): number {
  let least = Infinity;
  for (const { corners, radius } of inner.outside) {
    const there = seen(corners, innerStand, outerStand);
    // The circle round the hollow leaves it no more room than this.
    if (hollow.radius - Math.hypot(there[0] - hollow.x, there[1] - hollow.y) - radius <= enough) return enough;
    least = Math.min(least, withinGap(hollow, there, radius));
    if (least <= enough) return enough;
  }
  return least;
}

const scratch = new Map<number, Float64Array>();

/** Corners of a thing as they lie to another thing: in its frame. Scratch, good until the next call with as many corners. */
function seen(corners: Float64Array, own: Stand, from: Stand): Float64Array {
  let out = scratch.get(corners.length);
  if (out === undefined) scratch.set(corners.length, (out = new Float64Array(corners.length)));
  const cos = own.cos * from.cos + own.sin * from.sin, sin = own.sin * from.cos - own.cos * from.sin;
  const dx = own.x - from.x, dy = own.y - from.y;
  const x = from.cos * dx + from.sin * dy, y = from.cos * dy - from.sin * dx;
  for (let i = 0; i < corners.length; i += 2) {
    out[i] = x + cos * corners[i] - sin * corners[i + 1];
    out[i + 1] = y + sin * corners[i] + cos * corners[i + 1];
  }
  return out;
}

/** The middle of the place where two flat things come nearest, or of what they share. */
export function meetingPlace(a: Flat, aStand: Stand, b: Flat, bStand: Stand): { x: number; y: number } {
  const aPieces = a.outside.map((p) => standing(p.corners, aStand)), bPieces = b.outside.map((p) => standing(p.corners, bStand));
  let least = Infinity, place = { x: aStand.x, y: aStand.y };
  for (let i = 0; i < aPieces.length; i++) for (let j = 0; j < bPieces.length; j++) {
    const gap = outsideGap(aPieces[i], bPieces[j]) - a.outside[i].radius - b.outside[j].radius;
    if (gap < least) { least = gap; place = between(aPieces[i], a.outside[i].radius, bPieces[j], b.outside[j].radius); }
  }
  return place;
}

/** Half way between the nearest places of two convex outlines; of overlapping ones, the middle of the corners that lie in the other. */
function between(a: Float64Array, aRadius: number, b: Float64Array, bRadius: number): { x: number; y: number } {
  const shared = [...cornersWithin(a, b), ...cornersWithin(b, a)];
  if (shared.length > 0) return { x: mean(shared.map((p) => p[0])), y: mean(shared.map((p) => p[1])) };
  let least = Infinity, place = { x: a[0], y: a[1] };
  const consider = (x: number, y: number, nx: number, ny: number, from: number, to: number): void => {
    const distance = Math.hypot(nx - x, ny - y);
    if (distance >= least) return;
    least = distance;
    const along = distance === 0 ? 0 : (Math.max(-from, distance - to) + Math.min(from, distance + to)) / 2 / distance;
    place = { x: x + (nx - x) * along, y: y + (ny - y) * along };
  };
  for (let k = 0; k < b.length; k += 2) { const [nx, ny] = nearestPlace(a, b[k], b[k + 1]); consider(b[k], b[k + 1], nx, ny, bRadius, aRadius); }
  for (let k = 0; k < a.length; k += 2) { const [nx, ny] = nearestPlace(b, a[k], a[k + 1]); consider(a[k], a[k + 1], nx, ny, aRadius, bRadius); }
  return place;
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

function cornersWithin(outline: Float64Array, corners: Float64Array): [number, number][] {
  const found: [number, number][] = [];
  for (let k = 0; k < corners.length; k += 2) if (outline.length > 4 && isWithin(outline, corners[k], corners[k + 1])) found.push([corners[k], corners[k + 1]]);
  return found;
}

function nearestPlace(outline: Float64Array, x: number, y: number): [number, number] {
  let least = Infinity, place: [number, number] = [outline[0], outline[1]];
  for (let i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2) {
    const ex = outline[i] - outline[j], ey = outline[i + 1] - outline[j + 1], lengthSq = ex * ex + ey * ey;
    const u = lengthSq === 0 ? 0 : Math.min(1, Math.max(0, ((x - outline[j]) * ex + (y - outline[j + 1]) * ey) / lengthSq));
    const px = outline[j] + u * ex, py = outline[j + 1] + u * ey, distance = Math.hypot(x - px, y - py);
    if (distance < least) { least = distance; place = [px, py]; }
  }
  return place;
}

/**
 * The least shift that takes something convex out of an outline of several pieces. Across an edge of the one or the other;
 * a way past a hollow corner of the outline that is shorter still is not looked for.
 */
function depthIn(outline: Float64Array, pieces: readonly Float64Array[], corners: Float64Array, radius: number): number {
  if (corners.length === 2) {
    const near = nearestToEdges(outline, corners);
    return (isWithin(outline, corners[0], corners[1]) ? near : -near) + radius;
  }
  let least = Infinity;
  for (const edges of [outline, corners]) for (let i = 0, j = edges.length - 2; i < edges.length; j = i, i += 2) {
    const ex = edges[i] - edges[j], ey = edges[i + 1] - edges[j + 1], length = Math.hypot(ex, ey);
    for (const way of [1, -1]) least = Math.min(least, clearAlong(pieces, corners, (way * ey) / length, (-way * ex) / length));
  }
  return least;
}

/** How far corners must go along a way until they are clear of every piece. */
function clearAlong(pieces: readonly Float64Array[], corners: Float64Array, ux: number, uy: number): number {
  const shared = pieces.map((p) => sharedAlong(p, corners, ux, uy)).filter(([from, to]) => to > Math.max(0, from)).sort((a, b) => a[0] - b[0]);
  let clear = 0;
  for (const [from, to] of shared) if (from < clear + TOUCH_MM) clear = Math.max(clear, to);
  return clear;
}

/** The stretch of a way over which moving corners overlap a convex piece; empty where from is more than to. */
function sharedAlong(piece: Float64Array, corners: Float64Array, ux: number, uy: number): [number, number] {
  let from = -Infinity, to = Infinity;
  for (const edges of [piece, corners]) for (let i = 0, j = edges.length - 2; i < edges.length; j = i, i += 2) {
    const nx = edges[i + 1] - edges[j + 1], ny = edges[j] - edges[i], along = ux * nx + uy * ny;
    const [leastA, mostA] = span(piece, nx, ny), [leastB, mostB] = span(corners, nx, ny);
    if (Math.abs(along) < TOUCH_MM) {
      if (leastA >= mostB || leastB >= mostA) return [Infinity, -Infinity];
      continue;
    }
    const [first, last] = [(leastA - mostB) / along, (mostA - leastB) / along].sort((p, q) => p - q);
    from = Math.max(from, first);
    to = Math.min(to, last);
  }
  return [from, to];
}

function span(corners: Float64Array, nx: number, ny: number): [number, number] {
  let least = Infinity, most = -Infinity;
  for (let k = 0; k < corners.length; k += 2) {
    const v = corners[k] * nx + corners[k + 1] * ny;
    least = Math.min(least, v);
    most = Math.max(most, v);
  }
  return [least, most];
}

function standing(corners: Float64Array, s: Stand): Float64Array {
  const out = new Float64Array(corners.length);
  for (let i = 0; i < corners.length; i += 2) {
    out[i] = s.x + s.cos * corners[i] - s.sin * corners[i + 1];
    out[i + 1] = s.y + s.sin * corners[i] + s.cos * corners[i + 1];
  }
  return out;
}

/** Signed distance of two convex outlines (points and corners) without their radii. */
function outsideGap(a: Float64Array, b: Float64Array): number {
  if (a.length === 2 && b.length === 2) return Math.hypot(a[0] - b[0], a[1] - b[1]);
  const split = Math.max(widestSplit(a, b), widestSplit(b, a));
  if (split <= 0) return split;
  return Math.min(nearestToEdges(a, b), nearestToEdges(b, a));
}

/** The greatest distance by which all of b lies outside an edge of a; at most 0 where no edge parts them. */
function widestSplit(a: Float64Array, b: Float64Array): number {
  if (a.length < 6) return -Infinity;
  let widest = -Infinity;
  for (let i = 0, j = a.length - 2; i < a.length; j = i, i += 2) {
    const ex = a[i] - a[j], ey = a[i + 1] - a[j + 1], length = Math.sqrt(ex * ex + ey * ey);
    let least = Infinity;
    for (let k = 0; k < b.length; k += 2) {
      const away = (ey * (b[k] - a[j]) - ex * (b[k + 1] - a[j + 1])) / length;
      if (away < least) least = away;
    }
    if (least > widest) widest = least;
  }
  return widest;
}

/** Least distance from a corner of b to an edge of a. */
function nearestToEdges(a: Float64Array, b: Float64Array): number {
  let leastSq = Infinity;
  if (a.length < 4) return leastSq;
  for (let k = 0; k < b.length; k += 2) {
    const x = b[k], y = b[k + 1];
    let ax = a[a.length - 2], ay = a[a.length - 1];
    for (let i = 0; i < a.length; i += 2) {
      const ex = a[i] - ax, ey = a[i + 1] - ay, px = x - ax, py = y - ay, along = px * ex + py * ey, lengthSq = ex * ex + ey * ey;
      const u = along <= 0 ? 0 : along >= lengthSq ? 1 : along / lengthSq;
      const dx = px - u * ex, dy = py - u * ey, distanceSq = dx * dx + dy * dy;
      if (distanceSq < leastSq) leastSq = distanceSq;
      ax = a[i];
      ay = a[i + 1];
    }
  }
  return Math.sqrt(leastSq);
}

/** How far inside a hollow the corners stand, less their radius; negative where they reach its edge. */
function withinGap(hollow: Hollow, corners: Float64Array, radius: number): number {
  if (hollow.kind === "round") {
    let farthest = 0;
    for (let k = 0; k < corners.length; k += 2) farthest = Math.max(farthest, Math.hypot(corners[k] - hollow.x, corners[k + 1] - hollow.y));
    return hollow.radius - farthest - radius;
  }
  const edge = hollow.outline;
  if (corners.length === 2) return depthOf(edge, corners[0], corners[1]) - radius;
  let least = Infinity;
  for (let k = 0; k < corners.length; k += 2) {
    const near = nearestToEdges(edge, corners.subarray(k, k + 2));
    least = Math.min(least, isWithin(edge, corners[k], corners[k + 1]) ? near : -near);
  }
  // A corner of the hollow may stand in the middle of a side of what is in it.
  if (least > 0 && corners.length > 4) least = Math.min(least, nearestToEdges(corners, edge), cornersInside(edge, corners));
  return least - radius;
}

/** How far inside a closed outline a place stands; negative outside. One round of the outline tells both. */
function depthOf(outline: Float64Array, x: number, y: number): number {
  let leastSq = Infinity, within = false, ax = outline[outline.length - 2], ay = outline[outline.length - 1];
  for (let i = 0; i < outline.length; i += 2) {
    const bx = outline[i], by = outline[i + 1], ex = bx - ax, ey = by - ay, px = x - ax, py = y - ay;
    const along = px * ex + py * ey, lengthSq = ex * ex + ey * ey;
    const u = along <= 0 ? 0 : along >= lengthSq ? 1 : along / lengthSq, dx = px - u * ex, dy = py - u * ey, distanceSq = dx * dx + dy * dy;
    if (distanceSq < leastSq) leastSq = distanceSq;
    if (by > y !== ay > y && x < ((ax - bx) * (y - by)) / (ay - by) + bx) within = !within;
    ax = bx;
    ay = by;
  }
  return within ? Math.sqrt(leastSq) : -Math.sqrt(leastSq);
}

/** Minus the depth to which a corner of the hollow's edge reaches into the convex corners; Infinity where none does. */
function cornersInside(edge: Float64Array, corners: Float64Array): number {
  let deepest = Infinity;
  for (let k = 0; k < edge.length; k += 2) {
    const outside = widestSplit(corners, edge.subarray(k, k + 2));
    if (outside < 0) deepest = Math.min(deepest, outside);
  }
  return deepest;
}

/** Whether a place lies within a closed outline (even-odd; on the edge: either). */
export function isWithin(outline: Float64Array, x: number, y: number): boolean {
  let within = false;
  for (let i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2) {
    const yi = outline[i + 1], yj = outline[j + 1];
    if (yi > y !== yj > y && x < ((outline[j] - outline[i]) * (y - yi)) / (yj - yi) + outline[i]) within = !within;
  }
  return within;
}
