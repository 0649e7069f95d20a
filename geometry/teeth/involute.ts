// Involute teeth as a rack of ISO 53 leaves them: flank, trochoid at the root, undercut where the rack undercuts.
import { pitchRadius, workingDistance } from "./distance.ts";
import { inv, inverseInv } from "./involute-function.ts";
import { profileOfPieces, radialPiece, roundPiece, type Piece, type Profile } from "./profile.ts";
import { RACK_ADDENDUM, rackOf, trochoid, type Rack } from "./rack.ts";
import { outlineOfProfile } from "./sampling.ts";
import type { FormOfTooth, Teeth } from "./teeth.ts";
import { halfToothRad } from "./thickness.ts";

export const INVOLUTE: FormOfTooth = {
  name: "involute",
  doesNotCover: [
    "Helical, bevel and crowned teeth are not drawn.",
    "The root is the one a rack of ISO 53 profile A leaves (dedendum 1.25 modules or the part's own, corner 0.38); a form cutter leaves it a little fuller.",
    "Where so few teeth would be cut off at the neck by the rack, the flanks are drawn radial below the base circle.",
  ],
  tipRadius: (teeth) => Math.max(0, pitchRadius(teeth) + teeth.module * (RACK_ADDENDUM + teeth.shift - teeth.topping)),
  rootRadius: (teeth) => pitchRadius(teeth) - rackOf(teeth).depthMm,
  workingDistance,
  profile: involuteProfile,
  outline: (teeth, chordMm) => outlineOfProfile(involuteProfile(teeth), teeth.count, chordMm),
};

/** mm; the circle the involutes are unwound from. */
export const baseRadius = (teeth: Teeth): number => pitchRadius(teeth) * Math.cos((teeth.pressureAngleDeg * Math.PI) / 180);

function involuteProfile(teeth: Teeth): Profile {
  const rack = rackOf(teeth), root = pitchRadius(teeth) - rack.depthMm;
  const tip = Math.max(root, teeth.measuredTipRadius ?? INVOLUTE.tipRadius(teeth));
  return profileOfPieces(rootAndFlank(teeth, rack, root), tip, 1);
}

function rootAndFlank(teeth: Teeth, rack: Rack, root: number): Piece[] {
  const spaceRad = -Math.PI / teeth.count, base = baseRadius(teeth);
  const flank = flankPiece(teeth);
  if (rack.depthMm <= 0) {
    // The root lies outside the pitch circle, above the base circle: the flank goes straight down to it.
    const foot = { ...flank, from: Math.min(flank.to, rollAt(root, base)) };
    return [roundPiece("root", root, spaceRad, polarAt(foot, foot.from), 1), foot];
  }
  const fillet = trochoid(teeth, rack);
  const joint = jointOf(teeth, rack, fillet, flank);
  const pieces = joint === null ? radialFoot(flank, root, base) : [{ ...fillet, to: joint.gamma }, { ...flank, from: joint.roll }];
  return [roundPiece("root", root, spaceRad, polarAt(pieces[0]!, pieces[0]!.from), 1), ...pieces];
}

/** The lower flank, unwound by roll angle u (= tan of the pressure angle there) from the base circle to where it meets its mirror. */
function flankPiece(teeth: Teeth): Piece {
  const base = baseRadius(teeth);
  const halfBaseRad = Math.max(0, halfToothRad(teeth) + inv((teeth.pressureAngleDeg * Math.PI) / 180));
  return {
    name: "flank", from: 0, to: Math.tan(inverseInv(halfBaseRad) ?? 0),
    at: (u) => {
      const c = Math.cos(u - halfBaseRad), s = Math.sin(u - halfBaseRad);
      return { x: base * (c + u * s), y: base * (s - u * c), nx: s, ny: -c };
    },
    atRadius: (radiusMm) => rollAt(radiusMm, base),
  };
}

/** Where trochoid and flank join; null where the rack would cut the tooth off, or leave no flank. */
function jointOf(teeth: Teeth, rack: Rack, fillet: Piece, flank: Piece): { gamma: number; roll: number } | null {
  const base = baseRadius(teeth), pitch = pitchRadius(teeth), sin = Math.sin(rack.angleRad);
  // The lowest place of the rack's straight flank, below the pitch line; it touches the tooth on the line of action.
  const lowest = rack.depthMm - rack.cornerMm * (1 - sin);
  const roll = (pitch * sin - lowest / sin) / base;
  const joint = roll >= 0 ? { gamma: rack.angleRad, roll } : undercutJoint(fillet, flank, base);
  if (joint === null || joint.roll >= flank.to || widestRad(fillet, joint.gamma) >= 0) return null;
  return joint;
}

/** An undercut flank begins where the trochoid, come up from the root past the base circle, crosses it. */
function undercutJoint(fillet: Piece, flank: Piece, base: number): { gamma: number; roll: number } | null {
  const radius = (gamma: number) => {
    const p = fillet.at(gamma);
    return Math.hypot(p.x, p.y);
  };
  const beyondFlank = (gamma: number) => polarAt(flank, rollAt(radius(gamma), base)) - polarAt(fillet, gamma);
  const atBase = bisected(fillet.from, fillet.to, (gamma) => radius(gamma) < base);
  if (beyondFlank(atBase) > 0) return null;
  const gamma = bisected(atBase, fillet.to, (g) => beyondFlank(g) <= 0);
  return { gamma, roll: rollAt(radius(gamma), base) };
}

/** Where the rack leaves no neck: radial from the root to the base circle, then the whole involute. */
function radialFoot(flank: Piece, root: number, base: number): Piece[] {
  return root < base ? [radialPiece(root, base, polarAt(flank, 0)), flank] : [{ ...flank, from: rollAt(root, base) }];
}

/** The greatest polar angle (nearest the tooth's middle line) that the trochoid comes to as far as γ. */
function widestRad(fillet: Piece, gamma: number): number {
  let widest = -Infinity;
  for (let i = 0; i <= 16; i++) widest = Math.max(widest, polarAt(fillet, fillet.from + (i / 16) * (gamma - fillet.from)));
  return widest;
}

/** The roll angle at which an involute comes to a radius; 0 within its base circle. */
export const rollAt = (radiusMm: number, base: number): number => Math.sqrt(Math.max(0, (radiusMm / base) ** 2 - 1));

function polarAt(piece: Piece, u: number): number {
  const p = piece.at(u);
  return Math.atan2(p.y, p.x);
}

/** The last place between two, going from the first, at which a condition that fails once still holds. */
function bisected(from: number, to: number, holds: (u: number) => boolean): number {
  let inside = from, outside = to;
  for (let i = 0; i < 60; i++) {
    const mid = (inside + outside) / 2;
    if (holds(mid)) inside = mid;
    else outside = mid;
  }
  return inside;
}
