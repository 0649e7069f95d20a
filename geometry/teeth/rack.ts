// The rack that cuts an external involute wheel, and the root it leaves: ISO 53:1998 profile A (from memory), addendum 1,
// dedendum 1.25 unless the part says another, tip corner 0.38 modules. Thinner teeth are cut by a rack with wider teeth, to the same depth.
import { toRad } from "../numeric/angle.ts";
import { pitchRadius } from "./distance.ts";
import type { Piece } from "./profile.ts";
import { halfToothRad } from "./thickness.ts";
import type { Teeth } from "./teeth.ts";

/** Modules. */
export const RACK_ADDENDUM = 1;
export const RACK_DEDENDUM = 1.25;
export const RACK_CORNER = 0.38;
/** No space is cut nearer the axis than this share of the pitch radius, so that a wheel of three teeth keeps a core. */
export const LEAST_CORE = 0.15;

export interface Rack {
  readonly angleRad: number;
  /** mm from the wheel's pitch circle in to the rack's tips; under 0: they do not reach it. */
  readonly depthMm: number;
  /** mm. */
  readonly cornerMm: number;
  /** mm from the middle of the rack's tooth to the centre of its tip corner. */
  readonly asideMm: number;
}

export function rackOf(teeth: Teeth): Rack {
  const m = teeth.module, pitch = pitchRadius(teeth), angleRad = toRad(teeth.pressureAngleDeg), tan = Math.tan(angleRad);
  // Half the rack's tooth on the wheel's pitch line is half the wheel's space.
  const half = Math.PI * m / 2 - halfToothRad(teeth) * pitch;
  const wanted = Math.min(m * ((teeth.dedendum ?? RACK_DEDENDUM) - teeth.shift), (1 - LEAST_CORE) * pitch);
  // A rack so steep-sided that its flanks meet first is pointed.
  const depthMm = tan > 0 ? Math.min(wanted, half / tan) : wanted;
  const halfTip = half - depthMm * tan;
  const reach = (1 - Math.sin(angleRad)) / Math.cos(angleRad);
  const cornerMm = Math.max(0, Math.min(RACK_CORNER * m, halfTip / reach, depthMm));
  return { angleRad, depthMm, cornerMm, asideMm: Math.max(0, halfTip - cornerMm * reach) };
}

/**
 * The trochoid that the rack's tip corner leaves, beside the middle of a space at −π/z: parameter γ from π/2 at the root
 * to the pressure angle at the flank; γ is the slope of the common normal, which passes through the pitch point.
 */
export function trochoid(teeth: Teeth, rack: Rack): Piece {
  const pitch = pitchRadius(teeth), spaceRad = -Math.PI / teeth.count;
  const centreDepth = rack.depthMm - rack.cornerMm;
  return {
    name: "fillet", from: Math.PI / 2, to: rack.angleRad,
    at: (gamma) => {
      const sin = Math.sin(gamma), cos = Math.cos(gamma);
      const reach = centreDepth / sin + rack.cornerMm;
      const turn = spaceRad - (centreDepth * (cos / sin) - rack.asideMm) / pitch;
      const c = Math.cos(turn), s = Math.sin(turn), x = pitch - reach * sin, y = reach * cos;
      return { x: c * x - s * y, y: s * x + c * y, nx: c * sin + s * cos, ny: s * sin - c * cos };
    },
  };
}
