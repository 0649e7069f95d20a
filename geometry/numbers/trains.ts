// Finding numbers: every train of so many engagements whose drivers over driven come within a stated relative error of
// a wanted ratio. Complete by construction: all products of drivers are held against all products of driven.
// The textbook method is a search over products of cuttable counts; continued fractions alone lead to primes.
import { ratio, toNumber, type Ratio } from "../numeric/ratio.ts";
import { QUOTIENT_RATIO } from "../numeric/tolerance.ts";
import { expectedTrains } from "./expected.ts";
import { EXACT_PRODUCT, type Halves, halvesOf, pairsOf, productsBetween, setsOf, setsWithProduct } from "./products.ts";

export interface TrainSearch {
  /** Drivers over driven, above 0. */
  readonly wanted: Ratio;
  /** Greatest relative error, as an exact ratio, 0 or more. */
  readonly within: Ratio;
  readonly engagements: number;
  /** Counts that may be cut: whole numbers of 1 or more. Either side takes any of them. */
  readonly counts: readonly number[];
  /** A driver that must be among the drivers: a wheel that is there to lead off from. */
  readonly leadOff?: number;
  /** Most trains to list (default a million); the best are kept and the list is then not exhaustive. */
  readonly most?: number;
}

export interface FoundTrain {
  /** Largest first. */
  readonly drivers: readonly number[];
  readonly driven: readonly number[];
  readonly ratio: Ratio;
  /** ratio / wanted − 1, signed. */
  readonly error: number;
}

export interface FoundTrains {
  /** Every train within the limits is in the list. */
  readonly exhaustive: boolean;
  /** Best first: least error, then fewest teeth, then smallest largest wheel. */
  readonly trains: readonly FoundTrain[];
  /** Why the list is not exhaustive, or why there is nothing to search, and what would mend it; null where all is well. */
  readonly says: string | null;
}

/** Sets of counts on one side beyond which a search is not begun: about half a minute. */
export const MOST_SETS = 1e8;
const MOST_TRAINS = 1_000_000;
/** Trains within the error beyond which a search is not begun either: to look for the best of them takes some ten seconds. */
const MOST_NEAR = 1e7;
/** Pairs that are not worth sorting yet. */
const FEW = 10_000;
/** Products that are held at one time: a search of four engagements then needs a few megabytes. */
const SLICE = 1 << 17;

/**
 * Runs as a generator: each step yields how much is done (0 to 1), so that a caller can show progress and stop by not
 * asking on. Returns every train within the limits, or says in words why it cannot.
 */
export function* searchTrains(search: TrainSearch): Generator<number, FoundTrains> {
  const refusal = refusalOf(search);
  if (refusal) return { exhaustive: false, trains: [], says: refusal };
  const counts = [...new Set(search.counts)].sort((a, b) => a - b);
  const lead = search.leadOff ?? 1;
  const leadSize = search.leadOff === undefined ? 0 : 1;
  const wanted = search.wanted.div(ratio(lead));
  yield 0;
  const driven = halvesOf(counts, search.engagements);
  const drivers = leadSize === 0 ? driven : halvesOf(counts, search.engagements - 1);
  const most = search.most ?? MOST_TRAINS;
  const pairs = yield* nearPairs(drivers, driven, wanted, search.within, most);
  const trains: FoundTrain[] = [];
  let cut = pairs.cut;
  const topsOf = onceEach((product) => setsWithProduct(counts, search.engagements - leadSize, product));
  const bottomsOf = onceEach((product) => setsWithProduct(counts, search.engagements, product));
  for (const pair of pairs.found) {
    if (trains.length >= most) { cut = true; break; }
    const tops = topsOf(pair.driver), bottoms = bottomsOf(pair.driven), value = ratio(BigInt(pair.driver) * BigInt(lead), BigInt(pair.driven));
    for (const top of tops) for (const bottom of bottoms) {
      const all = leadSize ? [...top, lead].sort((a, b) => b - a) : top;
      trains.push({ drivers: all, driven: bottom, ratio: value, error: pair.error });
    }
  }
  trains.sort(bestFirst);
  if (trains.length > most) { trains.length = most; cut = true; }
  return { exhaustive: !cut, trains, says: cut ? cutSays(most) : onlyExact(search, driven.greatest) ? ONLY_EXACT : null };
}

