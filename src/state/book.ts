// The day book: what was done and when, only ever added to. It is kept with the work, and in the file where the maker
// wishes it: an instrument that has a `dayBook`, if an empty one, is written with the whole of it.
import type { DayBookEntry, Instrument } from "../../geometry/index.ts";

export type Book = readonly DayBookEntry[];

/** Entries kept; beyond them the oldest go, many at once. */
export const ENTRIES_KEPT = 10_000;
const ENTRIES_OVER = 1000;

export function entered(book: Book, says: string, nowMs: number): Book {
  const next = [...book, { at: new Date(nowMs).toISOString(), says }];
  return next.length > ENTRIES_KEPT + ENTRIES_OVER ? next.slice(-ENTRIES_KEPT) : next;
}

/** What goes into its file. */
export const withBook = (instrument: Instrument, book: Book): Instrument =>
  instrument.dayBook === undefined ? instrument : { ...instrument, dayBook: book };

/** Wished in the file, or not. */
export function wishedInFile(instrument: Instrument, wished: boolean): Instrument {
  const { dayBook, ...rest } = instrument;
  return wished ? { ...rest, dayBook: dayBook ?? [] } : rest;
}
