// Upright prisms seen from in front, a little from the right and from above (orthographic axonometry, ISO 5456-3): what is
// seen of each is painted over what lies behind it. Model lengths in mm; on the paper y is upward.
import { fill, type Page, polyline } from "./page.ts";

export interface Prism {
  /** Where its own axis stands in plan. */
  readonly x: number;
  readonly y: number;
  readonly z0: number;
  readonly z1: number;
  /** About its axis, x and y by turns: the outside anticlockwise, holes clockwise. */
  readonly loops: readonly ArrayLike<number>[];
}

/** Where the model's origin stands on the paper, and mm of paper for one of metal. */
export interface Eye { readonly x: number; readonly y: number; readonly scale: number }

const toRad = (deg: number): number => (deg * Math.PI) / 180;
/** How far the movement is turned about its axis, and how high the eye stands over its horizon. */
const TURN = toRad(-22), HIGH = toRad(26);
const CT = Math.cos(TURN), ST = Math.sin(TURN), FLAT = Math.sin(HIGH), TALL = Math.cos(HIGH);
/** Edges are drawn where a wall breaks by more than this, and no closer on the paper than this. */
const BREAK_COS = Math.cos(toRad(25)), EDGES_MM = 0.7;

export const across = (x: number, y: number): number => CT * x - ST * y;
/** Farther from the eye. */
export const away = (x: number, y: number): number => ST * x + CT * y;
export const upward = (x: number, y: number, z: number): number => FLAT * away(x, y) + TALL * z;
/** mm of paper, at full size, that a height of 1 mm takes. */
export const HEIGHT = TALL;

export const onPaper = (eye: Eye, x: number, y: number, z: number): readonly [number, number] => [eye.x + eye.scale * across(x, y), eye.y + eye.scale * upward(x, y, z)];

export interface Extent { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number }

/** What it covers, at full size and with the model's origin at 0, 0. */
export function extentOf(p: Prism): Extent {
  let left = Infinity, right = -Infinity, bottom = Infinity, top = -Infinity;
  for (const loop of p.loops) for (let i = 0; i + 1 < loop.length; i += 2) {
    const u = across(p.x + loop[i]!, p.y + loop[i + 1]!), v = upward(p.x + loop[i]!, p.y + loop[i + 1]!, 0);
    left = Math.min(left, u); right = Math.max(right, u); bottom = Math.min(bottom, v); top = Math.max(top, v);
  }
  return { left, right, bottom: bottom + TALL * p.z0, top: top + TALL * p.z1 };
}

/** From the farthest to the nearest: one that stands wholly over another, or before it, comes after it. */
export function nearestLast<P extends Prism>(prisms: readonly P[]): P[] {
  const extents = prisms.map(extentOf), left = prisms.map((_, i) => i).sort((a, b) => prisms[a]!.z0 - prisms[b]!.z0), order: P[] = [];
  const meet = (a: Extent, b: Extent): boolean => a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
  while (left.length > 0) {
    // Where each waits for another, the lowest goes first.
    const free = left.findIndex((i) => left.every((j) => i === j || !meet(extents[i]!, extents[j]!) || !isBefore(prisms[j]!, prisms[i]!)));
    order.push(prisms[left.splice(Math.max(0, free), 1)[0]!]!);
  }
  return order;
}

/** a hides nothing of b, but b may hide a. */
function isBefore(a: Prism, b: Prism): boolean {
  if (a.z1 <= b.z0 + 1e-6) return true;
  if (b.z1 <= a.z0 + 1e-6) return false;
  const far = away(a.x, a.y) - away(b.x, b.y);
  return Math.abs(far) > 1e-6 ? far > 0 : reachOf(a) > reachOf(b);
}

/** Farthest that anything of it stands from its axis. */
export function reachOf({ loops }: Prism): number {
  let sq = 0;
  for (const loop of loops) for (let i = 0; i + 1 < loop.length; i += 2) sq = Math.max(sq, loop[i]! ** 2 + loop[i + 1]! ** 2);
  return Math.sqrt(sq);
}

/** Walls that face the eye, those of holes first, then the upper face with its holes left open. */
export function drawPrism(page: Page, p: Prism, eye: Eye): void {
  const walls = p.loops.flatMap((loop) => wallsOf(loop).map((wall) => ({ ...wall, hole: areaOf(loop) < 0 })));
  walls.sort((a, b) => (a.hole === b.hole ? b.far - a.far : a.hole ? -1 : 1));
  for (const wall of walls) drawWall(page, wall, p, eye);
  const faces = p.loops.map((loop) => pairs(loop).flatMap(([x, y]) => [...onPaper(eye, p.x + x, p.y + y, p.z1)]));
  fill(page, faces, "paper");
  for (const face of faces) polyline(page, face, true, "narrow");
}

interface Wall { readonly points: readonly (readonly [number, number])[]; readonly far: number }

/** Runs of edges whose outer side faces the eye. */
function wallsOf(loop: ArrayLike<number>): Wall[] {
  const points = pairs(loop), n = points.length;
  const faces = points.map(([x, y], i) => {
    const [nx, ny] = points[(i + 1) % n]!;
    return away(ny - y, x - nx) < -1e-9;
  });
  const first = faces.findIndex((f, i) => f && !faces[(i + n - 1) % n]);
  if (first < 0) return [];
  const walls: Wall[] = [];
  for (let k = 0; k < n; k++) {
    const i = (first + k) % n;
    if (!faces[i]) continue;
    const run = [points[i]!];
    for (; k < n && faces[(first + k) % n]; k++) run.push(points[(first + k + 1) % n]!);
    walls.push({ points: run, far: run.reduce((sum, [x, y]) => sum + away(x, y), 0) / run.length });
  }
  return walls;
}

function drawWall(page: Page, { points }: Wall, p: Prism, eye: Eye): void {
  const high = points.map(([x, y]) => onPaper(eye, p.x + x, p.y + y, p.z1)), low = points.map(([x, y]) => onPaper(eye, p.x + x, p.y + y, p.z0));
  fill(page, [[...high, ...[...low].reverse()].flat()], "paper");
  polyline(page, low.flat(), false, "narrow");
  let last = -Infinity;
  points.forEach((_, i) => {
    const end = i === 0 || i === points.length - 1;
    if (!end && (!breaks(points[i - 1]!, points[i]!, points[i + 1]!) || Math.abs(high[i]![0] - last) < EDGES_MM)) return;
    last = high[i]![0];
    polyline(page, [...high[i]!, ...low[i]!], false, "narrow");
  });
}

function breaks(a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]): boolean {
  const ux = b[0] - a[0], uy = b[1] - a[1], vx = c[0] - b[0], vy = c[1] - b[1];
  return ux * vx + uy * vy < BREAK_COS * Math.hypot(ux, uy) * Math.hypot(vx, vy);
}

function pairs(loop: ArrayLike<number>): (readonly [number, number])[] {
  return Array.from({ length: Math.floor(loop.length / 2) }, (_, i) => [loop[2 * i]!, loop[2 * i + 1]!] as const);
}

/** Twice its area, mm²; below 0 for a hole. */
export function areaOf(loop: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0, j = loop.length - 2; i < loop.length; j = i, i += 2) sum += loop[j]! * loop[i + 1]! - loop[i]! * loop[j + 1]!;
  return sum;
}
