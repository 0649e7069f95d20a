// Two things judged: the gap as drawn and at the worst of the shakes, in plan and in height, and which of the two ways
// decides. Lengths in mm.
import { axisReach, type Axis, type Reach } from "../bodies/axis.ts";
import { roomInOpenings } from "../bodies/openings.ts";
import { farthestOfOutline, leastEdgeDistance } from "../bodies/plate.ts";
import type { Cylinder, Thing } from "../bodies/thing.ts";
import type { Severity } from "../finding.ts";
import type { Plate } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { AT_LIMIT_MM, TOUCH_MM } from "../numeric/tolerance.ts";
import { graver, severityOf } from "./severity.ts";
import { sharedShake } from "../bodies/shakes.ts";

/** One way of being clear: as drawn, and at the worst. */
export interface Clear {
  readonly gap: number;
  readonly worst: number;
}

/** What stands for a pair: its gravest two cylinders, and the way in which they are better off. */
export interface Verdict {
  readonly severity: Severity;
  readonly way: "plan" | "height";
  readonly gap: number;
  readonly worst: number;
  readonly wanted: number;
  readonly plan: Clear;
  readonly height: Clear;
  readonly cylinders: readonly [Cylinder, Cylinder];
}

/** What two things have between them whichever of their cylinders is looked at. */
interface Relation {
  readonly a: Thing;
  readonly b: Thing;
  /** Of the two axes; against a plate, of the axis and the farthest point of the outline. */
  readonly reach: Reach;
  /** Run-outs and sideshakes: what plan loses at the worst. */
  readonly planLoss: number;
  /** What height loses at the worst, without wobble: a over b, and b over a. */
  readonly lossAOver: number;
  readonly lossBOver: number;
}

export function relationOf(movement: Movement, a: Thing, b: Thing): Relation {
  const sa = a.shake, sb = b.shake;
  const shared = sharedShake(movement, a.arbor, b.arbor);
  return {
    a, b, reach: reachOf(a, b),
    planLoss: a.runoutMm + b.runoutMm + sa.side + sb.side - 2 * shared.side,
    lossAOver: sa.down + sb.up - shared.down - shared.up,
    lossBOver: sb.down + sa.up - shared.down - shared.up,
  };
}

/** The verdict on two things of different bodies. */
export const judge = (movement: Movement, a: Thing, b: Thing): Verdict => verdictOf(movement, relationOf(movement, a, b));

/** The same verdict, or null where height alone shows the two to be free: that is soon seen, and most near pairs are so. */
export function judgeUnlessOver(movement: Movement, a: Thing, b: Thing): Verdict | null {
  const relation = relationOf(movement, a, b);
  return isClearInHeight(relation, movement.practice.faceGap) ? null : verdictOf(movement, relation);
}

function verdictOf(movement: Movement, relation: Relation): Verdict {
  const { a, b } = relation;
  const { planGap, faceGap } = movement.practice;
  let verdict: Verdict | null = null;
  for (const ca of a.cylinders)
    for (const cb of b.cylinders) {
      const next = decide(planClear(relation, ca, cb), heightClear(relation, ca, cb), planGap, faceGap, [ca, cb]);
      if (verdict === null || isWorse(next, verdict)) verdict = next;
    }
  if (verdict === null) throw new Error(`${a.id} or ${b.id} is of no cylinder at all`);
  return verdict;
}

function isClearInHeight(relation: Relation, faceGap: number): boolean {
  for (const ca of relation.a.cylinders)
    for (const cb of relation.b.cylinders)
      if (severityOf(heightClear(relation, ca, cb).worst, faceGap) !== "free") return false;
  return true;
}

/** How far a part must rise, or sink, to stand clear over or under all of another thing that it is not clear of in plan. */
export function liftToClear(movement: Movement, part: Thing, other: Thing): { rise: number; sink: number } {
  const relation = relationOf(movement, part, other);
  const { planGap, faceGap } = movement.practice;
  let rise = 0, sink = 0;
  for (const own of part.cylinders)
    for (const c of other.cylinders) {
      if (severityOf(planClear(relation, own, c).worst, planGap) === "free") continue;
      const lost = wobbleOfBoth(relation, own, c) + faceGap;
      rise = Math.max(rise, c.z1 - own.z0 + relation.lossAOver + lost);
      sink = Math.max(sink, own.z1 - c.z0 + relation.lossBOver + lost);
    }
  return { rise, sink };
}

