// Exact ratios on fraction.js (two bigints in lowest terms, denominator above 0). Only whole numbers and written
// decimals come in; a double never does, since the library would silently swap it for a nearby fraction.
import Fraction from "fraction.js";

export type Ratio = Fraction;

/** p/q in lowest terms. Throws on a zero denominator or anything but whole numbers. */
export function ratio(p: bigint | number, q: bigint | number = 1n): Ratio {
  return new Fraction(whole(p), whole(q));
}

/** n/d where d is above 0 and the two are known to share no factor: spares the search for one, which is dear in long terms. */
export function lowestTerms(n: bigint, d: bigint): Ratio {
  const made = Object.create(Fraction.prototype) as { s: bigint; n: bigint; d: bigint };
  made.s = n < 0n ? -1n : 1n;
  made.n = n < 0n ? -n : n;
  made.d = d;
  return made as Ratio;
}

/** The exact value of a number as it is written in decimal: 29.530588853 is 29530588853/10^9. */
export function decimalRatio(written: number | string): Ratio {
  const text = String(written);
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text)) throw new Error(`a written decimal was expected, not ${text}`);
  const [mantissa = "0", exponent = "0"] = text.toLowerCase().split("e");
  const [units = "0", decimals = ""] = mantissa.split(".");
  const digits = BigInt(units + decimals);
  const power = Number(exponent) - decimals.length;
  return power >= 0 ? new Fraction(digits * 10n ** BigInt(power), 1n) : new Fraction(digits, 10n ** BigInt(-power));
}

export const ZERO: Ratio = ratio(0);
export const ONE: Ratio = ratio(1);

export const isZero = (r: Ratio): boolean => r.n === 0n;
/** −1, 0 or 1. */
export const signOf = (r: Ratio): -1 | 0 | 1 => (r.n === 0n ? 0 : r.s < 0n ? -1 : 1);
/** "p/q", or "p" where q is 1. */
export const writeRatio = (r: Ratio): string => r.toFraction();
/** Leaves exactness: the nearest double, to its last places where the terms are too long for doubles of their own. */
export function toNumber(r: Ratio): number {
  return quotient(r.s * r.n, r.d);
}

/** a − b as the nearest double, of the exact difference: the lowest terms of long ratios, which are dear, are not sought. */
export const differenceToNumber = (a: Ratio, b: Ratio): number => quotient(a.s * a.n * b.d - b.s * b.n * a.d, a.d * b.d);

function quotient(n: bigint, d: bigint): number {
  const top = Number(n), bottom = Number(d);
  if (Number.isFinite(top) && Number.isFinite(bottom)) return top / bottom;
  // The leading bits of each, then the power of two that was left off, in two steps since alone it may be too large.
  const up = spareBits(n), down = spareBits(d), power = up - down, half = Math.trunc(power / 2);
  return (Number(n >> BigInt(up)) / Number(d >> BigInt(down))) * 2 ** half * 2 ** (power - half);
}

/** How many of a whole number's bits lie under its first 500 or so. */
const spareBits = (v: bigint): number => Math.max(0, 4 * (v < 0n ? -v : v).toString(16).length - 500);

function whole(v: bigint | number): bigint {
  if (typeof v === "bigint") return v;
  if (!Number.isSafeInteger(v)) throw new Error(`a whole number was expected, not ${v}`);
  return BigInt(v);
}
