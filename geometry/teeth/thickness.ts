// How thick teeth are along the pitch circle, as half the angle they take up (radians).
import { toRad } from "../numeric/angle.ts";
import { FEW_LEAVES } from "./clock-practice.ts";
import { pitchRadius } from "./distance.ts";
import type { Teeth } from "./teeth.ts";

/** Modules. No tooth and no space is drawn thinner than this, whatever the figures ask. */
const LEAST_THICKNESS = 0.02;

export function halfToothRad(teeth: Teeth): number {
  return halfAngleRad(teeth, thicknessModules(teeth));
}

/** Half the angle that so many modules take up on the pitch circle, kept within the pitch. */
export function halfAngleRad(teeth: Teeth, thickness: number): number {
  return (Math.min(Math.PI - LEAST_THICKNESS, Math.max(LEAST_THICKNESS, thickness)) * teeth.module) / 2 / pitchRadius(teeth);
}

/** A clock wheel's tooth is half the pitch, a leaf a third of it up to 9 leaves and two fifths from 10. */
function thicknessModules({ form, role, count, pressureAngleDeg, shift, thinning, internal }: Teeth): number {
  if (form === "involute" || internal) return Math.PI / 2 + (internal ? -2 : 2) * shift * Math.tan(toRad(pressureAngleDeg)) - thinning;
  if (form === "cycloidal" && role === "pinion") return Math.PI * (count <= FEW_LEAVES ? 1 / 3 : 0.4) - thinning;
  return Math.PI / 2 - thinning;
}