/** A pair is as good as its better way; where both are alike, the one with more to spare; in plan if equal. */
export function decide(plan: Clear, height: Clear, planGap: number, faceGap: number, cylinders: readonly [Cylinder, Cylinder]): Verdict {
  const inPlan = severityOf(plan.worst, planGap), inHeight = severityOf(height.worst, faceGap);
  const better = graver(inHeight, inPlan);
  const byPlan = better > 0 || (better === 0 && plan.worst - planGap >= height.worst - faceGap - AT_LIMIT_MM);
  return byPlan
    ? { severity: inPlan, way: "plan", ...plan, wanted: planGap, plan, height, cylinders }
    : { severity: inHeight, way: "height", ...height, wanted: faceGap, plan, height, cylinders };
}

export function isWorse(next: Verdict, than: Verdict): boolean {
  const more = graver(next.severity, than.severity);
  return more > 0 || (more === 0 && next.worst - next.wanted < than.worst - than.wanted);
}

function reachOf(a: Thing, b: Thing): Reach {
  if (a.plate !== null) return farthest(a.plate, b);
  if (b.plate !== null) return farthest(b.plate, a);
  return axisReach(a.axis, b.axis);
}

/** Only wobble asks how far an outline reaches. */
const farthest = (plate: Plate, by: Thing): Reach =>
  ({ least: 0, greatest: by.wobbleMm === 0 ? 0 : farthestOfOutline(plate.outline, by.axis) });

export function planClear({ a, b, reach, planLoss }: Relation, ca: Cylinder, cb: Cylinder): Clear {
  const gap = a.plate !== null ? plateGap(a.plate, a.openings, b.axis, cb.radius)
    : b.plate !== null ? plateGap(b.plate, b.openings, a.axis, ca.radius)
    : roundGap(reach, ca, cb);
  return { gap, worst: gap - planLoss };
}

/** Beside one another, or one inside the hole of the other, whichever is more. */
function roundGap(reach: Reach, a: Cylinder, b: Cylinder): number {
  let gap = reach.least - a.radius - b.radius;
  if (a.inner > 0) gap = Math.max(gap, a.inner - reach.greatest - b.radius);
  if (b.inner > 0) gap = Math.max(gap, b.inner - reach.greatest - a.radius);
  return gap;
}

/** Clear outside the outline, or inside one of the openings, whichever is more. */
const plateGap = (plate: Plate, openings: Thing["openings"], axis: Axis, radius: number): number =>
  Math.max(leastEdgeDistance(plate.outline, axis), roomInOpenings(plate, openings, axis)) - radius;

/** From the top of the lower to the bottom of the upper, in the order that gives more; equal orders: the worse at the worst. */
export function heightClear(relation: Relation, ca: Cylinder, cb: Cylinder): Clear {
  const { lossAOver, lossBOver } = relation;
  const wobble = wobbleOfBoth(relation, ca, cb);
  const aOver = ca.z0 - cb.z1, bOver = cb.z0 - ca.z1;
  const gap = Math.max(aOver, bOver);
  const worstA = aOver - lossAOver - wobble, worstB = bOver - lossBOver - wobble;
  if (Math.abs(aOver - bOver) <= TOUCH_MM) return { gap, worst: Math.min(worstA, worstB) };
  return { gap, worst: aOver > bOver ? worstA : worstB };
}

const wobbleOfBoth = ({ a, b, reach }: Relation, ca: Cylinder, cb: Cylinder): number =>
  feltWobble(a, ca, b, cb, reach.greatest) + feltWobble(b, cb, a, ca, reach.greatest);

/** A face wobbles at its rim in full, and less where the other does not reach out to it. */
function feltWobble(of: Thing, own: Cylinder, by: Thing, other: Cylinder, greatest: number): number {
  if (of.wobbleMm === 0) return 0;
  const reached = by.plate !== null ? greatest : greatest + other.radius;
  return reached >= own.radius ? of.wobbleMm : (of.wobbleMm * reached) / own.radius;
}
