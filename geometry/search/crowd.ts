// A movement as a crowd: the groups that may move in plan as points, the distances they must keep as bars, and everything
// that they must keep clear of, each pair by its own figures with what is wanted put in. Lengths in mm.
import { edgeDistance, nearestOnEdge } from "../bodies/plate.ts";
import { CASE_ID } from "../bodies/thing.ts";
import { sceneOf } from "../clearance/gaps.ts";
import { wholeGroundOf, type Ring, type Slab } from "../clearance/ground.ts";
import type { Movement } from "../movement.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { planOf, type Plan } from "../planting/groups.ts";
import type { Bar } from "../planting/relax.ts";

/** |place of a + shift − place of b| is spared by what it is over `to`, or under `from`; b −1: a place that stands, put into the shift. */
export interface Rub {
  readonly a: number;
  readonly b: number;
  readonly shiftX: number;
  readonly shiftY: number;
  readonly from: number;
  readonly to: number;
  /** What is wanted: with so much less it would foul. */
  readonly wanted: number;
  readonly between: readonly [string, string];
}

/** A point against a plate: its edge and openings, or the metal round a hole. */
export interface Wall {
  readonly a: number;
  readonly slab: Slab;
  readonly wanted: number;
  readonly between: readonly [string, string];
}

export interface Crowd {
  readonly plan: Plan;
  /** By point, its group. */
  readonly groups: readonly number[];
  readonly bars: readonly Bar[];
  /** By bar, the engaged arbors' ids. */
  readonly barsBetween: readonly (readonly [string, string])[];
  readonly rubs: readonly Rub[];
  /** Those whose axes a bar holds at their distance: no place helps them. */
  readonly stuck: readonly Rub[];
  readonly walls: readonly Wall[];
}

export function crowdOf(movement: Movement): Crowd {
  const plan = planOf(movement), scene = sceneOf(movement);
  const held = heldGroups(movement, plan);
  const groups = plan.centres.flatMap((_, g) => (plan.anchors[g] === null && !held.has(g) ? [g] : []));
  const pointOf = new Map(groups.map((g, i) => [g, i]));
  const rubs: Rub[] = [], walls: Wall[] = [];
  const { planGap, edge } = movement.practice;
  groups.forEach((group, a) => {
    const root = plan.roots[group][0], own = plan.centres[group];
    const off = { x: own.x - movement.arbors[root].x, y: own.y - movement.arbors[root].y };
    for (const shape of wholeGroundOf(movement, root, plan, scene).wanting) {
      const hole = shape.kind === "slab" ? shape.outside : isHole(movement, shape);
      const wanted = hole ? edge : planGap;
      if (shape.kind === "slab") walls.push({ a, slab: { ...shape, x: shape.x + off.x, y: shape.y + off.y }, wanted, between: shape.between });
      else addRub(plan, pointOf, rubs, a, shape, wanted, off);
    }
  });
  const inGear = barsOf(movement, plan, pointOf);
  const isStuck = (r: Rub) => inGear.bars.some((bar) => sameAxes(r, bar));
  const least = widest(rubs);
  return { plan, groups, rubs: least.filter((r) => !isStuck(r)), stuck: least.filter(isStuck), walls, ...inGear };
}

function sameAxes(r: Rub, bar: Bar): boolean {
  const side = r.a === bar.a && r.b === bar.b ? 1 : r.a === bar.b && r.b === bar.a ? -1 : 0;
  return side !== 0 && Math.hypot(r.shiftX - side * bar.shiftX, r.shiftY - side * bar.shiftY) <= SAME_AXIS_MM;
}

/** What a pair has to spare over what is wanted, with its axes so far apart. */
export const spareOf = (rub: Rub, apart: number): number => Math.max(apart - rub.to, rub.from > 0 ? rub.from - apart : -Infinity);

