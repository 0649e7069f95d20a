// What was changed is settled: places and then levels are searched for, and again, as long as that leaves less amiss. Unlike
// the searches alone, nothing is moved for more room or less height where nothing is amiss.
import { examine } from "../examine/sheet.ts";
import type { Sheet } from "../finding.ts";
import type { Instrument } from "../instrument.ts";
import { workOut } from "../workout.ts";
import { searchHeights } from "./heights.ts";
import { searchPlaces } from "./places.ts";

/** Never worse than the instrument given. */
export interface Settled { readonly instrument: Instrument; readonly counts: Sheet["counts"] }
export interface SettlingStep {
  /** From 0 to 1. */
  readonly done: number;
  readonly best: Settled;
}

const TRIES = 60, ROUNDS = 2;

/** Step by step, the last step done. Stopping between steps loses nothing. */
export function* searchSettled(instrument: Instrument): Generator<SettlingStep, Settled, void> {
  let best: Settled = { instrument, counts: examine(workOut(instrument)).counts };
  for (let k = 0; k < 2 * ROUNDS && isAmiss(best); k++) {
    const from = best, search = k % 2 === 0 ? searchPlaces(from.instrument, { tries: TRIES, seed: k + 1 }) : searchHeights(from.instrument);
    for (const { done, best: found } of search) {
      if (isBetter(found, best)) best = { instrument: found.instrument, counts: found.counts };
      if (done < 1) yield { done: (k + done) / (2 * ROUNDS), best };
    }
  }
  yield { done: 1, best };
  return best;
}

const isAmiss = ({ counts }: Settled): boolean => counts.foul > 0 || counts.tight > 0;

/** Fewer fouls, or as many and less that is tight. */
const isBetter = ({ counts: a }: Pick<Settled, "counts">, { counts: b }: Settled): boolean => a.foul < b.foul || (a.foul === b.foul && a.tight < b.tight);
