// The order of heats: what each join is heated to, and what it bears afterwards. Degrees Celsius throughout.
// Source of the usual figures: tin-lead 60/40 183–190 (EN ISO 9453, from memory; 183–188 in public tables), silver solder
// 630–660 (EN ISO 17672 Ag 155, from memory), retaining compound to 150 (a maker's public data sheet).
import type { Arbor, Join, Part } from "../instrument.ts";

/** K. A later heat nearer than this under an earlier limit is tight: the spread of a hand-held flame (common practice). */
export const HEAT_MARGIN_K = 20;

const USUAL: Partial<Record<Join["by"], { readonly solidus: number; readonly liquidus: number }>> = {
  "soft solder": { solidus: 183, liquidus: 190 },
  "silver solder": { solidus: 630, liquidus: 660 },
};
const ADHESIVE_LIMIT = 150;

export interface JoinHeat {
  readonly part: string;
  readonly by: Join["by"];
  readonly order: number | null;
  /** What the joint must be brought to; null: made cold. */
  readonly heatedTo: number | null;
  /** What undoes it: solidus of a solder, limit of an adhesive; null: heat does not undo it. */
  readonly undoneAt: number | null;
}

/** Heat and limit of a part's join; null where it has none. */
export function joinHeat(part: Part): JoinHeat | null {
  const join = part.join;
  if (!join) return null;
  const usual = USUAL[join.by];
  const common = { part: part.id, by: join.by, order: join.order ?? null };
  if (usual) return { ...common, heatedTo: join.liquidus ?? usual.liquidus, undoneAt: join.solidus ?? usual.solidus };
  if (join.by === "adhesive") return { ...common, heatedTo: null, undoneAt: join.solidus ?? ADHESIVE_LIMIT };
  return { ...common, heatedTo: null, undoneAt: null };
}

export interface HeatPair {
  readonly earlier: JoinHeat;
  readonly later: JoinHeat;
  /** K between the later heat and what the earlier bears; 0 or less: it is undone. */
  readonly marginK: number;
}

/** Every later heat held against every earlier join on the same arbor. Equal orders are one heat; joins without one are not judged. */
export function heatPairs(arbor: Arbor): HeatPair[] {
  const joins = arbor.parts.map(joinHeat).filter((j) => j !== null);
  return joins.flatMap((earlier) => joins.flatMap((later) =>
    earlier.order !== null && later.order !== null && earlier.order < later.order && later.heatedTo !== null && earlier.undoneAt !== null
      ? [{ earlier, later, marginK: earlier.undoneAt - later.heatedTo }] : []));
}

/** The joins of an arbor in the order that spoils least: hottest first, cold and heat-shy ones last. */
export function suggestedHeats(arbor: Arbor): JoinHeat[] {
  const joins = arbor.parts.map(joinHeat).filter((j) => j !== null);
  return joins.sort((a, b) => (b.heatedTo ?? -1) - (a.heatedTo ?? -1) || (b.undoneAt ?? Infinity) - (a.undoneAt ?? Infinity));
}