const ONLY_EXACT = "An error so small is finer than any two ratios of such counts differ by: only trains that are exact come within it.";

/** Finer than doubles tell apart, and than the least error that is not 0: one over the greatest product driven, and the terms wanted. */
const onlyExact = ({ wanted, within }: TrainSearch, greatestDriven: number): boolean =>
  within.n !== 0n && toNumber(within) < Number.EPSILON && within.n * BigInt(greatestDriven) * wanted.n < within.d;

export const cutSays = (most: number): string =>
  `More than ${most} trains come so near; only the best are listed. A smaller error, or fewer counts, lists them all.`;

/** The whole search at once. */
export function findTrains(search: TrainSearch): FoundTrains {
  const run = searchTrains(search);
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}

/** Teeth in all. */
export const teethTotal = (t: FoundTrain): number =>
  t.drivers.reduce((a, b) => a + b, 0) + t.driven.reduce((a, b) => a + b, 0);

/** The largest wheel. */
export const largestOf = (t: FoundTrain): number => Math.max(...t.drivers, ...t.driven);

/** A product meets many others: its sets are worked out once. */
function onceEach(sets: (product: number) => number[][]): (product: number) => number[][] {
  const known = new Map<number, number[][]>();
  return (product) => {
    const found = known.get(product) ?? sets(product);
    known.set(product, found);
    return found;
  };
}

interface Pair { readonly driver: number; readonly driven: number; readonly error: number }

/**
 * Pairs of products within the error, best first. The driven products are gone through in slices, each against the
 * drivers that could match it, with two fingers; floats propose, whole numbers decide. Where too many come near, only
 * better ones than the worst kept are looked for from there on.
 */
function* nearPairs(drivers: Halves, driven: Halves, wanted: Ratio, within: Ratio, most: number): Generator<number, { found: Pair[]; cut: boolean }> {
  const w = toNumber(wanted), eps = toNumber(within);
  const nearEnough = exactTest(wanted, within);
  let found: Pair[] = [];
  let worst = Infinity;
  const from = Math.max(driven.least, Math.floor((drivers.least / w / (1 + eps)) * (1 - QUOTIENT_RATIO)));
  const to = Math.min(driven.greatest, eps < 1 ? Math.ceil((drivers.greatest / w / (1 - eps)) * (1 + QUOTIENT_RATIO)) : Infinity);
  const slices = Math.max(1, Math.ceil((4 * pairsOf(driven)) / SLICE));
  const edge = (k: number) => Math.floor(from * (to / from) ** (k / slices));
  for (let k = 0; k < slices && from <= to; k++) {
    yield k / slices;
    const below = productsBetween(driven, k === 0 ? from : edge(k) + 1, k === slices - 1 ? to : edge(k + 1));
    if (below.length === 0) continue;
    const above = productsBetween(drivers, below[0] * w * (1 - eps) * (1 - QUOTIENT_RATIO), below[below.length - 1] * w * (1 + eps) * (1 + QUOTIENT_RATIO));
    let low = 0;
    for (const v of below) {
      const slack = Math.min(eps, worst) + QUOTIENT_RATIO, least = v * w * (1 - slack), greatest = v * w * (1 + slack);
      while (low < above.length && above[low] < least) low++;
      for (let i = low; i < above.length && above[i] <= greatest; i++) {
        if (!nearEnough(above[i], v)) continue;
        const error = errorOf(above[i], v, wanted);
        if (Math.abs(error) <= worst) found.push({ driver: above[i], driven: v, error });
      }
      // Every pair is a train at least, so no more pairs than trains can be wanted.
      if (found.length > 2 * most + FEW) {
        found = found.sort(byError).slice(0, most + 1);
        worst = Math.abs(found[found.length - 1].error);
      }
    }
  }
  return { found: found.sort(byError), cut: worst < Infinity };
}

