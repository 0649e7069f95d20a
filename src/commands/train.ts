// From a train in one line, as makers write it (drivers over followers), to arbors, wheels and pinions in gear: each
// engagement on a level of its own, all planted by the search, ready to be changed.
import { type Arbor, type Instrument, type Part, examine, findPlaces, gearingOf, isToothed, type ToothedPart, workOut } from "../../geometry/index.ts";
import { idsIn } from "../document/index.ts";
import { type Command, keptMm } from "./command.ts";
import { judged, nextLetter } from "./edit.ts";
import { freshInstrument } from "./fresh.ts";
import { outerPlates } from "./things.ts";

/** One engagement: the count that drives and the count that follows. */
export interface Stage { readonly driver: number; readonly follower: number }

export type WrittenStages = { readonly stages: readonly Stage[] } | { readonly fault: string };

const MOST_STAGES = 24;

/** Reads "42/17 × 41/19"; also with x, · or * between. */
export function readStages(text: string): WrittenStages {
  const pieces = text.trim().replace(/[[\]]/g, "").split(/\s*[×x·*]\s*/i).filter((piece) => piece !== "");
  if (pieces.length === 0) return { fault: "counts of drivers over followers, such as 42/17 × 41/19" };
  if (pieces.length > MOST_STAGES) return { fault: `at most ${MOST_STAGES} engagements` };
  const stages: Stage[] = [];
  for (const piece of pieces) {
    const found = /^(\d+)\s*[/÷:]\s*(\d+)$/.exec(piece.trim());
    if (!found) return { fault: `a driver over a follower in place of “${piece}”, such as 42/17` };
    const [driver, follower] = [Number(found[1]), Number(found[2])];
    const odd = [driver, follower].find((count) => count < 3 || count > 2000);
    if (odd !== undefined) return { fault: `counts from 3 to 2,000; ${odd} is none` };
    stages.push({ driver, follower });
  }
  return { stages };
}

/** Puts the train into the instrument, the first driver on `from`: a new one, or `wheel`, a part that is there already. */
export const plantTrain: Command<{ readonly stages: readonly Stage[]; readonly from: string; readonly wheel?: string }> = {
  name: "Put a train in",
  run(instrument, { stages, from, wheel }) {
    const first = instrument.arbors.find((a) => a.id === from);
    if (!first) return { refused: `There is no arbor called ${from}.` };
    if (stages.length === 0) return { refused: "A train has one engagement or more." };
    const led = wheel === undefined ? null : first.parts.find((p) => p.id === wheel);
    if (led === undefined || (led !== null && !isToothed(led))) return { refused: `There is no wheel ${wheel} on ${from}.` };
    const made = withTrain(instrument, stages, first, led), refusal = judged(made, "");
    if ("refused" in refusal) return refusal;
    return judged(planted(made, new Set(instrument.arbors.map((a) => a.id))), `a train of ${stages.length * 2 - (led ? 1 : 0)} wheels`);
  },
};

/** A new instrument round a train: the least of a few plates on which it stands without fouls, else the largest. */
export function instrumentOfTrain(stages: readonly Stage[], name: string): Instrument {
  let best: { readonly instrument: Instrument; readonly fouls: number } | null = null;
  for (const diameter of PLATES_MM) {
    const fresh = { ...freshInstrument(diameter), name };
    const outcome = plantTrain.run(fresh, { stages, from: fresh.input.arbor });
    if ("refused" in outcome) continue;
    const fouls = examine(workOut(outcome.instrument)).counts.foul;
    if (best === null || fouls < best.fouls) best = { instrument: outcome.instrument, fouls };
    if (fouls === 0) break;
  }
  return best?.instrument ?? { ...freshInstrument(110), name };
}

const PLATES_MM = [110, 150, 200, 300, 450];
/** Leaves fewer than this are a pinion (common practice). */
const PINION_BELOW = 20;
const WHEEL_MM = 2, PINION_MM = 2.6;
/** Air left at the plates, and the most from one level to the next. */
const AIR_MM = 2.5, LEVEL_MM = 4.5;
const PLANTING = { tries: 12 };

