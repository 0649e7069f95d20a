// Why a count or a ratio cannot be cut as it stands, and what stands near it. Exact throughout.
import { ratio, toNumber, type Ratio } from "../numeric/ratio.ts";
import { canDivide, type Head } from "./dividing.ts";
import { primeFactors } from "./fractions.ts";

/** Relative: what is farther off is no longer near. */
const FAR_OFF = 1 / 50;
/** Numbers below it are factored in a few milliseconds. */
const SOON_FACTORED = 10n ** 11n;

/** Why a head does not give a count, and the nearest counts to either side that it does; null where it gives it. */
export function cannotDivideSays(count: number, head: Head): string | null {
  if (canDivide(count, head)) return null;
  const factors = primeFactors(BigInt(count)).map(Number);
  const hard = factors.filter((p) => !head.plates.flat().some((c) => c % p === 0) && head.ratio % p !== 0).at(-1);
  const [below, above] = [-1, 1].map((way) => nearest(count, way, (n) => canDivide(n, head)));
  const near = below === null ? `${above}` : above === null ? `${below}` : `${below} and ${above}`;
  const why = hard === undefined ? "no circle, no two circles of one plate and no change gears make up its parts"
    : hard === count ? `it is prime, and no circle holds it, nor do the change gears make it good`
    : `${hard} divides it, and no circle holds ${hard}, nor do the change gears make it good`;
  return `${count} cannot be had from this head: ${why}. Near it stand ${near}.`;
}

export interface NearRatio {
  readonly ratio: Ratio;
  /** ratio / wanted − 1, signed. */
  readonly error: number;
  readonly factors: readonly [readonly bigint[], readonly bigint[]];
}

/**
 * What is in the way of cutting a ratio exactly, however many wheels: the part of it whose primes are all over the largest
 * count; null where there is none. It is the greatest prime itself where that is soon found.
 */
export function inTheWay(value: Ratio, largest: number): bigint | null {
  const rests = [value.n, value.d].map((n) => stripped(n, largest)).filter((n) => n > 1n);
  const primes = rests.flatMap((n) => (n < SOON_FACTORED ? primeFactors(n) : [n]));
  return primes.length === 0 ? null : primes.reduce((a, b) => (b > a ? b : a));
}

/**
 * Ratios that stand near a wanted one and whose primes are all at most `largest`: each nearer than every one with smaller
 * terms (the smaller term up to `reach`), best first.
 */
export function standNear(value: Ratio, largest: number, most = 8, reach = 2000): NearRatio[] {
  const turned = value.n < value.d, over = turned ? value.inverse() : value;
  const found: NearRatio[] = [];
  let nearest = Infinity;
  for (let d = 1n; d <= BigInt(reach); d++) {
    const below = (over.n * d) / over.d;
    for (const n of [below, below + 1n]) {
      if (n === 0n || n * over.d === over.n * d) continue;
      const near = turned ? ratio(d, n) : ratio(n, d);
      const error = toNumber(near.div(value).sub(ratio(1)));
      if (Math.abs(error) >= nearest || Math.abs(error) > FAR_OFF || stripped(n, largest) !== 1n || stripped(d, largest) !== 1n) continue;
      nearest = Math.abs(error);
      found.push({ ratio: near, error, factors: [primeFactors(near.n), primeFactors(near.d)] });
    }
  }
  return found.reverse().slice(0, most);
}

/** What is left of n without its primes up to `largest`. */
function stripped(n: bigint, largest: number): bigint {
  let rest = n;
  for (let p = 2n; p <= BigInt(largest) && rest > 1n; p += p === 2n ? 1n : 2n) while (rest !== 0n && rest % p === 0n) rest /= p;
  return rest;
}

function nearest(count: number, way: number, good: (n: number) => boolean): number | null {
  for (let n = count + way, k = 0; n >= 3 && k < 400; n += way, k++) if (good(n)) return n;
  return null;
}
