// What a found train costs and how true it stays, and ranking by what the maker cares for.
import { type Cutter, gearingOf, type Instrument } from "../instrument.ts";
import { headOf, isAwkward, isServed } from "./counts.ts";
import type { Head } from "./dividing.ts";
import { orders } from "./several.ts";
import { largestOf, teethTotal, type FoundTrain } from "./trains.ts";

export type Merit = "error" | "teeth" | "wheels" | "largest" | "cutters" | "awkward";
export const MERITS: readonly Merit[] = ["error", "teeth", "wheels", "largest", "cutters", "awkward"];
/** How much each counts, 0 or more; what is left out counts nothing. */
export type Weights = Partial<Record<Merit, number>>;

export interface Workshop {
  readonly head?: Head;
  readonly cutters?: readonly Cutter[];
}

/** The maker's head, and of the cutters owned those of the module and form that a new train is cut to. */
export function workshopOf(instrument: Instrument): Workshop {
  const { division, cutters } = instrument, { module, form } = gearingOf(instrument);
  return {
    ...(division === undefined ? {} : { head: headOf(division) }),
    ...(cutters === undefined ? {} : { cutters: cutters.filter((c) => c.module === module && c.form === form) }),
  };
}

/** The figures of one train, each the less the better. */
export function meritsOf(train: FoundTrain, { head, cutters }: Workshop): Readonly<Record<Merit, number>> {
  const counts = [...new Set([...train.drivers, ...train.driven])];
  return {
    error: Math.abs(train.error), teeth: teethTotal(train), wheels: train.drivers.length + train.driven.length, largest: largestOf(train),
    cutters: cutters === undefined ? 0 : counts.filter((n) => !isServed(n, cutters)).length,
    awkward: head === undefined ? 0 : counts.filter((n) => isAwkward(n, head)).length,
  };
}

/** Least weighted sum first, every figure as a part of the greatest of its kind in the list; equal ones keep their order. */
export function ranked<T extends FoundTrain>(trains: readonly T[], weights: Weights, workshop: Workshop): T[] {
  const rows = trains.map((train, order) => ({ train, order, merits: meritsOf(train, workshop), sum: 0 }));
  for (const [merit, weight = 0] of Object.entries(weights) as [Merit, number | undefined][]) {
    const greatest = rows.reduce((most, r) => Math.max(most, r.merits[merit]), 0);
    if (greatest > 0) for (const r of rows) r.sum += (weight * r.merits[merit]) / greatest;
  }
  return rows.sort((a, b) => a.sum - b.sum || a.order - b.order).map((r) => r.train);
}

/** What each train is best at: of every figure in which the list differs, the first that has the least of it. */
export function bestAt<T extends FoundTrain>(trains: readonly T[], workshop: Workshop): ReadonlyMap<T, readonly Merit[]> {
  const figures = trains.map((train) => meritsOf(train, workshop)), best = new Map<T, Merit[]>();
  for (const merit of MERITS) {
    const values = figures.map((f) => f[merit]), least = values.reduce((a, b) => Math.min(a, b), Infinity);
    const train = trains[values.indexOf(least)];
    if (train !== undefined && values.some((v) => v > least)) best.set(train, [...(best.get(train) ?? []), merit]);
  }
  return best;
}

/** Degrees a year by which a pointer wanted in `wantedDays` gains (+) or loses, from the error of its rate. */
export const driftOf = (error: number, wantedDays: number): number => (wantedDays === 0 ? 0 : (360 * 365.25 * error) / Math.abs(wantedDays));

export interface Pairing {
  /** One engagement each, driver and driven. */
  readonly engagements: readonly (readonly [number, number])[];
}

/**
 * The engagements of a train so paired off that they go two by two with equal sums, as a reverted train on common centres
 * at one module needs (of an odd number one is left over, last). null where no pairing does.
 */
export function revertedPairing({ drivers, driven }: Pick<FoundTrain, "drivers" | "driven">): Pairing | null {
  for (const order of orders(driven)) {
    const pairs = drivers.map((d, i): readonly [number, number] => [d, order[i]]);
    const twos = inTwos(pairs);
    if (twos !== null) return { engagements: twos };
  }
  return null;
}

/** Room needed at one module: the greatest blank, and all centre distances end to end (mm). */
export function roomOf(train: Pick<FoundTrain, "drivers" | "driven">, moduleMm: number): { readonly largestMm: number; readonly spanMm: number } {
  const all = [...train.drivers, ...train.driven];
  return { largestMm: moduleMm * (Math.max(...all) + 2), spanMm: (moduleMm * all.reduce((a, b) => a + b, 0)) / 2 };
}

function inTwos(pairs: readonly (readonly [number, number])[]): (readonly [number, number])[] | null {
  const left = [...pairs], found: (readonly [number, number])[] = [];
  const single: (readonly [number, number])[] = [];
  while (left.length > 0) {
    const one = left.shift() as readonly [number, number];
    const mate = left.findIndex((p) => p[0] + p[1] === one[0] + one[1]);
    if (mate < 0) single.push(one);
    else found.push(one, ...left.splice(mate, 1));
  }
  return single.length > pairs.length % 2 || pairs.length < 2 ? null : [...found, ...single];
}
