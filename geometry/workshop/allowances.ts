// What is added before metal is bent or cast. Source: contraction of brass 3/16 inch a foot, yellow brass 7/32, bronze 5/32
// (W. H. Dooley, Applied Science for Metal Workers, ch. 31), cast iron 1/8 (shop tables); bend allowance angle × (R + Kt)
// with K from 0.33 to 0.5 (from memory of sheet-metal handbooks). Lengths in mm.
import { toRad } from "../numeric/angle.ts";

/** Of length, from pattern to casting. */
export const CONTRACTION = { "brass": 3 / 16 / 12, "yellow brass": 7 / 32 / 12, "bronze": 5 / 32 / 12, "cast iron": 1 / 8 / 12 } as const;
export type CastMetal = keyof typeof CONTRACTION;
export const CONTRACTION_SOURCE = "Dooley, Applied Science for Metal Workers; yellow brass and iron vary";

/** The pattern's length for a casting's; as the shrink rule reckons it: so much added a foot. */
export const patternMm = (castingMm: number, metal: CastMetal): number => castingMm * (1 + CONTRACTION[metal]);

/** Where in its thickness a bent sheet keeps its length: a third in when the inside radius is under the thickness, half when over twice. */
export function neutral(insideRadiusMm: number, thicknessMm: number): number {
  const tightness = insideRadiusMm / thicknessMm;
  return !(tightness > 1) ? 0.33 : tightness > 2 ? 0.5 : 0.44;
}

/** Length of the neutral line in a bend. */
export const bendAllowanceMm = (angleDeg: number, insideRadiusMm: number, thicknessMm: number, k = neutral(insideRadiusMm, thicknessMm)): number =>
  toRad(angleDeg) * (insideRadiusMm + k * thicknessMm);

/** What two legs, measured to the outside corner, are too long by. */
export const bendDeductionMm = (angleDeg: number, insideRadiusMm: number, thicknessMm: number, k = neutral(insideRadiusMm, thicknessMm)): number =>
  2 * (insideRadiusMm + thicknessMm) * Math.tan(toRad(angleDeg) / 2) - bendAllowanceMm(angleDeg, insideRadiusMm, thicknessMm, k);
