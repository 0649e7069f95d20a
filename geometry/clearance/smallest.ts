// The smallest gap in plan of the whole calliper: of all pairs that are not free of one another in height, the one that is
// left with least at the worst. Lengths in mm.
import { radiusOf, type Thing } from "../bodies/thing.ts";
import type { Severity } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { unevenOf } from "../motion/uneven.ts";
import { isExempt, sceneOf, type Scene } from "./gaps.ts";
import { judgeMoving, type MovingVerdict } from "./moving.ts";
import { judgeUnlessOver, type Verdict } from "./pair.ts";
import { placeOf } from "./where.ts";

export interface SmallestGap {
  readonly between: readonly [string, string];
  /** In plan, as drawn and at the worst, and what is wanted. */
  readonly gap: number;
  readonly worst: number;
  readonly wanted: number;
  /** Of the pair in plan. */
  readonly severity: Severity;
  /** Where the two come so near. */
  readonly at: { readonly x: number; readonly y: number; readonly z: number };
}

interface Least { readonly a: Thing; readonly b: Thing; readonly verdict: Verdict | MovingVerdict }

/** Null where no two things share a height. */
export function smallestGap(movement: Movement, scene: Scene = sceneOf(movement)): SmallestGap | null {
  const { things, boxes } = scene;
  const uneven = unevenOf(movement);
  let least: Least | null = null;
  things.forEach((a, i) => {
    for (let j = i + 1; j < things.length; j++) {
      const b = things[j];
      if (b.body === a.body || boxes[i].minZ > boxes[j].maxZ || boxes[j].minZ > boxes[i].maxZ) continue;
      if ((least !== null && leastPossible(scene, i, j) >= least.verdict.plan.worst) || isExempt(scene, i, j)) continue;
      const swept = judgeUnlessOver(movement, a, b);
      if (swept === null) continue;
      const verdict = swept.severity === "free" ? swept : judgeMoving(movement, uneven, a, b);
      if (verdict.way === "plan" && (least === null || verdict.plan.worst < least.verdict.plan.worst)) least = { a, b, verdict };
    }
  });
  const found = least as Least | null;
  if (found === null) return null;
  const { a, b, verdict } = found, { plan, wanted, severity } = verdict;
  const at = { ...placeOf(a, b, verdict.cylinders), ...("meeting" in verdict ? verdict.meeting?.place : null) };
  return { between: [a.id, b.id], gap: plan.gap, worst: plan.worst, wanted, severity, at };
}

/** No pair of round things that stand still has less than this; others are looked at in any case. */
function leastPossible({ movement, things }: Scene, i: number, j: number): number {
  const a = things[i], b = things[j];
  if (a.plate !== null || b.plate !== null || a.axis.swings.length + b.axis.swings.length > 0) return -Infinity;
  const lost = a.runoutMm + b.runoutMm + sideOf(movement, a.arbor) + sideOf(movement, b.arbor);
  return Math.hypot(a.axis.x - b.axis.x, a.axis.y - b.axis.y) - radiusOf(a) - radiusOf(b) - lost;
}

const sideOf = (movement: Movement, arbor: number): number => (arbor < 0 ? 0
  : [arbor, ...movement.arbors[arbor].chain].reduce((sum, i) => sum + Math.max(0, movement.arbors[i].ownSideshake) / 2, 0));
