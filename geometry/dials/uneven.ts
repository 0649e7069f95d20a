// Where the marks of an uneven ring stand, by the law they follow. Parts of a turn from the ring's 0, the way it is
// numbered. Exact where the law is; the Sun's true places are those of astronomy-engine for the year the ring is made for.
import type { DialRing } from "../instrument.ts";
import { dayOfDate, monthStarts } from "../sky/calendar.ts";
import { equationOfTimeMin, quantityOf, turnsAt } from "../sky/quantities.ts";

export interface UnevenMark {
  /** Part of a turn. */
  readonly at: number;
  /** 2: the start of a month or a numbered mark; 1: every fifth; 0: the rest. */
  readonly weight: 0 | 1 | 2;
  readonly label?: string;
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
/** A common year, as ever: the leap day is shown by turning back. */
const COMMON_YEAR = 2001;

export type MarkLaw = NonNullable<DialRing["follows"]>;

/** The marks that a law gives. */
export function marksBy(law: MarkLaw): UnevenMark[] {
  switch (law) {
    case "calendar": return calendarMarks();
    case "calendar by the Sun": return sunCalendarMarks();
    case "equation of time": return equationMarks();
    case "height of the tide": return tideMarks();
  }
}

/** Days of a common year, 0 at the start of 1 January. */
function calendarMarks(): UnevenMark[] {
  return daysOfYear().map(({ day, ...mark }) => ({ at: day / 365, ...mark }));
}

/** Every date where the true Sun then stands, 0 at the spring equinox: for a pointer that goes as the Sun does. */
function sunCalendarMarks(year = COMMON_YEAR): UnevenMark[] {
  const sun = quantityOf("longitude of the Sun"), start = dayOfDate(year, 1, 1);
  return sun === null ? [] : daysOfYear().map(({ day, ...mark }) => ({ at: turnsAt(sun, start + day), ...mark }));
}

/** Whole minutes of the equation of time, each at the part of the year when it falls: for a pointer that goes round once a year. */
function equationMarks(year = COMMON_YEAR): UnevenMark[] {
  const start = dayOfDate(year, 1, 1);
  const at = (day: number) => equationOfTimeMin(start + day);
  const marks: UnevenMark[] = [];
  for (let day = 0, before = at(0); day < 365; day++) {
    const after = at(day + 1);
    for (let m = Math.ceil(Math.min(before, after)); m <= Math.floor(Math.max(before, after)); m++) {
      if (m === before) continue; // it stood at the end of the day before
      const label = m > 0 ? `+${m}` : m < 0 ? `−${-m}` : "0";
      marks.push({ at: (day + when(at, day, m)) / 365, weight: m % 5 === 0 ? 2 : 0, ...(m % 5 === 0 ? { label } : {}) });
    }
    before = after;
  }
  return marks;
}

/**
 * Tenths of the range of a tide that rises and falls as the cosine, 0 at high water: for a pointer that goes round once a tide.
 * Numbered at each tenth, with a half between.
 */
function tideMarks(): UnevenMark[] {
  const falling = Array.from({ length: 21 }, (_, k): UnevenMark => {
    const twentieths = 20 - k, at = Math.acos(twentieths / 10 - 1) / (2 * Math.PI);
    return twentieths % 2 === 0 ? { at, weight: 2, label: twentieths === 20 ? "high" : twentieths === 0 ? "low" : String(twentieths / 2) } : { at, weight: 0 };
  });
  const rising = falling.slice(1, -1).map((m): UnevenMark => ({ ...m, at: 1 - m.at })).reverse();
  return [...falling, ...rising];
}

/** Part of the day at which a quantity that passes `value` within it does so. */
function when(at: (day: number) => number, day: number, value: number): number {
  const rising = at(day + 1) > at(day);
  let low = 0, high = 1;
  for (let k = 0; k < 20; k++) {
    const middle = (low + high) / 2;
    if (at(day + middle) < value === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function daysOfYear(): { readonly day: number; readonly weight: 0 | 1 | 2; readonly label?: string }[] {
  const starts = monthStarts(COMMON_YEAR);
  return Array.from({ length: 365 }, (_, day) => {
    const month = starts.indexOf(day);
    if (month >= 0) return { day, weight: 2 as const, label: MONTHS[month] };
    const date = day - Math.max(...starts.filter((s) => s <= day));
    return { day, weight: date % 5 === 0 ? 1 as const : 0 as const };
  });
}
