// A train on an arm written out by Willis's rule: every wheel's rate against the arm is its rate less the arm's, and against the
// arm the train is a plain one. Exact; rates are turns for one turn of the input.
// Source: R. Willis, Principles of Mechanism (1841), as quoted by MacCord, Scientific American Supplement (1884).
import { countOf } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { ONE, ZERO, type Ratio } from "../numeric/ratio.ts";
import { flipped, isInside, pathTo, reachedFrom, turnsBy, unrolled, type Way, waysFrom, waysOut } from "./ways.ts";

export interface WillisRow {
  readonly arbor: string;
  /** How it is engaged with the row before; null: it is where the train on the arm begins, or a coupling. */
  readonly by: { readonly driver: number; readonly driven: number; readonly inside: boolean } | null;
  /** Against the arm, and in the frame: the one and the arm's rate. */
  readonly against: Ratio;
  readonly rate: Ratio;
  /** It stands in the frame. */
  readonly fixed: boolean;
}

export interface WillisTable {
  readonly arm: string;
  readonly armRate: Ratio;
  /** From a wheel whose rate is known, along the train on the arm. */
  readonly rows: readonly WillisRow[];
  /** Last row over first against the arm: the value of the train with the arm at rest. */
  readonly value: Ratio;
  /** The arm is what is sought: it turns (last − value × first) / (1 − value). */
  readonly arms: boolean;
  /** The plain steps from the last row (or the arm) to the arbor sought; none where it is that. */
  readonly then: readonly { readonly arbor: string; readonly by: WillisRow["by"]; readonly rate: Ratio }[];
}

/** The table for an arbor that no plain train leads to; null where none can be written. */
export function willisOf(movement: Movement, arbor: number): WillisTable | null {
  const ways = waysFrom(movement), carriers = [...new Set(movement.engagements.flatMap((e) => e.carrier ?? []))];
  const isKnown = (at: number) => movement.arbors[at].arbor.fixed === true || (movement.arbors[at].carrier === null && pathTo(movement, ways, at) !== null);
  // Over the frame from the arbor to the nearest that a train on an arm leads to.
  const back = reachedFrom(arbor, waysOut(movement, null), (to) => movement.arbors[to].rate !== null);
  for (const end of [arbor, ...back.keys()]) {
    const path = unrolled(back, arbor, end), arm = carriers.find((c) => c !== end && carries(movement, c, end));
    if (path === null) continue;
    const then = path.reverse().map(flipped).map((way) => ({ arbor: movement.arbors[way.to].id, by: countsOf(way), rate: movement.arbors[way.to].rate ?? ZERO }));
    const chain = arm === undefined ? null : chainTo(movement, arm, end, isKnown);
    if (arm !== undefined && chain !== null) return tableOf(movement, arm, chain, false, then);
    const between = carriers.includes(end) ? betweenKnown(movement, end, isKnown) : null;
    if (between !== null) return tableOf(movement, end, between, true, then);
  }
  return null;
}

const carries = (movement: Movement, arm: number, arbor: number): boolean =>
  movement.engagements.some((e) => e.carrier === arm && (e.driverArbor === arbor || e.drivenArbor === arbor))
  || movement.arbors[arbor].carrier === arm;

/** The shortest train on an arm from an arbor that is known, itself another, to `end`. */
function chainTo(movement: Movement, arm: number, end: number, isKnown: (arbor: number) => boolean): Way[] | null {
  const ways = reachedFrom(end, waysOut(movement, arm), (to) => to !== arm && movement.arbors[to].rate !== null);
  const start = [...ways.keys()].find(isKnown);
  return start === undefined ? null : unrolled(ways, end, start)?.reverse().map(flipped) ?? null;
}

/** A train on an arm from one arbor that is known to another. */
function betweenKnown(movement: Movement, arm: number, isKnown: (arbor: number) => boolean): Way[] | null {
  const ends = [...new Set(movement.engagements.flatMap((e) => (e.carrier === arm ? [e.driverArbor, e.drivenArbor] : [])))].filter((a) => a !== arm && isKnown(a));
  for (const end of ends) {
    const chain = chainTo(movement, arm, end, isKnown);
    if (chain !== null) return chain;
  }
  return null;
}

function tableOf(movement: Movement, arm: number, chain: readonly Way[], arms: boolean, then: WillisTable["then"]): WillisTable | null {
  const armRate = movement.arbors[arm].rate;
  if (armRate === null || chain.length === 0) return null;
  const row = (at: number, by: WillisRow["by"]): WillisRow => {
    const { id, rate, arbor } = movement.arbors[at];
    return { arbor: id, by, rate: rate ?? ZERO, against: (rate ?? ZERO).sub(armRate), fixed: arbor.fixed === true };
  };
  return {
    arm: movement.arbors[arm].id, armRate, arms, then,
    rows: [row(chain[0].from, null), ...chain.map((way) => row(way.to, countsOf(way)))],
    value: chain.reduce((value, way) => value.mul(turnsBy(way)), ONE),
  };
}

const countsOf = (way: Way): WillisRow["by"] =>
  (way.driver === null || way.driven === null ? null : { driver: countOf(way.driver), driven: countOf(way.driven), inside: isInside(way) });
