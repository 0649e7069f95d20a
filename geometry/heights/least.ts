// The least height in which levels can stand one over another. Levels are heights above a base; some must stand so much
// over others, and of two that may not share a height either may be the upper. Branch and bound: with the orders chosen so
// far every level takes the least height that they ask for (the longest path, R. Bellman 1958), which no further choice
// can lower; the first pair that still shares a height is then put the one way and the other. Lengths in mm.
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";

/** Level `over` stands at least `by` above level `under`; 0 is the base, 1 the top whose height is to be least. */
export interface Lift {
  readonly over: number;
  readonly under: number;
  readonly by: number;
}

export interface Stack {
  /** How many levels there are, base and top included. */
  readonly levels: number;
  readonly lifts: readonly Lift[];
  /** Of each, one must hold. */
  readonly choices: readonly (readonly Lift[])[];
}

export interface Stacked {
  /** Height of every level; null until a first order was found. */
  readonly heights: Float64Array | null;
  /** Every order was tried or ruled out. */
  readonly proved: boolean;
  /** Share of the orders that was tried or ruled out, 0 to 1. */
  readonly done: number;
}

/** Branches looked at between two steps, and at most in all. */
const BRANCHES_A_STEP = 400;
export const MOST_BRANCHES = 40_000;

export interface HowToStack {
  readonly branches?: number;
  /** From 0 to 1: shuffles which pair is settled first, where not all orders can be tried. */
  readonly random?: (() => number) | null;
  /** Only what is lower than this is of use. */
  readonly below?: number;
}

/** Step by step. */
export function* leastStack(stack: Stack, { branches = MOST_BRANCHES, random = null, below = Infinity }: HowToStack = {}): Generator<Stacked, Stacked, void> {
  const net = netOf(stack);
  const start = raised(net, [], new Float64Array(stack.levels).fill(-Infinity), stack.lifts, Infinity);
  if (start === null) return { heights: null, proved: true, done: 1 };
  let best: Float64Array | null = null, done = 0, count = 0;
  const open: Branch[] = [{ heights: start, chosen: [], share: 1 }];
  while (open.length > 0 && count < branches) {
    const branch = open.pop() as Branch;
    if (++count % BRANCHES_A_STEP === 0) yield { heights: best, proved: false, done };
    const bound: number = best === null ? below : best[1] - AT_LIMIT_MM;
    if (branch.heights[1] >= bound) { done += branch.share; continue; }
    const next = unsettled(stack, branch.heights, random);
    if (next === null) {
      best = branch.heights;
      done += branch.share;
      continue;
    }
    const ways = next.map((lift) => waysOn(net, branch, lift, bound, next.length)).filter((b) => b !== null);
    if (ways.length === 0) done += branch.share;
    // The lowest way is followed first: last in, first out.
    else open.push(...ways.map((b) => ({ ...b, share: branch.share / ways.length })).sort((a, b) => heightOf(b) - heightOf(a)));
  }
  return { heights: best, proved: open.length === 0, done: open.length === 0 ? 1 : done };
}

/**
 * The same order with the air shared out: every level half way between the least and the greatest height that its order
 * leaves it under the same top. Both keep every lift, and so does their middle.
 */
export function sharedOut(stack: Stack, heights: Float64Array): Float64Array {
  const holds = ({ over, under, by }: Lift) => heights[over] >= heights[under] + by - AT_LIMIT_MM;
  const lifts = [...stack.lifts, ...stack.choices.map((c) => c.find(holds) ?? c[0])];
  const highest = new Float64Array(heights.length).fill(Infinity);
  highest[1] = heights[1];
  for (let round = 0, moved = true; moved && round <= heights.length; round++) {
    moved = false;
    for (const { over, under, by } of lifts)
      if (highest[over] - by < highest[under] - AT_LIMIT_MM / 1000) { highest[under] = highest[over] - by; moved = true; }
  }
  return heights.map((h, i) => (i < 2 || highest[i] === Infinity || highest[i] < h ? h : (h + highest[i]) / 2));
}

/** Whether a lift could hold beside what must hold in any case. */
export function isPossible(stack: Stack, lift: Lift): boolean {
  return raised(netOf(stack), [lift], new Float64Array(stack.levels).fill(-Infinity), [...stack.lifts, lift], Infinity) !== null;
}

interface Branch {
  readonly heights: Float64Array;
  readonly chosen: readonly Lift[];
  readonly share: number;
}

/** The height of the top and, among equals, of all levels together. */
const heightOf = ({ heights }: Branch): number => heights[1] + 1e-3 * heights.reduce((sum, h) => sum + (h > 0 ? h : 0), 0) / heights.length;

function waysOn(net: Net, branch: Branch, lift: Lift, bound: number, ways: number): Branch | null {
  const chosen = [...branch.chosen, lift];
  const heights = raised(net, chosen, branch.heights, [lift], bound);
  return heights === null ? null : { heights, chosen, share: branch.share / ways };
}

/** Of the pairs that share a height the one that would have to be lifted most. */
function unsettled({ choices }: Stack, heights: Float64Array, random: (() => number) | null): readonly Lift[] | null {
  let worst: readonly Lift[] | null = null, most = AT_LIMIT_MM;
  for (const choice of choices) {
    let least = Infinity;
    for (const { over, under, by } of choice) least = Math.min(least, heights[under] + by - heights[over]);
    if (least <= AT_LIMIT_MM) continue;
    const weight = random === null ? least : least * random();
    if (worst === null || weight > most) { most = weight; worst = choice; }
  }
  return worst;
}

/** By level, the lifts that rise from it. */
type Net = readonly (readonly Lift[])[];

function netOf({ levels, lifts }: Stack): Net {
  const net: Lift[][] = Array.from({ length: levels }, () => []);
  for (const lift of lifts) net[lift.under].push(lift);
  return net;
}

/** Heights raised until all lifts hold; null where that has no end (a ring of lifts that adds up) or the top passes the bound. */
function raised(net: Net, chosen: readonly Lift[], from: Float64Array, changed: readonly Lift[], bound: number): Float64Array | null {
  const heights = from.slice();
  heights[0] = Math.max(heights[0], 0);
  /** By level: how many lifts, one upon another, raised it. */
  const hops = new Int32Array(heights.length);
  const queue: number[] = [];
  const apply = ({ over, under, by }: Lift): boolean => {
    const least = heights[under] + by;
    if (least <= heights[over] + (heights[over] === -Infinity ? 0 : AT_LIMIT_MM / 1000)) return true;
    // The base stands; more lifts one upon another than there are levels are a ring.
    hops[over] = hops[under] + 1;
    if (over === 0 || hops[over] > heights.length || (over === 1 && least >= bound)) return false;
    heights[over] = least;
    queue.push(over);
    return true;
  };
  for (const lift of changed) if (!apply(lift)) return null;
  for (let i = 0; i < queue.length; i++) {
    const level = queue[i];
    for (const lift of net[level]) if (!apply(lift)) return null;
    for (const lift of chosen) if (lift.under === level && !apply(lift)) return null;
  }
  return heights;
}