const byError = (a: Pair, b: Pair): number => Math.abs(a.error) - Math.abs(b.error) || a.driven - b.driven;

/** Whether |D/V − w| ≤ ε w: by doubles where they are sure, else in whole numbers. */
function exactTest(wanted: Ratio, within: Ratio): (driver: number, driven: number) => boolean {
  const p = wanted.n, q = wanted.d;
  const w = toNumber(wanted), eps = toNumber(within);
  return (driver, driven) => {
    if (Math.abs(driver / (driven * w) - 1) < eps - QUOTIENT_RATIO) return true;
    const difference = BigInt(driver) * q - BigInt(driven) * p;
    const size = difference < 0n ? -difference : difference;
    return size * within.d <= within.n * BigInt(driven) * p;
  };
}

/** D/V / w − 1 to full precision: the difference is taken in whole numbers before it is rounded. */
function errorOf(driver: number, driven: number, wanted: Ratio): number {
  const difference = BigInt(driver) * wanted.d - BigInt(driven) * wanted.n;
  if (difference === 0n) return 0;
  const whole = BigInt(driven) * wanted.n, error = Number(difference) / Number(whole);
  return Number.isFinite(error) ? error : toNumber(ratio(difference, whole));
}

/** Least error, then fewest teeth, then smallest largest wheel. */
export function bestFirst(a: FoundTrain, b: FoundTrain): number {
  return Math.abs(a.error) - Math.abs(b.error) || teethTotal(a) - teethTotal(b) || largestOf(a) - largestOf(b)
    || inOrder(b.drivers, a.drivers) || inOrder(b.driven, a.driven);
}

function inOrder(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i] - b[i];
  return 0;
}

function refusalOf(s: TrainSearch): string | null {
  if (s.wanted.n === 0n || s.wanted.s < 0n) return "The wanted ratio must be above 0; say contrary for the other way round.";
  if (s.within.s < 0n) return "The error must be 0 or more.";
  if (s.within.n !== 0n && toNumber(s.within) >= 1) return "An error of 1 or more admits everything; give it as a part of the ratio, such as 0.000001.";
  if (!Number.isInteger(s.engagements) || s.engagements < 1) return "At least one engagement is wanted.";
  if (s.counts.length === 0) return "There is no count in these ranges; widen the wheels or the pinions.";
  if (s.counts.some((c) => !Number.isSafeInteger(c) || c < 1)) return "Counts are whole numbers of 1 or more.";
  const n = new Set(s.counts).size;
  const sets = setsOf(n, s.engagements);
  if (sets > MOST_SETS)
    return `${n} counts on ${s.engagements} engagements make ${sets.toPrecision(2)} sets on each side, beyond the ${MOST_SETS.toPrecision(1)} that can be proved complete; fewer engagements, or narrower ranges, would make it answerable.`;
  if (Math.max(...s.counts) ** s.engagements > EXACT_PRODUCT)
    return "The products of these counts pass the reach of exact arithmetic; use fewer engagements or smaller counts.";
  const near = expectedTrains(s.counts, s.engagements - (s.leadOff === undefined ? 0 : 1), s.engagements, toNumber(s.wanted) / (s.leadOff ?? 1), toNumber(s.within));
  if (near > MOST_NEAR)
    return `Some ${near.toPrecision(1)} trains come within an error of ${toNumber(s.within)}, more than can be listed; an error of ${((toNumber(s.within) * MOST_TRAINS) / near / 2).toPrecision(1)}, or fewer counts, would make it answerable.`;
  return null;
}
