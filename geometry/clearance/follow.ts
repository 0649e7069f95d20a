// Two outlines followed through one whole cycle of their motion. The gap is a function of a few phases that run evenly;
// it changes by no more than a known slope a turn of each. Branch and bound over boxes of phases, kept to those that the
// motion really enters, gives the least gap and the first turn at which it is no more than asked: proven, not sampled.
import FlatQueue from "flatqueue";
import { recurrenceOf, phaseAt, type Phase, type Recurrence } from "../motion/recurrence.ts";
import { toNumber, type Ratio } from "../numeric/ratio.ts";
import { FOLLOW_MM, GAP_MM, TOUCH_MM } from "../numeric/tolerance.ts";

export interface Followed {
  readonly phases: readonly Phase[];
  /** mm, with each phase at so many turns; total, and never rising or falling faster than the slopes say. */
  gap(turns: readonly number[]): number;
  /** mm a turn, for each phase: 2π × the farthest reach that it swings. */
  readonly slopes: readonly number[];
}

export interface Nearest { readonly turns: number; readonly gap: number; readonly proved: boolean }

/** Boxes after which a search gives its best so far and says that it is not proved. */
const MOST_BOXES = 200_000;

/** The least gap of the whole cycle, or up to a turn, true to GAP_MM, and the first turn at which it is reached. */
export function leastGap(followed: Followed, untilTurns = Infinity): Nearest {
  const { phases } = followed;
  if (phases.length === 0) return { turns: 0, gap: followed.gap([]), proved: true };
  const motion = recurrenceOf(phases), along = alongMotion(followed);
  const search = begin(followed);
  let best = Infinity, turns = 0, proved = true;
  while (search.queue.length > 0) {
    const lower = search.queue.peekValue() as number;
    if (lower >= best - GAP_MM) break;
    const box = search.boxes[search.queue.pop() as number];
    const stretch = motion.enter(box, 0);
    if (stretch === null || (stretch !== "unknown" && stretch[0] > untilTurns)) continue;
    if (stretch === "unknown") proved = false;
    else for (const t of [stretch[0], Math.min(untilTurns, (stretch[0] + stretch[1]) / 2)]) {
      const gap = along(t);
      if (gap < best) { best = gap; turns = t; }
    }
    if (search.boxes.length > MOST_BOXES) { proved = false; break; }
    for (const half of halves(box, followed.slopes)) add(search, half, lowerBound(followed, half));
  }
  if (best === Infinity) return { turns: 0, gap: gapAt(followed, 0), proved: false };
  const first = firstAtMost(followed, best + FOLLOW_MM);
  return first ? nearHere(followed, first.turns, best, proved && first.proved, untilTurns) : { turns, gap: best, proved };
}

/** The first turn, from 0 on, at which the gap is `mostMm` or less; null if there is none in the whole cycle. */
export function firstAtMost(followed: Followed, mostMm: number, fromTurns = 0): { turns: number; proved: boolean } | null {
  if (followed.phases.length === 0) return followed.gap([]) <= mostMm ? { turns: fromTurns, proved: true } : null;
  const motion = recurrenceOf(followed.phases);
  const ends = fromTurns + toNumber(motion.cycle);
  const speed = speedOf(followed), along = alongMotion(followed);
  const search = begin(followed);
  const waiting: number[] = [fromTurns, Infinity];
  search.queue.clear();
  queueEntry(0, fromTurns);
  let proved = true;
  while (search.queue.length > 0 && proved) {
    const i = search.queue.pop() as number;
    const box = search.boxes[i];
    const centre = centreGap(followed, box), reach = reachOf(box, followed.slopes);
    if (centre - reach > mostMm) continue;
    if (centre + reach <= mostMm) return { turns: waiting[2 * i], proved };
    if (reach < FINE_MM) {
      const hit = walk(along, waiting[2 * i], waiting[2 * i + 1], mostMm, speed);
      if (hit !== null) return { turns: hit, proved };
      queueEntry(i, waiting[2 * i + 1] + PAST_TURNS);
      continue;
    }
    for (const half of halves(box, followed.slopes)) {
      search.boxes.push(half);
      queueEntry(search.boxes.length - 1, waiting[2 * i]);
    }
    if (search.boxes.length > MOST_BOXES) proved = false;
  }
  return proved ? null : { turns: fromTurns, proved };

  function queueEntry(i: number, from: number): void {
    const stretch = motion.enter(search.boxes[i], from);
    if (stretch === "unknown") proved = false;
    if (stretch === null || stretch === "unknown" || stretch[0] > ends) return;
    waiting[2 * i] = stretch[0];
    waiting[2 * i + 1] = stretch[1];
    search.queue.push(i, stretch[0]);
  }
}

