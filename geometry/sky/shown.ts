// Where a display's pointer stands on its dial: its drawn angle when the input stands at 0, and how far it has turned
// since. A dial's 0 is at the top unless its ring says otherwise (common practice). Degrees in, parts of a turn out.
import type { Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { motionOf, type Motion } from "../motion/motion.ts";
import { readingAt } from "../motion/reading.ts";
import { toNumber } from "../numeric/ratio.ts";

export type PointerPart = Extract<Part, { kind: "pointer" }>;

export interface Shown {
  /** Of a turn, counted the way the dial is numbered from its 0, 0 … 1. */
  readonly part: number;
  /** In divisions. */
  readonly value: number;
  /** Of a turn, clockwise from the top, 0 … 1: where the pointer stands to the eye. */
  readonly clockwise: number;
}

/** The pointer that a display is read by: the first on its arbor; null: its arbor has none. */
export function pointerOf(movement: Movement, display: number): PointerPart | null {
  const { parts } = movement.arbors[movement.displays[display].arbor].arbor;
  return parts.find((p): p is PointerPart => p.kind === "pointer") ?? null;
}

/** What a display shows at any turns of the input, its dial's 0 so many degrees anticlockwise from +x. */
export function shownAt(movement: Movement, display: number, turns: number, motion: Motion = motionOf(movement), zeroDeg = zeroOf(movement, display)): Shown {
  return shownFrom(movement, display, readingAt(movement, display, turns, motion).fraction, zeroDeg);
}

/** Likewise from the part of a turn by which it has turned clockwise since the input stood at 0. */
export function shownFrom(movement: Movement, display: number, turned: number, zeroDeg = zeroOf(movement, display)): Shown {
  const angleDeg = pointerOf(movement, display)?.angle ?? 90;
  const clockwise = partOf((90 - angleDeg) / 360 + turned);
  const fromZero = clockwise - (90 - zeroDeg) / 360;
  const part = partOf(wayOf(movement, display) * fromZero);
  return { part, value: part * movement.displays[display].divisions, clockwise };
}

/** Where a dial's 0 stands, degrees from +x: where a ring of the instrument says, else at the top. */
export function zeroOf({ instrument, displays }: Movement, display: number): number {
  const ring = (instrument.dials ?? []).flatMap((d) => d.rings).find((r) => r.display === displays[display].id);
  return ring?.zero ?? 90;
}

/** 1: numbered clockwise; −1: anticlockwise. */
export const wayOf = ({ instrument }: Movement, display: number): 1 | -1 =>
  (instrument.displays?.[display]?.sense === "anticlockwise" ? -1 : 1);

/** Turns of a display for one turn of the input, counted the way its dial is numbered; 0 where nothing drives it. */
export function dialRate(movement: Movement, display: number): number {
  const { rate } = movement.displays[display];
  if (rate === null) return 0;
  const clockwise = movement.instrument.input.sense === "clockwise" ? 1 : -1;
  return wayOf(movement, display) * clockwise * toNumber(rate);
}

/** In [0, 1), also where a tiny negative number would round up to 1. */
export function partOf(turns: number): number {
  const part = turns - Math.floor(turns);
  return part < 1 ? part : 0;
}

/** The nearest to 0 of the angles that are the same on a dial, in turns: from −½ to ½. */
export const nearestTurn = (turns: number): number => turns - Math.round(turns);
