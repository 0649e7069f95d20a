// What is asked of a search, from the fields as typed, and what a search begins with for a pointer: the limits that its
// present train lies within. Pure; the faults are sentences.
import {
  allowedCounts, countOf, decimalRatio, finerThanStated, isToothed, type Movement, periodOf, ratio, toNumber, trainTo, wantedPeriod, wantedRatio, workshopOf, writeRatio,
} from "../../../geometry/index.ts";
import type { TrainLimits } from "../../workers/numbering.ts";
import { oversOf } from "./Standing.tsx";
import { typedRange } from "./words.ts";

export interface Asked {
  /** A period in days, or a ratio of turns. */
  readonly by: "period" | "ratio";
  readonly wanted: string;
  readonly from: string;
  /** Id of a wheel that is there to lead off from; empty: a new one. */
  readonly wheel: string;
  readonly sense: "same" | "contrary";
  /** "4", or "2 to 4". */
  readonly engagements: string;
  readonly pinions: string;
  readonly wheels: string;
  /** Parts in a million. */
  readonly within: string;
  readonly largest: string;
  readonly divides: boolean;
  readonly cutters: boolean;
  readonly reverted: boolean;
}

/** What a search begins with for a display. */
export function beginningFor(movement: Movement, display: number | null): Asked {
  const input = movement.instrument.input.arbor;
  const shown = display === null ? undefined : movement.displays[display];
  const steps = shown ? trainTo(movement, shown.arbor) : null;
  const fractions = steps ? oversOf(steps) : [];
  const range = (values: readonly number[], less: number, more: number, otherwise: string) =>
    (values.length === 0 ? otherwise : `${Math.max(6, Math.min(...values) - less)} to ${Math.max(...values) + more}`);
  const error = shown?.days && shown.wanted ? Math.abs(shown.wanted / shown.days - 1) * 1e6 : 0;
  const within = Math.min(200, Math.max(1, Math.ceil(error * 12) / 10));
  return {
    by: "period", wanted: String(shown?.wanted ?? shown?.days ?? 365.2422), from: input, wheel: "",
    sense: shown?.sense === undefined || shown.sense === null || shown.sense === movement.instrument.input.sense ? "same" : "contrary",
    engagements: String(fractions.length || 3), within: String(within), largest: "",
    pinions: range(fractions.map((f) => f.under), 2, 2, "8 to 20"), wheels: range(fractions.map((f) => f.over), 6, 10, "30 to 96"),
    divides: movement.instrument.division !== undefined, cutters: false, reverted: false,
  };
}

export interface Question {
  readonly limits: TrainLimits;
  /** Days of one turn of what it is led off from, and days wanted. */
  readonly fromDays: number;
  readonly wantedDays: number;
  /** A caution that does not stop the search, or null. */
  readonly says: string | null;
}

/** The question, or the one sentence that says what is wrong with it. */
export function questionOf(movement: Movement, asked: Asked): Question | { readonly fault: string } {
  const at = movement.arborIndex.get(asked.from);
  const rate = at === undefined ? null : movement.arbors[at]?.rate;
  if (!rate) return { fault: `${asked.from} does not turn, so nothing can be led off from it.` };
  const fromDays = periodOf(rate, movement.instrument.input.days);
  const wanted = asked.by === "period" ? wantedPeriod(asked.wanted, fromDays) : wantedRatio(asked.wanted);
  if ("fault" in wanted) return wanted;
  const pinions = typedRange(asked.pinions), wheels = typedRange(asked.wheels);
  if (!pinions || !wheels) return { fault: "Counts are ranges such as 15 to 24." };
  const engagements = sizesOf(asked);
  if ("fault" in engagements) return engagements;
  const wheel = asked.wheel === "" ? null : wheelsOn(movement, asked.from).find((w) => w.id === asked.wheel);
  if (wheel === undefined) return { fault: `There is no wheel ${asked.wheel} on ${asked.from} to lead off from.` };
  const ppm = asked.within.trim().replace(",", ".");
  if (!/^\d*\.?\d+(e[+-]?\d{1,2})?$/i.test(ppm)) return { fault: "The error is so many parts in a million, such as 1.2." };
  const within = decimalRatio(ppm.startsWith(".") ? `0${ppm}` : ppm).div(ratio(1_000_000));
  const largest = asked.largest.trim() === "" ? undefined : Number(asked.largest);
  if (largest !== undefined && !(Number.isInteger(largest) && largest > 0)) return { fault: "The largest wheel is a whole number of teeth." };
  const { head, cutters } = workshopOf(movement.instrument);
  const counts = allowedCounts({
    pinions, wheels, ...(largest === undefined ? {} : { largest }), ...(asked.divides && head ? { head } : {}), ...(asked.cutters && cutters ? { cutters } : {}),
  });
  return {
    limits: { wanted: writeRatio(wanted.ratio), within: writeRatio(within), engagements: engagements.sizes, counts, ...(wheel ? { leadOff: wheel.count } : {}) },
    fromDays: toNumber(fromDays), wantedDays: toNumber(fromDays.div(wanted.ratio)), says: finerThanStated(wanted, toNumber(within)),
  };
}

/** What stands on an arbor with teeth, to lead off from. */
export const wheelsOn = (movement: Movement, arbor: string): { readonly id: string; readonly count: number }[] =>
  movement.arbors[movement.arborIndex.get(arbor) ?? -1]?.arbor.parts.flatMap((p) => (isToothed(p) ? [{ id: p.id, count: countOf(p) }] : [])) ?? [];

/** The numbers of engagements asked for that give the sense. */
function sizesOf({ engagements, sense }: Asked): { readonly sizes: readonly number[] } | { readonly fault: string } {
  const range = typedRange(engagements);
  if (range === null || range[1] > MOST_ENGAGEMENTS) return { fault: `Engagements are a whole number from 1 to ${MOST_ENGAGEMENTS}, or some such as 2 to 4.` };
  const [from, to] = range, sizes = Array.from({ length: to - from + 1 }, (_, i) => from + i).filter((n) => (n % 2 === 0) === (sense === "same"));
  return sizes.length > 0 ? { sizes }
    : { fault: `${from} outside ${from === 1 ? "engagement turns" : "engagements turn"} the ${sense === "same" ? "contrary" : "same"} way; one more or one less is wanted, or an idler.` };
}

const MOST_ENGAGEMENTS = 12;
