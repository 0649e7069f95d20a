// Two outlines followed through one whole cycle of their motion. The gap is a function of a few phases that run evenly;
// it changes by no more than a known slope a turn of each. Branch and bound over boxes of phases, kept to those that the
// motion really enters, gives the least gap and the first turn at which it is no more than asked: proven, not sampled.
import FlatQueue from "flatqueue";
import { evenly, recurrenceOf, type Phase, type Recurrence, type Stretch } from "../motion/recurrence.ts";
import { toNumber, type Ratio } from "../numeric/ratio.ts";
import { FOLLOW_MM, GAP_MM, TOUCH_MM } from "../numeric/tolerance.ts";

export interface Followed {
  readonly phases: readonly Phase[];
  /** mm, with each phase at so many turns; total, and never rising or falling faster than the slopes say. */
  gap(turns: readonly number[]): number;
  /** mm a turn, for each phase: 2π × the farthest reach that it swings. */
  readonly slopes: readonly number[];
  /** mm; no gap is less while each phase strays from where it is told to stand by no more than so many turns. Absent: only the slopes tell. */
  least?(turns: readonly number[], halves: readonly number[]): number;
}

export interface Nearest {
  readonly turns: number;
  readonly gap: number;
  readonly proved: boolean;
  /** The phases in boxes, without those that are never entered in time: a search for a first turn may begin with them. */
  readonly boxes: readonly Box[];
}

/** Boxes after which a search gives its best so far and says that it is not proved. */
const MOST_BOXES = 200_000;

/** The least gap of the whole cycle, or up to a turn, true to GAP_MM, and the first turn at which it is reached. */
export function leastGap(followed: Followed, untilTurns = Infinity): Nearest {
  const { phases } = followed;
  if (phases.length === 0) return { turns: 0, gap: followed.gap([]), proved: true, boxes: [] };
  const motion = recurrenceOf(phases), along = alongMotion(followed);
  const boxes = [whole(followed)], queue = new FlatQueue<number>();
  queue.push(0, boxes[0].least);
  let best = Infinity, turns = 0, proved = true;
  while (queue.length > 0 && (queue.peekValue() as number) < best - GAP_MM) {
    const box = boxes[queue.pop() as number];
    // A wide box that promises nothing better is halved without asking when it is entered.
    if (box.gap < best || box.reach < ASKED_MM) {
      const stretch = motion.enter(box, 0);
      if (stretch === null || (stretch !== "unknown" && stretch[0] > untilTurns)) continue;
      if (stretch === "unknown") proved = false;
      else for (const t of [stretch[0], Math.min(untilTurns, (stretch[0] + stretch[1]) / 2)]) {
        const gap = along(t);
        if (gap < best) { best = gap; turns = t; }
      }
    }
    if (boxes.length > MOST_BOXES) { proved = false; queue.push(boxes.push(box) - 1, box.least); break; }
    for (const half of halves(followed, box, best - GAP_MM)) queue.push(boxes.push(half) - 1, half.least);
  }
  const open: Box[] = [];
  for (let k = queue.pop(); k !== undefined; k = queue.pop()) open.push(boxes[k]);
  if (best === Infinity) return { turns: 0, gap: gapAt(followed, 0), proved: false, boxes: open };
  const first = firstAtMost(followed, best + FOLLOW_MM, 0, open);
  return first ? { ...nearHere(followed, first.turns, best, untilTurns), proved: proved && first.proved, boxes: open } : { turns, gap: best, proved, boxes: open };
}

/** The first turn, from 0 on, at which the gap is `mostMm` or less; null if there is none in the whole cycle. */
export function firstAtMost(followed: Followed, mostMm: number, fromTurns = 0, within: readonly Box[] | null = null): { turns: number; proved: boolean } | null {
  if (followed.phases.length === 0) return followed.gap([]) <= mostMm ? { turns: fromTurns, proved: true } : null;
  const motion = recurrenceOf(followed.phases);
  const ends = fromTurns + toNumber(motion.cycle), fine = followed.least === undefined ? FINE_MM : FINEST_MM;
  const speed = speedOf(followed), along = alongMotion(followed);
  const boxes: Box[] = [], stays: Stretch[] = [], queue = new FlatQueue<number>();
  let proved = true;
  for (const box of within ?? [whole(followed)]) add(box, fromTurns);
  for (let looked = 0; queue.length > 0 && proved; looked++) {
    const i = queue.pop() as number, box = boxes[i], [enters, leaves, next] = stays[i];
    if (box.gap + box.reach <= mostMm) return { turns: enters, proved };
    if (box.reach < fine) {
      const hit = walk(along, enters, leaves, mostMm, speed);
      if (hit !== null) return { turns: hit, proved };
      add(box, next);
    } else for (const half of halves(followed, box, mostMm)) add(half, enters);
    if (looked > MOST_BOXES) proved = false;
  }
  return proved ? null : { turns: fromTurns, proved };

  function add(box: Box, from: number): void {
    if (box.least > mostMm) return;
    const stretch = motion.enter(box, from);
    if (stretch === "unknown") proved = false;
    if (stretch === null || stretch === "unknown" || stretch[0] > ends) return;
    stays.push(stretch);
    queue.push(boxes.push(box) - 1, stretch[0]);
  }
}

