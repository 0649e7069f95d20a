// The ways from arbor to arbor: engagements either way round, and couplings turn for turn; on the frame, or on one carrier
// as it looks to whoever stands on it.
import { countOf, type ToothedPart } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { ONE, ratio, type Ratio } from "../numeric/ratio.ts";

/** How an arbor is reached; one object a step, so that shared steps are known as the same. */
export interface Way {
  readonly from: number;
  readonly to: number;
  readonly by: string;
  readonly driver: ToothedPart | null;
  readonly driven: ToothedPart | null;
}

const isAnnulus = (part: ToothedPart | null): boolean => part !== null && part.kind !== "lantern" && part.internal === true;
/** One of the two is an annulus, so the sense is kept. */
export const isInside = ({ driver, driven }: Pick<Way, "driver" | "driven">): boolean => isAnnulus(driver) || isAnnulus(driven);

/** Turns of `to` for one turn of `from`, against the carrier. */
export function turnsBy({ driver, driven }: Way): Ratio {
  if (driver === null || driven === null) return ONE;
  const turns = ratio(countOf(driver), countOf(driven));
  return isInside({ driver, driven }) ? turns : turns.neg();
}

/** By arbor, the ways out of it over engagements of one carrier (null: the frame) and over couplings. */
export function waysOut(movement: Movement, carrier: number | null): ReadonlyMap<number, readonly Way[]> {
  const out = new Map<number, Way[]>();
  const add = (way: Way) => {
    for (const w of [way, flipped(way)]) out.set(w.from, [...(out.get(w.from) ?? []), w]);
  };
  for (const e of movement.engagements)
    if (e.carrier === carrier) add({ from: e.driverArbor, to: e.drivenArbor, by: e.id, driver: e.driver, driven: e.driven });
  for (const [a, b] of coupled(movement)) add({ from: a, to: b, by: `${movement.arbors[a].id}, ${movement.arbors[b].id}`, driver: null, driven: null });
  return out;
}

/** The same way gone the other way. */
export const flipped = ({ from, to, by, driver, driven }: Way): Way => ({ from: to, to: from, by, driver: driven, driven: driver });

/** The first way to every arbor that is reached from `start` over arbors that may be gone over, fewest steps first. */
export function reachedFrom(start: number, out: ReadonlyMap<number, readonly Way[]>, may: (arbor: number) => boolean): ReadonlyMap<number, Way> {
  const ways = new Map<number, Way>(), reached = [start];
  for (const at of reached) for (const way of out.get(at) ?? []) {
    if (way.to === start || ways.has(way.to) || !may(way.to)) continue;
    ways.set(way.to, way);
    reached.push(way.to);
  }
  return ways;
}

/** The ways from `start` to `end` in order, of those first ways; null where it is not reached. */
export function unrolled(ways: ReadonlyMap<number, Way>, start: number, end: number): Way[] | null {
  const path: Way[] = [];
  for (let at = end; at !== start;) {
    const way = ways.get(at);
    if (way === undefined) return null;
    path.unshift(way);
    at = way.from;
  }
  return path;
}

/** The first way to every arbor that the input reaches over axes that stand still, fewest steps first. */
export function waysFrom(movement: Movement): ReadonlyMap<number, Way> {
  const start = movement.arborIndex.get(movement.instrument.input.arbor) ?? -1;
  return reachedFrom(start, waysOut(movement, null), (to) => movement.arbors[to].rate !== null);
}

/** The ways in order from the input, or null where there are none or their product is not the rate. */
export function pathTo(movement: Movement, ways: ReadonlyMap<number, Way>, arbor: number): Way[] | null {
  const path = unrolled(ways, movement.arborIndex.get(movement.instrument.input.arbor) ?? -1, arbor), { rate } = movement.arbors[arbor];
  return path !== null && rate !== null && rate.equals(path.reduce((product, way) => product.mul(turnsBy(way)), ONE)) ? path : null;
}

/** Pairs of arbors that a coupling turns alike. */
export function coupled(movement: Movement): [number, number][] {
  const part = (id: string) => movement.partIndex.get(id)?.arbor ?? -1, arbor = (id: string) => movement.arborIndex.get(id) ?? -1;
  return (movement.instrument.couplings ?? []).flatMap((c): [number, number][] => {
    const [a, b] = c.kind === "friction" ? [arbor(c.between[0]), arbor(c.between[1])]
      : c.kind === "click" ? [part(c.ratchet), arbor(c.on)] : [part(c.driver), part(c.driven)];
    const one = movement.arbors[a]?.rate, two = movement.arbors[b]?.rate;
    return one && two && one.equals(two) ? [[a, b]] : [];
  });
}
