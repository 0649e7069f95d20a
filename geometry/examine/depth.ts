// `depth`: engaged pairs too deep or too shallow, as they stand and at the worst of run-out and sideshake.
import { type Depth, depthOf, depthsOf } from "../depth/depth.ts";
import { faceOverlapOf } from "../depth/face.ts";
import type { Finding, Severity } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { mm, moveToDistance, notAbove, pitchPoint, under } from "./engaged.ts";

/** Pairs that `unequal` finds fault with are not judged here: no depth suits them. */
export const depthFindings = (movement: Movement, depths: readonly Depth[] = depthsOf(movement)): Finding[] => depths.flatMap((depth, i) => {
  if (depth.pair.isUnequal) return [];
  const verdict = verdictOf(movement, depth);
  const { pair, backlash, backlashAtDeepest } = depth;
  const finding: Finding = {
    code: "depth", severity: verdict.severity, between: [pair.driver.id, pair.driven.id],
    ...(backlash === null ? {} : { gap: backlash }),
    ...(backlashAtDeepest === null ? {} : { worst: backlashAtDeepest }),
    wanted: movement.practice.backlash[0] * pair.moduleMm,
    at: { ...pitchPoint(movement, i, pair), z: faceOverlapOf(movement, i).z },
    says: verdict.says,
    remedies: verdict.severity === "free" ? [] : remediesOf(movement, i, depth),
  };
  return [finding];
});

interface Verdict { readonly severity: Severity; readonly says: string }

function verdictOf(movement: Movement, depth: Depth): Verdict {
  const [a, b] = [depth.pair.driver.id, depth.pair.driven.id];
  const foul = foulOf(depth);
  if (foul !== null) return { severity: "foul", says: `${a} and ${b} ${foul}` };
  const tight = tightOf(movement, depth);
  if (tight !== null) return { severity: "tight", says: `${a} and ${b} ${tight}` };
  return { severity: "free", says: `${a} and ${b} are at depth, with ${mm(depth.backlash ?? 0)} of backlash` };
}

function foulOf(depth: Depth): string | null {
  const { pair, backlashAtDeepest, tipToRootAtDeepest, contactRatioAtShallowest, buttsAtShallowest } = depth;
  if (pair.fault !== null) return `cannot work: ${pair.fault}`;
  if (depth.baseCirclesOverlap) return `stand so ${pair.annulus ? "near" : "deep"} that their base circles leave no line of contact`;
  if (!pair.annulus && pair.distanceMm >= pair.driver.tipRadiusMm + pair.driven.tipRadiusMm) return "stand so far apart that they do not touch";
  if (backlashAtDeepest !== null && notAbove(backlashAtDeepest, 0)) return `are too deep: ${short(backlashAtDeepest, "backlash")} at the deepest`;
  if (notAbove(tipToRootAtDeepest, 0)) return `are too deep: a tip meets a root at the deepest (${mm(tipToRootAtDeepest)})`;
  if (contactRatioAtShallowest !== null && contactRatioAtShallowest < 1)
    return `are too shallow: contact ratio ${contactRatioAtShallowest.toFixed(2)} at the shallowest, so that one pair of teeth leaves before the next takes over`;
  if (buttsAtShallowest) return "are too shallow: at the shallowest a tip meets a tip instead of entering its space";
  return null;
}

function tightOf(movement: Movement, depth: Depth): string | null {
  const { pair, backlash, countedBacklash, tipToRootAtDeepest } = depth;
  const m = pair.moduleMm, [least, most] = movement.practice.backlash;
  const wanted = `${mm(least * m)} to ${mm(most * m)} is wanted`;
  if (backlash !== null && countedBacklash !== null && under(countedBacklash * m, least * m))
    return `are deep: ${mm(backlash)} of backlash as they stand, ${wanted}`;
  if (backlash !== null && countedBacklash !== null && under(most * m, countedBacklash * m))
    return `are shallow: ${mm(backlash)} of backlash as they stand, ${wanted}`;
  const tip = movement.practice.tipClearance * m;
  if (under(tipToRootAtDeepest, tip)) return `have only ${mm(tipToRootAtDeepest)} from tip to root at the deepest, ${mm(tip)} is wanted`;
  return null;
}

const short = (valueMm: number, what: string): string =>
  valueMm < 0 ? `the ${what} is ${mm(-valueMm)} short` : `no ${what} is left`;

/** To the computed distance, where the pair is cured by it. */
function remediesOf(movement: Movement, index: number, { pair }: Depth): Finding["remedies"] {
  if (pair.fault !== null || pair.computedMm === null) return [];
  const engagements = movement.engagements.map((e, i) => (i === index ? { ...e, distance: pair.computedMm ?? e.distance } : e));
  const moved = { ...movement, engagements };
  return verdictOf(moved, depthOf(moved, index)).severity === "free" ? moveToDistance(movement, index, pair.computedMm) : [];
}
