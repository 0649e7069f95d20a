// The search for levels: the least height between the plates at which everything clears, the order of levels on every
// arbor chosen freely. What it finds is examined like any instrument and kept only if that finds it no worse. Lengths in mm.
import { examine } from "../examine/sheet.ts";
import type { Sheet } from "../finding.ts";
import { leastStack, MOST_BRANCHES, sharedOut, type Lift } from "../heights/least.ts";
import type { Instrument } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { seededBy } from "../numeric/seeded.ts";
import { AT_LIMIT_MM, TOUCH_MM } from "../numeric/tolerance.ts";
import { workOut } from "../workout.ts";
import { levelsOf, type End, type Levels } from "./levels.ts";

export interface HowToLevel {
  readonly seed?: number;
  /** How many orders are looked at before it is given up to try them all. */
  readonly branches?: number;
}

/** The best so far: never worse than the instrument given. */
export interface Levelled {
  readonly instrument: Instrument;
  readonly counts: Sheet["counts"];
  /** mm between the plates; null where there are no two. */
  readonly height: number | null;
  /** No order of levels is lower. */
  readonly proved: boolean;
  /** Why nothing better was found, where something can be said. */
  readonly says: string | null;
  /** Pairs too near in plan that no height can part. */
  readonly beyond: readonly (readonly [string, string])[];
}

export interface LevellingStep {
  /** From 0 to 1. */
  readonly done: number;
  readonly best: Levelled;
}

/** Looks with pairs settled in a shuffled order, where not all orders could be tried. */
const SHUFFLED = 4;

/** Step by step, the last step done. Stopping between steps loses nothing. */
export function* searchHeights(instrument: Instrument, { seed = 1, branches = MOST_BRANCHES }: HowToLevel = {}): Generator<LevellingStep, Levelled, void> {
  const movement = workOut(instrument), levels = levelsOf(movement);
  const { counts } = examine(movement);
  if (levels === null) return { instrument, counts, height: null, proved: false, says: "There are no two plates, one over the other", beyond: [] };
  let best: Levelled = { instrument, counts, height: levels.top - levels.base, proved: false, says: null, beyond: levels.beyond };
  // The order as drawn, closed up, takes no time and can bring nothing that was not there.
  const asDrawn = closedUp(levels, movement);
  if (asDrawn !== null) best = betterOf(best, levelledTo(instrument, levels, asDrawn));
  const random = seededBy(seed);
  let least = Infinity, settled = false;
  for (let look = 0; look <= SHUFFLED && !settled; look++) {
    const search = leastStack(levels.stack, look === 0 ? { branches } : { branches: branches / 8, random, below: least });
    for (let ended = false; !ended;) {
      const step = search.next(), found = step.value;
      ended = step.done === true;
      if (found.heights !== null && found.heights[1] < least - AT_LIMIT_MM) {
        least = found.heights[1];
        best = betterOf(best, levelledTo(instrument, levels, found.heights));
      }
      settled ||= ended && found.proved;
      best = { ...best, ...verdictOn(best, least, settled) };
      yield { done: ended && (settled || look === SHUFFLED) ? 1 : (look + found.done) / (SHUFFLED + 1), best };
    }
  }
  return best;
}

/** Whether what is held is the least there is, and what stands in the way of less. */
function verdictOn({ height }: Levelled, least: number, settled: boolean): Pick<Levelled, "proved" | "says"> {
  if (settled && least === Infinity) return { proved: true, says: "No order of levels clears everything" };
  const refused = least < (height ?? 0) - AT_LIMIT_MM;
  const says = refused ? `Everything would clear at ${Number(least.toFixed(2))} mm, but in an order in which the examiner finds more amiss` : null;
  return { proved: settled && !refused, says };
}

/** Least heights with every pair in the order in which it is drawn; null where the drawing has none. */
function closedUp({ stack, base, top, parts, feet, heads }: Levels, { instrument }: Movement): Float64Array | null {
  const drawn = new Float64Array(stack.levels);
  drawn[1] = top - base;
  const note = (end: End, z: number) => { if (end.level > 1) drawn[end.level] = z - base - end.off; };
  instrument.arbors.forEach((arbor, i) => {
    note(feet[i], arbor.foot);
    note(heads[i], arbor.head);
    for (const p of arbor.parts) note(parts.get(p.id) as End, p.z);
  });
  const spare = (l: Lift) => drawn[l.over] - drawn[l.under] - l.by;
  const lifts = [...stack.lifts, ...stack.choices.map((c) => c.reduce((one, other) => (spare(other) > spare(one) ? other : one)))];
  const step = leastStack({ levels: stack.levels, lifts, choices: [] }).next();
  return step.value.heights;
}

/** The whole search at once. */
export function findHeights(instrument: Instrument, how: HowToLevel = {}): Levelled {
  const search = searchHeights(instrument, how);
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
}

/** Fewer fouls; or as many, no more that is tight, and lower. */
function betterOf(best: Levelled, next: Pick<Levelled, "instrument" | "counts" | "height">): Levelled {
  const a = next.counts, b = best.counts;
  const better = a.foul !== b.foul ? a.foul < b.foul : a.tight <= b.tight && (next.height ?? 0) < (best.height ?? 0) - AT_LIMIT_MM;
  return better ? { ...best, ...next } : best;
}

function levelledTo(instrument: Instrument, levels: Levels, least: Float64Array): Pick<Levelled, "instrument" | "counts" | "height"> {
  const heights = sharedOut(levels.stack, least);
  const levelled = withHeights(instrument, levels, heights);
  return { instrument: levelled, counts: examine(workOut(levelled)).counts, height: heights[1] };
}

/** The instrument with every part, arbor end, plate and pillar at its new height. */
function withHeights(instrument: Instrument, { base, top, parts, feet, heads, below }: Levels, heights: Float64Array): Instrument {
  const raise = base + heights[1] - top;
  const at = (end: End): number => end.level === 0 ? base + end.off : end.level === 1 ? base + heights[1] + end.off : base + heights[end.level] + end.off;
  const withTop = (z: number): number => (z >= top - TOUCH_MM ? z + raise : z);
  const { plates, pillars } = instrument.frame;
  return {
    ...instrument,
    frame: {
      ...instrument.frame,
      plates: plates.map((p) => ({ ...p, z: withTop(p.z) })),
      pillars: pillars.map((p) => ({ ...p, from: withTop(p.from), to: withTop(p.to) })),
    },
    arbors: instrument.arbors.map((arbor, i) => {
      const placed = arbor.parts.map((p) => ({ ...p, z: at(parts.get(p.id) as End) }));
      // A free foot stands as far below the lowest part as it was drawn.
      const lowest = placed.reduce((z, p) => Math.min(z, p.z), Infinity);
      const foot = feet[i].level > 1 && placed.length > 0 ? lowest - below[i] : at(feet[i]);
      return { ...arbor, foot, head: at(heads[i]), parts: placed };
    }),
  };
}
