// One arbor dragged in plan. In gear, every distance is kept: the arbor comes as near the hand as they let it, and those
// that must follow move as little as possible. Trying the depth, it is free and rests on a computed distance when near.
import type { Movement } from "../movement.ts";
import { ARRIVED_MM, AT_LIMIT_MM, DISTANCE_MM, SAME_AXIS_MM, SNAP_MM } from "../numeric/tolerance.ts";
import { circlesMet, onCircle, type Place } from "./circles.ts";
import { planOf, type Link, type Plan } from "./groups.ts";
import { measure, project, restore, trussOf, type Bar, type Points, type Truss } from "./relax.ts";

export type DragWay = "in gear" | "trying";

export interface Drag {
  /** New places (mm) of the arbors that moved, by id; what rides on them follows of itself. */
  readonly places: ReadonlyMap<string, Place>;
  /** Why the arbor is not where the hand is, naming what holds it; null where nothing but its own arc does. */
  readonly holds: string | null;
}

export function dragArbor(movement: Movement, arborId: string, to: Place, way: DragWay): Drag {
  const dragged = movement.arborIndex.get(arborId);
  if (dragged === undefined || !Number.isFinite(to.x) || !Number.isFinite(to.y)) return { places: new Map(), holds: null };
  const plan = planOf(movement);
  const group = plan.groupOf[dragged];
  const anchor = plan.anchors[group];
  const { steady, measured } = movement.arbors[dragged].arbor;
  if (anchor !== null) return { places: new Map(), holds: steady || measured ? anchor : `${anchor}, and ${arborId} goes with it` };
  const { x, y } = plan.centres[group];
  const wish = { x: to.x - movement.arbors[dragged].x + x, y: to.y - movement.arbors[dragged].y + y };
  if (way === "trying") return { places: placesOf(movement, plan, [group], [restingNear(plan, group, wish)]), holds: null };
  return inGear(movement, plan, group, wish, arborId);
}

const standingLength = (plan: Plan, { a, b, shiftX, shiftY }: Link): number =>
  Math.hypot(plan.centres[a].x + shiftX - plan.centres[b].x, plan.centres[a].y + shiftY - plan.centres[b].y);

/** On the nearest computed circle, or where the two nearest meet, if that is near enough to feel. */
function restingNear(plan: Plan, group: number, wish: Place): Place {
  const circles = plan.linksOf[group].map((l) => {
    const side = l.a === group ? -1 : 1, other = plan.centres[l.a === group ? l.b : l.a];
    const centre = { x: other.x + side * l.shiftX, y: other.y + side * l.shiftY };
    return { centre, radius: l.computed, off: Math.abs(Math.hypot(wish.x - centre.x, wish.y - centre.y) - l.computed) };
  }).filter((c) => c.off <= SNAP_MM).sort((one, other) => one.off - other.off);
  if (circles.length === 0) return wish;
  const [first, second] = circles;
  const met = second === undefined || distance(first.centre, second.centre) <= SAME_AXIS_MM
    ? [] : circlesMet(first.centre, first.radius, second.centre, second.radius);
  const both = met.find((p) => distance(p, wish) <= 2 * SNAP_MM && Math.abs(distance(p, first.centre) - first.radius) <= DISTANCE_MM);
  return both ?? onCircle(first.centre, first.radius, wish);
}

/** How much less it matters where a follower stands than how near the dragged arbor comes to the hand. */
const FOLLOWER = 1e-4;
const MOST_STEPS = 40;
/** How readily the dragged arbor gives way, against 1 of the others, while they follow it. */
const HELD = 1e-6;
/** Stages of a leap: all at once, or, where a chain would have to pass through its own straight line, step by step. */
const LEAPS = [1, 8];

/** One drag in gear: movable groups as points (the dragged one first), and their distances as bars. */
interface Cluster {
  readonly groups: readonly number[];
  readonly bars: readonly Bar[];
  readonly links: readonly Link[];
  readonly start: Points;
}

function inGear(movement: Movement, plan: Plan, group: number, wish: Place, id: string): Drag {
  const meant = clusterOf(plan, group, (l) => l.computed);
  const points = meant.start.slice();
  let holds: string | null = null, cluster = meant;
  // Out of depth at first, it is the dragged arbor that comes into gear, not its neighbours.
  if (!restore(trussOf(meant.bars, easeOf(meant, FOLLOWER)), points)) {
    holds = quarrelOf(movement, plan, meant, id);
    cluster = clusterOf(plan, group, (l) => standingLength(plan, l));
    points.set(cluster.start);
  }
  const force = approach(points, cluster, wish);
  holds ??= stretchedBy(movement, plan, cluster, force, Math.hypot(wish.x - points[0], wish.y - points[1]), id);
  const at = cluster.groups.map((_, i) => ({ x: points[2 * i], y: points[2 * i + 1] }));
  return { places: placesOf(movement, plan, cluster.groups, at), holds };
}

