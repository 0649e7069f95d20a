// A straight line for the tool to each declared join, once everything is in: a screwdriver to a screw, a taper pin (in and
// out again, so from both sides) to a pin, both from the side; an oiler to each pivot, along the arbor from outside its
// plate. Every thing is taken as the solid it sweeps, so a line that is free is free at any turn. Lengths in mm.
import { edgeDistance } from "../bodies/plate.ts";
import { thingsOf, type Cylinder, type Thing } from "../bodies/thing.ts";
import type { Movement } from "../movement.ts";
import { toDeg } from "../numeric/angle.ts";
import { TANGENT_RAD, TOUCH_MM } from "../numeric/tolerance.ts";

export type Tool = "screwdriver" | "taper pin" | "oiler";

export interface Access {
  readonly tool: Tool;
  /** The part whose join it is, or the arbor whose pivot. */
  readonly to: string;
  /** For an oiler: the plate of the pivot. */
  readonly plate: string | null;
  readonly free: boolean;
  /** Degrees in plan from which, or on which side of the arbor, the line is free; null where none is. */
  readonly from: number | null;
  /** What stands in the way of the line that meets least; empty where one is free. */
  readonly inTheWay: readonly string[];
}

/** Half the width of each tool's line (common practice: a 3 mm blade, a 1.5 mm pin, an oiler of 1 mm). */
const HALF_WIDTH: Readonly<Record<Tool, number>> = { screwdriver: 1.5, "taper pin": 0.75, oiler: 0.5 };

/** Every join by screw or pin, then every pivot, in the order of the file. */
export function accessOf(movement: Movement): Access[] {
  const things = thingsOf(movement);
  const joins = things.flatMap((thing): Access[] => {
    const join = thing.part < 0 ? undefined : movement.arbors[thing.arbor].arbor.parts[thing.part].join;
    return join?.by === "screw" ? [fromTheSide("screwdriver", thing, things)] : join?.by === "pin" ? [fromTheSide("taper pin", thing, things)] : [];
  });
  const pivots = movement.arbors.flatMap(({ arbor }, i) => (["foot", "head"] as const).flatMap((end) => {
    const plate = things.find((t) => t.plate !== null && t.id === arbor.pivots?.[end]?.plate);
    const bare = things.find((t) => t.arbor === i && t.part < 0);
    return plate && bare ? [alongTheArbor(bare, plate, end === "head", things)] : [];
  }));
  return [...joins, ...pivots];
}

/** A sector of directions, in radians, in which a thing bars the line. */
interface Bar { readonly id: string; readonly from: number; readonly to: number }

function fromTheSide(tool: Tool, part: Thing, things: readonly Thing[]): Access {
  const w = HALF_WIDTH[tool], z = (part.cylinders[0].z0 + part.cylinders[0].z1) / 2;
  const bars = things.flatMap((t) => (t.arbor === part.arbor ? [] : barsOf(part, t, z, w)));
  const through = tool === "taper pin" ? [...bars, ...bars.map((b) => ({ ...b, from: b.from + Math.PI, to: b.to + Math.PI }))] : bars;
  const { at, inTheWay } = freest(through);
  return { tool, to: part.id, plate: null, free: inTheWay.length === 0, from: inTheWay.length === 0 ? degreesOf(at) : null, inTheWay };
}

/** The direction that least bars: the first free one, else where fewest things stand in the way. */
function freest(bars: readonly Bar[]): { readonly at: number; readonly inTheWay: readonly string[] } {
  let best: { at: number; inTheWay: readonly string[] } | null = null;
  for (const at of [0, ...bars.map((b) => b.to)]) {
    const inTheWay = [...new Set(bars.filter((b) => isWithin(at, b)).map((b) => b.id))];
    if (best === null || inTheWay.length < best.inTheWay.length) best = { at, inTheWay };
  }
  return best ?? { at: 0, inTheWay: [] };
}

