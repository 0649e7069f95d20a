// The calendar in universal time, in days from noon on 1 January 2000. Gregorian throughout, also before it was brought in.
// Source: days from the civil calendar as in any text on chronology; checked against the language's own dates.

/** Days from the epoch at 0 h of a date; months from 1. */
export function dayOfDate(year: number, month: number, day: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400), yearOfEra = shifted - 400 * era;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const days = 365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return 146097 * era + days - 730425 - 0.5; // 730,425 days from 1 March of year 0 to 1 January 2000
}

/** The calendar year that a time falls in. */
export function yearOf(day: number): number {
  let year = 2000 + Math.floor((day + 0.5) / 365.2425);
  while (dayOfDate(year, 1, 1) > day) year--;
  while (dayOfDate(year + 1, 1, 1) <= day) year++;
  return year;
}

/** Part of its own calendar year that has gone by: 0 at the start of 1 January. */
export function calendarTurns(day: number): number {
  const year = yearOf(day), start = dayOfDate(year, 1, 1);
  return (day - start) / (dayOfDate(year + 1, 1, 1) - start);
}

/** The start of every month of a year, days from its 1 January, and its length last: thirteen numbers. */
export function monthStarts(year: number): number[] {
  const start = dayOfDate(year, 1, 1);
  return Array.from({ length: 13 }, (_, m) => (m === 12 ? dayOfDate(year + 1, 1, 1) : dayOfDate(year, m + 1, 1)) - start);
}

const EPOCH_MS = 946_728_000_000, DAY_MS = 86_400_000;
export const dayOfMs = (ms: number): number => (ms - EPOCH_MS) / DAY_MS;
export const msOfDay = (day: number): number => EPOCH_MS + day * DAY_MS;
