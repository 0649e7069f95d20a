// How high clock teeth can be: the theoretical addendum of a wheel's tooth from its own pinion or lantern. In modules.
// Construction: an epicycloid on the wheel's pitch circle, rolled by a circle of half the pinion's pitch diameter (leaves
// with radial flanks) or of its whole pitch diameter (pins), as in BS 978-2, appendix A (from memory).
import { rolledAt, rollToPolar, type Rolled } from "./rolled.ts";

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

function addendumAt(curve: Rolled, polarRad: number): number {
  return rolledAt(curve, rollToPolar(curve, polarRad)).radius - curve.pitch;
}
