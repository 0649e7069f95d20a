// A crowd spread out: points moved until the least that any pair has to spare is as much as it can be, every bar at its
// length. Each sweep pushes apart what has less than is asked for and brings bars back, one after another; what is asked
// for rises while that succeeds. Lengths in mm; places as x, y of each point in turn.
import { restore, trussOf, type Points } from "../planting/relax.ts";
import { spareOf, wallSpare, type Crowd, type Rub, type Wall } from "./crowd.ts";

export interface Standing {
  readonly points: Points;
  /** Pairs with nothing left at all. */
  readonly fouls: number;
  /** The least that any pair has over what is wanted. */
  readonly spare: number;
  /** What all that want something lack, in sum. */
  readonly lacking: number;
  /** Whether every bar has its length. */
  readonly inGear: boolean;
}

/** Sweeps for each rise of what is asked for; how often it rises; the first rise, and the last that matters. */
const SWEEPS = 60, RISES = 28, FIRST_RISE_MM = 1, LAST_RISE_MM = 1e-4;
/** Sweeps to bring a rough start into order. */
const ROUGH_SWEEPS = 200, STAGES = 8;
/** Gaps nearer than this are one: they then differ only by how a sweep came to its end. */
const SAME_GAP_MM = 1e-6;

export function spread(crowd: Crowd, start: Points): Standing {
  const points = start.slice();
  let best = looseEnds(crowd, start);
  // Things grow to their size from nothing, so that a tangle can pass through itself while there is room.
  const widest = crowd.rubs.reduce((most, r) => (r.to < Infinity ? Math.max(most, r.to) : most), 0);
  for (let stage = 1; stage <= STAGES; stage++) sweep(crowd, points, widest * (stage / STAGES - 1), ROUGH_SWEEPS / STAGES);
  best = betterOf(best, looseEnds(crowd, points));
  sweep(crowd, points, 0, ROUGH_SWEEPS);
  best = betterOf(best, looseEnds(crowd, points));
  let rise = FIRST_RISE_MM;
  for (let i = 0; i < RISES && rise > LAST_RISE_MM; i++) {
    points.set(best.points);
    sweep(crowd, points, Math.max(0, best.spare) + rise, SWEEPS);
    const next = looseEnds(crowd, points);
    const better = betterOf(best, next);
    rise *= better === best ? 0.5 : 1.3;
    best = better;
  }
  return best;
}

/** In gear first, then fewest fouls, then the least with most to spare, then least lacking in all. */
export function isBetter(next: Standing, than: Standing): boolean {
  if (next.inGear !== than.inGear) return next.inGear;
  if (next.fouls !== than.fouls) return next.fouls < than.fouls;
  if (Math.abs(next.spare - than.spare) > SAME_GAP_MM) return next.spare > than.spare;
  return next.lacking < than.lacking - SAME_GAP_MM;
}

const betterOf = (one: Standing, next: Standing): Standing => (isBetter(next, one) ? next : one);

/** The places as they are once every bar is at its length. */
export function looseEnds(crowd: Crowd, at: Points): Standing {
  const points = at.slice();
  const inGear = crowd.bars.length === 0 || restore(trussOf(crowd.bars, new Float64Array(crowd.groups.length).fill(1)), points);
  let spare = Infinity, lacking = 0, fouls = 0;
  forEachSpare(crowd, points, (left, { wanted }) => {
    if (left < spare) spare = left;
    if (left < 0) lacking -= left;
    if (left <= -wanted) fouls++;
  });
  return { points, inGear, spare, lacking, fouls };
}

export interface Tightest {
  readonly between: readonly [string, string];
  readonly spare: number;
  readonly wanted: number;
  /** The point that it holds. */
  readonly point: number;
}

/** The pair with least to spare; `all`: those too that no place helps. */
export function tightest(crowd: Crowd, points: Points, all: boolean): Tightest | null {
  let least: Tightest | null = null;
  const rubs = all ? [...crowd.rubs, ...crowd.stuck] : crowd.rubs;
  forEachSpare({ ...crowd, rubs }, points, (spare, { wanted, between, a }) => { if (least === null || spare < least.spare) least = { between, spare, wanted, point: a }; });
  return least;
}

function forEachSpare({ rubs, walls }: Crowd, p: Points, see: (spare: number, of: Rub | Wall) => void): void {
  for (const r of rubs) {
    const x = p[2 * r.a] + r.shiftX - (r.b < 0 ? 0 : p[2 * r.b]), y = p[2 * r.a + 1] + r.shiftY - (r.b < 0 ? 0 : p[2 * r.b + 1]);
    see(spareOf(r, Math.sqrt(x * x + y * y)), r);
  }
  for (const w of walls) see(wallSpare(w, p[2 * w.a], p[2 * w.a + 1]).spare, w);
}

function sweep(crowd: Crowd, p: Points, asked: number, sweeps: number): void {
  for (let i = 0; i < sweeps; i++) {
    const moved = push(crowd, p, asked) + stretch(crowd, p);
    if (moved < LAST_RISE_MM) return;
  }
}

/** Every pair with less than is asked for is parted, the two halves of the way each; gives how far anything had to go. */
function push({ rubs, walls }: Crowd, p: Points, asked: number): number {
  let most = 0;
  for (const r of rubs) {
    const { a, b } = r;
    let x = p[2 * a] + r.shiftX - (b < 0 ? 0 : p[2 * b]), y = p[2 * a + 1] + r.shiftY - (b < 0 ? 0 : p[2 * b + 1]);
    let apart = Math.sqrt(x * x + y * y);
    const lacks = asked - spareOf(r, apart);
    if (lacks <= 0) continue;
    // Two axes in one place are parted one way or another, each pair its own way.
    if (apart === 0) { x = Math.cos(a + 3 * b); y = Math.sin(a + 3 * b); apart = 1; }
    const outward = apart - r.to >= (r.from > 0 ? r.from - apart : -Infinity) ? 1 : -1;
    const by = (outward * lacks) / apart / (b < 0 ? 1 : 2);
    p[2 * a] += by * x;
    p[2 * a + 1] += by * y;
    if (b >= 0) { p[2 * b] -= by * x; p[2 * b + 1] -= by * y; }
    if (lacks > most) most = lacks;
  }
  for (const w of walls) {
    const { spare, ux, uy } = wallSpare(w, p[2 * w.a], p[2 * w.a + 1]);
    const lacks = asked - spare;
    if (lacks <= 0) continue;
    p[2 * w.a] += lacks * ux;
    p[2 * w.a + 1] += lacks * uy;
    if (lacks > most) most = lacks;
  }
  return most;
}

function stretch({ bars }: Crowd, p: Points): number {
  let most = 0;
  for (const { a, b, distance, shiftX, shiftY } of bars) {
    const x = (a < 0 ? 0 : p[2 * a]) + shiftX - (b < 0 ? 0 : p[2 * b]), y = (a < 0 ? 0 : p[2 * a + 1]) + shiftY - (b < 0 ? 0 : p[2 * b + 1]);
    const length = Math.sqrt(x * x + y * y);
    if (length === 0) continue;
    const off = distance - length, by = off / length / (a >= 0 && b >= 0 ? 2 : 1);
    if (a >= 0) { p[2 * a] += by * x; p[2 * a + 1] += by * y; }
    if (b >= 0) { p[2 * b] -= by * x; p[2 * b + 1] -= by * y; }
    most = Math.max(most, Math.abs(off));
  }
  return most;
}
