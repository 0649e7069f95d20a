// Pins in slots. The slot's arbor turns by the change of the pin's direction from its axis; over a whole turn that is
// the mean rate, and what it leads or lags by is the deviation, here followed to every arbor that it reaches.
import type { Part, Pin } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { toRad, wrapSignedRad } from "../numeric/angle.ts";
import { isZero } from "../numeric/ratio.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { sharesOf } from "./shares.ts";

export interface Uneven {
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
  /** Arbors that feel it, and radians each turns for a radian of deviation. */
  readonly moved: Uint32Array;
  readonly share: Float64Array;
}

/** rad by which the slot's arbor is ahead of its mean, the pin's arbor having turned turnedRad in their frame. */
export const deviationRad = (u: Uneven, turnedRad: number): number => leadRad(u, turnedRad) - u.startRad;

/** All pins in slots that turn, in an order in which each can be worked out. */
export function unevenOf(movement: Movement): readonly Uneven[] {
  const bare = (movement.instrument.couplings ?? []).map((c) =>
    c.kind === "pin and slot" ? geometryOf(movement, c.driver, c.driven) : null);
  return inOrder(bare.flatMap((b, source): Uneven[] => {
    if (b === null) return [];
    const shares = sharesOf(movement, bare, source);
    const moved = shares.flatMap((w, i) => (w === 0 ? [] : [i]));
    return [{ ...b, moved: Uint32Array.from(moved), share: Float64Array.from(moved, (i) => shares[i]) }];
  }));
}

/** A pin and its slot before it is known what they move. */
export type Bare = Omit<Uneven, "moved" | "share">;

/** rad, within a quarter turn either way: the pin's direction from the slot's axis, before its mean. */
function leadRad(u: Bare, turnedRad: number): number {
  const pinRad = u.angleRad + turnedRad;
  const x = u.dx + u.radiusMm * Math.cos(pinRad), y = u.dy + u.radiusMm * Math.sin(pinRad);
  return wrapSignedRad(Math.atan2(y, x) - (u.round ? pinRad : Math.atan2(u.dy, u.dx)));
}

function geometryOf(movement: Movement, pinId: string, slotId: string): Bare | null {
  const pinPlace = movement.partIndex.get(pinId), slotPlace = movement.partIndex.get(slotId);
  if (pinPlace === undefined || slotPlace === undefined) return null;
  const pin = partAt(movement, pinPlace);
  const p = movement.arbors[pinPlace.arbor], s = movement.arbors[slotPlace.arbor];
  const frame = stillFrame(movement, pinPlace.arbor, slotPlace.arbor);
  if (pin.kind !== "pin" || p.rate === null || s.rate === null || frame === null) return null;
  const bare: Bare = {
    pin: pinPlace.arbor, slot: slotPlace.arbor, frame, dx: p.x - s.x, dy: p.y - s.y, radiusMm: pin.radius,
    angleRad: toRad(pin.angle), round: encloses(pin, p.x - s.x, p.y - s.y), startRad: 0,
  };
  return { ...bare, startRad: leadRad(bare, 0) };
}

const encloses = (pin: Pin, dx: number, dy: number): boolean => pin.radius > Math.hypot(dx, dy);

const partAt = (movement: Movement, place: { readonly arbor: number; readonly part: number }): Part =>
  movement.arbors[place.arbor].arbor.parts[place.part];

/** The arbor on which both axes stand still, −1 the frame; null where their distance changes. */
function stillFrame(movement: Movement, a: number, b: number): number | null {
  const candidates = [movement.arbors[a].carrier ?? -1, movement.arbors[b].carrier ?? -1];
  const shared = candidates.find((c) => standsStill(movement, a, c) && standsStill(movement, b, c));
  return shared ?? (carriedRound(movement, a) || carriedRound(movement, b) ? null : -1);
}

/** A carrier that does not turn carries nothing round. */
function carriedRound(movement: Movement, i: number): boolean {
  const c = movement.arbors[i].carrier;
  if (c === null) return false;
  const { rate } = movement.arbors[c];
  return (rate !== null && !isZero(rate)) || carriedRound(movement, c);
}

/** Carried by it, or on its very axis. */
function standsStill(movement: Movement, i: number, on: number): boolean {
  const own = movement.arbors[i].carrier ?? -1;
  if (own === on) return true;
  if (on < 0) return false;
  const c = movement.arbors[on], a = movement.arbors[i];
  return (c.carrier ?? -1) === own && Math.hypot(c.x - a.x, c.y - a.y) <= SAME_AXIS_MM;
}

/** Each after those that move its pin or its frame; a ring of them is left in the order of the file. */
function inOrder(all: readonly Uneven[]): readonly Uneven[] {
  const done: Uneven[] = [];
  let left = [...all];
  while (left.length > 0) {
    const next = left.find((u) => left.every((v) => v === u || !(v.moved.includes(u.pin) || (u.frame >= 0 && v.moved.includes(u.frame))))) ?? left[0];
    done.push(next);
    left = left.filter((u) => u !== next);
  }
  return done;
}
