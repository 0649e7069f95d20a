// Where two circles meet, and what to take where they do not.
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";

export interface Point {
  readonly x: number;
  readonly y: number;
}

export type CirclesMeeting =
  /** Two points, `left` the one to the left of the way from the first centre to the second; the same point where they only touch. */
  | { readonly kind: "meet"; readonly left: Point; readonly right: Point }
  /** Too far apart, or one within the other: the point of the line of centres half way between the two circles. */
  | { readonly kind: "apart" | "within"; readonly between: Point; readonly missMm: number }
  /** The centres are one axis: every point of the circle, or none. */
  | { readonly kind: "concentric" };

/** Circles about a and b. Touching to within rounding counts as meeting. */
export function meetCircles(a: Point, aRadiusMm: number, b: Point, bRadiusMm: number): CirclesMeeting {
  const dx = b.x - a.x, dy = b.y - a.y, apart = Math.hypot(dx, dy);
  if (apart < SAME_AXIS_MM) return { kind: "concentric" };
  const ux = dx / apart, uy = dy / apart;
  // Distance of the common chord from a, without the loss that squaring two large radii would bring.
  const along = (apart + ((aRadiusMm - bRadiusMm) * (aRadiusMm + bRadiusMm)) / apart) / 2;
  const roomMmSq = (aRadiusMm - along) * (aRadiusMm + along);
  const roundingMmSq = 4 * Number.EPSILON * (aRadiusMm * aRadiusMm + along * along);
  if (roomMmSq < -roundingMmSq) return missing(a, aRadiusMm, bRadiusMm, apart, ux, uy);
  const aside = Math.sqrt(Math.max(0, roomMmSq));
  const x = a.x + along * ux, y = a.y + along * uy;
  return { kind: "meet", left: { x: x - aside * uy, y: y + aside * ux }, right: { x: x + aside * uy, y: y - aside * ux } };
}

function missing(a: Point, aRadiusMm: number, bRadiusMm: number, apart: number, ux: number, uy: number): CirclesMeeting {
  const outside = apart > aRadiusMm + bRadiusMm;
  // Places along the line of centres, from a, where the two circles come nearest to one another.
  const onA = outside || aRadiusMm > bRadiusMm ? aRadiusMm : -aRadiusMm;
  const onB = outside || aRadiusMm < bRadiusMm ? apart - bRadiusMm : apart + bRadiusMm;
  const middle = (onA + onB) / 2;
  return {
    kind: outside ? "apart" : "within",
    between: { x: a.x + middle * ux, y: a.y + middle * uy },
    missMm: Math.abs(onB - onA),
  };
}