/** In which directions a thing bars a line of half width w at height z from a part's axis outward. */
function barsOf(part: Thing, thing: Thing, z: number, w: number): Bar[] {
  const { x, y } = part.axis.atRest;
  if (thing.plate !== null) {
    const inside = edgeDistance(thing.plate.outline, x, y) < w;
    return inside && meetsHeight(thing.cylinders[0], z, w) ? [{ id: thing.id, from: 0, to: 2 * Math.PI }] : [];
  }
  const dx = thing.axis.atRest.x - x, dy = thing.axis.atRest.y - y, distance = Math.hypot(dx, dy);
  return thing.cylinders.filter((c) => meetsHeight(c, z, w)).flatMap((c): Bar[] => {
    if (distance + TOUCH_MM < c.radius + w) return distance > TOUCH_MM || c.radius > part.cylinders[0].radius ? [{ id: thing.id, from: 0, to: 2 * Math.PI }] : [];
    const middle = Math.atan2(dy, dx), half = Math.asin(Math.min(1, (c.radius + w) / distance));
    return [{ id: thing.id, from: middle - half, to: middle + half }];
  });
}

/** Outward beside the pivot, in the freest direction about it, past everything but its own plate and its own shaft. */
function alongTheArbor(bare: Thing, plate: Thing, up: boolean, things: readonly Thing[]): Access {
  const { z0, z1 } = plate.cylinders[0], w = HALF_WIDTH.oiler;
  const beyond = (c: Cylinder) => (up ? c.z1 > z1 + TOUCH_MM : c.z0 < z0 - TOUCH_MM);
  const beside = w + Math.max(0, ...bare.cylinders.filter(beyond).map((c) => c.radius));
  const others = things.filter((t) => t !== bare && t !== plate && t.kind !== "pointer" && t.kind !== "case");
  const { at, inTheWay } = freest(others.flatMap((t) => barsBeside(bare, t, beyond, beside, w)));
  return { tool: "oiler", to: bare.id, plate: plate.id, free: inTheWay.length === 0, from: inTheWay.length === 0 ? degreesOf(at) : null, inTheWay };
}

/** In which directions a line along z, so far beside the axis, would meet a thing. */
function barsBeside(bare: Thing, thing: Thing, beyond: (c: Cylinder) => boolean, beside: number, w: number): Bar[] {
  const { x, y } = bare.axis.atRest, all = { id: thing.id, from: 0, to: 2 * Math.PI };
  if (thing.plate !== null) {
    const open = (thing.plate.openings ?? []).some((o) => Math.hypot(o.x - x, o.y - y) + beside + w <= o.diameter / 2);
    return beyond(thing.cylinders[0]) && !open && edgeDistance(thing.plate.outline, x, y) < beside + w ? [all] : [];
  }
  const dx = thing.axis.atRest.x - x, dy = thing.axis.atRest.y - y, distance = Math.hypot(dx, dy);
  return thing.cylinders.filter(beyond).flatMap((c): Bar[] => {
    const reach = c.radius + w;
    if (distance >= beside + reach - TOUCH_MM || beside >= distance + reach - TOUCH_MM) return [];
    if (distance + beside <= reach) return [all];
    const middle = Math.atan2(dy, dx), half = Math.acos(Math.max(-1, Math.min(1, (distance ** 2 + beside ** 2 - reach ** 2) / (2 * distance * beside))));
    return [{ id: thing.id, from: middle - half, to: middle + half }];
  });
}

const meetsHeight = (c: Cylinder, z: number, w: number): boolean => c.z0 < z + w - TOUCH_MM && c.z1 > z - w + TOUCH_MM;

/** Strictly between the ends of a sector, whole turns apart or not. */
function isWithin(at: number, { from, to }: Bar): boolean {
  if (to - from >= 2 * Math.PI) return true;
  const past = (((at - from) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  return past > TANGENT_RAD && past < to - from - TANGENT_RAD;
}

const degreesOf = (rad: number): number => ((toDeg(rad) % 360) + 360) % 360;
