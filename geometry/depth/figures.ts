// The figures of a pair at any distance: involutes by the closed formulas, every other form by bringing its true
// outlines together. Lengths in mm.
import { arcAndRatioAt, flanksOf, freeArcsAt, handingAt } from "./contact.ts";
import { involuteBacklashMm, involuteContactRatio } from "./involute.ts";
import { involutePairOf, type Pair, workingRadiusMm } from "./pair.ts";

export interface Figures {
  /** Along the working pitch circle, the least over one pitch; null where there is no figure. */
  backlashMm(distanceMm: number): number | null;
  /** What the practice's least and most are held against, in modules. */
  countedModules(distanceMm: number): number | null;
  /** Both of these and the contact ratio, from one look. */
  standing(distanceMm: number): { readonly backlashMm: number | null; readonly countedModules: number | null; readonly contactRatio: number | null };
  meeting(distanceMm: number): Meeting;
}

/** Whether teeth take over from one another. */
export interface Meeting {
  /** Contact ratio, null where there is no figure; of other forms than the involute told only as far as 1. */
  readonly ratio: number | null;
  /** A tip comes in against the mate's tip; closed formulas do not tell it. */
  readonly butting: boolean;
  /** Not under 0 where the ratio is at least 1 and nothing butts; it falls evenly as the distance opens. */
  readonly spare: number;
}

/** The free arc at the computed distance stands for so much backlash, in modules: clock teeth have their own freedom. */
const COUNTED_AT_COMPUTED = 0.1;
const APART: Meeting = { ratio: 0, butting: false, spare: -Infinity };
/** Steps over a pitch where only the least or most of it is asked. */
const FEW_PHASES = 48;

/** Null where the pair cannot work at any distance. */
export function figuresOf(pair: Pair): Figures | null {
  if (pair.fault !== null) return null;
  const involute = involutePairOf(pair);
  if (involute === null) return fromOutlines(pair);
  const backlashMm = (distanceMm: number) => involuteBacklashMm(involute, distanceMm);
  const countedModules = (distanceMm: number) => perModule(pair, backlashMm(distanceMm));
  const contactRatio = (distanceMm: number) => involuteContactRatio(involute, distanceMm);
  return {
    backlashMm, countedModules,
    standing: (distanceMm) => ({ backlashMm: backlashMm(distanceMm), countedModules: countedModules(distanceMm), contactRatio: contactRatio(distanceMm) }),
    meeting: (distanceMm) => {
      const ratio = contactRatio(distanceMm);
      return { ratio, butting: false, spare: ratio === null ? -Infinity : ratio - 1 };
    },
  };
}

function fromOutlines(pair: Pair): Figures {
  const flanks = flanksOf(pair), { computedMm } = pair;
  const alongPitch = (arcs: { leastRad: number } | null, distanceMm: number) => arcs && arcs.leastRad * workingRadiusMm(pair, distanceMm);
  const backlashMm = (distanceMm: number) => alongPitch(freeArcsAt(flanks, distanceMm, FEW_PHASES), distanceMm);
  const seen = (distanceMm: number) => {
    const look = arcAndRatioAt(flanks, distanceMm, FEW_PHASES);
    return { backlashMm: alongPitch(look, distanceMm), contactRatio: look ? look.ratio : 0 };
  };
  const usual = computedMm === null ? null : seen(computedMm);
  const counted = (backlash: number | null) =>
    (backlash === null || !usual || usual.backlashMm === null ? null : (backlash - usual.backlashMm) / pair.moduleMm + COUNTED_AT_COMPUTED);
  return {
    backlashMm,
    countedModules: (distanceMm) => counted(backlashMm(distanceMm)),
    standing: (distanceMm) => {
      const look = usual && distanceMm === computedMm ? usual : seen(distanceMm);
      return { ...look, countedModules: counted(look.backlashMm) };
    },
    meeting: (distanceMm) => {
      const handing = handingAt(flanks, distanceMm, FEW_PHASES);
      return handing ? { ratio: handing.share, butting: handing.butting, spare: handing.spareRad } : APART;
    },
  };
}

const perModule = (pair: Pair, mm: number | null): number | null => (mm === null ? null : mm / pair.moduleMm);
