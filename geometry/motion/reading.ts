// What a display shows: how far its arbor has turned against its dial since the input stood at 0.
import { TAU } from "../numeric/angle.ts";
import type { Movement } from "../movement.ts";
import { motionOf, type Motion } from "./motion.ts";
import { POSE_STRIDE, poseInto } from "./pose.ts";

export interface Reading {
  /** Of a turn, clockwise seen from the dial side, 0 … 1. */
  readonly fraction: number;
  /** In the display's own divisions, counted the way its dial is numbered (its `sense`; clockwise where none is given). */
  readonly value: number;
}

/** A frame loop gives the motion it has already worked out. */
export function readingAt(movement: Movement, display: number, turns: number, motion: Motion = motionOf(movement)): Reading {
  const pose = new Float64Array(POSE_STRIDE * movement.arbors.length);
  poseInto(pose, motion, turns);
  return readingIn(movement, display, pose);
}

/** Likewise from a pose already worked out. */
export function readingIn(movement: Movement, display: number, pose: ArrayLike<number>): Reading {
  const { arbor, against, divisions } = movement.displays[display];
  const angle = pose[POSE_STRIDE * arbor + 2] - (against === null ? 0 : pose[POSE_STRIDE * against + 2]);
  const anticlockwise = fractionOf(angle / TAU), clockwise = fractionOf(-angle / TAU);
  const numbered = movement.instrument.displays?.[display]?.sense === "anticlockwise" ? anticlockwise : clockwise;
  return { fraction: clockwise, value: numbered * divisions };
}

/** In [0, 1), also where a tiny negative number would round up to 1. */
function fractionOf(turns: number): number {
  const f = turns - Math.floor(turns);
  return f < 1 ? f : 0;
}
