// Where arbors stand: planting one at a place, keeping the places that a drag came to, and telling every search to
// leave one alone.
import type { Instrument } from "../../geometry/index.ts";
import { type Command, type Outcome, isLengthMm, keptMm, withArbor } from "./command.ts";

export interface Place { readonly x: number; readonly y: number }

/** Plants one arbor at a typed place. A measured hole stands where it was drilled, so it is refused. */
export const plantArbor: Command<{ readonly arbor: string; readonly x: number; readonly y: number }> = {
  name: "Plant an arbor",
  run(instrument, { arbor: id, x, y }) {
    const fault = cannotMove(instrument, id) ?? (isLengthMm(x) && isLengthMm(y) ? null : "A place is two lengths within 10,000 mm.");
    if (fault) return { refused: fault };
    return { instrument: withArbor(instrument, id, (a) => ({ ...a, x: keptMm(x), y: keptMm(y) })), says: `${id} planted` };
  },
};

/** Keeps the places that a drag came to: the arbor in hand and whatever followed it. */
export const keepPlaces: Command<{ readonly arbor: string; readonly places: ReadonlyMap<string, Place> }> = {
  name: "Move an arbor",
  run(instrument, { arbor: id, places }) {
    const fault = cannotMove(instrument, id);
    if (fault) return { refused: fault };
    for (const place of places.values())
      if (!isLengthMm(place.x) || !isLengthMm(place.y)) return { refused: "A place is two lengths within 10,000 mm." };
    const arbors = instrument.arbors.map((a) => {
      const to = places.get(a.id);
      return to === undefined || a.rides !== undefined ? a : { ...a, x: keptMm(to.x), y: keptMm(to.y) };
    });
    return { instrument: { ...instrument, arbors }, says: `${id} moved` };
  },
};

/** Says whether a search or a drag of another arbor may move this one. */
export const holdSteady: Command<{ readonly arbor: string; readonly steady: boolean }> = {
  name: "Hold an arbor steady",
  run(instrument, { arbor: id, steady }): Outcome {
    if (!instrument.arbors.some((a) => a.id === id)) return { refused: `There is no arbor called ${id}.` };
    const next = withArbor(instrument, id, (a) => {
      const { steady: _, ...rest } = a;
      return steady ? { ...rest, steady } : rest;
    });
    return { instrument: next, says: steady ? `${id} held steady` : `${id} set free` };
  },
};

/** Why an arbor's place is not the maker's to choose, or null. */
export function cannotMove(instrument: Instrument, id: string): string | null {
  const arbor = instrument.arbors.find((a) => a.id === id);
  if (!arbor) return `There is no arbor called ${id}.`;
  if (arbor.rides) return `${id} rides on ${arbor.rides.on} and stands where that stands.`;
  if (arbor.measured) return `The hole of ${id} is drilled and measured; it stands where it came.`;
  return null;
}