/** The gap after so many turns of the input. */
export const gapAt = (followed: Followed, turns: number): number => alongMotion(followed)(turns);

/** The gap as a function of turns of the input. */
function alongMotion({ phases, gap }: Followed): (turns: number) => number {
  const stands = phases.map(evenly), at = phases.map(() => 0);
  return (turns) => {
    for (let i = 0; i < phases.length; i++) at[i] = stands[i](turns);
    return gap(at);
  };
}

/** Turns of the input after which the two stand to one another as before. */
export const cycleTurns = (motion: Recurrence): Ratio => motion.cycle;

/** mm of gap under which a box is walked along the motion instead of halved. */
const FINE_MM = 0.05;
/** The same where the motion's bends are known: halving then soon leaves nothing to walk. */
const FINEST_MM = 1e-4;

/** mm of gap over which a box is not asked for its first turn unless its middle is promising. */
const ASKED_MM = 1;

/** Phases from `low` up by `width`; `gap` in its middle, `reach` by how much it may change to the edges, `least` what it is nowhere under. */
export interface Box { readonly low: number[]; readonly width: number[]; readonly gap: number; readonly reach: number; readonly least: number }

const whole = (f: Followed): Box => boxOf(f, f.phases.map(() => 0), f.phases.map(() => 1), -Infinity);

const middle: number[] = [], halfWidths: number[] = [];

/** `enough`: a bound over this need be no better. Works in scratch. */
function boxOf(f: Followed, low: number[], width: number[], enough: number): Box {
  middle.length = halfWidths.length = low.length;
  let reach = 0;
  for (let i = 0; i < low.length; i++) {
    halfWidths[i] = width[i] / 2;
    middle[i] = low[i] + halfWidths[i];
    reach += halfWidths[i] * f.slopes[i];
  }
  const gap = f.gap(middle), bySlopes = gap - reach;
  const least = bySlopes > enough || reach > BENDING_MM || f.least === undefined ? bySlopes : Math.max(bySlopes, f.least(middle, halfWidths));
  return { low, width, gap, reach, least };
}

/** mm of reach over which the bends of a motion leave its slopes as good a bound. */
const BENDING_MM = 8;

/** Halved across the side along which the gap can change most. */
function halves(f: Followed, { low, width }: Box, enough: number): [Box, Box] {
  let side = 0;
  for (let i = 1; i < width.length; i++) if (width[i] * f.slopes[i] > width[side] * f.slopes[side]) side = i;
  const half = width.slice(), upper = low.slice();
  half[side] /= 2;
  upper[side] += half[side];
  return [boxOf(f, low, half, enough), boxOf(f, upper, half, enough)];
}

const speedOf = (f: Followed): number => f.phases.reduce((sum, p, i) => sum + f.slopes[i] * Math.abs(toNumber(p.rate)), 0);

/** Steps along the motion by as much as the gap certainly allows; the turn at which it is no more than asked, or null. */
function walk(along: (turns: number) => number, from: number, to: number, mostMm: number, speed: number): number | null {
  for (let t = from; t <= to; ) {
    const spare = along(t) - mostMm;
    if (spare <= 0) return t;
    // And never by less than a double can tell after so many turns.
    t += Math.max(Math.max(spare, FOLLOW_MM) / speed, Math.abs(t) * 2 ** -50);
  }
  return null;
}

/** From a turn at which the least gap is all but reached to where it is least, by ever smaller steps along the motion. */
function nearHere(followed: Followed, from: number, least: number, untilTurns: number): { turns: number; gap: number } {
  const along = alongMotion(followed);
  let turns = from, gap = along(from);
  for (let step = FINE_MM / speedOf(followed); step * speedOf(followed) > TOUCH_MM; step /= 2)
    for (const t of [turns - step, turns + step]) {
      const there = t >= 0 && t <= untilTurns ? along(t) : Infinity;
      if (there < gap) { gap = there; turns = t; }
    }
  return { turns, gap: Math.min(gap, least) };
}
