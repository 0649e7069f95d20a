// What the plan and the developed elevation are drawn from: circles that stand in plan, and columns of arbors in a row in
// which each stands at its true distance from the one before where the two are in mesh. Lengths in mm.
import { radiusOf, thingsOf, type Cylinder } from "../bodies/thing.ts";
import type { Movement } from "../movement.ts";
import type { PartKind } from "../instrument.ts";
import { pitchRadius } from "../teeth/forms.ts";

export interface PlanThing {
  readonly id: string;
  readonly kind: PartKind | "arbor";
  readonly arbor: string;
  readonly x: number;
  readonly y: number;
  /** What it sweeps; of an annulus, the hole as well. */
  readonly radius: number;
  readonly inner: number;
  /** 0: it has no teeth. */
  readonly pitch: number;
  readonly count: number;
  readonly cylinders: readonly Cylinder[];
}

export interface Column {
  /** Those that stand in line, innermost first. */
  readonly arbors: readonly string[];
  readonly things: readonly PlanThing[];
  /** Farthest that anything of it reaches from its axis. */
  readonly reach: number;
  /** True distance from the column before, where the two are in mesh. */
  readonly apart: number | null;
}

export function planThings(movement: Movement): PlanThing[] {
  return thingsOf(movement).filter((t) => t.arbor >= 0).map((t) => {
    const worked = movement.arbors[t.arbor], teeth = movement.teeth.get(t.id);
    return {
      id: t.id, kind: t.part < 0 ? "arbor" : worked.arbor.parts[t.part].kind, arbor: worked.id, x: worked.x, y: worked.y, radius: radiusOf(t),
      inner: t.cylinders.reduce((most, c) => Math.max(most, c.inner), 0), pitch: teeth ? pitchRadius(teeth) : 0, count: teeth?.count ?? 0, cylinders: t.cylinders,
    };
  });
}

/** Columns in the order in which the motion runs, from the input on; those that nothing drives come last. */
export function columnsOf(movement: Movement): Column[] {
  const columns: number[][] = [];
  const columnAt: number[] = movement.arbors.map((a, i) => {
    const at = columns.findIndex(([first]) => Math.hypot(movement.arbors[first].x - a.x, movement.arbors[first].y - a.y) < 1e-6);
    if (at < 0) return columns.push([i]) - 1;
    columns[at].push(i);
    return at;
  });
  const things = planThings(movement), order = orderFrom(movement, columnAt, columns.length);
  return order.map((c, k) => {
    const arbors = columns[c].map((i) => movement.arbors[i].id), own = things.filter((t) => arbors.includes(t.arbor));
    return { arbors, things: own, reach: own.reduce((most, t) => Math.max(most, t.radius), 0), apart: k === 0 ? null : meshDistance(movement, columnAt, order[k - 1], c) };
  });
}

/** Depth first, so that the next in the row is in mesh with the one before as often as it can be. */
function orderFrom(movement: Movement, columnAt: readonly number[], n: number): number[] {
  const order: number[] = [], seen = new Set<number>();
  const input = movement.arborIndex.get(movement.instrument.input.arbor) ?? 0;
  const starts = [columnAt[input] ?? 0, ...Array.from({ length: n }, (_, i) => i)];
  for (const start of starts) {
    const open = [start];
    for (let c = open.pop(); c !== undefined; c = open.pop()) {
      if (c >= n || seen.has(c)) continue;
      seen.add(c);
      order.push(c);
      const next = movement.engagements.flatMap((e) => {
        const a = columnAt[e.driverArbor], b = columnAt[e.drivenArbor];
        return a === c ? [b] : b === c ? [a] : [];
      });
      open.push(...next.reverse());
    }
  }
  return order;
}

function meshDistance(movement: Movement, columnAt: readonly number[], a: number, b: number): number | null {
  const e = movement.engagements.find(({ driverArbor, drivenArbor }) =>
    (columnAt[driverArbor] === a && columnAt[drivenArbor] === b) || (columnAt[driverArbor] === b && columnAt[drivenArbor] === a));
  return e ? e.distance : null;
}
