// Pairs that are not examined as gaps, since they are meant to be near: what is in gear, what runs in a plate, on an
// arbor or on a stud, a pin in its slot, a click at its ratchet.
import type { Movement, WorkedArbor } from "../movement.ts";

/** Where each thing stands in the list of things: the bare body of arbor i at `arborStart[i]`, its parts after it. */
export interface Places {
  readonly arborStart: readonly number[];
  readonly plate: ReadonlyMap<string, number>;
  readonly count: number;
}

/** One number for two places, whichever comes first. */
export const pairKey = (count: number, i: number, j: number): number => (i < j ? i * count + j : j * count + i);

export function exemptPairs(movement: Movement, places: Places): Set<number> {
  const exempt = new Set<number>();
  const add = (i: number | undefined, j: number | undefined) => {
    if (i !== undefined && j !== undefined && i !== j) exempt.add(pairKey(places.count, i, j));
  };
  const placeOfPart = (id: string) => {
    const at = movement.partIndex.get(id);
    return at === undefined ? undefined : places.arborStart[at.arbor] + 1 + at.part;
  };
  for (const e of movement.engagements) add(placeOfPart(e.driver.id), placeOfPart(e.driven.id));
  for (const coupling of movement.instrument.couplings ?? []) {
    if (coupling.kind === "pin and slot") add(placeOfPart(coupling.driver), placeOfPart(coupling.driven));
    const on = coupling.kind === "click" ? movement.arborIndex.get(coupling.on) : undefined;
    if (coupling.kind === "click" && on !== undefined)
      for (const place of placesOf(movement, places, on)) {
        add(placeOfPart(coupling.ratchet), place);
        if (coupling.pawl !== undefined) add(placeOfPart(coupling.pawl), place);
      }
  }
  movement.arbors.forEach((worked, arbor) => {
    const bare = places.arborStart[arbor];
    for (const pivot of [worked.arbor.pivots?.foot, worked.arbor.pivots?.head])
      if (pivot !== undefined) add(bare, places.plate.get(pivot.plate));
    for (const inner of withinPipe(movement, worked))
      for (const place of placesOf(movement, places, arbor)) add(place, places.arborStart[inner]);
    const carrier = carrierOf(movement, worked);
    if (carrier !== null) for (const place of placesOf(movement, places, carrier)) add(bare, place);
  });
  return exempt;
}

/** Places of an arbor's bare body and of all its parts. */
function placesOf(movement: Movement, places: Places, arbor: number): number[] {
  const start = places.arborStart[arbor];
  return [start, ...movement.arbors[arbor].arbor.parts.map((_, i) => start + 1 + i)];
}

/** The arbors inside a pipe: what it rides on, what that rides on in turn as a pipe, down to the first that is none. */
function withinPipe(movement: Movement, pipe: WorkedArbor): number[] {
  const inside: number[] = [];
  let rider = pipe;
  for (const on of pipe.chain) {
    if (rider.arbor.rides?.radius !== 0) break;
    inside.push(on);
    rider = movement.arbors[on];
  }
  return inside;
}

/** The arbor on which a stud stands, or on which the stud stands that a pipe turns on. It need not turn. */
function carrierOf(movement: Movement, worked: WorkedArbor): number | null {
  let rider = worked;
  for (const on of worked.chain) {
    if ((rider.arbor.rides?.radius ?? 0) > 0) return on;
    rider = movement.arbors[on];
  }
  return null;
}
