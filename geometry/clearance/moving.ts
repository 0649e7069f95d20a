// The verdict on two things whose true outlines are followed. A swept solid is certain but hard on arms, pointers, pins,
// windows and what is carried round; where it fouls or is tight, the least gap of the true outlines stands in its place.
import type { Thing } from "../bodies/thing.ts";
import type { Movement } from "../movement.ts";
import { cycleOf } from "../motion/recurrence.ts";
import type { Uneven } from "../motion/uneven.ts";
import { writeRatio } from "../numeric/ratio.ts";
import { AT_LIMIT_MM, FOLLOW_MM } from "../numeric/tolerance.ts";
import { firstAtMost, leastGap, type Followed } from "./follow.ts";
import { decide, heightClear, isWorse, planClear, relationOf, type Verdict } from "./pair.ts";
import { spinOf, type Spin } from "./spin.ts";

/** When two followed things come as near as their severity says. */
export interface Meeting {
  /** First turn of the input, from 0 on. */
  readonly turns: number;
  /** In plan, as drawn. */
  readonly nearest: { readonly turns: number; readonly gap: number };
  readonly every: string;
  /** mm in plan, as drawn, by which they would have to come nearer with the input at 0 to be as bad. */
  readonly shortAtRest: number;
  readonly place: { readonly x: number; readonly y: number };
}

export interface MovingVerdict extends Verdict {
  /** Null where the swept solids stand, or where it is so at every turn. */
  readonly meeting: Meeting | null;
  /** False where following was broken off: the swept solids then stand, and are certain. */
  readonly proved: boolean;
}

/** The verdict with true outlines followed wherever the swept ones foul or are tight, through the whole cycle or up to a turn. */
export function judgeMoving(movement: Movement, uneven: readonly Uneven[], a: Thing, b: Thing, untilTurns = Infinity): MovingVerdict {
  const relation = relationOf(movement, a, b);
  const { planGap, faceGap } = movement.practice;
  let worst: MovingVerdict | null = null;
  for (const ca of a.cylinders)
    for (const cb of b.cylinders) {
      const swept = decide(planClear(relation, ca, cb), heightClear(relation, ca, cb), planGap, faceGap, [ca, cb]);
      const spin = swept.severity === "free" ? null : spinOf(movement, uneven, a, ca, b, cb);
      const next = spin === null ? { ...swept, meeting: null, proved: true } : followed(swept, spin, relation.planLoss, planGap, faceGap, untilTurns);
      if (worst === null || isWorse(next, worst)) worst = next;
    }
  if (worst === null) throw new Error(`${a.id} or ${b.id} is of no cylinder at all`);
  return worst;
}

function followed(swept: Verdict, spin: Spin, planLoss: number, planGap: number, faceGap: number, untilTurns: number): MovingVerdict {
  const nearest = leastGap(spin, untilTurns);
  if (!nearest.proved) return { ...swept, meeting: null, proved: false };
  const plan = { gap: nearest.gap, worst: nearest.gap - planLoss };
  const judged = decide(plan, swept.height, planGap, faceGap, swept.cylinders);
  const verdict: Verdict = judged.severity === "foul" ? { ...judged, way: "plan", ...plan, wanted: planGap } : judged;
  if (verdict.severity === "free") return { ...verdict, meeting: null, proved: true };
  const asBadMm = planLoss + (verdict.severity === "foul" ? AT_LIMIT_MM : planGap - AT_LIMIT_MM);
  const first = firstAtMost(spin, Math.max(asBadMm, nearest.gap + FOLLOW_MM), 0, nearest.boxes);
  if (first === null || !first.proved || alwaysAtMost(spin, asBadMm)) return { ...verdict, meeting: null, proved: first?.proved ?? true };
  return { ...verdict, proved: true, meeting: {
    turns: first.turns, nearest: { turns: nearest.turns, gap: nearest.gap }, every: writeRatio(cycleOf(spin.phases)),
    shortAtRest: spin.gap(spin.phases.map((p) => p.start)) - asBadMm, place: spin.place(first.turns),
  } };
}

/** Whether the gap is never more than this: the same search, the other way up. */
function alwaysAtMost({ phases, slopes, gap }: Followed, mostMm: number): boolean {
  return firstAtMost({ phases, slopes, gap: (turns) => -gap(turns) }, -mostMm - 2 * FOLLOW_MM) === null;
}
