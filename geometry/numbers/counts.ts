// Which counts may be asked for at all: ranges, what the dividing head gives, what the cutters owned serve.
import type { Cutter, Division } from "../instrument.ts";
import { canDivide, plainSettings, type Head } from "./dividing.ts";

export interface CountLimits {
  readonly wheels: readonly [number, number];
  readonly pinions: readonly [number, number];
  /** No count above it. */
  readonly largest?: number;
  /** Only what this head gives. */
  readonly head?: Head;
  /** Only what one of these cutters serves. */
  readonly cutters?: readonly Cutter[];
}

/** Every count within the limits, ascending, each once. */
export function allowedCounts({ wheels, pinions, largest = Infinity, head, cutters }: CountLimits): number[] {
  const all = new Set([...rangeOf(pinions), ...rangeOf(wheels)].filter((n) => n <= largest));
  const gives = head === undefined ? () => true : (n: number) => canDivide(n, head);
  return [...all].filter((n) => (cutters === undefined || isServed(n, cutters)) && gives(n)).sort((a, b) => a - b);
}

/** A dividing head as the instrument's file gives it; a plain list of circles is one plate. */
export function headOf(division: Division): Head {
  const { circles } = division;
  const nested = circles.every((c) => Array.isArray(c));
  return {
    ratio: division.ratio, gears: division.gears ?? [],
    plates: nested ? (circles as readonly (readonly number[])[]) : [circles as readonly number[]],
  };
}

/** Whether a cutter owned serves a count; one without limits serves all. */
export const isServed = (count: number, cutters: readonly Cutter[]): boolean =>
  cutters.some((c) => count >= (c.from ?? 1) && count <= (c.to ?? Infinity));

/** A count that the head gives, but not plainly. */
export const isAwkward = (count: number, head: Head): boolean => plainSettings(count, head).length === 0;

function rangeOf([from, to]: readonly [number, number]): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);
}
