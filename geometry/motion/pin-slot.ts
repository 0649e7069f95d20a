// One pin in its slot: the slot's arbor stands by the direction of the pin from its axis, whichever of the two drives.
// Over a whole turn the driven turns at its mean rate; what it is ahead of its mean is its lead.
import type { Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { toRad, wrapSignedRad } from "../numeric/angle.ts";
import { stillFrame } from "./axes.ts";

export interface PinSlot {
  /** Arbors of the driver and of the driven, and the arbor on which both axes stand still (−1: the frame). */
  readonly driver: number;
  readonly driven: number;
  readonly frame: number;
  readonly slotDrives: boolean;
  /** mm: the pin's arbor from the slot's axis, in that frame, with the input at 0. */
  readonly dx: number;
  readonly dy: number;
  /** mm: the pin from its own arbor. */
  readonly radiusMm: number;
  /** rad, with the input at 0: the pin's direction from the driver's axis. */
  readonly angleRad: number;
  /** The pin's circle goes round the slot's axis: mean rate 1; otherwise it swings the slot to and fro. */
  readonly round: boolean;
  /** rad: lead at the start, so that the motion begins as drawn. */
  readonly startRad: number;
}

/** rad by which the driven is ahead of its mean, the driver having turned turnedRad in their frame. */
export const deviationRad = (p: PinSlot, turnedRad: number): number => leadRad(p, turnedRad) - p.startRad;

/** Null where either arbor stands, where their axes change their distance, and where a slot cannot take its pin round. */
export function pinSlotOf(movement: Movement, driverId: string, drivenId: string): PinSlot | null {
  const driver = movement.partIndex.get(driverId), driven = movement.partIndex.get(drivenId);
  if (driver === undefined || driven === undefined) return null;
  const slotDrives = partAt(movement, driver).kind === "slot";
  const pinPlace = slotDrives ? driven : driver, slotPlace = slotDrives ? driver : driven;
  const pin = partAt(movement, pinPlace), p = movement.arbors[pinPlace.arbor], s = movement.arbors[slotPlace.arbor];
  const frame = stillFrame(movement, pinPlace.arbor, slotPlace.arbor);
  if (pin.kind !== "pin" || p.rate === null || s.rate === null || frame === null) return null;
  const dx = p.x - s.x, dy = p.y - s.y, pinRad = toRad(pin.angle);
  const round = pin.radius > Math.hypot(dx, dy);
  if (slotDrives && !round) return null;
  const bare: PinSlot = {
    driver: driver.arbor, driven: driven.arbor, frame, slotDrives, dx, dy, radiusMm: pin.radius, round, startRad: 0,
    angleRad: slotDrives ? Math.atan2(dy + pin.radius * Math.sin(pinRad), dx + pin.radius * Math.cos(pinRad)) : pinRad,
  };
  return { ...bare, startRad: leadRad(bare, 0) };
}

/** rad, within a quarter turn either way, of the driven before its mean. */
function leadRad(p: PinSlot, turnedRad: number): number {
  const rad = p.angleRad + turnedRad;
  // The pin lies in the slot's direction: e sin(β − φ) + ρ sin(θ − φ) = 0.
  if (p.slotDrives) return Math.asin((p.dx * Math.sin(rad) - p.dy * Math.cos(rad)) / p.radiusMm);
  const x = p.dx + p.radiusMm * Math.cos(rad), y = p.dy + p.radiusMm * Math.sin(rad);
  return wrapSignedRad(Math.atan2(y, x) - (p.round ? rad : Math.atan2(p.dy, p.dx)));
}

const partAt = (movement: Movement, place: { readonly arbor: number; readonly part: number }): Part =>
  movement.arbors[place.arbor].arbor.parts[place.part];
