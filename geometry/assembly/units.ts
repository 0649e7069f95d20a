// What goes in as one piece, and what waits for what: arbors with all that is fixed on them, upper plates and cocks, and
// parts that are put on afterwards. Everything is built up on one plate; what stands behind that plate goes on from behind.
import { thingsOf, type Thing } from "../bodies/thing.ts";
import type { Arbor, Plate } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { TOUCH_MM } from "../numeric/tolerance.ts";
import { arrowsBetween, orderOfEntry, whatGoesBefore, type Before } from "./before.ts";
import { comesOff, platesThrough, type Through } from "./through.ts";

export interface Unit {
  readonly kind: "arbor" | "plate" | "part";
  readonly id: string;
  /** Index of its arbor; −1 for a plate. */
  readonly arbor: number;
  readonly things: readonly Thing[];
  /** It goes on from behind the plate that all is built on. */
  readonly behind: boolean;
}

export interface Units {
  /** The plate that all is built on; null where there is none. */
  readonly base: Thing | null;
  /** Arbors in the order of the sheet, then plates, then parts put on afterwards. */
  readonly units: readonly Unit[];
  /** `first` goes in before `then`, as indices of units. */
  readonly before: readonly Before[];
}

export function unitsOf(movement: Movement): Units {
  const things = thingsOf(movement);
  const base = basePlate(movement);
  const late = latePartsOf(movement, things);
  const behind = (ts: readonly Thing[]) => base !== null && ts.every((t) => t.cylinders.every((c) => c.z1 <= base.z + base.thickness / 2));
  const unit = (kind: Unit["kind"], id: string, arbor: number, own: readonly Thing[]): Unit => ({ kind, id, arbor, things: own, behind: behind(own) });
  const order = orderOfEntry(movement.arbors.length, whatGoesBefore(movement)).flat();
  const all = [
    ...order.map((i) => unit("arbor", movement.arbors[i].id, i, things.filter((t) => t.arbor === i && !late.has(t.id)))),
    ...movement.instrument.frame.plates.filter((p) => p !== base).map((p) => unit("plate", p.id, -1, things.filter((t) => t.plate === p))),
    ...things.filter((t) => late.has(t.id)).map((t) => unit("part", t.id, t.arbor, [t])),
  ];
  const units = [...all.filter((u) => !u.behind), ...all.filter((u) => u.behind)];
  return { base: things.find((t) => t.plate === base && base !== null) ?? null, units, before: [...byHeights(units), ...byPlates(movement, units), ...ontoArbors(units)] };
}

/** The plate that most arbors have their feet in, else the lowest. */
function basePlate({ instrument: { frame, arbors } }: Movement): Plate | null {
  const feet = (p: Plate) => arbors.filter((a) => a.pivots?.foot?.plate === p.id).length;
  return [...frame.plates].sort((a, b) => feet(b) - feet(a) || a.z - b.z)[0] ?? null;
}

/** Parts put on afterwards: too wide for a plate that their arbor is brought through from the other side, or over what rides on their own arbor. */
function latePartsOf(movement: Movement, things: readonly Thing[]): ReadonlySet<string> {
  const late = new Set<string>();
  movement.arbors.forEach(({ arbor }, i) => {
    for (const through of platesThrough(movement, i))
      for (const p of entersFromBelow(arbor, through) ? through.above : through.below) if (comesOff(p)) late.add(p.id);
    const riders = things.filter((t) => t.part < 0 && t.arbor >= 0 && isPipeOn(movement.arbors[t.arbor].arbor, arbor));
    for (const part of things.filter((t) => t.arbor === i && t.part >= 0 && comesOff(arbor.parts[t.part])))
      if (riders.some((r) => locksIn(part, r, boreOf(movement, r)))) late.add(part.id);
  });
  return late;
}

/** Which way an arbor is brought through a plate: by its pivots, else so that only what comes off has to be put on afterwards. */
function entersFromBelow({ pivots }: Arbor, { plate, below, above }: Through): boolean {
  if (pivots?.head?.plate === plate) return true;
  if (pivots?.foot?.plate === plate) return false;
  return above.every(comesOff) && below.length > 0;
}

const isPipeOn = ({ rides }: Arbor, on: Arbor): boolean => rides !== undefined && rides.on === on.id && rides.radius === 0;

/** Whether a part stands over a pipe on its arbor, too wide to pass it. */
const locksIn = (part: Thing, pipe: Thing, boreRadius: number): boolean =>
  part.cylinders.some((c) => c.radius > boreRadius && pipe.cylinders.every((p) => p.z1 <= c.z0 + TOUCH_MM));

const boreOf = (movement: Movement, rider: Thing): number => (movement.arbors[rider.arbor].arbor.bore ?? movement.arbors[rider.arbor].arbor.diameter) / 2;

/** What lies lower goes in first; behind the plate, what lies higher. A part put on afterwards says nothing to its own arbor here. */
function byHeights(units: readonly Unit[]): Before[] {
  const group = new Map(units.flatMap((u, i) => u.things.map((t) => [t, i] as const)));
  const side = (behind: boolean) => arrowsBetween(
    units.filter((u) => u.behind === behind && u.kind !== "plate").flatMap((u) => u.things), (t) => group.get(t) ?? -1, units.length);
  const apart = (b: Before) => units[b.first].arbor !== units[b.then].arbor;
  return [...side(false), ...side(true).map((b) => ({ first: b.then, then: b.first, under: b.over, over: b.under }))].filter(apart);
}

/** Before a plate goes what runs or is caught under it; after it what stands in or over it. */
function byPlates(movement: Movement, units: readonly Unit[]): Before[] {
  return units.flatMap((plate, p) => plate.kind !== "plate" ? [] : units.flatMap((u, i): Before[] => {
    if (u.kind === "plate" || u.behind !== plate.behind) return [];
    const first = isUnder(movement, u, plate) !== u.behind;
    return [first ? { first: i, then: p, under: u.id, over: plate.id } : { first: p, then: i, under: plate.id, over: u.id }];
  }));
}

/** Whether a unit belongs below a plate: an arbor through it by the way it is brought through, all else by its middle. */
function isUnder(movement: Movement, unit: Unit, plate: Unit): boolean {
  if (unit.kind === "part") return middleOf(unit) < middleOf(plate);
  const { arbor } = movement.arbors[unit.arbor];
  if (arbor.pivots?.head?.plate === plate.id) return true;
  if (arbor.pivots?.foot?.plate === plate.id) return false;
  const through = platesThrough(movement, unit.arbor).find((t) => t.plate === plate.id);
  return through === undefined || (through.below.length === 0 && through.above.length === 0)
    ? middleOf(unit) < middleOf(plate) : entersFromBelow(arbor, through);
}

/** A part goes on after its own arbor, and after all that rides under it there. */
function ontoArbors(units: readonly Unit[]): Before[] {
  return units.flatMap((u, i) => u.kind !== "part" ? [] : units.flatMap((a, j) =>
    (a.kind === "arbor" && a.arbor === u.arbor ? [{ first: j, then: i, under: a.id, over: u.id }] : [])));
}

function middleOf(unit: Unit): number {
  const ends = unit.things.flatMap((t) => t.cylinders.flatMap((c) => [c.z0, c.z1]));
  return (Math.min(...ends) + Math.max(...ends)) / 2;
}
