// Clock teeth: wheels with radial flanks below the pitch circle and, above it, the epicycloid of their own pinion's
// generating circle; pinions with radial flanks and a rounded or ogive top. Wheels for lanterns follow the pins.
import { GENERAL_ADDENDUM, lanternGreatestAddendum, theoreticalAddendum } from "./addendum.ts";
import { CLOCK_PRACTICE, wheelTipSays, type ClockPractice } from "./clock-practice.ts";
import { pitchRadius, workingDistance } from "./distance.ts";
import { pinionTop, topArc } from "./ogive.ts";
import { profileOfPieces, radialPiece, roundPiece, type Piece, type Profile } from "./profile.ts";
import { LEAST_CORE } from "./rack.ts";
import { rolledAt, rolledPiece } from "./rolled.ts";
import { outlineOfProfile } from "./sampling.ts";
import type { FormOfTooth, Teeth } from "./teeth.ts";
import { halfAngleRad, halfToothRad } from "./thickness.ts";

/** Clock teeth by a maker's practice. */
export function cycloidalForm(practice: ClockPractice): FormOfTooth {
  const tipRadius = (teeth: Teeth) => Math.max(0, pitchRadius(teeth) + teeth.module * (addendum(teeth, practice) - teeth.topping));
  const rootRadius = (teeth: Teeth) =>
    Math.max(pitchRadius(teeth) - teeth.module * dedendum(teeth, practice), LEAST_CORE * pitchRadius(teeth));
  const profile = (teeth: Teeth): Profile => {
    const root = rootRadius(teeth), tip = Math.max(root, teeth.measuredTipRadius ?? tipRadius(teeth));
    const above = teeth.role === "pinion" ? pinionSide(teeth, tip, practice) : wheelSide(teeth, practice);
    return profileOfPieces(withFlank(teeth, above, root), tip, 1);
  };
  return {
    name: "cycloidal",
    doesNotCover: [
      wheelTipSays(practice),
      "Profile shift is not a thing of clock teeth and is passed over.",
      "Spaces are drawn with square bottoms; round bottoms leave a little more metal there.",
      "Where a wheel has both pinions and lanterns for mates its teeth are made for the pinion of most leaves.",
    ],
    tipRadius, rootRadius, workingDistance, profile,
    outline: (teeth, chordMm) => outlineOfProfile(profile(teeth), teeth.count, chordMm),
  };
}

export const CYCLOIDAL: FormOfTooth = cycloidalForm(CLOCK_PRACTICE);

/** Modules, before topping. Topping under 0 raises a lantern's wheel as far as its tooth can go. */
function addendum(teeth: Teeth, practice: ClockPractice): number {
  if (teeth.role === "pinion") return practice.pinionTop(teeth.count).addendum;
  if (teeth.addendumFactor !== null) return practice.practicalShare * teeth.addendumFactor;
  if (teeth.lanternMate === null) return GENERAL_ADDENDUM;
  const { count, trundleDiameter } = teeth.lanternMate;
  const greatest = lanternGreatestAddendum(teeth.count, count, trundleDiameter / teeth.module);
  return Math.min(GENERAL_ADDENDUM, Math.max(GENERAL_ADDENDUM, greatest) + teeth.topping);
}

/** Modules. */
function dedendum(teeth: Teeth, practice: ClockPractice): number {
  if (teeth.role === "wheel") return practice.wheelDedendum;
  const wheel = teeth.addendumFactor === null ? GENERAL_ADDENDUM : practice.practicalShare * teeth.addendumFactor;
  return wheel + practice.pinionClearance;
}

/** What lies above a tooth's flank: the flank's own half angle and how far out it goes come with it. */
interface Side {
  readonly halfRad: number;
  readonly flankTo: number;
  readonly piece: Piece;
}

function withFlank(teeth: Teeth, side: Side, root: number): Piece[] {
  return [
    roundPiece("root", root, -Math.PI / teeth.count, -side.halfRad, 1),
    radialPiece(root, side.flankTo, -side.halfRad),
    side.piece,
  ];
}

function pinionSide(teeth: Teeth, tip: number, practice: ClockPractice): Side {
  const halfRad = halfToothRad(teeth), pitch = pitchRadius(teeth), top = practice.pinionTop(teeth.count);
  const apex = Math.max(tip, pitch + top.addendum * teeth.module);
  return { halfRad, flankTo: pitch, piece: pinionTop(teeth, halfRad, apex, top.radius * teeth.module) };
}

function wheelSide(teeth: Teeth, practice: ClockPractice): Side {
  const m = teeth.module, pitch = pitchRadius(teeth);
  if (teeth.lanternMate !== null) return lanternSide(teeth, teeth.lanternMate, practice);
  const halfRad = halfToothRad(teeth);
  const { wheelTip } = practice;
  if (wheelTip.curve === "arc") {
    const practical = addendum(teeth, practice);
    const f = wheelTip.of === "practical" ? practical : practical / practice.practicalShare;
    return { halfRad, flankTo: pitch, piece: topArc(pitch, halfRad, pitch + practical * m, wheelTip.factor * f * m) };
  }
  const leaves = teeth.mateCount ?? generalLeaves(teeth.count, GENERAL_ADDENDUM / practice.practicalShare);
  return { halfRad, flankTo: pitch, piece: rolledPiece({ pitch, generating: (leaves * m) / 4, back: 0 }, 0, -halfRad) };
}

/** The pins' path set back by half a trundle. Its first part doubles back on itself and is no edge: the flank ends where it turns. */
function lanternSide(teeth: Teeth, mate: NonNullable<Teeth["lanternMate"]>, practice: ClockPractice): Side {
  const m = teeth.module, pitch = pitchRadius(teeth), back = mate.trundleDiameter / 2;
  const generating = (mate.count * m) / 2;
  const curve = { pitch, generating, back };
  // The epicycloid's radius of curvature is 4q(R + q)/(R + 2q) sin(roll / 2); the parallel curve turns where that is `back`.
  const turning = (back * (pitch + 2 * generating)) / (4 * generating * (pitch + generating));
  const roll = 2 * Math.asin(Math.min(1, turning));
  const start = rolledAt(curve, roll);
  const room = Math.PI / teeth.count - start.polarRad - (practice.lanternFreedom * m) / 2 / pitch;
  const halfRad = Math.max(halfAngleRad(teeth, 0), Math.min(room, halfAngleRad(teeth, practice.lanternTooth - teeth.thinning)));
  return { halfRad, flankTo: start.radius, piece: rolledPiece(curve, roll, -halfRad - start.polarRad) };
}

/** Leaves (not whole) of the pinion that a general cutter's tooth is made for: the one whose theoretical addendum is this. */
function generalLeaves(wheelTeeth: number, factor: number): number {
  let low = 1, high = 2 * wheelTeeth;
  for (let i = 0; i < 40; i++) {
    const mid = (low + high) / 2;
    if (theoreticalAddendum(wheelTeeth, mid) < factor) low = mid;
    else high = mid;
  }
  return high;
}
