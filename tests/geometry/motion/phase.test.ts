import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LIMBS, limbsInto, phaseOf } from "../../../geometry/motion/phase.ts";
import { ratio, toNumber } from "../../../geometry/numeric/ratio.ts";

/** The phase by whole numbers alone: turns = w + k/1024, rate = p/q. */
function exactPhase(p: bigint, q: bigint, w: bigint, k: bigint): number {
  const over = q * 1024n;
  const rest = (((p * (w * 1024n + k)) % over) + over) % over;
  return Number((rest * 2n ** 60n) / over) / 2 ** 60;
}

const apart = (a: number, b: number): number => { const d = Math.abs(a - b); return Math.min(d, 1 - d); };

describe("phases of exact rates", () => {
  it("[MOTION1] are those of whole-number arithmetic to 1e-9 turn, out to thousands of millions of turns", () => {
    const long = fc.bigInt({ min: 1n, max: 10n ** 24n });
    fc.assert(fc.property(fc.bigInt({ min: -(10n ** 25n), max: 10n ** 25n }), long, fc.bigInt({ min: -(2n ** 32n), max: 2n ** 32n }), fc.bigInt({ min: 0n, max: 1023n }), (p, q, w, k) => {
      fc.pre(Math.abs(Number(p) / Number(q)) < 1e4);
      const rate = ratio(p, q), limbs = new Float64Array(LIMBS + 1);
      limbsInto(limbs, 1, rate);
      const phase = phaseOf(limbs, 1, toNumber(rate), Number(w) + Number(k) / 1024);
      expect(phase).toBeGreaterThanOrEqual(0);
      expect(phase).toBeLessThan(1);
      expect(apart(phase, exactPhase(p, q, w, k))).toBeLessThan(1e-9);
    }), { seed: 20, numRuns: 2000 });
  });
  it("[MOTION1] come back to exactly 0 after a whole cycle, however long", () => {
    const rate = ratio(1_234_577, 2_392_001), limbs = new Float64Array(LIMBS);
    limbsInto(limbs, 0, rate);
    expect(apart(phaseOf(limbs, 0, toNumber(rate), 2_392_001 * 400), 0)).toBeLessThan(1e-12);
  });
});
