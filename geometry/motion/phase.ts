// Exact rates as phases: how far round an arbor stands after any number of turns of the input, true to a thousand
// millionth of a turn even after millions of turns, and without allocating. Turns, signed.
import type { Ratio } from "../numeric/ratio.ts";

/** A rate's part below one turn is kept as so many groups of LIMB_BITS binary digits, greatest first: whole turns times one are exact. */
export const LIMBS = 4;
const LIMB_BITS = 20;
const LIMB = 2 ** LIMB_BITS;

/** Writes the limbs of the rate modulo 1 into out from `at` on. */
export function limbsInto(out: Float64Array, at: number, rate: Ratio): void {
  const d = rate.d, signed = rate.s < 0n ? -rate.n : rate.n;
  let rest = ((signed % d) + d) % d;
  for (let k = 0; k < LIMBS; k++) {
    rest *= BigInt(LIMB);
    out[at + k] = Number(rest / d);
    rest %= d;
  }
}

/** rate × turns modulo 1, in [0, 1). Exact in the whole turns up to 2^33 of them. */
export function phaseOf(limbs: Float64Array, at: number, rate: number, turns: number): number {
  const whole = Math.floor(turns);
  let phase = 0, scale = 1 / LIMB;
  for (let k = 0; k < LIMBS; k++, scale /= LIMB) {
    const part = whole * limbs[at + k] * scale;
    phase += part - Math.floor(part);
  }
  phase += rate * (turns - whole);
  const left = phase - Math.floor(phase);
  // A tiny negative number is so near a whole turn that it rounds to one.
  return left < 1 ? left : 0;
}