/** The gap after so many turns of the input. */
export const gapAt = (followed: Followed, turns: number): number => alongMotion(followed)(turns);

/** The gap as a function of turns of the input. */
function alongMotion({ phases, gap }: Followed): (turns: number) => number {
  const rates = phases.map((p) => toNumber(p.rate)), at = phases.map(() => 0);
  return (turns) => {
    for (let i = 0; i < phases.length; i++) at[i] = phaseAt(phases[i], rates[i], turns);
    return gap(at);
  };
}

/** Turns of the input after which the two stand to one another as before. */
export const cycleTurns = (motion: Recurrence): Ratio => motion.cycle;

/** mm of gap under which a box is walked along the motion instead of halved. */
const FINE_MM = 0.05;
/** turns; past the end of a stretch by more than the pad of its interval. */
const PAST_TURNS = 1e-7;

interface Box { readonly low: number[]; readonly width: number[] }
interface Search { readonly boxes: Box[]; readonly queue: FlatQueue<number> }

function begin(followed: Followed): Search {
  const search: Search = { boxes: [], queue: new FlatQueue<number>() };
  const all: Box = { low: followed.phases.map(() => 0), width: followed.phases.map(() => 1) };
  add(search, all, -Infinity);
  return search;
}

function add(search: Search, box: Box, priority: number): void {
  search.boxes.push(box);
  search.queue.push(search.boxes.length - 1, priority);
}

/** Halved across the side along which the gap can change most. */
function halves(box: Box, slopes: readonly number[]): [Box, Box] {
  let side = 0;
  for (let i = 1; i < slopes.length; i++) if (box.width[i] * slopes[i] > box.width[side] * slopes[side]) side = i;
  const width = box.width.slice(), low = box.low.slice();
  width[side] /= 2;
  low[side] += width[side];
  return [{ low: box.low, width }, { low, width }];
}

function centreGap(f: Followed, box: Box): number {
  const at = box.low.slice();
  for (let i = 0; i < at.length; i++) at[i] += box.width[i] / 2;
  return f.gap(at);
}

function reachOf(box: Box, slopes: readonly number[]): number {
  let reach = 0;
  for (let i = 0; i < slopes.length; i++) reach += (box.width[i] / 2) * slopes[i];
  return reach;
}

const lowerBound = (f: Followed, box: Box): number => centreGap(f, box) - reachOf(box, f.slopes);
const speedOf = (f: Followed): number => f.phases.reduce((sum, p, i) => sum + f.slopes[i] * Math.abs(toNumber(p.rate)), 0);

/** Steps along the motion by as much as the gap certainly allows; the turn at which it is no more than asked, or null. */
function walk(along: (turns: number) => number, from: number, to: number, mostMm: number, speed: number): number | null {
  for (let t = from; t <= to; ) {
    const spare = along(t) - mostMm;
    if (spare <= 0) return t;
    t += Math.max(spare, FOLLOW_MM) / speed;
  }
  return null;
}

/** From a turn at which the least gap is all but reached to where it is least, by ever smaller steps along the motion. */
function nearHere(followed: Followed, from: number, least: number, proved: boolean, untilTurns: number): Nearest {
  const along = alongMotion(followed);
  let turns = from, gap = along(from);
  for (let step = FINE_MM / speedOf(followed); step * speedOf(followed) > TOUCH_MM; step /= 2)
    for (const t of [turns - step, turns + step]) {
      const there = t >= 0 && t <= untilTurns ? along(t) : Infinity;
      if (there < gap) { gap = there; turns = t; }
    }
  return { turns, gap: Math.min(gap, least), proved };
}
