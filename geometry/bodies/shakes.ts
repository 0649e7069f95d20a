// How far two things can shake towards one another. What both share by riding on the same arbor moves them alike and
// cancels. Lengths in mm.
import type { Movement } from "../movement.ts";

export interface Shake {
  readonly up: number;
  readonly down: number;
  /** Half the sideshakes on diameter: how far the axis can stand aside. */
  readonly side: number;
}

export const NO_SHAKE: Shake = { up: 0, down: 0, side: 0 };

/** All the freedom of an arbor in the frame: its own, and that of whatever it rides on. −1 is the frame. */
export function shakeOf(movement: Movement, arbor: number): Shake {
  return arbor < 0 ? NO_SHAKE : summed(movement, arbor, movement.arbors[arbor].chain);
}

/** The part of their freedom that two arbors have in common. */
export function sharedShake(movement: Movement, a: number, b: number): Shake {
  if (a < 0 || b < 0) return NO_SHAKE;
  const ca = movement.arbors[a].chain, cb = movement.arbors[b].chain;
  if (ca.length === 0 && cb.length === 0 && a !== b) return NO_SHAKE;
  if (a === b) return summed(movement, a, ca);
  if (cb.includes(a)) return summed(movement, a, ca);
  if (ca.includes(b)) return summed(movement, b, cb);
  for (let i = 0; i < ca.length; i++)
    if (cb.includes(ca[i])) return summed(movement, ca[i], movement.arbors[ca[i]].chain);
  return NO_SHAKE;
}

function summed(movement: Movement, arbor: number, chain: readonly number[]): Shake {
  const { ownShake, ownSideshake } = movement.arbors[arbor];
  let { up, down } = ownShake, side = ownSideshake / 2;
  for (const on of chain) {
    const carrier = movement.arbors[on];
    up += carrier.ownShake.up;
    down += carrier.ownShake.down;
    side += carrier.ownSideshake / 2;
  }
  return { up, down, side };
}
