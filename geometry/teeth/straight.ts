// Straight teeth, as a file leaves them: flat flanks, the land as the blank was turned, the bottom of the space flat.
import { toRad } from "../numeric/angle.ts";
import { pitchRadius, workingDistance } from "./distance.ts";
import { profileOfPieces, straightPiece, type Profile } from "./profile.ts";
import { LEAST_CORE, RACK_ADDENDUM, RACK_DEDENDUM } from "./rack.ts";
import { outlineOfProfile } from "./sampling.ts";
import type { FormOfTooth, Teeth } from "./teeth.ts";
import { halfToothRad } from "./thickness.ts";

export const STRAIGHT: FormOfTooth = {
  name: "straight",
  doesNotCover: [
    "Straight flanks do not keep a constant rate: the driven wheel runs ahead and behind within every tooth.",
    "Profile shift is not a thing of filed teeth and is passed over.",
  ],
  tipRadius: (teeth) =>
    Math.max(0, Math.min(pitchRadius(teeth) + teeth.module * (RACK_ADDENDUM - teeth.topping), flankOf(teeth).meeting)),
  rootRadius: (teeth) => flankOf(teeth).root,
  workingDistance,
  profile: straightProfile,
  outline: (teeth, chordMm) => outlineOfProfile(straightProfile(teeth), teeth.count, chordMm),
};

function straightProfile(teeth: Teeth): Profile {
  const { root, footX, footY, meeting, angleRad } = flankOf(teeth);
  const tip = Math.max(root, teeth.measuredTipRadius ?? STRAIGHT.tipRadius(teeth));
  // Parallel flanks meet nowhere: they are drawn past the tip and cut there.
  const length = Number.isFinite(meeting) ? (meeting - footX) / Math.cos(angleRad) : 2 * tip;
  const spaceRad = -Math.PI / teeth.count, bottomX = root * Math.cos(spaceRad), bottomY = root * Math.sin(spaceRad);
  return profileOfPieces([
    straightPiece("root", bottomX, bottomY, footX, footY, 1),
    straightPiece("flank", footX, footY, footX + length * Math.cos(angleRad), footY + length * Math.sin(angleRad), 1),
  ], tip, 1);
}

interface StraightFlank {
  readonly angleRad: number;
  /** mm: the least radius of the space, at its middle; higher than asked where the flanks of the space meet before. */
  readonly root: number;
  /** Where the lower flank begins. */
  readonly footX: number;
  readonly footY: number;
  /** mm from the axis to where the two flanks of a tooth meet; Infinity for parallel ones. */
  readonly meeting: number;
}

function flankOf(teeth: Teeth): StraightFlank {
  const pitch = pitchRadius(teeth), halfRad = halfToothRad(teeth), angleRad = Math.max(0, toRad(teeth.pressureAngleDeg));
  const x = pitch * Math.cos(halfRad), y = -pitch * Math.sin(halfRad);
  const meeting = angleRad > 0 ? x - y / Math.tan(angleRad) : Infinity;
  // Against the middle line of the space: how far out and how far aside the flank stands at the pitch circle, and how it leans.
  const spaceRad = Math.PI / teeth.count, lean = angleRad + spaceRad;
  const out = pitch * Math.cos(spaceRad - halfRad), aside = pitch * Math.sin(spaceRad - halfRad);
  const asked = Math.max(pitch - teeth.module * RACK_DEDENDUM, LEAST_CORE * pitch);
  const meetingInward = aside / Math.sin(lean);
  const inward = Math.cos(lean) > 0 ? Math.min((out - asked) / Math.cos(lean), meetingInward) : meetingInward;
  return {
    angleRad, root: out - inward * Math.cos(lean),
    footX: x - inward * Math.cos(angleRad), footY: y - inward * Math.sin(angleRad), meeting,
  };
}
