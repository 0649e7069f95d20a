// Where a plain train is poor: sums and differences of trains. Exact throughout.
// Source: Willis's rule for wheels on a carrier, (rate − carrier) over (rate − carrier); a differential gives half the sum of its
// two sides (any text on mechanism).
import { ONE, ratio, signOf, toNumber, type Ratio } from "../numeric/ratio.ts";
import { QUOTIENT_RATIO } from "../numeric/tolerance.ts";
import { searchTrains, type FoundTrain, type FoundTrains } from "./trains.ts";

export interface CarriedTrain {
  /** Carried round with a stud: fixed wheel, planet; planet on the same stud, wheel shown. Largest first, in no set pairing. */
  readonly drivers: readonly number[];
  readonly driven: readonly number[];
  /** One engagement is with an annulus, so that the product is taken away from 1 with a minus. */
  readonly annulus: boolean;
  /** Of the wheel shown, for one turn of the carrier: 1 − product, or 1 + product with an annulus. Signed. */
  readonly ratio: Ratio;
  /** ratio / wanted − 1, signed. */
  readonly error: number;
}

export interface CarriedSearch {
  /** Turns of the wheel shown for one turn of the carrier; signed, not 1 (that wants no wheels). */
  readonly wanted: Ratio;
  readonly within: Ratio;
  /** Engagements on the carrier: 2, as a rule. */
  readonly engagements: number;
  readonly counts: readonly number[];
  readonly most?: number;
}

export interface CarriedTrains { readonly exhaustive: boolean; readonly trains: readonly CarriedTrain[]; readonly says: string | null }

/**
 * Every train on a carrier, the first wheel of it fixed, that gives the wanted ratio within the error. The product wanted
 * is 1 less the ratio: a small difference of two near things, so the error allowed to it is smaller or greater by as much.
 */
export function* searchCarried(search: CarriedSearch): Generator<number, CarriedTrains> {
  const rest = ONE.sub(search.wanted);
  if (signOf(rest) === 0) return { exhaustive: true, trains: [], says: "Turn for turn with the carrier wants no wheels." };
  if (signOf(search.wanted) === 0) return { exhaustive: false, trains: [], says: "A wheel that stands still wants no error given as a part of it; say how far it may turn." };
  const outside = search.engagements % 2 === 0;
  const annulus = (signOf(rest) > 0) !== outside;
  const found = yield* searchTrains({
    wanted: rest.abs(), within: search.within.mul(search.wanted.abs()).div(rest.abs()), engagements: search.engagements, counts: search.counts,
    ...(search.most === undefined ? {} : { most: search.most }),
  });
  return carriedOf(found, search.wanted, signOf(rest), annulus);
}

function carriedOf(found: FoundTrains, wanted: Ratio, sign: number, annulus: boolean): CarriedTrains {
  const trains = found.trains.map((t: FoundTrain): CarriedTrain => {
    const given = sign > 0 ? ONE.sub(t.ratio) : ONE.add(t.ratio);
    return { drivers: t.drivers, driven: t.driven, annulus, ratio: given, error: toNumber(given.div(wanted).sub(ONE)) };
  });
  return { exhaustive: found.exhaustive, says: found.says, trains };
}

export interface SumTrain {
  /** Each side one engagement, driver over driven; the second is taken with its sign. */
  readonly first: readonly [number, number];
  readonly second: readonly [number, number];
  readonly sign: 1 | -1;
  /** Half the sum or half the difference: what the cross of the differential turns. */
  readonly ratio: Ratio;
  readonly error: number;
}

/** Every differential whose two sides are led off by one engagement each and whose cross gives the ratio within the error. */
export function differentialTrains(wanted: Ratio, within: Ratio, counts: readonly number[], most = 1000): SumTrain[] {
  if (signOf(wanted) <= 0 || counts.length === 0) return [];
  const sides = sidesOf(counts);
  const values = Float64Array.from(sides, (s) => s[0] / s[1]);
  const twice = 2 * toNumber(wanted), slack = twice * (toNumber(within) + QUOTIENT_RATIO);
  const found: SumTrain[] = [];
  for (let i = 0; i < sides.length; i++) for (const sign of [1, -1] as const) {
    // A sum is written with its greater side first, so that it stands once.
    const mate = sign * (twice - values[i]);
    for (let j = firstAt(values, mate - slack); j < sides.length && values[j] <= mate + slack; j++) {
      if (sign === 1 && j > i) break;
      const train = sumOf(sides[i], sides[j], sign, wanted);
      if (train.within.compare(within) <= 0) found.push(train.sum);
    }
  }
  return found.sort((a, b) => Math.abs(a.error) - Math.abs(b.error) || teethOf(a) - teethOf(b)).slice(0, most);
}

const teethOf = ({ first, second }: SumTrain): number => first[0] + first[1] + second[0] + second[1];

function sumOf(first: readonly [number, number], second: readonly [number, number], sign: 1 | -1, wanted: Ratio): { sum: SumTrain; within: Ratio } {
  const one = ratio(first[0], first[1]), two = ratio(second[0], second[1]);
  const given = (sign === 1 ? one.add(two) : one.sub(two)).div(ratio(2));
  const error = given.div(wanted).sub(ONE);
  return { sum: { first, second, sign, ratio: given, error: toNumber(error) }, within: error.abs() };
}

/** One pair of counts for every ratio that one engagement gives, the fewest teeth; ascending. */
function sidesOf(counts: readonly number[]): (readonly [number, number])[] {
  const by = new Map<number, readonly [number, number]>();
  for (const a of counts) for (const b of counts) {
    const value = a / b, known = by.get(value);
    if (known === undefined || known[0] + known[1] > a + b) by.set(value, [a, b]);
  }
  return [...by].sort((x, y) => x[0] - y[0]).map(([, pair]) => pair);
}

function firstAt(values: Float64Array, limit: number): number {
  let low = 0, high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle] < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
