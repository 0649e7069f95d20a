// A pair of involute gears at a given distance, by the exact closed formulas. Lengths in mm. Where one is an annulus it
// is the second. Sources: the backlash at the working pitch circles follows from the tooth thickness at a radius
// (any text on gears); the contact ratio is the path between the tip circles over the base pitch, cut where a tip
// would reach past the mate's base tangent point (Shigley, Mechanical Engineering Design, chapter on gears).
import { toRad } from "../numeric/angle.ts";
import { inv } from "../teeth/involute-function.ts";

export interface InvolutePair {
  readonly moduleMm: number;
  readonly pressureAngleDeg: number;
  readonly first: InvoluteGear;
  readonly second: InvoluteGear;
  /** The second is an annulus. */
  readonly internal: boolean;
}

export interface InvoluteGear {
  readonly count: number;
  /** Modules. */
  readonly shift: number;
  readonly thinning: number;
  readonly tipRadiusMm: number;
}

/** Working pressure angle at a distance; null where the base circles leave no common tangent across the line of centres. */
export function workingAngleRad(pair: InvolutePair, distanceMm: number): number | null {
  const cosine = baseDistanceMm(pair) / distanceMm;
  return cosine > 0 && cosine <= 1 ? Math.acos(cosine) : null;
}

/** mm along the working pitch circle, negative where the teeth share metal; null without a working angle. */
export function involuteBacklashMm(pair: InvolutePair, distanceMm: number): number | null {
  const workingRad = workingAngleRad(pair, distanceMm);
  if (workingRad === null) return null;
  const opening = 2 * distanceMm * (inv(workingRad) - involuteAtWorkingDistance(pair));
  const thinningMm = pair.moduleMm * (pair.first.thinning + pair.second.thinning);
  return (pair.internal ? -opening : opening) + (thinningMm * distanceMm) / referenceDistanceMm(pair);
}

/** Length of the usable path of contact over the base pitch, never under 0; null without a working angle. */
export function involuteContactRatio(pair: InvolutePair, distanceMm: number): number | null {
  const workingRad = workingAngleRad(pair, distanceMm);
  if (workingRad === null) return null;
  const tangentsMm = distanceMm * Math.sin(workingRad);
  const first = tangentToTipMm(pair, pair.first), second = tangentToTipMm(pair, pair.second);
  const pathMm = pair.internal
    ? first - Math.max(second, tangentsMm) + tangentsMm
    : Math.min(first, tangentsMm) + Math.min(second, tangentsMm) - tangentsMm;
  return Math.max(0, pathMm / (Math.PI * pair.moduleMm * Math.cos(toRad(pair.pressureAngleDeg))));
}

/** Pitches along the path of contact on either side of the pitch point: to the second's side, where the first's tip ends
 *  it, and to the first's; null without a working angle or where nothing touches. */
export function involuteSpan(pair: InvolutePair, distanceMm: number): { byFirst: number; bySecond: number } | null {
  const workingRad = workingAngleRad(pair, distanceMm);
  if (workingRad === null || !involuteContactRatio(pair, distanceMm)) return null;
  const tangentsMm = distanceMm * Math.sin(workingRad), tan = Math.tan(workingRad);
  const first = tangentToTipMm(pair, pair.first), second = tangentToTipMm(pair, pair.second);
  const pitchMm = Math.PI * pair.moduleMm * Math.cos(toRad(pair.pressureAngleDeg));
  const firstMm = (pair.internal ? first : Math.min(first, tangentsMm)) - baseRadiusMm(pair, pair.first) * tan;
  const secondMm = pair.internal
    ? baseRadiusMm(pair, pair.second) * tan - Math.max(second, tangentsMm)
    : Math.min(second, tangentsMm) - baseRadiusMm(pair, pair.second) * tan;
  return { byFirst: firstMm / pitchMm, bySecond: secondMm / pitchMm };
}

/** Whether a tip reaches past the mate's base tangent point, where there is no involute to meet it. */
export function involuteInterferes(pair: InvolutePair, distanceMm: number): boolean {
  const workingRad = workingAngleRad(pair, distanceMm);
  if (workingRad === null) return true;
  const tangentsMm = distanceMm * Math.sin(workingRad);
  const first = tangentToTipMm(pair, pair.first), second = tangentToTipMm(pair, pair.second);
  return pair.internal ? second < tangentsMm : first > tangentsMm || second > tangentsMm;
}

/** Least shift, in modules, at which a rack of addendum 1 leaves the flank whole: 1 − z sin² α / 2. */
export const leastShiftWithoutUndercut = (count: number, pressureAngleDeg: number): number =>
  1 - (count * Math.sin(toRad(pressureAngleDeg)) ** 2) / 2;

const sign = (pair: InvolutePair): number => (pair.internal ? -1 : 1);

const referenceDistanceMm = (pair: InvolutePair): number =>
  (pair.moduleMm * (pair.second.count + sign(pair) * pair.first.count)) / 2;

const baseDistanceMm = (pair: InvolutePair): number =>
  referenceDistanceMm(pair) * Math.cos(toRad(pair.pressureAngleDeg));

function involuteAtWorkingDistance(pair: InvolutePair): number {
  const alphaRad = toRad(pair.pressureAngleDeg);
  const shifts = pair.second.shift + sign(pair) * pair.first.shift;
  const counts = pair.second.count + sign(pair) * pair.first.count;
  return inv(alphaRad) + (2 * Math.tan(alphaRad) * shifts) / counts;
}

const baseRadiusMm = (pair: InvolutePair, gear: InvoluteGear): number =>
  (pair.moduleMm * gear.count * Math.cos(toRad(pair.pressureAngleDeg))) / 2;

const tangentToTipMm = (pair: InvolutePair, gear: InvoluteGear): number =>
  Math.sqrt(Math.max(0, gear.tipRadiusMm ** 2 - baseRadiusMm(pair, gear) ** 2));
