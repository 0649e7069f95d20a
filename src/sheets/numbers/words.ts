// How the figures of trains are written.
import { fixed } from "../../state/figures.ts";
import { grouped } from "../../state/dates.ts";

/** Six decimals in two groups of three: 29.530 596. */
export const sixths = (days: number): string => fixed(days, 6).replace(/(\d{3})$/, "\u202f$1");

/** "1 in 10,800", "1 in 1.3 million", "1 in 6.4 × 10⁹": how small a relative error is. */
export function oneIn(error: number): string {
  const n = 1 / Math.abs(error);
  if (!Number.isFinite(n)) return "exact";
  if (n < 1e6) return `1 in ${grouped(Number(n.toPrecision(3)), 0)}`;
  if (n < 1e9) return `1 in ${(n / 1e6).toFixed(n < 1e7 ? 1 : 0)} million`;
  const power = Math.floor(Math.log10(n));
  return `1 in ${(n / 10 ** power).toFixed(1)} × 10${[...String(power)].map((d) => "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(d)]).join("")}`;
}

/** Years to two figures. */
export const goodFor = (years: number): string => grouped(years < 10 ? Number(years.toFixed(1)) : Number(years.toPrecision(2)), years < 10 ? 1 : 0);

/** "15 to 24", "15-24", "15": null where it is no range of counts. */
export function typedRange(text: string): readonly [number, number] | null {
  const match = /^\s*(\d{1,4})\s*(?:(?:to|-|–|…)\s*(\d{1,4}))?\s*$/.exec(text);
  if (!match) return null;
  const from = Number(match[1]), to = Number(match[2] ?? match[1]);
  return from >= 1 && to >= from && to <= 2000 ? [from, to] : null;
}
