// An instrument worked out: where every arbor stands, what turns with what and how fast, how far each can shake. Pure;
// a movement of the same instrument with other places is worked out anew only as far as places reach.
import {
  engagementId, isToothed, practiceOf, type Coupling, type Instrument, type Sense, type ToothedPart,
} from "./instrument.ts";
import type { Movement, WorkedArbor, WorkedDisplay, WorkedEngagement } from "./movement.ts";
import { decimalRatio, differenceToNumber, isZero, lowestTerms, signOf, toNumber, ZERO, type Ratio } from "./numeric/ratio.ts";
import { axesOf } from "./planting/axes.ts";
import type { Place } from "./planting/circles.ts";
import { withPlaces } from "./planting/places.ts";
import { plantedAt } from "./planting/plant.ts";
import { computedDistances, rootsOf, spansOf } from "./planting/roots.ts";
import { freedomsOf } from "./planting/shake.ts";
import { teethOf } from "./teeth/toothing.ts";
import { dividedBy } from "./train/exact.ts";
import { layoutIn, layoutOf, type Layout } from "./train/layout.ts";
import type { Axes } from "./train/meshes.ts";
import { ratesOf } from "./train/rates.ts";

/** Days in a year, and degrees in a turn. */
const YEAR_DAYS = 365.25, TURN_DEG = 360;

/** Everything that follows from an instrument's own figures. */
export function workOut(instrument: Instrument): Movement {
  const layout = layoutOf(instrument);
  const teeth = teethOf(instrument);
  const practice = practiceOf(instrument);
  const computed = computedDistances(instrument, teeth);
  const roots = rootsOf(instrument, layout);
  const places = plantedAt(instrument, roots, spansOf(instrument, layout, roots, computed));
  const rates = ratesOf(instrument, layout, axesOf(instrument, layout, places), enclosing(instrument, layout, places));
  const freedoms = freedomsOf(instrument, layout, practice);
  const arbors = instrument.arbors.map((arbor, i): WorkedArbor => ({
    id: arbor.id, arbor, x: places[i].x, y: places[i].y, planted: places[i].planted,
    rate: rates.rate[i], bound: rates.bound[i], ...freedoms[i], chain: layout.chains[i], carrier: layout.carrier[i],
  }));
  const engagements = instrument.engagements.map((engagement, i): WorkedEngagement => {
    const driver = toothed(instrument, layout, engagement.driver), driven = toothed(instrument, layout, engagement.driven);
    return {
      id: engagementId(engagement), engagement, driver: driver.part, driven: driven.part,
      driverArbor: driver.arbor, drivenArbor: driven.arbor, distance: between(places[driver.arbor], places[driven.arbor]),
      computed: computed[i], carrier: rates.carrier[i], steadyDistance: rates.steady[i],
    };
  });
  return {
    instrument, practice, arbors, engagements, displays: displaysOf(instrument, layout, rates.rate), binds: rates.binds,
    arborIndex: layout.arborIndex, partIndex: layout.partIndex, teeth,
  };
}

/** The movement with some arbors put elsewhere: exactly what working out the changed instrument gives, but sooner. */
export function replanted(movement: Movement, moved: ReadonlyMap<string, Place>): Movement {
  const instrument = withPlaces(movement.instrument, moved);
  const layout = layoutIn(movement);
  const computed = movement.engagements.map((e) => e.computed);
  const roots = rootsOf(instrument, layout);
  const places = plantedAt(instrument, roots, spansOf(instrument, layout, roots, computed));
  if (!turnsAlike(movement, layout, places)) return workOut(instrument);
  return {
    ...movement, instrument,
    arbors: movement.arbors.map((a, i) => ({ ...a, arbor: instrument.arbors[i], ...places[i] })),
    engagements: movement.engagements.map((e) => ({ ...e, distance: between(places[e.driverArbor], places[e.drivenArbor]) })),
  };
}

