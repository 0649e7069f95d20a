// Putting together, step by step: what goes in, from how far above its place, over what and in gear with what, which
// pivots are caught at once, what it locks in. And the way back: what must come out before one named thing. Lengths in mm,
// leans in degrees.
import { edgeDistance } from "../bodies/plate.ts";
import { radiusOf, type Cylinder, type Thing } from "../bodies/thing.ts";
import type { Movement } from "../movement.ts";
import { toDeg } from "../numeric/angle.ts";
import { TOUCH_MM } from "../numeric/tolerance.ts";
import { orderOfEntry, overlapInPlan } from "./before.ts";
import { pointersTogether, saysOf } from "./says.ts";
import type { Lean, Step } from "./step.ts";
import { unitsOf, type Unit, type Units } from "./units.ts";

export interface PuttingTogether {
  /** The plate on which everything is built up; null where there is none. */
  readonly base: string | null;
  readonly steps: readonly Step[];
}

/** The steps in order, each as late as nothing before it needs. */
export function puttingTogether(movement: Movement): PuttingTogether {
  const { base, units, groups, before } = grouped(movement);
  const at = stepAt(units.length, groups);
  const steps = groups.map((group, k) => {
    const own = group.flatMap((i) => units[i].things), members = group.map((i) => units[i]);
    const near = neighboursIn(own, [...(base === null ? [] : [base]), ...units.flatMap((u, i) => (at[i] < k ? u.things : []))]);
    const lean = group.length > 1 ? leastLean(movement, members) : null;
    const arrows = before.filter((b) => group.includes(b.then) && !group.includes(b.first));
    return {
      kind: members[0].kind === "arbor" ? "arbors" as const : members[0].kind === "plate" ? "plate" as const : "parts" as const,
      ids: members.map((u) => u.id), ...saysOf({ movement, base, members, arrows, isIn: (id) => inBy(units, at, k, id), lean }),
      lift: members[0].behind ? -liftFrom(near, -1) : liftFrom(near, 1), lean, clear: clearOf(near),
    };
  });
  return { base: base?.id ?? null, steps: pointersTogether(movement, steps) };
}

/** What must come out, in that order, before an arbor, plate or part put on afterwards can; itself last. Empty where there is no such thing. */
export function takingDown(movement: Movement, id: string): string[][] {
  const { units, groups, before } = grouped(movement);
  const wanted = units.findIndex((u) => u.id === id);
  if (wanted < 0) return [];
  const out = new Set([wanted]), open = [wanted];
  const at = stepAt(units.length, groups);
  for (let v = open.pop(); v !== undefined; v = open.pop()) {
    const over = before.filter((b) => b.first === v).map((b) => b.then);
    for (const w of [...over, ...groups[at[v]]]) if (!out.has(w)) { out.add(w); open.push(w); }
  }
  return groups.map((g) => g.filter((i) => out.has(i)).map((i) => units[i].id)).filter((g) => g.length > 0).reverse();
}

function grouped(movement: Movement): Units & { readonly groups: readonly number[][] } {
  const units = unitsOf(movement);
  return { ...units, groups: orderOfEntry(units.units.length, units.before) };
}

function stepAt(count: number, groups: readonly (readonly number[])[]): Int32Array {
  const at = new Int32Array(count);
  groups.forEach((group, k) => { for (const i of group) at[i] = k; });
  return at;
}

const inBy = (units: readonly Unit[], at: Int32Array, step: number, id: string): boolean =>
  units.some((u, i) => at[i] < step && u.things.some((t) => t.id === id));

interface Neighbour { readonly own: Thing; readonly other: Thing }

/** What is in already and would be met on the way. */
function neighboursIn(own: readonly Thing[], others: readonly Thing[]): Neighbour[] {
  return own.flatMap((a) => others.filter((b) => meets(a, b)).map((other) => ({ own: a, other })));
}

/** A plate meets what reaches through it, and an arbor the plate its pivots run in. */
function meets(own: Thing, other: Thing): boolean {
  if (own.plate !== null) return other.plate === null && edgeDistance(own.plate.outline, other.axis.atRest.x, other.axis.atRest.y) < 0;
  if (other.plate === null) return overlapInPlan(own, other);
  return own.part < 0 && edgeDistance(other.plate.outline, own.axis.atRest.x, own.axis.atRest.y) < 0;
}

/** How far along z all of it must stand from its place to be clear of what it meets. */
function liftFrom(near: readonly Neighbour[], sign: 1 | -1): number {
  let lift = 0;
  for (const { own, other } of near)
    for (const c of own.cylinders) for (const d of other.cylinders)
      if (own.plate !== null || other.plate !== null || crosses(own, c, other, d)) lift = Math.max(lift, sign > 0 ? d.z1 - c.z0 : c.z1 - d.z0);
  return lift;
}

function crosses(a: Thing, ca: Cylinder, b: Thing, cb: Cylinder): boolean {
  const distance = between(a, b);
  return distance < ca.radius + cb.radius - TOUCH_MM && distance + cb.radius > ca.inner && distance + ca.radius > cb.inner;
}

function clearOf(near: readonly Neighbour[]): Step["clear"] {
  let least: Step["clear"] = null;
  for (const { own, other } of near) {
    if (own.part < 0 || other.part < 0) continue;
    const air = lowOf(own) - highOf(other);
    if (air >= -TOUCH_MM && (least === null || air < least.air)) least = { over: own.id, under: other.id, air: Math.max(0, air) };
  }
  return least;
}

/** The least lean that brings one of several in last: out from under what lies over it, about its foot in its hole. */
function leastLean(movement: Movement, members: readonly Unit[]): Lean | null {
  let least: Lean | null = null;
  for (const unit of members) {
    const worked = movement.arbors[unit.arbor];
    if (unit.kind !== "arbor" || worked.chain.length > 0) continue;
    const hole = worked.arbor.foot + (worked.arbor.pivots?.foot?.length ?? 0);
    let rad = 0;
    for (const a of unit.things) for (const b of members.flatMap((m) => (m === unit ? [] : m.things))) {
      if (highOf(a) > lowOf(b) + TOUCH_MM || !overlapInPlan(a, b)) continue;
      rad = Math.max(rad, Math.atan2(radiusOf(a) + radiusOf(b) - between(a, b), Math.max(0, highOf(a) - hole)));
    }
    if (rad > 0 && (least === null || toDeg(rad) < least.degrees)) least = { arbor: unit.id, degrees: toDeg(rad) };
  }
  return least;
}

const between = (a: Thing, b: Thing): number => Math.hypot(a.axis.atRest.x - b.axis.atRest.x, a.axis.atRest.y - b.axis.atRest.y);
const lowOf = (t: Thing): number => Math.min(...t.cylinders.map((c) => c.z0));
const highOf = (t: Thing): number => Math.max(...t.cylinders.map((c) => c.z1));
