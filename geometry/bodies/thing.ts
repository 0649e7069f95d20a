// The things that an examiner measures between: bare arbors, parts, pillars, plates and the case, each as the cylinders
// that it sweeps about its axis. Lengths in mm; heights in the frame, as drawn.
import type Flatbush from "flatbush";
import { isToothed, type Arbor, type Case, type Part, type PartKind, type Pillar, type Plate } from "../instrument.ts";
import type { Movement, WorkedArbor } from "../movement.ts";
import { tipRadiusOf } from "../teeth/forms.ts";
import { indexOfOpenings } from "./openings.ts";
import { NO_SHAKE, shakeOf, type Shake } from "./shakes.ts";
import { axisOf, standingAxis, type Axis } from "./axis.ts";

/** A round solid about the thing's axis, from z0 to z1; with a hole of radius `inner` through it where that is above 0. */
export interface Cylinder {
  readonly radius: number;
  readonly inner: number;
  readonly z0: number;
  readonly z1: number;
}

export type ThingKind = PartKind | "arbor" | "pillar" | "plate" | "case";

export interface Thing {
  readonly id: string;
  readonly kind: ThingKind;
  /** Index of its arbor in the movement; −1 for pillars, plates and the case. */
  readonly arbor: number;
  /** Index among its arbor's parts; −1 where it is not a part. */
  readonly part: number;
  /** Index of the arbor that is its body; −1 for the frame. Things of one body are never a gap. */
  readonly body: number;
  readonly axis: Axis;
  readonly cylinders: readonly Cylinder[];
  /** Distance of its centre from the axis it turns on; 0 for what has no teeth. */
  readonly runoutMm: number;
  /** Departure of its faces from true at its own rim; 0 for pins and for what is not a part. */
  readonly wobbleMm: number;
  /** How far it can move with its arbor in the frame. */
  readonly shake: Shake;
  /** A plate's own outline and openings; null for everything else. */
  readonly plate: Plate | null;
  /** Where a plate's openings are, if it has many. */
  readonly openings: Flatbush | null;
}

/** Id under which the case goes. */
export const CASE_ID = "case";

/** Everything there is, arbor by arbor (the bare body, then its parts), then plates, pillars and case. */
export function thingsOf(movement: Movement): Thing[] {
  const things: Thing[] = [];
  movement.arbors.forEach((worked, arbor) => {
    const axis = axisOf(movement, arbor);
    things.push(bareBody(movement, arbor, axis));
    worked.arbor.parts.forEach((_, part) => things.push(partThing(movement, arbor, part, axis)));
  });
  const { plates, pillars, case: housing } = movement.instrument.frame;
  for (const plate of plates) things.push(plateThing(plate));
  for (const pillar of pillars) things.push(pillarThing(pillar));
  if (housing !== undefined) things.push(caseThing(housing));
  return things;
}

/** One part as a thing, on its arbor's axis. */
export function partThing(movement: Movement, arbor: number, index: number, axis: Axis): Thing {
  const part = movement.arbors[arbor].arbor.parts[index];
  return {
    ...bareBody(movement, arbor, axis), ...(isPawl(movement, part) ? { body: arbor } : {}), id: part.id, kind: part.kind, part: index, cylinders: [partCylinder(movement, part)],
    runoutMm: runoutOf(movement, part), wobbleMm: wobbleOf(movement, part),
  };
}

/** A pawl swings on its arbor, even where that stands in the frame. */
const isPawl = (movement: Movement, part: Part): boolean =>
  part.kind === "arm" && (movement.instrument.couplings ?? []).some((c) => c.kind === "click" && c.pawl === part.id);

/** Thickness as made, where it was measured. */
export const thicknessOf = (part: Part): number => part.measured?.thickness ?? part.thickness;

/** Run-out of a toothed part (wheel, pinion, lantern, ratchet), as measured, else the practice's; 0 for other parts. */
export function runoutOf(movement: Movement, part: Part): number {
  const toothed = movement.teeth.has(part.id) || part.kind === "ratchet";
  return toothed ? part.measured?.runout ?? movement.practice.runout : 0;
}

/** Wobble at the part's own rim, as measured, else the practice's; a pin has no rim. */
export function wobbleOf(movement: Movement, part: Part): number {
  return part.kind === "pin" ? 0 : part.measured?.wobble ?? movement.practice.wobble;
}

/** Largest radius that a thing sweeps. */
export function radiusOf(thing: Thing): number {
  let radius = 0;
  for (const c of thing.cylinders) if (c.radius > radius) radius = c.radius;
  return radius;
}

