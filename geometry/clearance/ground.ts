// Where the axis of an arbor may not stand in plan, as simple shapes whose union is exact: what moves with it is held
// against everything that stays, pair by pair, as swept solids with the figures of the examiner. A pair is bad at a
// distance s of two axes where it is bad both in plan and in height; each of the two is so over one stretch of s, hence
// every pair forbids a ring (or disc) about a standing axis. Lengths in mm, places are those of the arbor's root.
import { axisReach, ownReach } from "../bodies/axis.ts";
import { cornersOf, edgeDistance } from "../bodies/plate.ts";
import type { Cylinder, Thing } from "../bodies/thing.ts";
import type { Severity } from "../finding.ts";
import type { Plate, PlateOutline } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";
import type { Bounds, Circle, Segment } from "../planar/regions.ts";
import { planOf, type Plan } from "../planting/groups.ts";
import { isExempt, sceneOf, type Scene } from "./gaps.ts";
import { heightClear, relationOf } from "./pair.ts";
import { severityOf } from "./severity.ts";

/** A shape that forbids, and the two ids that would quarrel in it (of a hole: the arbor and its plate). */
export type Shape = Ring | Slab;

/** From `from` to `to` about a place, both ends included. */
export interface Ring {
  readonly kind: "ring";
  readonly x: number;
  readonly y: number;
  readonly from: number;
  readonly to: number;
  readonly between: readonly [string, string];
  /** Index of the arbor that the place goes with; −1: the frame. */
  readonly by: number;
}

/** Where the distance from an outline's edge (negative inside) is at most, or (`outside`) at least, `level`; but not in its holes. */
export interface Slab {
  readonly kind: "slab";
  readonly outline: PlateOutline;
  readonly level: number;
  readonly outside: boolean;
  readonly x: number;
  readonly y: number;
  readonly holes: readonly Circle[];
  readonly between: readonly [string, string];
}

export interface Ground {
  /** Index of the arbor whose place is spoken of, and all arbors that move with it. */
  readonly root: number;
  readonly group: ReadonlySet<number>;
  readonly foul: readonly Shape[];
  /** Where something is tight or foul. */
  readonly wanting: readonly Shape[];
}

/** What forbids, or crowds, the places of one arbor and all that moves with it, everything else standing as it stands. */
export function groundOf(movement: Movement, arbor: number, plan: Plan = planOf(movement), scene: Scene = sceneOf(movement)): Ground {
  const { foul, wanting, ...whose } = wholeGroundOf(movement, arbor, plan, scene);
  return { ...whose, foul: leastOf(foul), wanting: leastOf(wanting) };
}

/** The same, every pair with its own shape even where another forbids as much. */
export function wholeGroundOf(movement: Movement, arbor: number, plan: Plan, scene: Scene): Ground {
  const own = plan.groupOf[arbor];
  const root = plan.roots[own].find((r) => r === arbor || movement.arbors[arbor].chain.includes(r)) ?? plan.roots[own][0];
  const group = new Set(movement.arbors.flatMap((_, i) => (plan.groupOf[i] === own ? [i] : [])));
  const foul: Shape[] = [], wanting: Shape[] = [];
  scene.things.forEach((mine, i) => {
    if (!group.has(mine.arbor)) return;
    scene.things.forEach((other, j) => {
      if (group.has(other.arbor) || other.body === mine.body || isExempt(scene, i, j) || !shareHeight(scene, i, j)) return;
      const relation = relationOf(movement, mine, other);
      foul.push(...shapesOf(movement, relation, root, "foul"));
      wanting.push(...shapesOf(movement, relation, root, "wanting"));
    });
  });
  for (const rider of group) for (const hole of holesOf(movement, rider)) {
    foul.push(...metalShapes(movement, hole, root, 0));
    wanting.push(...metalShapes(movement, hole, root, movement.practice.edge));
  }
  return { root, group, foul, wanting };
}

/** How it would stand with its root at a place. */
export const severityAt = ({ foul, wanting }: Ground, x: number, y: number): Severity =>
  isIn(foul, x, y) ? "foul" : isIn(wanting, x, y) ? "tight" : "free";

/** Whether a place lies in any of the shapes. */
export function isIn(shapes: readonly Shape[], x: number, y: number): boolean {
  for (const s of shapes) if (holds(s, x, y)) return true;
  return false;
}

