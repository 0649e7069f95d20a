// The box in which a thing may be felt by another: all that it sweeps, grown by its own share of what a pair can lose at
// the worst and by half of what is wanted. Two things whose boxes do not meet are free of one another. Lengths in mm.
import { ownReach } from "../bodies/axis.ts";
import { boxOf } from "../bodies/plate.ts";
import { radiusOf, type Thing } from "../bodies/thing.ts";
import type { Movement } from "../movement.ts";
import { BROAD_SLACK_MM } from "../numeric/tolerance.ts";

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly minZ: number;
  readonly maxZ: number;
}

export function grownBox(movement: Movement, thing: Thing): Box {
  const { planGap, faceGap } = movement.practice;
  const free = freedomOf(movement, thing.arbor);
  const round = thing.runoutMm + free.side + Math.max(0, planGap) / 2 + BROAD_SLACK_MM;
  const tall = thing.wobbleMm + Math.max(0, faceGap) / 2 + BROAD_SLACK_MM;
  let z0 = Infinity, z1 = -Infinity;
  for (const c of thing.cylinders) {
    z0 = Math.min(z0, c.z0, c.z1);
    z1 = Math.max(z1, c.z0, c.z1);
  }
  const reach = radiusOf(thing) + ownReach(thing.axis).greatest;
  const plan = thing.plate !== null ? boxOf(thing.plate.outline)
    : { minX: thing.axis.x - reach, minY: thing.axis.y - reach, maxX: thing.axis.x + reach, maxY: thing.axis.y + reach };
  return {
    minX: plan.minX - round, minY: plan.minY - round, maxX: plan.maxX + round, maxY: plan.maxY + round,
    minZ: z0 - free.down - tall, maxZ: z1 + free.up + tall,
  };
}

/** Whether two boxes meet. */
export const boxesMeet = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY && a.minZ <= b.maxZ && b.minZ <= a.maxZ;

/** A freedom drawn below nothing is taken as nothing, since it may cancel out of a pair. */
function freedomOf(movement: Movement, arbor: number): { up: number; down: number; side: number } {
  const free = { up: 0, down: 0, side: 0 };
  if (arbor < 0) return free;
  const { chain } = movement.arbors[arbor];
  for (let i = -1; i < chain.length; i++) {
    const { ownShake, ownSideshake } = movement.arbors[i < 0 ? arbor : chain[i]];
    free.up += Math.max(0, ownShake.up);
    free.down += Math.max(0, ownShake.down);
    free.side += Math.max(0, ownSideshake) / 2;
  }
  return free;
}
