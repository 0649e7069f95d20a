// Tip and root radii of every form, in mm. The formulas of the tips are those of the examiner's page.
import type { ToothedPart } from "../instrument.ts";
import { toRad } from "../numeric/angle.ts";
import { GENERAL_ADDENDUM, lanternGreatestAddendum, PRACTICAL_SHARE } from "./addendum.ts";
import { pitchRadius } from "./distance.ts";
import type { Teeth } from "./teeth.ts";

/** ISO 53:1998, profile A (from memory). In modules. */
export const RACK_ADDENDUM = 1;
export const RACK_DEDENDUM = 1.25;
/** Wheels' dedendum in clock practice (from memory): half the pitch. In modules. */
export const CLOCK_WHEEL_DEDENDUM = Math.PI / 2;
/** What a clock pinion's space is deeper than the wheel's tooth is high (from memory). In modules. */
export const CLOCK_CLEARANCE = 0.4;
/** No space is drawn deeper than this share of the pitch radius, so that a part of three leaves keeps a core. */
const DEEPEST_SHARE = 0.85;

/** mm. What a part sweeps with its teeth: measured where it is measured, a lantern by its shrouds where they are given. */
export function tipRadiusOf(part: ToothedPart, teeth: Teeth): number {
  if (part.measured?.tipDiameter !== undefined) return part.measured.tipDiameter / 2;
  if (part.kind === "lantern" && part.shroudDiameter !== undefined) return part.shroudDiameter / 2;
  return drawnTipRadius(teeth);
}

/** mm, as drawn. An annulus: the hole. */
export function drawnTipRadius(teeth: Teeth): number {
  const pitch = pitchRadius(teeth), m = teeth.module;
  if (teeth.internal) return Math.max(0, pitch + m * (teeth.shift - RACK_ADDENDUM + teeth.topping));
  switch (teeth.form) {
    case "lantern": return pitch + teeth.trundleDiameter / 2;
    case "involute": return Math.max(0, pitch + m * (RACK_ADDENDUM + teeth.shift - teeth.topping));
    case "cycloidal": return Math.max(0, pitch + m * clockAddendum(teeth));
    case "straight": return Math.max(0, Math.min(pitch + m * (RACK_ADDENDUM - teeth.topping), straightMeeting(teeth)));
  }
}

/** mm. Where the bottom of a space lies; an annulus: its greatest radius. A lantern: the innermost of its trundles. */
export function rootRadius(teeth: Teeth): number {
  const pitch = pitchRadius(teeth), m = teeth.module;
  if (teeth.internal) return pitch + m * (RACK_DEDENDUM + teeth.shift);
  if (teeth.form === "lantern") return Math.max(0, pitch - teeth.trundleDiameter / 2);
  return Math.max(pitch - m * dedendum(teeth), (1 - DEEPEST_SHARE) * pitch);
}

/** Modules, topping taken off. */
function clockAddendum(teeth: Teeth): number {
  if (teeth.role === "pinion") return (teeth.count <= 9 ? 0.855 : 0.805) - teeth.topping;
  const { addendumFactor, lanternMate, topping } = teeth;
  if (addendumFactor !== null) return PRACTICAL_SHARE * addendumFactor - topping;
  if (lanternMate === null) return GENERAL_ADDENDUM - topping;
  const greatest = lanternGreatestAddendum(teeth.count, lanternMate.count, lanternMate.trundleDiameter / teeth.module);
  return Math.min(GENERAL_ADDENDUM - topping, Math.max(GENERAL_ADDENDUM, greatest));
}

/** Modules. */
function dedendum(teeth: Teeth): number {
  if (teeth.form === "involute") return RACK_DEDENDUM - teeth.shift;
  if (teeth.form === "straight") return RACK_DEDENDUM;
  if (teeth.role === "wheel") return CLOCK_WHEEL_DEDENDUM;
  return CLOCK_CLEARANCE + (teeth.addendumFactor === null ? GENERAL_ADDENDUM : PRACTICAL_SHARE * teeth.addendumFactor);
}

/** mm from the axis to where the two flat flanks of a tooth meet; Infinity where they do not. */
function straightMeeting(teeth: Teeth): number {
  const pitch = pitchRadius(teeth);
  const halfRad = ((Math.PI / 2 - teeth.thinning) * teeth.module) / 2 / pitch;
  const tan = Math.tan(toRad(teeth.pressureAngleDeg));
  return tan <= 0 ? Infinity : pitch * (Math.cos(halfRad) + Math.sin(halfRad) / tan);
}
