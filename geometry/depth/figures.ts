// The figures of a pair at any distance: involutes by the closed formulas, every other form by bringing its true
// outlines together. Lengths in mm.
import { leastOf } from "../numeric/root.ts";
import { contactRatioAt, handingAt } from "./contact.ts";
import { type Flanks, flanksOf } from "./holding.ts";
import { involuteBacklashMm, involuteContactRatio, type InvolutePair } from "./involute.ts";
import { involutePairOf, type Pair, workingRadiusMm } from "./pair.ts";
import { type ByPhase, freeArcsOf, sparesOf } from "./phases.ts";

export interface Figures {
  /** Along the working pitch circle, the least over one pitch; null where there is no figure. */
  backlashMm(distanceMm: number): number | null;
  /** What the practice's least and most are held against, in modules. */
  countedModules(distanceMm: number): number | null;
  /** The backlash that is counted as so many modules, mm; null where none is. */
  countedAsMm(modules: number): number | null;
  /** Both of these and the contact ratio. */
  standing(distanceMm: number): { readonly backlashMm: number | null; readonly countedModules: number | null; readonly contactRatio: number | null };
  meeting(distanceMm: number): Meeting;
  /** The backlash phase by phase, mm; closed formulas know one phase. */
  readonly arcs: ByPhase;
  /** The phase that is tightest at the computed distance. */
  readonly tightest: number;
  /** Not under 0 where the contact ratio is at least 1 and nothing butts; they fall evenly as the distance opens. */
  readonly spares: ByPhase;
}

/** Whether teeth take over from one another. */
export interface Meeting {
  /** Contact ratio, null where there is no figure; of other forms than the involute told only as far as 1. */
  readonly ratio: number | null;
  /** A tip comes in against the mate's tip; closed formulas do not tell it. */
  readonly butting: boolean;
}

/** The free arc at the computed distance stands for so much backlash, in modules: clock teeth have their own freedom. */
const COUNTED_AT_COMPUTED = 0.1;
/** Steps over a pitch where only the least or most of it is asked. */
const FEW_PHASES = 48;

/** Null where the pair cannot work at any distance. */
export function figuresOf(pair: Pair): Figures | null {
  if (pair.fault !== null) return null;
  const involute = involutePairOf(pair);
  return involute === null ? fromOutlines(pair, flanksOf(pair)) : fromFormulas(pair, involute);
}

function fromFormulas(pair: Pair, involute: InvolutePair): Figures {
  const backlashMm = (distanceMm: number) => involuteBacklashMm(involute, distanceMm);
  const countedModules = (distanceMm: number) => {
    const backlash = backlashMm(distanceMm);
    return backlash === null ? null : backlash / pair.moduleMm;
  };
  const contactRatio = (distanceMm: number) => involuteContactRatio(involute, distanceMm);
  return {
    backlashMm, countedModules, countedAsMm: (modules) => modules * pair.moduleMm,
    standing: (distanceMm) => ({ backlashMm: backlashMm(distanceMm), countedModules: countedModules(distanceMm), contactRatio: contactRatio(distanceMm) }),
    meeting: (distanceMm) => ({ ratio: contactRatio(distanceMm), butting: false }),
    arcs: onePhase(backlashMm), tightest: 0,
    spares: onePhase((distanceMm) => {
      const ratio = contactRatio(distanceMm);
      return ratio === null ? null : ratio - 1;
    }),
  };
}

const onePhase = (one: (distanceMm: number) => number | null): ByPhase => ({
  one,
  all: (distanceMm) => {
    const value = one(distanceMm);
    return value === null ? null : Float64Array.of(value);
  },
});

function fromOutlines(pair: Pair, flanks: Flanks): Figures {
  const arcs = alongPitch(pair, freeArcsOf(flanks, FEW_PHASES));
  const backlashMm = (distanceMm: number) => {
    const all = arcs.all(distanceMm);
    return all && all[leastOf(all)];
  };
  const usual = pair.computedMm === null ? null : arcs.all(pair.computedMm), tightest = usual ? leastOf(usual) : 0;
  const usualMm = usual && usual[tightest];
  const counted = (backlash: number | null) =>
    (backlash === null || usualMm === null ? null : (backlash - usualMm) / pair.moduleMm + COUNTED_AT_COMPUTED);
  const standingMm = (distanceMm: number) => (distanceMm === pair.computedMm ? usualMm : backlashMm(distanceMm));
  return {
    backlashMm, countedModules: (distanceMm) => counted(backlashMm(distanceMm)),
    countedAsMm: (modules) => usualMm && (modules - COUNTED_AT_COMPUTED) * pair.moduleMm + usualMm,
    standing: (distanceMm) => {
      const backlash = standingMm(distanceMm);
      return { backlashMm: backlash, countedModules: counted(backlash), contactRatio: contactRatioAt(flanks, distanceMm, FEW_PHASES) };
    },
    meeting: (distanceMm) => {
      const handing = handingAt(flanks, distanceMm, FEW_PHASES);
      return { ratio: handing ? handing.share : 0, butting: handing !== null && handing.butting };
    },
    arcs, tightest, spares: sparesOf(flanks, FEW_PHASES),
  };
}

/** Free arcs of the driven as lengths along its working pitch circle. */
const alongPitch = (pair: Pair, arcs: ByPhase): ByPhase => ({
  all: (distanceMm) => {
    const all = arcs.all(distanceMm), radiusMm = workingRadiusMm(pair, distanceMm);
    return all && all.map((arc) => arc * radiusMm);
  },
  one: (distanceMm, phase) => {
    const arc = arcs.one(distanceMm, phase);
    return arc === null ? null : arc * workingRadiusMm(pair, distanceMm);
  },
});
