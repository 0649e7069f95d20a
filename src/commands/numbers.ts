// Puts a found train into the instrument: its counts into the wheels that stand there where they are as many, else as new
// arbors, wheels and engagements, planted clear of what stands and levelled between the plates. One step of undo.
import {
  countOf, type Display, dragArbor, type Instrument, isToothed, type Movement, type Part, ratio, toNumber, trainTo, withPlaces, workOut,
} from "../../geometry/index.ts";
import { idsIn } from "../document/index.ts";
import { type Command, isRefused, keptMm, type Outcome } from "./command.ts";
import { plantTrain } from "./train.ts";

export interface PutTrain {
  /** The instrument worked out. */
  readonly movement: Movement;
  readonly drivers: readonly number[];
  readonly driven: readonly number[];
  /** Id of the arbor it is led off from. */
  readonly from: string;
  /** Id of a wheel there that drives first; absent: a new one. */
  readonly wheel?: string;
  /** Id of the display that it is for, or null: it shows something new. */
  readonly display: string | null;
}

export const putTrain: Command<PutTrain> = {
  name: "Put a train into the instrument",
  run(instrument, args) {
    if (args.drivers.length === 0 || args.drivers.length !== args.driven.length) return { refused: "A train has as many drivers as driven." };
    if ([...args.drivers, ...args.driven].some((n) => !Number.isInteger(n) || n < 3 || n > 2000)) return { refused: "Counts are whole numbers from 3 to 2,000." };
    if (!instrument.arbors.some((a) => a.id === args.from)) return { refused: `There is no arbor called ${args.from}.` };
    const pairs = args.wheel === undefined ? standingPairs(args) : null;
    return pairs === null ? withNewArbors(instrument, args) : withNewCounts(instrument, args, pairs);
  },
};

interface StandingPair { readonly driver: Part; readonly driven: Part }

/** The engagements that lead to the display now, where they are as many as the train has and begin at the same arbor. */
function standingPairs({ movement, drivers, from, display }: PutTrain): StandingPair[] | null {
  const at = movement.displays.findIndex((d) => d.id === display);
  const steps = at < 0 ? null : trainTo(movement, movement.displays[at]?.arbor ?? -1);
  const start = steps?.findIndex((s) => s.from === from) ?? -1;
  if (!steps || start < 0) return null;
  const pairs = steps.slice(start).flatMap((s): StandingPair[] => {
    const e = movement.engagements.find((m) => m.id === s.by);
    if (!e) return [];
    return movement.arbors[e.driverArbor]?.id === s.from ? [{ driver: e.driver, driven: e.driven }] : [{ driver: e.driven, driven: e.driver }];
  });
  return pairs.length === drivers.length ? pairs : null;
}

/** Greater counts go where greater counts stand, so that as little as may be is cut anew; arbors between then close up in gear. */
function withNewCounts(instrument: Instrument, { movement, drivers, driven, display }: PutTrain, pairs: readonly StandingPair[]): Outcome {
  const counts = new Map([...bySize(pairs.map((p) => p.driver), drivers), ...bySize(pairs.map((p) => p.driven), driven)]);
  const ours = new Set(counts.keys());
  const torn = instrument.engagements.find((e) => ours.has(e.driver) !== ours.has(e.driven) && changed(movement, counts, ours.has(e.driver) ? e.driver : e.driven));
  if (torn) return { refused: `${torn.driver} and ${torn.driven} are engaged besides, so their counts cannot change alone. Lead it off as a new train instead.` };
  const recut = { ...instrument, arbors: instrument.arbors.map((a) => ({ ...a, parts: a.parts.map((p) => cutTo(p, counts.get(p.id))) })) };
  const next = closedUp(recut, [...ours]);
  const name = instrument.displays?.find((d) => d.id === display)?.name ?? "train";
  return { instrument: next, says: `new numbers for ${name}` };
}

/** Which part takes which count: both in order of size. */
function bySize(parts: readonly Part[], counts: readonly number[]): [string, number][] {
  const size = (p: Part) => (isToothed(p) ? countOf(p) : 0);
  const sorted = [...counts].sort((a, b) => b - a);
  return [...parts].sort((a, b) => size(b) - size(a)).map((p, i) => [p.id, sorted[i] ?? size(p)]);
}

function changed(movement: Movement, counts: ReadonlyMap<string, number>, id: string): boolean {
  const at = movement.partIndex.get(id), part = at && movement.arbors[at.arbor]?.arbor.parts[at.part];
  return part !== undefined && isToothed(part) && countOf(part) !== counts.get(id);
}

function cutTo(part: Part, count: number | undefined): Part {
  if (count === undefined || !isToothed(part) || countOf(part) === count) return part;
  const { measured: _, ...drawn } = part;
  return part.kind === "wheel" ? { ...drawn, teeth: count } as Part : part.kind === "pinion" ? { ...drawn, leaves: count } as Part : { ...drawn, trundles: count } as Part;
}

/** Every arbor on the way taken in gear to where it stands, so that distances close; what cannot close stays and is found. */
function closedUp(instrument: Instrument, parts: readonly string[]): Instrument {
  let now = instrument;
  for (const id of parts) {
    const movement = workOut(now), at = movement.partIndex.get(id);
    const arbor = at && movement.arbors[at.arbor];
    if (!arbor || arbor.arbor.rides) continue;
    const { places } = dragArbor(movement, arbor.id, arbor, "in gear");
    if (places.size > 0) now = keptPlaces(withPlaces(now, places));
  }
  return now;
}

const keptPlaces = (instrument: Instrument): Instrument => ({
  ...instrument, arbors: instrument.arbors.map((a) => (a.x === undefined || a.y === undefined ? a : { ...a, x: keptMm(a.x), y: keptMm(a.y) })),
});

/** New arbors with the train on them, planted and levelled, and a display of the last. */
function withNewArbors(instrument: Instrument, { movement, drivers, driven, from, wheel, display }: PutTrain): Outcome {
  const led = wheel === undefined ? undefined : movement.partIndex.get(wheel), part = led && movement.arbors[led.arbor]?.arbor.parts[led.part];
  const first = part && isToothed(part) ? countOf(part) : null;
  // The wheel that is led off from drives first, whatever its size.
  const inOrder = first === null ? drivers : [first, ...drivers.filter((_, i) => i !== drivers.indexOf(first))];
  const stages = inOrder.map((driver, i) => ({ driver, follower: driven[i] ?? driver }));
  const outcome = plantTrain.run(instrument, { stages, from, ...(wheel === undefined ? {} : { wheel }) });
  if (isRefused(outcome)) return outcome;
  const last = outcome.instrument.arbors.at(-1)?.id ?? from;
  const turns = toNumber(workOut(outcome.instrument).arbors.at(-1)?.rate ?? ratio(0));
  const shown = movement.displays.find((d) => d.id === display);
  const days = shown?.wanted ?? (turns === 0 ? null : Math.abs(instrument.input.days / turns));
  const own: Display = {
    id: freshDisplay(instrument), name: shown ? `${shown.name}, new train` : "New pointer", arbor: last, ...(days === null ? {} : { days }),
    ...(shown ? { divisions: shown.divisions } : {}),
  };
  return { ...outcome, instrument: { ...outcome.instrument, displays: [...(outcome.instrument.displays ?? []), own] } };
}

function freshDisplay(instrument: Instrument): string {
  const taken = new Set(idsIn(instrument));
  for (let k = 1; ; k++) if (!taken.has(`new${k}`)) return `new${k}`;
}
