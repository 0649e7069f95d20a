// The figures of a pair at any distance: involutes by the closed formulas, every other form by bringing its true
// outlines together. Lengths in mm.
import { contactAt, flanksOf, freeArcsAt } from "./contact.ts";
import { involuteBacklashMm, involuteContactRatio } from "./involute.ts";
import { involutePairOf, type Pair, workingRadiusMm } from "./pair.ts";

export interface Figures {
  /** Along the working pitch circle, the least over one pitch; null where there is no figure. */
  backlashMm(distanceMm: number): number | null;
  /** What the practice's least and most are held against, in modules. */
  countedModules(distanceMm: number): number | null;
  /** Contact ratio, null where there is no figure; and whether a tip comes in against the mate's tip, which closed formulas do not tell. */
  meeting(distanceMm: number): { readonly ratio: number | null; readonly butting: boolean };
}

/** The free arc at the computed distance stands for so much backlash, in modules: clock teeth have their own freedom. */
const COUNTED_AT_COMPUTED = 0.1;
const APART = { ratio: 0, butting: false };
/** Steps over a pitch where only the least or most of it is asked. */
const FEW_PHASES = 48;

/** Null where the pair cannot work at any distance. */
export function figuresOf(pair: Pair): Figures | null {
  if (pair.fault !== null) return null;
  const involute = involutePairOf(pair);
  if (involute === null) return fromOutlines(pair);
  const backlashMm = (distanceMm: number) => involuteBacklashMm(involute, distanceMm);
  return {
    backlashMm,
    countedModules: (distanceMm) => perModule(pair, backlashMm(distanceMm)),
    meeting: (distanceMm) => ({ ratio: involuteContactRatio(involute, distanceMm), butting: false }),
  };
}

function fromOutlines(pair: Pair): Figures {
  const flanks = flanksOf(pair);
  const backlashMm = (distanceMm: number) => {
    const arcs = freeArcsAt(flanks, distanceMm, FEW_PHASES);
    return arcs && arcs.leastRad * workingRadiusMm(pair, distanceMm);
  };
  const usual = pair.computedMm === null ? null : backlashMm(pair.computedMm);
  return {
    backlashMm,
    countedModules: (distanceMm) => {
      const backlash = backlashMm(distanceMm);
      return backlash === null || usual === null ? null : (backlash - usual) / pair.moduleMm + COUNTED_AT_COMPUTED;
    },
    meeting: (distanceMm) => contactAt(flanks, distanceMm, FEW_PHASES) ?? APART,
  };
}

const perModule = (pair: Pair, mm: number | null): number | null => (mm === null ? null : mm / pair.moduleMm);
