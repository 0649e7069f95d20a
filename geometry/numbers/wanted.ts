// What a maker types for a wanted ratio, kept exact: a ratio, a decimal, or a period in days. A decimal means no more
// than its figures say, so half a unit of its last place is how truly it is stated.
import { decimalRatio, isZero, ratio, signOf, toNumber, type Ratio } from "../numeric/ratio.ts";

export interface WantedNumber {
  /** Turns of the arbor sought for one turn of what it leads off from, above 0. */
  readonly ratio: Ratio;
  /** Relative: how truly the typed figures say it; 0 for a ratio of whole numbers. */
  readonly stated: number;
}

export type TypedWanted = WantedNumber | { readonly fault: string };

/** "191/23", "29.530588853", "1.5e3": turns for one turn. */
export function wantedRatio(text: string): TypedWanted {
  const parts = plain(text).split("/");
  if (parts.length > 2 || !parts.every((p) => WRITTEN.test(p))) return { fault: `A ratio such as 191/23 or 0.0338632 is wanted, not “${text.trim()}”.` };
  const [over, under = "1"] = parts;
  if (tooLong(over) || tooLong(under)) return { fault: "So many figures pass what any instrument can show; twenty are enough." };
  const p = decimalRatio(over), q = decimalRatio(under);
  if (isZero(q)) return { fault: "There is 0 under the line." };
  const value = p.div(q);
  if (signOf(value) <= 0) return { fault: "A ratio above 0 is wanted; the sense is chosen beside it." };
  return { ratio: value, stated: halfPlace(over) / toNumber(p) + halfPlace(under) / toNumber(q) };
}

/** One turn in so many days, led off from an arbor that makes one turn in `fromDays` days. */
export function wantedPeriod(text: string, fromDays: Ratio): TypedWanted {
  const days = wantedRatio(text);
  if ("fault" in days) return { fault: days.fault.replace("A ratio such as 191/23 or 0.0338632", "A period such as 29.530588853").replace("A ratio above 0", "A period above 0") };
  if (signOf(fromDays) === 0) return { fault: "The arbor it leads off from does not turn." };
  return { ratio: fromDays.abs().div(days.ratio), stated: days.stated };
}

/** Whether an error asked for is finer than what the typed figures say, in words; null where it is not. */
export function finerThanStated(wanted: WantedNumber, within: number): string | null {
  if (wanted.stated === 0 || within >= wanted.stated || within === 0) return null;
  return `The wanted figure is stated to 1 in ${Math.round(1 / wanted.stated).toLocaleString("en-GB")} only; an error less than that says more than it does.`;
}

const WRITTEN = /^[+-]?\d+(\.\d+)?(e[+-]?\d{1,3})?$/i;

const plain = (text: string): string => text.trim().replace(/[\s\u2009\u202f]/g, "").replace("−", "-").replace(",", ".");

/** More figures, or a greater power, than any train could mean. */
const tooLong = (written: string): boolean => written.length > 60;

/** Half a unit of the last place that is written after a point; 0 for whole numbers. */
function halfPlace(written: string): number {
  const [mantissa, exponent = "0"] = written.toLowerCase().split("e");
  const decimals = mantissa.split(".")[1]?.length ?? 0;
  return decimals === 0 && exponent === "0" ? 0 : 0.5 * 10 ** (Number(exponent) - decimals);
}

/** A period in days as an exact ratio of an arbor's rate: days of the input over turns. */
export const periodOf = (rate: Ratio, inputDays: number): Ratio => (isZero(rate) ? ratio(0) : decimalRatio(inputDays).div(rate.abs()));
