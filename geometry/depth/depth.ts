// How deep an engaged pair stands: backlash, contact ratio and clearance as it stands and at the worst of run-out and
// sideshake. Involutes by closed formulas, every other form from its true outlines. Lengths in mm.
import type { Movement } from "../movement.ts";
import { figuresOf } from "./figures.ts";
import { workingAngleRad } from "./involute.ts";
import { deeperBy, involutePairOf, type Pair, pairOf, shakeOf, tipToRootMm } from "./pair.ts";

export interface Depth {
  readonly pair: Pair;
  readonly deepestMm: number;
  readonly shallowestMm: number;
  /** Along the working pitch circle, as it stands. */
  readonly backlash: number | null;
  readonly backlashAtDeepest: number | null;
  /** The backlash that the practice's least and most are held against, in modules. */
  readonly countedBacklash: number | null;
  readonly contactRatio: number | null;
  /** Of other forms than the involute told only as far as 1. */
  readonly contactRatioAtShallowest: number | null;
  readonly tipToRootAtDeepest: number;
  /** A tip meets the mate's tip instead of entering; told from outlines, so never of involutes. */
  readonly buttsAtShallowest: boolean;
  /** Base circles overlap as it stands, at the deepest or at the shallowest: nowhere to work. */
  readonly baseCirclesOverlap: boolean;
}

/** An engaged pair of a movement at its distance as it stands. */
export const depthOf = (movement: Movement, index: number): Depth => depthOfPair(pairOf(movement, index));

/** All of them, in the order of the instrument. */
export const depthsOf = (movement: Movement): Depth[] => movement.engagements.map((_, i) => depthOf(movement, i));

/** A pair at its distance as it stands. */
export function depthOfPair(pair: Pair): Depth {
  const shakeMm = shakeOf(pair);
  const deepestMm = deeperBy(pair, shakeMm), shallowestMm = deeperBy(pair, -shakeMm);
  return { pair, deepestMm, shallowestMm, tipToRootAtDeepest: tipToRootMm(pair, deepestMm), ...judged(pair, deepestMm, shallowestMm) };
}

type Judged = Pick<Depth,
  "backlash" | "backlashAtDeepest" | "countedBacklash" | "contactRatio" | "contactRatioAtShallowest" | "buttsAtShallowest" | "baseCirclesOverlap">;

const NOTHING: Judged = {
  backlash: null, backlashAtDeepest: null, countedBacklash: null, contactRatio: null, contactRatioAtShallowest: null,
  buttsAtShallowest: false, baseCirclesOverlap: false,
};

function judged(pair: Pair, deepestMm: number, shallowestMm: number): Judged {
  const figures = figuresOf(pair), involute = involutePairOf(pair), distanceMm = pair.distanceMm;
  if (figures === null) return NOTHING;
  const standing = figures.standing(distanceMm), shallowest = figures.meeting(shallowestMm);
  return {
    backlash: standing.backlashMm,
    backlashAtDeepest: figures.backlashMm(deepestMm),
    countedBacklash: standing.countedModules,
    contactRatio: standing.contactRatio,
    contactRatioAtShallowest: shallowest.ratio,
    buttsAtShallowest: shallowest.butting,
    baseCirclesOverlap: involute !== null && [distanceMm, deepestMm, shallowestMm].some((d) => workingAngleRad(involute, d) === null),
  };
}
