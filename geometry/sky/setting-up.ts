// Setting up: where every pointer should stand at a date, where the crank leaves it, and the turn nearest by at which a
// pointer would stand right. Days are universal time from noon on 1 January 2000.
import type { Movement } from "../movement.ts";
import { motionOf } from "../motion/motion.ts";
import { quantityOf, turnsAt } from "./quantities.ts";
import { dialRate, nearestTurn, shownAt } from "./shown.ts";

export interface PointerSetting {
  readonly display: string;
  /** Where the crank leaves it: part of a turn from the dial's 0, and in divisions. */
  readonly part: number;
  readonly value: number;
  /** Where it should stand, likewise; null where the sky says nothing of it. */
  readonly truePart: number | null;
  readonly trueValue: number | null;
  /** Degrees, shown less true; null likewise. */
  readonly errorDeg: number | null;
}

export interface SettingUp {
  readonly day: number;
  /** Turns of the input since the epoch. */
  readonly turns: number;
  readonly pointers: readonly PointerSetting[];
}

/** Turns of the input at a day. */
export const turnsAtDay = (movement: Movement, epoch: number, day: number): number => (day - epoch) / movement.instrument.input.days;

/** Every pointer at a date. A dial whose 0 is the maker's own is taken to be right at the epoch. */
export function settingUp(movement: Movement, epoch: number, day: number): SettingUp {
  const motion = motionOf(movement);
  const turns = turnsAtDay(movement, epoch, day);
  const pointers = movement.displays.map((d, i): PointerSetting => {
    const shown = shownAt(movement, i, turns, motion);
    const truePart = trueAt(movement, i, epoch, day);
    return {
      display: d.id, part: shown.part, value: shown.value, truePart,
      trueValue: truePart === null ? null : truePart * d.divisions,
      errorDeg: truePart === null ? null : 360 * nearestTurn(shown.part - truePart),
    };
  });
  return { day, turns, pointers };
}

/** A check table: every pointer at every date. */
export const checkTable = (movement: Movement, epoch: number, days: readonly number[]): SettingUp[] =>
  days.map((day) => settingUp(movement, epoch, day));

/** The turns nearest to `turns` at which a display's pointer stands at a part of a turn; null where it does not turn. */
export function nearestSetting(movement: Movement, display: number, part: number, turns: number): number | null {
  const rate = dialRate(movement, display);
  if (rate === 0) return null;
  return turns + nearestTurn(part - shownAt(movement, display, turns).part) / rate;
}

function trueAt(movement: Movement, display: number, epoch: number, day: number): number | null {
  const quantity = quantityOf(movement.instrument.displays?.[display]?.shows);
  if (quantity === null) return null;
  if (!quantity.ownZero) return turnsAt(quantity, day);
  const part = shownAt(movement, display, 0).part + turnsAt(quantity, day) - turnsAt(quantity, epoch);
  return part - Math.floor(part);
}