export function holds(s: Shape, x: number, y: number): boolean {
  const dx = x - s.x, dy = y - s.y;
  if (s.kind === "ring") {
    const sq = dx * dx + dy * dy;
    return sq <= s.to * s.to && (s.from <= 0 || sq >= s.from * s.from);
  }
  const edge = edgeDistance(s.outline, dx, dy);
  if (s.outside ? edge < s.level : edge > s.level) return false;
  return s.holes.every((h) => Math.hypot(x - h.x, y - h.y) > h.radius);
}

/** The curves that may bound the shapes. */
export function boundsOf(shapes: readonly Shape[]): Bounds {
  const circles: Circle[] = [], segments: Segment[] = [];
  for (const s of shapes) {
    if (s.kind === "ring") {
      for (const radius of [s.from, s.to]) if (radius > AT_LIMIT_MM) circles.push({ x: s.x, y: s.y, radius });
      continue;
    }
    circles.push(...s.holes);
    addOffset(s, circles, segments);
  }
  const seen = new Set<string>();
  const isNew = (key: string) => !seen.has(key) && seen.add(key) !== undefined;
  return { circles: circles.filter((c) => isNew(`${c.x} ${c.y} ${c.radius}`)), segments };
}

function addOffset({ outline, level, x, y }: Slab, circles: Circle[], segments: Segment[]): void {
  if ("circle" in outline) {
    const radius = outline.circle.diameter / 2 + level;
    if (radius > AT_LIMIT_MM) circles.push({ x: x + (outline.circle.x ?? 0), y: y + (outline.circle.y ?? 0), radius });
    return;
  }
  const corners = cornersOf(outline) ?? [];
  corners.forEach(([bx, by], i) => {
    const [ax, ay] = corners[(i + corners.length - 1) % corners.length];
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) return;
    const nx = (-(by - ay) / length) * level, ny = ((bx - ax) / length) * level;
    for (const side of level === 0 ? [1] : [1, -1])
      segments.push({ x0: x + ax + side * nx, y0: y + ay + side * ny, x1: x + bx + side * nx, y1: y + by + side * ny });
    if (level !== 0) circles.push({ x: x + bx, y: y + by, radius: Math.abs(level) });
  });
}

type How = "foul" | "wanting";
type Relation = ReturnType<typeof relationOf>;

/** Farther than any two axes of an instrument: there a wobble is felt in full. */
const FAR_MM = 1e6;
/** How often the stretch is halved in which a height stops being bad: far under rounding. */
const HALVINGS = 60;

function shapesOf(movement: Movement, relation: Relation, root: number, how: How): Shape[] {
  const shapes: Shape[] = [];
  for (const ca of relation.a.cylinders)
    for (const cb of relation.b.cylinders) {
      const shape = relation.b.plate === null ? ringOf(movement, relation, ca, cb, root, how) : slabOf(movement, relation, relation.b.plate, ca, cb, root, how);
      if (shape !== null) shapes.push(shape);
    }
  return shapes;
}

/** The root's place is this much from where a thing's axis stands. */
const aside = (movement: Movement, thing: Thing, root: number) =>
  ({ x: movement.arbors[root].x - thing.axis.x, y: movement.arbors[root].y - thing.axis.y });

/** mm that the plan may at most be worse than, so as to be bad. */
const limitOf = (movement: Movement, how: How): number => (how === "foul" ? AT_LIMIT_MM : movement.practice.planGap - AT_LIMIT_MM);

function ringOf(movement: Movement, relation: Relation, ca: Cylinder, cb: Cylinder, root: number, how: How): Ring | null {
  const { a, b, planLoss } = relation;
  // With both standing places as one, the reach tells how the carried arms add to any distance s:
  // farthest s + arms, nearest the more of s − arms and hollow − s.
  const { least: hollow, greatest: arms } = axisReach({ ...a.axis, x: b.axis.x, y: b.axis.y }, b.axis);
  const lost = planLoss + limitOf(movement, how), both = ca.radius + cb.radius + lost;
  let from = Math.max(0, hollow - both);
  if (ca.inner > 0) from = Math.max(from, ca.inner - cb.radius - lost - arms);
  if (cb.inner > 0) from = Math.max(from, cb.inner - ca.radius - lost - arms);
  from = Math.max(from, badInHeightFrom(movement, relation, ca, cb, arms, how));
  const to = both + arms;
  const off = aside(movement, a, root);
  return to > 0 && from <= to ? { kind: "ring", x: b.axis.x + off.x, y: b.axis.y + off.y, from, to, between: [a.id, b.id], by: b.arbor } : null;
}