/** What a place has to spare from a plate, and the way in which it gains most. */
export function wallSpare({ slab }: Wall, x: number, y: number): { spare: number; ux: number; uy: number } {
  const px = x - slab.x, py = y - slab.y;
  const distance = edgeDistance(slab.outline, px, py);
  const near = nearestOnEdge(slab.outline, px, py);
  const sign = (distance < 0 ? -1 : 1) * (slab.outside ? -1 : 1), far = Math.abs(distance);
  let best = { spare: slab.outside ? slab.level - distance : distance - slab.level, ux: far === 0 ? 0 : (sign * (px - near.x)) / far, uy: far === 0 ? 0 : (sign * (py - near.y)) / far };
  for (const hole of slab.holes) {
    const dx = x - hole.x, dy = y - hole.y, apart = Math.hypot(dx, dy);
    if (hole.radius - apart > best.spare) best = { spare: hole.radius - apart, ux: apart === 0 ? 0 : -dx / apart, uy: apart === 0 ? 0 : -dy / apart };
  }
  return best;
}

/** The ring round an opening of the plate that a pivot runs in. */
const isHole = (movement: Movement, ring: Ring): boolean =>
  ring.by < 0 && movement.arborIndex.has(ring.between[0]) && movement.instrument.frame.plates.some((p) => p.id === ring.between[1]);

/** What stands in a case is never sought outside it. */
function addRub(plan: Plan, pointOf: ReadonlyMap<number, number>, rubs: Rub[], a: number, ring: Ring, wanted: number, off: { x: number; y: number }): void {
  const group = ring.by < 0 ? -1 : plan.groupOf[ring.by];
  const b = pointOf.get(group) ?? -1;
  if (b >= 0 && b < a) return;
  const centre = b < 0 ? { x: 0, y: 0 } : plan.centres[group];
  rubs.push({ a, b, shiftX: centre.x - ring.x - off.x, shiftY: centre.y - ring.y - off.y, from: ring.from, to: ring.between[1] === CASE_ID && ring.from > 0 ? Infinity : ring.to, wanted, between: ring.between });
}

/** Of plain discs between the same two axes only the widest matters. */
function widest(rubs: readonly Rub[]): Rub[] {
  const by = new Map<string, Rub>();
  const others: Rub[] = [];
  for (const rub of rubs) {
    if (rub.from > 0) { others.push(rub); continue; }
    const key = `${rub.a} ${rub.b} ${rub.shiftX.toFixed(6)} ${rub.shiftY.toFixed(6)}`;
    const known = by.get(key);
    if (known === undefined || known.to < rub.to) by.set(key, rub);
  }
  return [...by.values(), ...others];
}

function barsOf(movement: Movement, plan: Plan, pointOf: ReadonlyMap<number, number>): Pick<Crowd, "bars" | "barsBetween"> {
  const bars: Bar[] = [], barsBetween: [string, string][] = [];
  for (const { a, b, computed, shiftX, shiftY } of plan.links) {
    const pa = pointOf.get(a) ?? -1, pb = pointOf.get(b) ?? -1;
    if (pa < 0 && pb < 0) continue;
    const x = shiftX + (pa < 0 ? plan.centres[a].x : 0) - (pb < 0 ? plan.centres[b].x : 0);
    const y = shiftY + (pa < 0 ? plan.centres[a].y : 0) - (pb < 0 ? plan.centres[b].y : 0);
    bars.push({ a: pa, b: pb, distance: computed, shiftX: x, shiftY: y });
    const name = (group: number) => movement.arbors[plan.roots[group][0]].id;
    barsBetween.push([name(a), name(b)]);
  }
  return { bars, barsBetween };
}

/** Groups that something besides a distance of wheels holds where they are: a pin in a slot, a pair that has no distance to keep. */
function heldGroups(movement: Movement, plan: Plan): Set<number> {
  const held = new Set<number>();
  const hold = (one: number | undefined, other: number | undefined) => {
    if (one === undefined || other === undefined || plan.groupOf[one] === plan.groupOf[other]) return;
    held.add(plan.groupOf[one]);
    held.add(plan.groupOf[other]);
  };
  for (const c of movement.instrument.couplings ?? [])
    if (c.kind === "pin and slot") hold(movement.partIndex.get(c.driver)?.arbor, movement.partIndex.get(c.driven)?.arbor);
  for (const e of movement.engagements) {
    const [a, b] = [plan.groupOf[e.driverArbor], plan.groupOf[e.drivenArbor]];
    if (!plan.links.some((l) => (l.a === a && l.b === b) || (l.a === b && l.b === a))) hold(e.driverArbor, e.drivenArbor);
  }
  return held;
}
