// How high clock teeth can be: the theoretical addendum of a wheel's tooth from its own pinion or lantern. In modules.
// Construction: an epicycloid on the wheel's pitch circle, rolled by a circle of half the pinion's pitch diameter (leaves
// with radial flanks) or of its whole pitch diameter (pins), as in BS 978-2, appendix A (from memory).

/** A share of the theoretical addendum is cut: BS 978-2 (from memory). */
export const PRACTICAL_SHARE = 0.95;
/** Addendum of a wheel cut by a general cutter, and of a wheel for a lantern: a cutter maker's chart, (N + 2.76) m over all. */
export const GENERAL_ADDENDUM = 1.38;

/**
 * Theoretical addendum factor f of a wheel of `wheelTeeth` for a pinion of `leaves` (need not be whole): where two
 * opposite epicycloids on a tooth half the pitch thick meet.
 */
export function theoreticalAddendum(wheelTeeth: number, leaves: number): number {
  return addendumAt({ pitch: wheelTeeth / 2, generating: leaves / 4, back: 0 }, Math.PI / (2 * wheelTeeth));
}

/**
 * The greatest addendum a wheel's tooth can have for a lantern: the path of the pin's centre set back by half the pin,
 * where it comes to the middle of a tooth that fills the whole space between two pins.
 */
export function lanternGreatestAddendum(wheelTeeth: number, trundles: number, pinModules: number): number {
  return addendumAt({ pitch: wheelTeeth / 2, generating: trundles / 2, back: pinModules / 2 }, Math.PI / wheelTeeth);
}

/** An epicycloid on the circle of radius `pitch`, rolled by one of radius `generating`, set back square to itself by `back`. */
export interface Rolled {
  readonly pitch: number;
  readonly generating: number;
  readonly back: number;
}

/** The curve's point when the generating circle has rolled by `roll` (0 to π) since its cusp on +x: radius, polar angle
 *  (unwrapped) and the direction of its normal, which runs through the pitch point on into the metal. */
export function rolledAt({ pitch, generating, back }: Rolled, roll: number): { radius: number; polarRad: number; normalRad: number } {
  // In axes turned with the generating circle's centre, which has gone round by `turned`.
  const turned = (roll * generating) / pitch;
  const x = pitch + generating * (1 - Math.cos(roll)) - back * Math.sin(roll / 2);
  const y = -generating * Math.sin(roll) + back * Math.cos(roll / 2);
  return { radius: Math.hypot(x, y), polarRad: turned + Math.atan2(y, x), normalRad: turned + roll / 2 + Math.PI / 2 };
}

/** The roll, up to π, at which the curve comes to a polar angle; π where it never does. */
export function rollToPolar(curve: Rolled, polarRad: number): number {
  let low = 0, high = Math.PI;
  if (rolledAt(curve, high).polarRad <= polarRad) return high;
  for (let i = 0; i < 60; i++) {
    const mid = (low + high) / 2;
    if (rolledAt(curve, mid).polarRad < polarRad) low = mid;
    else high = mid;
  }
  return high;
}

function addendumAt(curve: Rolled, polarRad: number): number {
  return rolledAt(curve, rollToPolar(curve, polarRad)).radius - curve.pitch;
}