/** Places reach the rates only through which axes are in line and which pins go round their slot's axis. */
function turnsAlike(movement: Movement, layout: Layout, places: readonly Place[]): boolean {
  const { instrument, arbors } = movement;
  const before = axesOf(instrument, layout, arbors), after = axesOf(instrument, layout, places);
  return sameGroups(before, after)
    && String(enclosing(instrument, layout, arbors)) === String(enclosing(instrument, layout, places));
}

function sameGroups(one: Axes, other: Axes): boolean {
  if (one.homeOf.length !== other.homeOf.length) return false;
  const match = new Map<number, number>();
  return one.axisOf.every((axis, i) => {
    const known = match.get(axis);
    if (known === undefined) match.set(axis, other.axisOf[i]);
    return known === undefined || known === other.axisOf[i];
  });
}

/** By coupling: whether a pin's circle goes round the axis of its slot. */
function enclosing(instrument: Instrument, layout: Layout, places: readonly Place[]): boolean[] {
  return (instrument.couplings ?? []).map((c: Coupling) => {
    if (c.kind !== "pin and slot") return false;
    const driver = layout.partIndex.get(c.driver), driven = layout.partIndex.get(c.driven);
    if (driver === undefined || driven === undefined) return false;
    const pin = [driver, driven].map((at) => instrument.arbors[at.arbor].parts[at.part]).find((part) => part.kind === "pin");
    return pin?.kind === "pin" && pin.radius > between(places[driver.arbor], places[driven.arbor]);
  });
}

function displaysOf(instrument: Instrument, layout: Layout, rate: readonly (Ratio | null)[]): WorkedDisplay[] {
  return (instrument.displays ?? []).map((d) => {
    const arbor = layout.arborIndex.get(d.arbor) ?? -1;
    const against = d.against === undefined ? null : layout.arborIndex.get(d.against) ?? null;
    const read = against === null ? rate[arbor] ?? null : lessOf(rate[arbor] ?? null, rate[against] ?? ZERO);
    const turns = read === null || isZero(read) ? null : read;
    return {
      id: d.id, name: d.name, arbor, against, rate: read, divisions: d.divisions ?? TURN_DEG,
      ...periodOf(turns, instrument.input.days, d.days ?? null), sense: turns === null ? null : senseOf(turns, instrument.input.sense),
    };
  });
}

/** Turns a day stay exact to the last: a drift is a small difference of them. */
function periodOf(turns: Ratio | null, inputDays: number, wanted: number | null): Pick<WorkedDisplay, "days" | "wanted" | "degreesPerYear" | "yearsToOneDegree"> {
  if (turns === null) return { days: null, wanted, degreesPerYear: null, yearsToOneDegree: null };
  const perDay = dividedBy(lowestTerms(turns.n, turns.d), decimalRatio(inputDays));
  const days = toNumber(lowestTerms(perDay.d, perDay.n));
  if (wanted === null) return { days, wanted, degreesPerYear: null, yearsToOneDegree: null };
  const degreesPerYear = TURN_DEG * YEAR_DAYS * differenceToNumber(perDay, decimalRatio(wanted).inverse());
  return { days, wanted, degreesPerYear, yearsToOneDegree: degreesPerYear === 0 ? null : 1 / Math.abs(degreesPerYear) };
}

const senseOf = (turns: Ratio, input: Sense): Sense => (signOf(turns) > 0 ? input : opposite(input));

const lessOf = (rate: Ratio | null, dial: Ratio): Ratio | null => (rate === null ? null : rate.sub(dial));

const opposite = (sense: Sense): Sense => (sense === "clockwise" ? "anticlockwise" : "clockwise");

const between = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y);

function toothed(instrument: Instrument, layout: Layout, id: string): { arbor: number; part: ToothedPart } {
  const at = layout.partIndex.get(id);
  const part = at && instrument.arbors[at.arbor].parts[at.part];
  if (at === undefined || part === undefined || !isToothed(part)) throw new Error(`an engaged part has teeth; ${id} has none`);
  return { arbor: at.arbor, part };
}
