// The centre distance at which two toothed parts work, without ease. mm.
import { toRad } from "../numeric/angle.ts";
import { inv, inverseInv } from "./involute-function.ts";
import type { Teeth } from "./teeth.ts";

/** mm; module × count / 2. */
export const pitchRadius = (teeth: Teeth): number => (teeth.module * teeth.count) / 2;

/**
 * mm, or null where there is none: two annuli, an annulus no larger than its mate, or shifts so negative that no working
 * angle gives them. Involutes alike in module and pressure angle take their shifts into account (ISO 21771, 5.4); all
 * others stand where their pitch circles touch, each circle by its own module.
 */
export function workingDistance(driver: Teeth, driven: Teeth): number | null {
  if (driver.internal && driven.internal) return null;
  const [inner, outer] = driver.internal ? [driven, driver] : [driver, driven];
  const sign = outer.internal ? -1 : 1;
  const reference = pitchRadius(outer) + sign * pitchRadius(inner);
  if (!(reference > 0)) return null;
  return bothInvolute(inner, outer) ? involuteDistance(inner, outer, sign, reference) : reference;
}

function bothInvolute(a: Teeth, b: Teeth): boolean {
  return a.form === "involute" && b.form === "involute" && a.module === b.module && a.pressureAngleDeg === b.pressureAngleDeg;
}

/** a = a_ref cos α / cos α_w, inv α_w = inv α + 2 tan α (x₂ ± x₁)/(z₂ ± z₁). */
function involuteDistance(inner: Teeth, outer: Teeth, sign: 1 | -1, referenceMm: number): number | null {
  const shifts = outer.shift + sign * inner.shift;
  if (shifts === 0) return referenceMm;
  const angleRad = toRad(outer.pressureAngleDeg);
  const workingRad = inverseInv(inv(angleRad) + (2 * Math.tan(angleRad) * shifts) / (outer.count + sign * inner.count));
  return workingRad === null ? null : (referenceMm * Math.cos(angleRad)) / Math.cos(workingRad);
}
