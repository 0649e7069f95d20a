// How deep an engaged pair stands: backlash, contact ratio and clearance as it stands and at the worst of run-out and
// sideshake. Involutes by closed formulas, every other form from its true outlines. Lengths in mm.
import type { Movement } from "../movement.ts";
import { involuteBacklashMm, involuteContactRatio, workingAngleRad } from "./involute.ts";
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
  readonly contactRatioAtShallowest: number | null;
  readonly tipToRootAtDeepest: number;
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
  return { pair, deepestMm, shallowestMm, tipToRootAtDeepest: tipToRootMm(pair, deepestMm), ...figuresOf(pair, deepestMm, shallowestMm) };
}

type Figures = Pick<Depth,
  "backlash" | "backlashAtDeepest" | "countedBacklash" | "contactRatio" | "contactRatioAtShallowest" | "baseCirclesOverlap">;

const NOTHING: Figures = {
  backlash: null, backlashAtDeepest: null, countedBacklash: null, contactRatio: null, contactRatioAtShallowest: null,
  baseCirclesOverlap: false,
};

function figuresOf(pair: Pair, deepestMm: number, shallowestMm: number): Figures {
  const involute = involutePairOf(pair);
  if (pair.fault !== null || !involute) return NOTHING;
  const backlash = involuteBacklashMm(involute, pair.distanceMm);
  return {
    backlash,
    backlashAtDeepest: involuteBacklashMm(involute, deepestMm),
    countedBacklash: backlash === null ? null : backlash / pair.moduleMm,
    contactRatio: involuteContactRatio(involute, pair.distanceMm),
    contactRatioAtShallowest: involuteContactRatio(involute, shallowestMm),
    baseCirclesOverlap: [pair.distanceMm, deepestMm, shallowestMm].some((d) => workingAngleRad(involute, d) === null),
  };
}