/** Everything movable that hangs together with a group. A pair out of depth elsewhere keeps the distance it has. */
function clusterOf(plan: Plan, group: number, lengthOf: (link: Link) => number): Cluster {
  const groups = [group], index = new Map([[group, 0]]);
  const links: Link[] = [], bars: Bar[] = [], seen = new Set<Link>();
  for (const g of groups) for (const link of plan.linksOf[g]) {
    if (seen.has(link)) continue;
    seen.add(link);
    for (const end of [link.a, link.b]) if (plan.anchors[end] === null && !index.has(end)) {
      index.set(end, groups.length);
      groups.push(end);
    }
    const a = index.get(link.a) ?? -1, b = index.get(link.b) ?? -1;
    const own = link.a === group || link.b === group;
    const stands = standingLength(plan, link);
    const kept = own || Math.abs(stands - link.computed) <= DISTANCE_MM ? lengthOf(link) : stands;
    links.push(link);
    bars.push({
      a, b, distance: kept,
      shiftX: link.shiftX + (a < 0 ? plan.centres[link.a].x : 0) - (b < 0 ? plan.centres[link.b].x : 0),
      shiftY: link.shiftY + (a < 0 ? plan.centres[link.a].y : 0) - (b < 0 ? plan.centres[link.b].y : 0),
    });
  }
  const start = new Float64Array(groups.flatMap((g) => [plan.centres[g].x, plan.centres[g].y]));
  return { groups, bars, links, start };
}

function easeOf(cluster: Cluster, ofFollowers: number): Float64Array {
  const ease = new Float64Array(cluster.groups.length).fill(ofFollowers);
  ease[0] = 1;
  return ease;
}

/** Moves the points, in place, to where the dragged one is nearest the wish; gives the force left in each bar. */
function approach(points: Points, cluster: Cluster, wish: Place): Float64Array {
  const { bars, start } = cluster;
  const truss = trussOf(bars, easeOf(cluster, 1 / FOLLOWER));
  const { ease, force } = truss;
  const step = new Float64Array(points.length), from = new Float64Array(points.length);
  slide(points, cluster, wish);
  let cost = costOf(points, start, wish);
  for (let i = 0; i < MOST_STEPS; i++) {
    ease.fill(1 / FOLLOWER);
    ease[0] = 1;
    stiffen(ease, bars, force);
    for (let k = 2; k < points.length; k++) step[k] = FOLLOWER * ease[k >> 1] * (start[k] - points[k]);
    step[0] = ease[0] * (wish.x - points[0]);
    step[1] = ease[0] * (wish.y - points[1]);
    measure(truss, points);
    project(truss, step, false);
    if (step.every((s, k) => Math.abs(s) < (k < 2 ? ARRIVED_MM : DISTANCE_MM))) break;
    from.set(points);
    const forces = force.slice();
    const next = advance(truss, points, from, step, (p) => costOf(p, start, wish), cost);
    force.set(forces);
    if (next >= cost) break;
    cost = next;
  }
  return force;
}

/** A first leap, where the others can follow it: to the hand, or to the nearest place on the one arc that binds. */
function slide(points: Points, cluster: Cluster, wish: Place): void {
  const arcs = cluster.bars.filter((bar) => (bar.a === 0 && bar.b < 0) || (bar.b === 0 && bar.a < 0));
  if (arcs.length > 1) return;
  const [arc] = arcs;
  const side = arc?.a === 0 ? -1 : 1;
  const to = arc === undefined ? wish : onCircle({ x: side * arc.shiftX, y: side * arc.shiftY }, arc.distance, wish);
  const ease = easeOf(cluster, 1);
  ease[0] = HELD;
  const truss = trussOf(cluster.bars, ease);
  for (const stages of LEAPS) {
    const leapt = leap(truss, points, to, stages);
    if (leapt === null || Math.hypot(leapt[0] - to.x, leapt[1] - to.y) > DISTANCE_MM) continue;
    points.set(leapt);
    return;
  }
}