function withTrain(instrument: Instrument, stages: readonly Stage[], first: Arbor, led: ToothedPart | null): Instrument {
  const [low, high] = outerPlates(instrument);
  const floor = low ? low.z + low.thickness : 0, ceiling = high && high !== low ? high.z : floor + 40;
  const level = Math.min(LEVEL_MM, (ceiling - floor - 2 * AIR_MM - PINION_MM) / Math.max(1, stages.length - 1));
  // What follows a wheel that is there stands level with it; the rest go on from there, up to the ceiling and then from the floor.
  const levels = Math.max(1, stages.length), ledAt = led === null ? 0 : Math.min(levels - 1, Math.max(0, Math.round((led.z - floor - AIR_MM) / level)));
  const zOf = (k: number) => (k === 0 && led !== null ? led.z + (led.thickness - PINION_MM) / 2 : floor + AIR_MM + ((ledAt + k) % levels) * level);
  const taken = new Set([...idsIn(instrument), "case", "input"]);
  const arbors: Arbor[] = instrument.arbors.map((a) => a), engagements = [...instrument.engagements];
  const put = (arbor: string, count: number, k: number): string => {
    let n = 1;
    while (taken.has(`${arbor}${n}`)) n += 1;
    const id = `${arbor}${n}`, thickness = count < PINION_BELOW ? PINION_MM : WHEEL_MM;
    taken.add(id);
    const at = { id, z: keptMm(zOf(k) + (PINION_MM - thickness) / 2), thickness };
    const part: Part = count < PINION_BELOW ? { ...at, kind: "pinion", leaves: count } : { ...at, kind: "wheel", teeth: count };
    const i = arbors.findIndex((a) => a.id === arbor), host = arbors[i];
    if (host) arbors[i] = { ...host, parts: [...host.parts, part] };
    return id;
  };
  let on = first.id;
  stages.forEach(({ driver, follower }, k) => {
    const next = nextLetter(taken);
    taken.add(next);
    arbors.push({ ...runningBetween(low, high, floor, ceiling), id: next });
    const pair = { driver: k === 0 && led !== null ? led.id : put(on, driver, k), driven: put(next, follower, k) };
    engagements.push(pair);
    on = next;
  });
  return spreadOut({ ...instrument, arbors, engagements }, stages, first);
}

function runningBetween(low: Plates, high: Plates, floor: number, ceiling: number): Omit<Arbor, "id"> {
  const pivot = (plate: NonNullable<Plates>) => ({ diameter: 1.5, length: plate.thickness, plate: plate.id });
  const foot = low ? { foot: pivot(low) } : {}, head = high && high !== low ? { head: pivot(high) } : {};
  return {
    diameter: 3, foot: keptMm(low ? low.z + SHOULDER_MM : floor), head: keptMm(high && high !== low ? high.z + high.thickness - SHOULDER_MM : ceiling),
    pivots: { ...foot, ...head }, parts: [],
  };
}
type Plates = Instrument["frame"]["plates"][number] | undefined;
/** Half the endshake of a new arbor: its shoulders stand so far from the plates. */
const SHOULDER_MM = 0.1;

/** A beginning for the search: the arbors in a spiral, each at its pitch distance from the one before. */
function spreadOut(instrument: Instrument, stages: readonly Stage[], first: Arbor): Instrument {
  const { module } = gearingOf(instrument), fresh = instrument.arbors.slice(-stages.length);
  let x = first.x ?? 0, y = first.y ?? 0, angle = 0;
  const places = new Map(fresh.map((arbor, k) => {
    const stage = stages[k] as Stage, distance = (module * (stage.driver + stage.follower)) / 2;
    angle += k === 0 ? 0 : Math.PI - (2 * Math.PI) / Math.max(3.5, stages.length);
    x += distance * Math.cos(angle);
    y += distance * Math.sin(angle);
    return [arbor.id, { x: keptMm(x), y: keptMm(y) }] as const;
  }));
  return { ...instrument, arbors: instrument.arbors.map((a) => ({ ...a, ...places.get(a.id) })) };
}

/** Planted by the search, which moves nothing that stood before. */
function planted(instrument: Instrument, before: ReadonlySet<string>): Instrument {
  const held = { ...instrument, arbors: instrument.arbors.map((a) => (before.has(a.id) && !a.rides && a.x !== undefined ? { ...a, steady: true } : a)) };
  const found = findPlaces(held, PLANTING).instrument;
  return {
    ...found,
    arbors: found.arbors.map((a, i) => {
      const was = instrument.arbors[i];
      return was && before.has(a.id) ? was : { ...a, ...(a.x === undefined || a.y === undefined ? {} : { x: keptMm(a.x), y: keptMm(a.y) }) };
    }),
  };
}
