// How the arbors of an instrument hang together, as indices: which part is on which arbor and what rides on what.
// Nothing here is measured: a stud is told from a pipe only by having a radius at all.
import type { Instrument } from "../instrument.ts";
import type { Movement } from "../movement.ts";

export interface Layout {
  /** Index of an arbor by its id. */
  readonly arborIndex: ReadonlyMap<string, number>;
  /** Arbor and place on it, by part id. */
  readonly partIndex: ReadonlyMap<string, { readonly arbor: number; readonly part: number }>;
  /** What each arbor rides on, and what that rides on, nearest first. */
  readonly chains: readonly (readonly number[])[];
  /** The arbor that carries each arbor's axis round: where it, or the pipe chain it belongs to, is a stud. Else null. */
  readonly carrier: readonly (number | null)[];
}

export function layoutOf(instrument: Instrument): Layout {
  const { arbors } = instrument;
  const arborIndex = new Map(arbors.map((a, i) => [a.id, i]));
  const partIndex = new Map<string, { arbor: number; part: number }>();
  arbors.forEach((a, arbor) => a.parts.forEach((p, part) => partIndex.set(p.id, { arbor, part })));
  const on = arbors.map((a) => (a.rides === undefined ? -1 : arborIndex.get(a.rides.on) ?? -1));
  const chains = arbors.map((_, i) => chainFrom(i, on));
  const carrier = arbors.map((_, i) => {
    for (const j of [i, ...chains[i]]) if (on[j] >= 0 && (arbors[j].rides?.radius ?? 0) > 0) return on[j];
    return null;
  });
  return { arborIndex, partIndex, chains, carrier };
}

/** The same of an instrument that is already worked out. */
export const layoutIn = (movement: Movement): Layout => ({
  arborIndex: movement.arborIndex, partIndex: movement.partIndex,
  chains: movement.arbors.map((a) => a.chain), carrier: movement.arbors.map((a) => a.carrier),
});

/** Reading refuses arbors that ride in a circle; here a circle merely ends where it closes. */
function chainFrom(start: number, on: readonly number[]): number[] {
  const chain: number[] = [];
  for (let j = on[start]; j >= 0 && j !== start && !chain.includes(j); j = on[j]) chain.push(j);
  return chain;
}