function leap(truss: Truss, from: Points, to: Place, stages: number): Points | null {
  const leapt = from.slice();
  for (let stage = 1; stage <= stages; stage++) {
    leapt[0] = from[0] + ((to.x - from[0]) * stage) / stages;
    leapt[1] = from[1] + ((to.y - from[1]) * stage) / stages;
    if (!restore(truss, leapt)) return null;
  }
  return leapt;
}

/** A bar that is pulled holds what it joins from moving sideways too: the step must not fly off its arc. */
function stiffen(ease: Float64Array, bars: readonly Bar[], force: Float64Array): void {
  bars.forEach(({ a, b, distance }, i) => {
    const sideways = Math.max(0, force[i]) / Math.max(distance, ARRIVED_MM);
    if (a >= 0) ease[a] = 1 / (1 / ease[a] + sideways);
    if (b >= 0) ease[b] = 1 / (1 / ease[b] + sideways);
  });
}

/** The longest part of a step, halving, that keeps all bars and comes nearer. */
function advance(truss: Truss, points: Points, from: Points, step: Float64Array, costAt: (p: Points) => number, cost: number): number {
  for (let scale = 1; scale > 1e-3; scale /= 2) {
    for (let k = 0; k < points.length; k++) points[k] = from[k] + scale * step[k];
    if (!restore(truss, points)) continue;
    const next = costAt(points);
    if (next < cost) return next;
  }
  points.set(from);
  return cost;
}

function costOf(points: Points, start: Points, wish: Place): number {
  let followers = 0;
  for (let k = 2; k < points.length; k++) followers += (points[k] - start[k]) ** 2;
  return (points[0] - wish.x) ** 2 + (points[1] - wish.y) ** 2 + FOLLOWER * followers;
}

/** The bar that misses most and one that shares an arbor with it, where not all can be kept. */
function quarrelOf(movement: Movement, plan: Plan, cluster: Cluster, id: string): string {
  const truss = trussOf(cluster.bars, easeOf(cluster, FOLLOWER));
  measure(truss, cluster.start);
  return sayTwo(movement, plan, cluster, id, truss.miss.map((m) => Math.abs(m) + AT_LIMIT_MM)) ?? `Arbor ${id} stays: its distances cannot all be kept`;
}

/** Nearer than this (mm), or with less than this share of the greatest force, a bar does not hold the arbor back. */
const FELT_MM = 0.1;
const FELT_SHARE = 0.05;

/** Says which two distances hold the arbor away from the hand; one alone is its arc, on which it slides. */
function stretchedBy(movement: Movement, plan: Plan, cluster: Cluster, force: Float64Array, away: number, id: string): string | null {
  if (away <= FELT_MM) return null;
  const felt = force.map((f) => (Math.abs(f) > FELT_SHARE * away ? Math.abs(f) : 0));
  return sayTwo(movement, plan, cluster, id, felt);
}

/** The strongest bar and the strongest that shares an arbor with it, in words; null where there are not two. */
function sayTwo(movement: Movement, plan: Plan, cluster: Cluster, id: string, strength: Float64Array): string | null {
  const order = cluster.links.map((_, i) => i).filter((i) => strength[i] > 0).sort((i, j) => strength[j] - strength[i] || i - j);
  const one = cluster.links[order[0]];
  if (one === undefined) return null;
  const other = order.slice(1).map((i) => cluster.links[i]).find((l) => sharedBy(l, one) !== null);
  if (other === undefined) return null;
  const common = sharedBy(one, other) as number;
  const name = (group: number): string => movement.arbors[plan.roots[group][0]].id;
  const far = [one, other].map((l) => name(l.a === common ? l.b : l.a));
  const who = common === plan.groupOf[movement.arborIndex.get(id) as number] ? "it" : `arbor ${name(common)}`;
  return `Arbor ${id} can go no farther: ${who} must keep its distance from ${far[0]} and from ${far[1]}`;
}

const sharedBy = (one: Link, other: Link): number | null =>
  one.a === other.a || one.a === other.b ? one.a : one.b === other.a || one.b === other.b ? one.b : null;

/** Where the roots of groups come to stand; those that did not move are left out. */
function placesOf(movement: Movement, plan: Plan, groups: readonly number[], at: readonly Place[]): Map<string, Place> {
  const places = new Map<string, Place>();
  groups.forEach((group, i) => {
    const dx = at[i].x - plan.centres[group].x, dy = at[i].y - plan.centres[group].y;
    if (Math.hypot(dx, dy) < AT_LIMIT_MM) return;
    for (const root of plan.roots[group]) {
      const { id, x, y } = movement.arbors[root];
      places.set(id, { x: x + dx, y: y + dy });
    }
  });
  return places;
}

const distance = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y);
