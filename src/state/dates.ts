// What a count of turns stands for: days since the input stood at 0, and a date where a display gives its epoch.
import type { Instrument } from "../../geometry/index.ts";

const DAY_MS = 86_400_000;
/** The farthest dates that the calendar of the language can hold. */
const FARTHEST_MS = 8.64e15;

/** Milliseconds of the date at input 0, by the first display that has a readable epoch; a date without a clock time is its midnight, UTC. */
export function epochMs(instrument: Instrument): number | null {
  for (const display of instrument.displays ?? []) {
    if (display.epoch === undefined) continue;
    const written = /T.*(Z|[+-]\d\d:?\d\d)$/.test(display.epoch) || !display.epoch.includes("T") ? display.epoch : `${display.epoch}Z`;
    const ms = Date.parse(written);
    if (Number.isFinite(ms)) return ms;
  }
  return null;
}

/** "Tue 13 January 2026, 12:00", or null where it lies beyond the calendar. */
export function dateInWords(ms: number, month: "long" | "short" = "long"): string | null {
  if (!Number.isFinite(ms) || Math.abs(ms) > FARTHEST_MS) return null;
  const date = new Date(Math.round(ms / 60_000) * 60_000);
  const part = (options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat("en-GB", { timeZone: "UTC", ...options }).format(date);
  const year = date.getUTCFullYear();
  const clock = `${String(date.getUTCHours()).padStart(2, "0")}:${String(date.getUTCMinutes()).padStart(2, "0")}`;
  return `${part({ weekday: "short" })} ${date.getUTCDate()} ${part({ month })} ${year < 0 ? `−${-year}` : year}, ${clock}`;
}

/** The date that so many turns stand for, else the days they stand for. */
export function standsFor(instrument: Instrument, turns: number, month: "long" | "short" = "long"): string {
  const days = turns * instrument.input.days;
  const epoch = epochMs(instrument);
  const date = epoch === null ? null : dateInWords(epoch + days * DAY_MS, month);
  return date ?? `${grouped(days, 2)} ${Math.abs(days) === 1 ? "day" : "days"}`;
}

/** Grouped by thousands, with a real minus sign. */
export const grouped = (value: number, decimals: number): string => {
  const text = new Intl.NumberFormat("en-GB", { minimumFractionDigits: decimals, maximumFractionDigits: decimals }).format(value);
  return text.replace(/^-/, Number(value.toFixed(decimals)) === 0 ? "" : "−");
};
