// All pins in slots of a movement, each with every arbor that feels it.
import type { Movement } from "../movement.ts";
import { pinSlotOf, type PinSlot } from "./pin-slot.ts";
import { sharesOf } from "./shares.ts";

export { deviationRad } from "./pin-slot.ts";

export interface Uneven extends PinSlot {
  /** Arbors that feel it, and radians each turns for a radian of its lead. */
  readonly moved: Uint32Array;
  readonly share: Float64Array;
}

/** All pins in slots that turn, in an order in which each can be worked out. */
export function unevenOf(movement: Movement): readonly Uneven[] {
  const pairs = (movement.instrument.couplings ?? []).map((c) => (c.kind === "pin and slot" ? pinSlotOf(movement, c.driver, c.driven) : null));
  return inOrder(pairs.flatMap((pair, source): Uneven[] => {
    if (pair === null) return [];
    const shares = sharesOf(movement, pairs, source);
    const moved = shares.flatMap((w, i) => (w === 0 ? [] : [i]));
    return [{ ...pair, moved: Uint32Array.from(moved), share: Float64Array.from(moved, (i) => shares[i]) }];
  }));
}

/** Each after those that move its pin or its frame; a ring of them is left in the order of the file. */
function inOrder(all: readonly Uneven[]): readonly Uneven[] {
  const done: Uneven[] = [];
  let left = [...all];
  while (left.length > 0) {
    const moves = (v: Uneven, u: Uneven) => v !== u && (v.moved.includes(u.driver) || (u.frame >= 0 && v.moved.includes(u.frame)));
    const next = left.find((u) => !left.some((v) => moves(v, u))) ?? left[0];
    done.push(next);
    left = left.filter((u) => u !== next);
  }
  return done;
}