function slabOf(movement: Movement, relation: Relation, plate: Plate, ca: Cylinder, cb: Cylinder, root: number, how: How): Slab | null {
  if (badInHeightFrom(movement, relation, ca, cb, FAR_MM, how) > 0) return null;
  const { a, planLoss } = relation;
  const arms = ownReach(a.axis).greatest, level = ca.radius + planLoss + limitOf(movement, how) + arms;
  const off = aside(movement, a, root);
  const holes = (plate.openings ?? []).map((o) => ({ x: o.x + off.x, y: o.y + off.y, radius: o.diameter / 2 - level })).filter((h) => h.radius > 0);
  return { kind: "slab", outline: plate.outline, level, outside: false, ...off, holes, between: [a.id, plate.id] };
}

/** The distance of the axes from which on the two are bad in height: a wobble is felt less by what does not reach the rim. */
function badInHeightFrom(movement: Movement, relation: Relation, ca: Cylinder, cb: Cylinder, arms: number, how: How): number {
  const { faceGap } = movement.practice;
  const isBad = (s: number) => {
    const { worst } = heightClear({ ...relation, reach: { least: 0, greatest: s + arms } }, ca, cb);
    const severity = severityOf(worst, faceGap);
    return severity === "foul" || (how === "wanting" && severity === "tight");
  };
  if (!isBad(FAR_MM)) return Infinity;
  if (isBad(0)) return 0;
  let fine = 0, bad = FAR_MM;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (fine + bad) / 2;
    if (isBad(middle)) bad = middle;
    else fine = middle;
  }
  return bad;
}

const shareHeight = ({ boxes }: Scene, i: number, j: number): boolean =>
  boxes[i].minZ <= boxes[j].maxZ && boxes[j].minZ <= boxes[i].maxZ;

/** A pivot hole: its arbor, its plate and its radius, sideshake included. */
export interface Hole { readonly arbor: number; readonly plate: Plate; readonly radius: number }

/** The pivot holes of an arbor; of two in one plate the wider. */
export function holesOf(movement: Movement, arbor: number): Hole[] {
  const { arbor: { pivots }, ownSideshake } = movement.arbors[arbor];
  const widest = new Map<string, number>();
  for (const pivot of [pivots?.foot, pivots?.head])
    if (pivot !== undefined) widest.set(pivot.plate, Math.max(pivot.diameter, widest.get(pivot.plate) ?? 0));
  return movement.instrument.frame.plates.flatMap((plate) => {
    const diameter = widest.get(plate.id);
    return diameter === undefined ? [] : [{ arbor, plate, radius: (diameter + ownSideshake) / 2 }];
  });
}

/** Off the plate, or nearer to one of its edges than a margin of metal (0: breaking out). */
function metalShapes(movement: Movement, { arbor, plate, radius }: Hole, root: number, margin: number): Shape[] {
  const need = radius + (margin === 0 ? AT_LIMIT_MM : margin - AT_LIMIT_MM);
  const x = movement.arbors[root].x - movement.arbors[arbor].x, y = movement.arbors[root].y - movement.arbors[arbor].y;
  const between: [string, string] = [movement.arbors[arbor].id, plate.id];
  return [
    { kind: "slab", outline: plate.outline, level: -need, outside: true, x, y, holes: [], between },
    ...(plate.openings ?? []).map((o): Ring => ({ kind: "ring", x: x + o.x, y: y + o.y, from: 0, to: o.diameter / 2 + need, between, by: -1 })),
  ];
}

/** Rings without a hollow that lie in another such add nothing. */
function leastOf(shapes: readonly Shape[]): Shape[] {
  const discs = shapes.filter((s): s is Ring => s.kind === "ring" && s.from <= 0).sort((a, b) => b.to - a.to);
  const kept: Ring[] = [];
  for (const d of discs) if (!kept.some((k) => Math.hypot(k.x - d.x, k.y - d.y) + d.to <= k.to)) kept.push(d);
  return [...kept, ...shapes.filter((s) => s.kind !== "ring" || s.from > 0)];
}
