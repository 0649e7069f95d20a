// Typed figures read in the maker's units: sums with + − × / and brackets, lengths in mm or inches.
import type { Instrument } from "../../geometry/index.ts";
import { type Command, isRefused } from "../commands/command.ts";
import { typedFigure } from "../commands/typed.ts";
import { mmOf } from "../state/figures.ts";
import type { Units } from "../state/state.ts";
import { isRead, type Read } from "./Typed.tsx";

export type Reader<T> = (text: string) => Read<T>;

/** A length in mm; a bare figure is in the maker's units. */
export const lengthIn = (units: Units): Reader<number> => (text) => typedFigure(text, "length", mmOf(units));

/** Degrees. */
export const anAngle: Reader<number> = (text) => typedFigure(text, "angle");

export const aNumber: Reader<number> = (text) => typedFigure(text, "number");

/** Only what lies between the two, both of them too. */
export const between = (read: Reader<number>, least: number, most: number, says: string): Reader<number> => (text) => {
  const typed = read(text);
  return isRead(typed) && !(typed.value >= least && typed.value <= most) ? { fault: says } : typed;
};

/** Only what the command would do; else its own words. */
export const ifDone = <T, A>(read: Reader<T>, instrument: Instrument, command: Command<A>, argsFor: (value: T) => A): Reader<T> => (text) => {
  const typed = read(text);
  if (!isRead(typed)) return typed;
  const outcome = command.run(instrument, argsFor(typed.value));
  return isRefused(outcome) ? { refused: outcome.refused } : typed;
};
