// Teeth that stand inward: the involute annulus. Its flanks are those of the spaces of an outside wheel of the same count.
import { inv, inverseInv } from "./involute-function.ts";
import { pitchRadius, workingDistance } from "./distance.ts";
import { baseRadius, rollAt } from "./involute.ts";
import { arcPiece, profileOfPieces, roundPiece, type Piece, type Profile } from "./profile.ts";
import { RACK_ADDENDUM, RACK_CORNER, RACK_DEDENDUM } from "./rack.ts";
import { outlineOfProfile } from "./sampling.ts";
import type { FormOfTooth, Teeth } from "./teeth.ts";
import { halfToothRad } from "./thickness.ts";

export const ANNULUS: FormOfTooth = {
  name: "involute",
  doesNotCover: [
    "An annulus is drawn with involute teeth whatever its form says: neither clock practice nor the file makes others.",
    "Its root corner is a plain radius of up to 0.38 modules; the trochoid of a shaper's cutter is not drawn.",
    "Teeth end at the base circle where the tip would lie inside it; whether a pinion can be put in sideways is not examined.",
  ],
  tipRadius: (teeth) => Math.max(0, pitchRadius(teeth) + teeth.module * (teeth.shift - RACK_ADDENDUM + teeth.topping)),
  rootRadius: (teeth) => pitchRadius(teeth) + teeth.module * ((teeth.dedendum ?? RACK_DEDENDUM) + teeth.shift),
  workingDistance,
  profile: annulusProfile,
  outline: (teeth, chordMm) => outlineOfProfile(annulusProfile(teeth), teeth.count, chordMm),
};

function annulusProfile(teeth: Teeth): Profile {
  const flank = innerFlank(teeth), base = baseRadius(teeth);
  const pieces = withRoot(teeth, flank, Math.max(base, ANNULUS.rootRadius(teeth)));
  return profileOfPieces(pieces, Math.max(base, teeth.measuredTipRadius ?? ANNULUS.tipRadius(teeth)), -1);
}

interface InnerFlank {
  readonly base: number;
  /** Half the angle between the feet, on the base circle, of a tooth's two involutes; under 0 where they have crossed before. */
  readonly halfBaseRad: number;
}

const innerFlank = (teeth: Teeth): InnerFlank =>
  ({ base: baseRadius(teeth), halfBaseRad: halfToothRad(teeth) - inv((teeth.pressureAngleDeg * Math.PI) / 180) });

/** From roll angle `from` at the root inward to the base circle, or to where the two flanks of a tooth meet. */
function flankPiece({ base, halfBaseRad }: InnerFlank, from: number): Piece {
  const meeting = halfBaseRad < 0 ? Math.tan(inverseInv(-halfBaseRad) ?? 0) : 0;
  return {
    name: "flank", from, to: Math.min(from, meeting),
    at: (u) => {
      const c = Math.cos(-halfBaseRad - u), s = Math.sin(-halfBaseRad - u);
      return { x: base * (c - u * s), y: base * (s + u * c), nx: s, ny: -c };
    },
    atRadius: (radiusMm) => rollAt(radiusMm, base),
  };
}

/** Root, corner and flank: the corner as large as fits, none and no root where the flanks of a space meet before it. */
function withRoot(teeth: Teeth, flank: InnerFlank, root: number): Piece[] {
  const spaceRad = -Math.PI / teeth.count;
  const sharp = cornerAt(flank, root, 0);
  if (sharp.polarRad <= spaceRad)
    return [flankPiece(flank, Math.tan(inverseInv(Math.max(0, -spaceRad - flank.halfBaseRad)) ?? 0))];
  let corner = cornerAt(flank, root, RACK_CORNER * teeth.module);
  if (corner.polarRad < spaceRad) {
    let fits = 0, tooLarge = corner.cornerMm;
    for (let i = 0; i < 60; i++) {
      const mid = (fits + tooLarge) / 2;
      if (cornerAt(flank, root, mid).polarRad >= spaceRad) fits = mid;
      else tooLarge = mid;
    }
    corner = cornerAt(flank, root, fits);
  }
  return [roundPiece("root", root, spaceRad, corner.polarRad, -1), cornerPiece(corner), flankPiece(flank, corner.roll)];
}

interface Corner {
  readonly cornerMm: number;
  readonly centreRadius: number;
  readonly polarRad: number;
  /** Roll angle of the flank where the corner touches it, and the direction from the corner's centre to there. */
  readonly roll: number;
  readonly towardFlankRad: number;
}

/** The circle that touches root and flank: its centre lies on the flank's parallel curve, itself an involute of the same base circle. */
function cornerAt({ base, halfBaseRad }: InnerFlank, root: number, wantedMm: number): Corner {
  const cornerMm = Math.min(wantedMm, root - base);
  const centreRadius = root - cornerMm;
  const parallel = rollAt(centreRadius, base);
  const roll = parallel + cornerMm / base;
  const unwound = -halfBaseRad - roll;
  return { cornerMm, centreRadius, polarRad: unwound + Math.atan(parallel), roll, towardFlankRad: unwound + Math.PI / 2 };
}

function cornerPiece({ cornerMm, centreRadius, polarRad, towardFlankRad }: Corner): Piece {
  const centre = { x: centreRadius * Math.cos(polarRad), y: centreRadius * Math.sin(polarRad) };
  return arcPiece("fillet", centre, cornerMm, polarRad, towardFlankRad, -1);
}
