// What is asked of a search, from the fields as typed, and what a search begins with for a pointer: the limits that its
// present train lies within. Pure; the faults are sentences.
import {
  allowedCounts, decimalRatio, finerThanStated, headOf, type Movement, periodOf, ratio, toNumber, trainTo, wantedPeriod, wantedRatio, writeRatio,
} from "../../../geometry/index.ts";
import type { Limits } from "../../workers/numbering.ts";
import { oversOf } from "./Standing.tsx";
import { typedRange } from "./words.ts";

export interface Asked {
  /** A period in days, or a ratio of turns. */
  readonly by: "period" | "ratio";
  readonly wanted: string;
  readonly from: string;
  readonly sense: "same" | "contrary";
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
    by: "period", wanted: String(shown?.wanted ?? shown?.days ?? 365.2422), from: input,
    sense: shown?.sense === undefined || shown.sense === null || shown.sense === movement.instrument.input.sense ? "same" : "contrary",
    engagements: String(fractions.length || 3), within: String(within), largest: "",
    pinions: range(fractions.map((f) => f.under), 2, 2, "8 to 20"), wheels: range(fractions.map((f) => f.over), 6, 10, "30 to 96"),
    divides: movement.instrument.division !== undefined, cutters: false, reverted: false,
  };
}

export interface Question {
  readonly limits: Limits;
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
  const engagements = Number(asked.engagements);
  if (!/^\d+$/.test(asked.engagements.trim()) || engagements < 1 || engagements > 12) return { fault: "Engagements are a whole number from 1 to 12." };
  if ((engagements % 2 === 0) !== (asked.sense === "same"))
    return { fault: `${engagements} outside ${engagements === 1 ? "engagement turns" : "engagements turn"} the ${asked.sense === "same" ? "contrary" : "same"} way; one more or one less is wanted, or an idler.` };
  const ppm = asked.within.trim().replace(",", ".");
  if (!/^\d*\.?\d+(e[+-]?\d{1,2})?$/i.test(ppm)) return { fault: "The error is so many parts in a million, such as 1.2." };
  const within = decimalRatio(ppm.startsWith(".") ? `0${ppm}` : ppm).div(ratio(1_000_000));
  const largest = asked.largest.trim() === "" ? undefined : Number(asked.largest);
  if (largest !== undefined && !(Number.isInteger(largest) && largest > 0)) return { fault: "The largest wheel is a whole number of teeth." };
  const { division, cutters } = movement.instrument;
  const counts = allowedCounts({
    pinions, wheels, ...(largest === undefined ? {} : { largest }), ...(asked.divides && division ? { head: headOf(division) } : {}),
    ...(asked.cutters && cutters ? { cutters } : {}),
  });
  return {
    limits: { wanted: writeRatio(wanted.ratio), within: writeRatio(within), engagements, counts },
    fromDays: toNumber(fromDays), wantedDays: toNumber(fromDays.div(wanted.ratio)), says: finerThanStated(wanted, toNumber(within)),
  };
}
