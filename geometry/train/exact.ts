// Products of a long ratio with a short one. Keeping both in lowest terms needs only remainders by the short terms, so
// that a rate at the end of two thousand wheels costs no more than its own length.
import { lowestTerms, ZERO, type Ratio } from "../numeric/ratio.ts";

/** r × p / q for whole p and q below 2^53, q not 0. */
export function scaled(r: Ratio, p: number, q: number): Ratio {
  if (r.n === 0n || p === 0) return ZERO;
  const common = gcd(Math.abs(p), Math.abs(q));
  const up = Math.abs(p) / common, down = Math.abs(q) / common;
  const inN = down === 1 ? 1 : gcd(down, Number(r.n % BigInt(down)));
  const inD = up === 1 ? 1 : gcd(up, Number(r.d % BigInt(up)));
  const n = (inN === 1 ? r.n : r.n / BigInt(inN)) * BigInt(up / inD);
  const d = (inD === 1 ? r.d : r.d / BigInt(inD)) * BigInt(down / inN);
  return lowestTerms((p < 0) === (q < 0) ? r.s * n : -r.s * n, d);
}

/** r / by, sparing long terms where `by` is short. */
export const dividedBy = (r: Ratio, by: Ratio): Ratio =>
  (by.n <= SHORT && by.d <= SHORT && by.n !== 0n ? scaled(r, Number(by.s * by.d), Number(by.n)) : r.div(by));

const SHORT = BigInt(Number.MAX_SAFE_INTEGER);

export const sameRatio = (a: Ratio, b: Ratio): boolean => a.n === b.n && a.d === b.d && (a.n === 0n || a.s === b.s);

function gcd(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}
