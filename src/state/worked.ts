// The movement and the sheet that go with an instrument: worked out from it and from a drag in hand, never stored with
// it. What takes under a frame is done at once; what would take longer goes to a worker, and until its answer comes the
// sheet before stands, marked as behind.
import { type Instrument, type Movement, type Sheet, replanted, withPlaces, workOut } from "../../geometry/index.ts";
import type { Place } from "../commands/planting.ts";
import type { Examined, Examining } from "../workers/examining.ts";
import type { Latest } from "../workers/latest.ts";

export interface Worked {
  readonly movement: Movement;
  readonly sheet: Sheet;
  /** now: of this movement; behind: still of the one before; to come: the examiner itself has not been loaded yet. */
  readonly examined: "now" | "behind" | "to come";
}

/** Half a frame at sixty a second: longer work would be felt under the hand. */
export const AT_ONCE_MS = 8;

const movements = new WeakMap<Instrument, Movement>();
const sheets = new WeakMap<Movement, Sheet>();

/** The movement of an instrument, worked out once for each. */
export function movementOf(instrument: Instrument): Movement {
  const known = movements.get(instrument);
  if (known) return known;
  const movement = workOut(instrument);
  movements.set(instrument, movement);
  return movement;
}

export interface Worker {
  /** The movement and sheet for what is asked; `later` hears a sheet that had to be waited for. */
  work(instrument: Instrument, places: ReadonlyMap<string, Place> | null, before: Worked | null, later: (sheet: Sheet) => void): Worked;
  /** The examiner has come. */
  readonly ready: Promise<void>;
}
export interface Examiners {
  /** Examines at once. It comes after the first picture, which does not need it. */
  readonly near: Promise<(movement: Movement) => Sheet>;
  /** Examines elsewhere. */
  readonly far: Latest<Examining, Examined>;
}

/** `nowMs` is a clock: how long the last examination took says where the next is done. */
export function createWorker({ near, far }: Examiners, nowMs: () => number): Worker {
  let examine: ((movement: Movement) => Sheet) | null = null;
  let lastMs = 0;
  let lastParts = 0;
  const examined = (movement: Movement, by: (movement: Movement) => Sheet): Sheet => {
    const known = sheets.get(movement);
    if (known) return known;
    const start = nowMs();
    const sheet = by(movement);
    lastMs = nowMs() - start;
    lastParts = movement.partIndex.size;
    sheets.set(movement, sheet);
    return sheet;
  };
  return {
    ready: near.then((come) => { examine = come; }),
    work(instrument, places, before, later) {
      const base = movementOf(instrument);
      const movement = places ? replanted(base, places) : base;
      const by = examine;
      if (!by) return { movement, sheet: unexamined(movement), examined: "to come" };
      const expectedMs = lastMs * Math.max(1, movement.partIndex.size / Math.max(1, lastParts));
      if (!before || sheets.has(movement) || expectedMs <= AT_ONCE_MS) {
        far.forget();
        return { movement, sheet: examined(movement, by), examined: "now" };
      }
      const asked = places ? withPlaces(instrument, places) : instrument;
      far.ask({ instrument: asked, all: false }, (answer) => {
        if (answer) {
          sheets.set(movement, answer.sheet);
          lastMs = answer.tookMs;
          lastParts = movement.partIndex.size;
        }
        later(answer?.sheet ?? examined(movement, by));
      });
      return { movement, sheet: before.sheet, examined: "behind" };
    },
  };
}

/** What can be said of a movement before the examiner has seen it: nothing. */
const unexamined = ({ instrument }: Movement): Sheet => ({
  endshake: 1, name: instrument.name, arbors: [], engagements: [], displays: [], findings: [], assembly: [], counts: { foul: 0, tight: 0, free: 0 },
});
