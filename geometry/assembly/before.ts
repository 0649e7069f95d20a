// What goes in before what. Arbors enter along their axes, on to one plate: wherever a thing of one arbor lies under a
// thing of another that it overlaps in plan, the one goes in before the other. A closed ring of that goes in together.
import Flatbush from "flatbush";
import { radiusOf, thingsOf, type Thing } from "../bodies/thing.ts";
import type { Movement } from "../movement.ts";
import { TOUCH_MM } from "../numeric/tolerance.ts";

/** Why one arbor goes in before another: what of the one lies under what of the other. */
export interface Before {
  /** Indices into the movement's arbors. */
  readonly first: number;
  readonly then: number;
  readonly under: string;
  readonly over: string;
}

/** Each pair of arbors once each way, by the first two things that say so. */
export function whatGoesBefore(movement: Movement, things: readonly Thing[] = thingsOf(movement)): Before[] {
  return arrowsBetween(things.filter((t) => t.arbor >= 0), (thing) => thing.arbor, movement.arbors.length);
}

/** Likewise for things in any groups, numbered from 0; things of one group do not wait for one another. */
export function arrowsBetween(things: readonly Thing[], groupOf: (thing: Thing) => number, groups: number): Before[] {
  if (things.length < 2) return [];
  const index = new Flatbush(things.length);
  const reach = things.map(radiusOf);
  const low = things.map((t) => Math.min(...t.cylinders.map((c) => c.z0)));
  const high = things.map((t) => Math.max(...t.cylinders.map((c) => c.z1)));
  things.forEach(({ axis: { atRest } }, i) => index.add(atRest.x - reach[i], atRest.y - reach[i], atRest.x + reach[i], atRest.y + reach[i]));
  index.finish();
  const found = new Map<number, Before>();
  things.forEach((over, j) => {
    const { x, y } = over.axis.atRest;
    const then = groupOf(over);
    index.search(x - reach[j], y - reach[j], x + reach[j], y + reach[j], (i) => {
      const under = things[i], first = groupOf(under);
      if (first !== then && high[i] <= low[j] + TOUCH_MM && overlapInPlan(under, over)) {
        const key = first * groups + then;
        if (!found.has(key)) found.set(key, { first, then, under: under.id, over: over.id });
      }
      return false;
    });
  });
  return [...found.values()].sort((a, b) => a.first - b.first || a.then - b.then);
}

/** Whether, as they are drawn, one would meet the other if it were moved along its axis. */
export function overlapInPlan(a: Thing, b: Thing): boolean {
  const distance = Math.hypot(a.axis.atRest.x - b.axis.atRest.x, a.axis.atRest.y - b.axis.atRest.y);
  return a.cylinders.some((ca) => b.cylinders.some((cb) =>
    distance < ca.radius + cb.radius - TOUCH_MM && !(distance + cb.radius <= ca.inner) && !(distance + ca.radius <= cb.inner)));
}

/** Arbors in the order in which they go in, as indices; those of one list go in together. Where nothing decides, the file's order. */
export function orderOfEntry(count: number, before: readonly Before[]): number[][] {
  const next: number[][] = Array.from({ length: count }, () => []);
  for (const b of before) next[b.first].push(b.then);
  const group = ringsOf(next);
  const members: number[][] = [];
  group.forEach((g, i) => (members[g] ??= []).push(i));
  const waitsFor = members.map(() => 0);
  const leads = members.map(() => new Set<number>());
  for (const b of before) {
    const from = group[b.first], to = group[b.then];
    if (from !== to && !leads[from].has(to)) { leads[from].add(to); waitsFor[to]++; }
  }
  const order: number[][] = [];
  const ready = members.map((_, g) => g).filter((g) => waitsFor[g] === 0);
  while (ready.length > 0) {
    ready.sort((a, b) => members[b][0] - members[a][0]);
    const g = ready.pop() as number;
    order.push(members[g]);
    for (const to of leads[g]) if (--waitsFor[to] === 0) ready.push(to);
  }
  return order;
}

/** The ring that each belongs to, numbered from 0. Source: R. Tarjan, Depth-first search and linear graph algorithms (1972), without recursion. */
function ringsOf(next: readonly (readonly number[])[]): number[] {
  const n = next.length;
  const seen = new Int32Array(n).fill(-1), lowest = new Int32Array(n), ring = new Array<number>(n).fill(-1), at = new Int32Array(n);
  const open: number[] = [];
  let time = 0, rings = 0;
  for (let start = 0; start < n; start++) {
    if (seen[start] >= 0) continue;
    const path = [start];
    while (path.length > 0) {
      const v = path[path.length - 1];
      if (seen[v] < 0) { seen[v] = lowest[v] = time++; open.push(v); }
      if (at[v] < next[v].length) {
        const w = next[v][at[v]++];
        if (seen[w] < 0) path.push(w);
        else if (ring[w] < 0) lowest[v] = Math.min(lowest[v], seen[w]);
        continue;
      }
      path.pop();
      if (path.length > 0) lowest[path[path.length - 1]] = Math.min(lowest[path[path.length - 1]], lowest[v]);
      if (lowest[v] !== seen[v]) continue;
      for (let w = -1; w !== v; ) { w = open.pop() as number; ring[w] = rings; }
      rings++;
    }
  }
  return ring;
}
