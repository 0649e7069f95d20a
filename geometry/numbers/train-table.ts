// The train as it is: for every display the engagements from the input to it, in order, as a maker writes them down.
// Rates stay exact. A sense is seen from the dial side; from the back it is the other. Where the way leads over a carried
// axis the rate is not the product of the wheels, and the carrier is named instead.
import { countOf, type Sense } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { ONE, signOf, toNumber, type Ratio } from "../numeric/ratio.ts";
import { coupled, isInside, pathTo, type Way, waysFrom } from "./ways.ts";
import { willisOf, type WillisTable } from "./willis.ts";

export interface TrainStep {
  /** The engagement's id, or the two arbors that a coupling joins. */
  readonly by: string;
  readonly from: string;
  readonly to: string;
  /** Teeth, leaves or trundles; null: a coupling, turn for turn. */
  readonly driver: number | null;
  readonly driven: number | null;
  /** One of the two is an annulus, so the sense is kept. */
  readonly inside: boolean;
  /** Of `to`, turns for one turn of the input; signed. */
  readonly rate: Ratio;
  readonly dialSide: Sense;
  readonly backSide: Sense;
  /** The displays that this step serves. */
  readonly serves: readonly string[];
}

export interface WrittenTrain {
  readonly id: string;
  readonly name: string;
  readonly arbor: string;
  /** The arbor that carries the dial, where the dial turns too. */
  readonly against: string | null;
  /** From the input, or null where the rate is no plain product. */
  readonly steps: readonly TrainStep[] | null;
  /** Why there are no steps, or null. */
  readonly says: string | null;
  /** Where its rate comes of wheels on an arm: Willis's table of them. */
  readonly willis: WillisTable | null;
  /** The arbor it leads off from that is another display's own, and how many steps are written there already. */
  readonly leadsFrom: { readonly arbor: string; readonly after: number } | null;
  /** As read on its dial; null: not driven. */
  readonly rate: Ratio | null;
  readonly days: number | null;
  readonly wanted: number | null;
  /** Rate over wanted rate − 1, signed; null where nothing is wanted. */
  readonly error: number | null;
  readonly degreesPerYear: number | null;
  /** Years until it is one of its divisions wrong; null: never, or nothing is wanted. */
  readonly yearsToOneDivision: number | null;
  readonly dialSide: Sense | null;
  readonly backSide: Sense | null;
}

/** Every display's train, in the order of the instrument. */
export function trainTable(movement: Movement): WrittenTrain[] {
  const ways = waysFrom(movement);
  const paths = movement.displays.map((d) => pathTo(movement, ways, d.arbor));
  const serves = servedBy(movement, paths);
  return movement.displays.map((d, i): WrittenTrain => {
    const path = paths[i];
    const says = d.rate === null ? "Nothing drives it." : path === null ? carriedSays(movement, d.arbor) : null;
    const own = ownArbors(movement, i);
    return {
      id: d.id, name: d.name, arbor: movement.arbors[d.arbor].id, against: d.against === null ? null : movement.arbors[d.against].id,
      steps: path === null ? null : path.map((way) => stepOf(movement, way, serves.get(way) ?? [])), says,
      willis: d.rate === null || path !== null ? null : willisOf(movement, d.arbor),
      leadsFrom: path === null ? null : leadOf(path, own, movement),
      rate: d.rate, days: d.days, wanted: d.wanted, degreesPerYear: d.degreesPerYear,
      error: d.days === null || d.wanted === null ? null : errorOf(d.degreesPerYear, d.wanted),
      yearsToOneDivision: yearsToOneDivision(d.degreesPerYear, d.divisions),
      dialSide: d.sense, backSide: d.sense === null ? null : other(d.sense),
    };
  });
}

/** The plain way from the input to one arbor, or null where its rate is no product of wheels. */
export function trainTo(movement: Movement, arbor: number): TrainStep[] | null {
  const path = pathTo(movement, waysFrom(movement), arbor);
  return path === null ? null : path.map((way) => stepOf(movement, way, []));
}

/** Years until a pointer that gains or loses so much a year is one of its divisions wrong; null: never. */
export function yearsToOneDivision(degreesPerYear: number | null, divisions: number): number | null {
  return degreesPerYear === null || degreesPerYear === 0 ? null : 360 / divisions / Math.abs(degreesPerYear);
}

const other = (sense: Sense): Sense => (sense === "clockwise" ? "anticlockwise" : "clockwise");

function stepOf(movement: Movement, way: Way, serves: readonly string[]): TrainStep {
  const rate = movement.arbors[way.to].rate ?? ONE;
  const input = movement.instrument.input.sense;
  const dialSide = signOf(rate) < 0 ? other(input) : input;
  return {
    by: way.by, from: movement.arbors[way.from].id, to: movement.arbors[way.to].id,
    driver: way.driver && countOf(way.driver), driven: way.driven && countOf(way.driven),
    inside: isInside(way), rate, dialSide, backSide: other(dialSide), serves,
  };
}

function servedBy(movement: Movement, paths: readonly (readonly Way[] | null)[]): Map<Way, string[]> {
  const serves = new Map<Way, string[]>();
  paths.forEach((path, i) => { for (const way of path ?? []) serves.set(way, [...(serves.get(way) ?? []), movement.displays[i].id]); });
  return serves;
}

/** The arbors that other displays, read before this one or not passing over its own, are read from. */
function ownArbors(movement: Movement, display: number): ReadonlySet<number> {
  return new Set(movement.displays.flatMap((d, i) => (i === display ? [] : [d.arbor])));
}

/** The last arbor on the way that turns as another display's does; the steps up to it stand there already. */
function leadOf(path: readonly Way[], own: ReadonlySet<number>, movement: Movement): WrittenTrain["leadsFrom"] {
  const alike = coupled(movement);
  for (let k = path.length - 1; k > 0; k--) {
    const at = path[k].from;
    const shown = own.has(at) || alike.some(([a, b]) => (a === at && own.has(b)) || (b === at && own.has(a)));
    if (shown && at !== path[path.length - 1].to) return { arbor: movement.arbors[at].id, after: k };
  }
  return null;
}

function carriedSays(movement: Movement, arbor: number): string {
  const carriers = [...new Set(movement.engagements.flatMap((e) => (e.carrier === null ? [] : [movement.arbors[e.carrier].id])))];
  return carriers.length === 0 ? `No plain train leads to ${movement.arbors[arbor].id}; its rate is worked out from the whole.`
    : `Wheels carried by ${carriers.join(", ")} come into it, so its rate is no plain product of counts.`;
}

/** degreesPerYear is 360 × 365.25 × (1/days − 1/wanted), kept exact until its last figure. */
function errorOf(degreesPerYear: number | null, wanted: number): number | null {
  return degreesPerYear === null ? null : (degreesPerYear / (360 * 365.25)) * wanted;
}

/** Days for one turn of the arbor in the frame; null: it does not turn. */
export function daysOf(movement: Movement, rate: Ratio | null): number | null {
  const turns = rate === null ? 0 : toNumber(rate);
  return turns === 0 ? null : Math.abs(movement.instrument.input.days / turns);
}
