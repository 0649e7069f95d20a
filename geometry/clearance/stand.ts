// Where an arbor may stand in plan, ready to be drawn: the regions in which it would foul or be tight as closed loops of
// arcs and lines, and, where it is held at one distance, the arcs of its circle with how it would stand on each.
import type { Severity } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { TAU, toDeg } from "../numeric/angle.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { boxOf } from "../bodies/plate.ts";
import { radiusOf } from "../bodies/thing.ts";
import { crossingsOn, regionOf, type Circle, type Loop } from "../planar/regions.ts";
import type { Place } from "../planting/circles.ts";
import { planOf, type Plan } from "../planting/groups.ts";
import { boundsOf, groundOf, isIn, severityAt, type Ground } from "./ground.ts";
import { sceneOf, type Scene } from "./gaps.ts";

export interface MayStand {
  /** The arbor whose place is spoken of (what an arbor rides on moves for it), and all that move with it. */
  readonly arbor: string;
  readonly moves: readonly string[];
  /** Why it may not be moved at all, or null. */
  readonly holds: string | null;
  readonly at: Place & { readonly severity: Severity };
  /** Regions are drawn within this circle; outside everything. */
  readonly field: Circle;
  /** Where something would foul, and where nothing would foul but something be tight. The rest of the field is free. */
  readonly foul: readonly Loop[];
  readonly tight: readonly Loop[];
  /** The circle it slides on, in gear about one axis; null where it is held by nothing or by more. */
  readonly slide: Slide | null;
}

export interface Slide extends Circle {
  /** The arbor about which it slides. */
  readonly about: string;
  /** All round from the first, in degrees from +x, anticlockwise; `to` may pass 360. */
  readonly arcs: readonly { readonly from: number; readonly to: number; readonly severity: Severity }[];
}

/** Throws where there is no such arbor. */
export function mayStand(movement: Movement, arborId: string): MayStand {
  const arbor = movement.arborIndex.get(arborId);
  if (arbor === undefined) throw new Error(`there is no arbor ${arborId}`);
  const plan = planOf(movement), scene = sceneOf(movement);
  const ground = groundOf(movement, arbor, plan, scene);
  const { id, x, y } = movement.arbors[ground.root];
  const field = fieldOf(scene);
  const inField = (px: number, py: number) => Math.hypot(px - field.x, py - field.y) <= field.radius;
  const foul = boundsOf(ground.foul), both = boundsOf([...ground.foul, ...ground.wanting]);
  return {
    arbor: id, moves: [...ground.group].map((i) => movement.arbors[i].id), holds: plan.anchors[plan.groupOf[arbor]],
    at: { x, y, severity: severityAt(ground, x, y) }, field,
    foul: regionOf({ ...foul, circles: [...foul.circles, field] }, (px, py) => inField(px, py) && isIn(ground.foul, px, py)),
    tight: regionOf({ ...both, circles: [...both.circles, field] }, (px, py) =>
      inField(px, py) && isIn(ground.wanting, px, py) && !isIn(ground.foul, px, py)),
    slide: slideOf(movement, plan, plan.groupOf[arbor], ground),
  };
}

/** A circle round everything there is. */
function fieldOf({ things }: Scene): Circle {
  let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
  for (const t of things) {
    const r = radiusOf(t), { x, y } = t.axis.atRest;
    const box = t.plate === null ? { minX: x - r, minY: y - r, maxX: x + r, maxY: y + r } : boxOf(t.plate.outline);
    minX = Math.min(minX, box.minX); minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX); maxY = Math.max(maxY, box.maxY);
  }
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2, radius: Math.hypot(maxX - minX, maxY - minY) };
}

/** Held by one axis in all, or by one that stands while the others follow. */
function slideOf(movement: Movement, plan: Plan, group: number, ground: Ground): Slide | null {
  const root = movement.arbors[ground.root], centre = plan.centres[group];
  const held = plan.linksOf[group].map((l) => {
    const side = l.a === group ? -1 : 1, other = l.a === group ? l.b : l.a, partner = plan.centres[other];
    return {
      other, stands: plan.anchors[other] !== null, radius: l.computed,
      x: partner.x + side * l.shiftX + root.x - centre.x, y: partner.y + side * l.shiftY + root.y - centre.y,
    };
  });
  const axes = held.filter((h, i) => held.findIndex((o) => Math.hypot(o.x - h.x, o.y - h.y) <= SAME_AXIS_MM) === i);
  const standing = axes.filter((h) => h.stands);
  const one = standing.length === 1 ? standing[0] : standing.length === 0 && axes.length === 1 ? axes[0] : undefined;
  if (one === undefined || one.radius <= SAME_AXIS_MM) return null;
  const { x, y, radius } = one;
  return { x, y, radius, about: movement.arbors[plan.roots[one.other][0]].id, arcs: arcsOn({ x, y, radius }, ground) };
}

/** Between one crossing of a bound and the next the severity is one. */
function arcsOn(circle: Circle, ground: Ground): Slide["arcs"] {
  const at = (rad: number) => severityAt(ground, circle.x + circle.radius * Math.cos(rad), circle.y + circle.radius * Math.sin(rad));
  const cuts = crossingsOn(circle, boundsOf([...ground.foul, ...ground.wanting]));
  const arcs = cuts.map((from, i) => {
    const to = i + 1 < cuts.length ? cuts[i + 1] : cuts[0] + TAU;
    return { from, to, severity: at((from + to) / 2) };
  }).filter((a) => a.to > a.from);
  const start = arcs.findIndex((a, i) => a.severity !== arcs[(i + arcs.length - 1) % arcs.length].severity);
  if (start < 0) return [{ from: 0, to: 360, severity: at(0) }];
  const merged: { from: number; to: number; severity: Severity }[] = [];
  for (let i = 0; i < arcs.length; i++) {
    const arc = arcs[(start + i) % arcs.length], last = merged[merged.length - 1];
    if (last?.severity === arc.severity) last.to += arc.to - arc.from;
    else merged.push({ ...arc });
  }
  return merged.map(({ from, to, severity }) => ({ from: toDeg(from), to: toDeg(to), severity }));
}