/** A fixed arbor that rides on nothing belongs to the frame, with all that is fixed on it. */
const bodyOf = (worked: WorkedArbor, arbor: number): number => (worked.onFrame ? -1 : arbor);

function bareBody(movement: Movement, arbor: number, axis: Axis): Thing {
  const worked = movement.arbors[arbor];
  return {
    id: worked.id, kind: "arbor", arbor, part: -1, body: bodyOf(worked, arbor), axis, cylinders: arborCylinders(worked.arbor),
    runoutMm: 0, wobbleMm: 0, shake: shakeOf(movement, arbor), plate: null, openings: null,
  };
}

/** Between the shoulders its own diameter, beyond them its pivots'. */
export function arborCylinders(arbor: Arbor): Cylinder[] {
  const foot = arbor.pivots?.foot, head = arbor.pivots?.head;
  const footShoulder = arbor.foot + (foot?.length ?? 0), headShoulder = arbor.head - (head?.length ?? 0);
  const cylinders: Cylinder[] = [];
  if (foot !== undefined && foot.length > 0) cylinders.push(solid(foot.diameter / 2, arbor.foot, footShoulder));
  if (headShoulder > footShoulder || cylinders.length === 0)
    cylinders.push(solid(arbor.diameter / 2, footShoulder, Math.max(footShoulder, headShoulder)));
  if (head !== undefined && head.length > 0) cylinders.push(solid(head.diameter / 2, headShoulder, arbor.head));
  return cylinders;
}

function partCylinder(movement: Movement, part: Part): Cylinder {
  const z0 = part.z, z1 = part.z + thicknessOf(part);
  const teeth = movement.teeth.get(part.id);
  if (teeth?.internal === true && isToothed(part)) {
    const inner = tipRadiusOf(part, teeth);
    return { radius: Math.max(inner, annulusOutsideRadius(part, inner)), inner, z0, z1 };
  }
  return solid(teeth !== undefined && isToothed(part) ? tipRadiusOf(part, teeth) : plainRadius(part), z0, z1);
}

const annulusOutsideRadius = (part: Part, inner: number): number =>
  (part.kind === "wheel" || part.kind === "pinion") && part.outsideDiameter !== undefined ? part.outsideDiameter / 2 : inner;

/** Radius swept by a part without teeth in engagement. */
function plainRadius(part: Part): number {
  switch (part.kind) {
    case "collet": case "disc": case "slot": return part.diameter / 2;
    case "ratchet": return (part.measured?.tipDiameter ?? part.diameter) / 2;
    case "pointer": return Math.hypot(Math.max(part.length, part.tail), part.width / 2);
    case "arm": return Math.hypot(part.length, part.width / 2);
    case "pin": return part.radius + part.diameter / 2;
    case "square": return part.across / Math.SQRT2;
    default: throw new Error(`the movement has no teeth for ${part.kind} ${part.id}`);
  }
}

function plateThing(plate: Plate): Thing {
  return {
    id: plate.id, kind: "plate", arbor: -1, part: -1, body: -1, axis: standingAxis(0, 0), runoutMm: 0, wobbleMm: 0,
    cylinders: [solid(0, plate.z, plate.z + plate.thickness)], shake: NO_SHAKE, plate, openings: indexOfOpenings(plate),
  };
}

function pillarThing(pillar: Pillar): Thing {
  return {
    id: pillar.id, kind: "pillar", arbor: -1, part: -1, body: -1, axis: standingAxis(pillar.x, pillar.y),
    cylinders: [solid(pillar.diameter / 2, pillar.from, pillar.to)], runoutMm: 0, wobbleMm: 0, shake: NO_SHAKE, plate: null, openings: null,
  };
}

/** A wall from floor to rim, and a bottom as thick as the wall. */
function caseThing(housing: Case): Thing {
  const inner = housing.insideDiameter / 2, radius = inner + housing.wall;
  return {
    id: CASE_ID, kind: "case", arbor: -1, part: -1, body: -1, axis: standingAxis(0, 0),
    cylinders: [
      { radius, inner, z0: housing.floor, z1: housing.rim },
      solid(radius, housing.floor - housing.wall, housing.floor),
    ],
    runoutMm: 0, wobbleMm: 0, shake: NO_SHAKE, plate: null, openings: null,
  };
}

const solid = (radius: number, z0: number, z1: number): Cylinder => ({ radius, inner: 0, z0, z1 });
