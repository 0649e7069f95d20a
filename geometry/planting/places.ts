// New places written into an instrument.
import type { Instrument } from "../instrument.ts";
import type { Place } from "./circles.ts";

/** The instrument with x and y of the arbors named set; everything else is the same. */
export function withPlaces(instrument: Instrument, places: ReadonlyMap<string, Place>): Instrument {
  if (places.size === 0) return instrument;
  return {
    ...instrument,
    arbors: instrument.arbors.map((arbor) => {
      const place = places.get(arbor.id);
      return place === undefined ? arbor : { ...arbor, x: place.x, y: place.y };
    }),
  };
}
