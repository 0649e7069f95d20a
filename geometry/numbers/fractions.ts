// Continued fractions and the mediant tree, for those who think that way. Exact throughout.
// Source: continued fractions as in any text on number theory; the search by mediants is Brocot's (Revue chronométrique, 1861).
import { ratio, type Ratio } from "../numeric/ratio.ts";

/** Partial quotients [a0; a1, …] of a ratio above or below 0, at most `most` of them. */
export function continuedFraction(value: Ratio, most = 64): bigint[] {
  let n = value.s < 0n ? -value.n : value.n, d = value.d;
  const quotients: bigint[] = [];
  while (d !== 0n && quotients.length < most) {
    const q = floorDiv(n, d);
    quotients.push(q);
    [n, d] = [d, n - q * d];
  }
  return quotients;
}

/** Convergents p/q of partial quotients, in order. */
export function convergents(quotients: readonly bigint[]): Ratio[] {
  let [p0, q0, p1, q1] = [0n, 1n, 1n, 0n];
  return quotients.map((a) => {
    [p0, q0, p1, q1] = [p1, q1, a * p1 + p0, a * q1 + q0];
    return ratio(p1, q1);
  });
}

export interface MediantStep {
  readonly ratio: Ratio;
  /** p·wq − q·wp for p/q against wp/wq: the error numerator that the method is worked with; 0 when met. */
  readonly errorNumerator: bigint;
  readonly turn: "left" | "right" | "met";
}

/**
 * The mediant tree walked from the whole numbers on either side of `value` (or from 0/1 and 1/0 with `fromRoot`) until it is met, or
 * for `most` steps. Each step is the mediant of the two that enclose the value.
 */
export function mediantPath(value: Ratio, most = 200, fromRoot = false): MediantStep[] {
  if (value.s < 0n || value.n === 0n) return [];
  const whole = value.n / value.d;
  let [lp, lq, rp, rq] = fromRoot ? [0n, 1n, 1n, 0n] : [whole, 1n, whole + 1n, 1n];
  const steps: MediantStep[] = [];
  if (!fromRoot && value.d === 1n) return [{ ratio: value, errorNumerator: 0n, turn: "met" }];
  while (steps.length < most) {
    const p = lp + rp, q = lq + rq;
    const errorNumerator = p * value.d - q * value.n;
    const turn = errorNumerator === 0n ? "met" : errorNumerator > 0n ? "left" : "right";
    steps.push({ ratio: ratio(p, q), errorNumerator, turn });
    if (turn === "met") break;
    if (turn === "left") [rp, rq] = [p, q];
    else [lp, lq] = [p, q];
  }
  return steps;
}

/** Prime factors in ascending order, with repetition; of 0 and 1 none. For numbers that are tooth counts or their products. */
export function primeFactors(n: bigint): bigint[] {
  const factors: bigint[] = [];
  let rest = n < 0n ? -n : n;
  for (let p = 2n; p * p <= rest; p += p === 2n ? 1n : 2n)
    while (rest !== 0n && rest % p === 0n) { factors.push(p); rest /= p; }
  if (rest > 1n) factors.push(rest);
  return factors;
}

function floorDiv(n: bigint, d: bigint): bigint {
  const q = n / d;
  return n % d !== 0n && n < 0n !== d < 0n ? q - 1n : q;
}
