// A command is one thing a maker can do: a pure function of the instrument and its arguments that gives a new
// instrument and says what was done, or refuses in words. It never changes what it was given.
import type { Arbor, Instrument, Part } from "../../geometry/index.ts";

export interface Done {
  readonly instrument: Instrument;
  /** What was done, in the few words that stand after "Undo:". */
  readonly says: string;
}
export interface Refused {
  /** One plain sentence. */
  readonly refused: string;
}
export type Outcome = Done | Refused;

export interface Command<A> {
  readonly name: string;
  run(instrument: Instrument, args: A): Outcome;
}

export const isRefused = (outcome: Outcome): outcome is Refused => "refused" in outcome;

/** The instrument with one arbor replaced; everything else is shared. */
export const withArbor = (instrument: Instrument, id: string, change: (arbor: Arbor) => Arbor): Instrument => ({
  ...instrument, arbors: instrument.arbors.map((a) => (a.id === id ? change(a) : a)),
});

/** The instrument with one part replaced; everything else is shared. */
export const withPart = (instrument: Instrument, id: string, change: (part: Part) => Part): Instrument => ({
  ...instrument,
  arbors: instrument.arbors.map((a) =>
    a.parts.some((p) => p.id === id) ? { ...a, parts: a.parts.map((p) => (p.id === id ? change(p) : p)) } : a),
});

/** Lengths are kept to a ten-thousandth of a millimetre: finer than any scale, and short to read in a file. */
export const keptMm = (mm: number): number => Math.round(mm * 1e4) / 1e4 || 0;

/** No length of an instrument lies outside ±10,000 mm. */
export const isLengthMm = (mm: number): boolean => Number.isFinite(mm) && Math.abs(mm) <= 10_000;
