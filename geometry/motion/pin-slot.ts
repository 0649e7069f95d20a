// One pin in its slot: the slot's arbor turns by the change of the pin's direction from its axis. Over a whole turn that
// is the mean rate; what it is ahead of its mean is its lead.
import type { Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { toRad, wrapSignedRad } from "../numeric/angle.ts";
import { stillFrame } from "./axes.ts";

export interface PinSlot {
  /** Arbors of the pin and of the slot, and the arbor on which both axes stand still (−1: the frame). */
  readonly pin: number;
  readonly slot: number;
  readonly frame: number;
  /** mm: the pin's arbor from the slot's axis, in that frame, with the input at 0. */
  readonly dx: number;
  readonly dy: number;
  /** mm and rad: the pin from its own arbor. */
  readonly radiusMm: number;
  readonly angleRad: number;
  /** The pin's circle goes round the slot's axis: mean rate 1; otherwise it swings the slot to and fro. */
  readonly round: boolean;
  /** rad: lead at the start, so that the motion begins as drawn. */
  readonly startRad: number;
}

/** rad by which the slot's arbor is ahead of its mean, the pin's arbor having turned turnedRad in their frame. */
export const deviationRad = (p: PinSlot, turnedRad: number): number => leadRad(p, turnedRad) - p.startRad;

/** Null where either arbor stands, or their axes change their distance. */
export function pinSlotOf(movement: Movement, pinId: string, slotId: string): PinSlot | null {
  const pinPlace = movement.partIndex.get(pinId), slotPlace = movement.partIndex.get(slotId);
  if (pinPlace === undefined || slotPlace === undefined) return null;
  const pin = partAt(movement, pinPlace);
  const p = movement.arbors[pinPlace.arbor], s = movement.arbors[slotPlace.arbor];
  const frame = stillFrame(movement, pinPlace.arbor, slotPlace.arbor);
  if (pin.kind !== "pin" || p.rate === null || s.rate === null || frame === null) return null;
  const dx = p.x - s.x, dy = p.y - s.y;
  const bare: PinSlot = {
    pin: pinPlace.arbor, slot: slotPlace.arbor, frame, dx, dy, radiusMm: pin.radius, angleRad: toRad(pin.angle),
    round: pin.radius > Math.hypot(dx, dy), startRad: 0,
  };
  return { ...bare, startRad: leadRad(bare, 0) };
}

/** rad, within a quarter turn either way: the pin's direction from the slot's axis, before its mean. */
function leadRad(p: PinSlot, turnedRad: number): number {
  const pinRad = p.angleRad + turnedRad;
  const x = p.dx + p.radiusMm * Math.cos(pinRad), y = p.dy + p.radiusMm * Math.sin(pinRad);
  return wrapSignedRad(Math.atan2(y, x) - (p.round ? pinRad : Math.atan2(p.dy, p.dx)));
}

const partAt = (movement: Movement, place: { readonly arbor: number; readonly part: number }): Part =>
  movement.arbors[place.arbor].arbor.parts[place.part];
