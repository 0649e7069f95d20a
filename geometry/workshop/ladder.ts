// The order of heats of one arbor as a ladder to be drawn: heats stand left to right, degrees go upward, each join is on
// its rung. Across, 0 to 1; upward, degrees Celsius. Screen and paper draw the same one.
import type { Arbor } from "../instrument.ts";
import { HEAT_MARGIN_K, heatPairs, joinHeat, type HeatPair, type JoinHeat, suggestedHeats } from "./heats.ts";

export interface HeatLadder {
  readonly arbor: string;
  /** Left to right; null: joins of no order, made at any time. */
  readonly heats: readonly { readonly order: number | null; readonly across: number }[];
  readonly topC: number;
  /** Degrees that are written beside it. */
  readonly degrees: readonly number[];
  readonly rungs: readonly Rung[];
  readonly limits: readonly LadderLimit[];
  /** Parts in the order that spoils least. */
  readonly suggested: readonly JoinHeat[];
}

/** Joins of one heat that are brought to about the same degrees: their names share a rung. */
export interface Rung {
  readonly joins: readonly JoinHeat[];
  readonly across: number;
  /** From where the first of them lets go to where the last of them flows; both at the warmth of the room where they are made cold. */
  readonly lowC: number;
  readonly highC: number;
}

/** What an earlier join bears, from its heat to the later one that passes it or comes near. */
export interface LadderLimit {
  readonly pair: HeatPair;
  readonly from: number;
  readonly to: number;
  readonly bearsC: number;
  readonly heatC: number;
  readonly says: string;
}

export const ROOM_C = 20;
/** K within which two joins share a rung: their names would stand on one another. */
const RUNG_K = 40;
const LEAST_TOP_C = 200, STEP_C = 200;

export function heatLadder(arbor: Arbor): HeatLadder {
  const joins = arbor.parts.map(joinHeat).filter((j) => j !== null);
  const orders = [...new Set(joins.map((j) => j.order ?? Infinity))].sort((a, b) => a - b);
  const across = (j: JoinHeat): number => (orders.indexOf(j.order ?? Infinity) + 0.5) / orders.length;
  const topC = 1.12 * joins.reduce((most, j) => Math.max(most, j.heatedTo ?? 0), LEAST_TOP_C);
  return {
    arbor: arbor.id, heats: orders.map((order, i) => ({ order: Number.isFinite(order) ? order : null, across: (i + 0.5) / orders.length })),
    topC, degrees: Array.from({ length: Math.ceil(topC / STEP_C) }, (_, i) => STEP_C * i), rungs: rungsOf(joins, across),
    limits: heatPairs(arbor).filter((p) => p.marginK < HEAT_MARGIN_K).map((pair) => ({
      pair, from: across(pair.earlier), to: across(pair.later), bearsC: pair.earlier.undoneAt ?? ROOM_C, heatC: pair.later.heatedTo ?? ROOM_C, says: saysOf(pair),
    })),
    suggested: suggestedHeats(arbor),
  };
}

function rungsOf(joins: readonly JoinHeat[], across: (join: JoinHeat) => number): Rung[] {
  const rungs = new Map<string, Rung>();
  for (const join of joins) {
    const at = join.heatedTo ?? ROOM_C, key = `${join.order ?? ""} ${Math.round(at / RUNG_K)}`, before = rungs.get(key);
    const low = join.heatedTo === null ? ROOM_C : Math.min(at, join.undoneAt ?? at);
    rungs.set(key, {
      joins: [...(before?.joins ?? []), join], across: across(join), lowC: Math.min(before?.lowC ?? Infinity, low), highC: Math.max(before?.highC ?? -Infinity, at),
    });
  }
  return [...rungs.values()];
}

const saysOf = ({ earlier, later, marginK }: HeatPair): string =>
  `${later.part} at ${later.heatedTo} °C ${marginK <= 0 ? "undoes" : `comes within ${marginK} K of`} ${earlier.part}, which bears ${earlier.undoneAt} °C`;
