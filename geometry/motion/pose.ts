// Where every arbor stands and how far round it has turned, at any turn of the input.
import { TAU, wrapRad } from "../numeric/angle.ts";
import type { Movement } from "../movement.ts";
import { motionOf, type Motion } from "./motion.ts";
import { LIMBS, phaseOf } from "./phase.ts";
import { deviationRad } from "./pin-slot.ts";

/** Numbers an arbor in a pose: x (mm), y (mm), angle (rad, anticlockwise from the dial side, from how it is drawn at 0, in [0, 2π)). */
export const POSE_STRIDE = 3;

/** The pose at so many turns of the input, in a new array. */
export function poseAt(movement: Movement, turns: number): Float64Array {
  const out = new Float64Array(POSE_STRIDE * movement.arbors.length);
  poseInto(out, motionOf(movement), turns);
  return out;
}

/** Writes the pose into out (POSE_STRIDE numbers an arbor); allocates nothing. Turns that are no number count as 0. */
export function poseInto(out: Float64Array | Float32Array, motion: Motion, turns: number): void {
  const { sign, rate, limbs, uneven, order } = motion;
  const t = Number.isFinite(turns) ? turns : 0;
  for (let i = 0; i < rate.length; i++) out[POSE_STRIDE * i + 2] = sign * TAU * phaseOf(limbs, LIMBS * i, rate[i], t);
  for (let s = 0; s < uneven.length; s++) {
    const u = uneven[s];
    const base = u.frame < 0 ? 0 : out[POSE_STRIDE * u.frame + 2];
    const rad = deviationRad(u, out[POSE_STRIDE * u.driver + 2] - base);
    for (let k = 0; k < u.moved.length; k++) out[POSE_STRIDE * u.moved[k] + 2] += u.share[k] * rad;
  }
  for (let k = 0; k < order.length; k++) place(out, motion, order[k]);
}

function place(out: Float64Array | Float32Array, motion: Motion, i: number): void {
  const { home } = motion, c = motion.carrier[i], o = POSE_STRIDE * i;
  if (c < 0) {
    out[o] = home[2 * i];
    out[o + 1] = home[2 * i + 1];
  } else {
    const a = out[POSE_STRIDE * c + 2], cos = Math.cos(a), sin = Math.sin(a);
    const dx = home[2 * i] - home[2 * c], dy = home[2 * i + 1] - home[2 * c + 1];
    out[o] = out[POSE_STRIDE * c] + cos * dx - sin * dy;
    out[o + 1] = out[POSE_STRIDE * c + 1] + sin * dx + cos * dy;
    if (motion.idle[i] === 1) out[o + 2] = a;
  }
  out[o + 2] = wrapRad(out[o + 2]);
}
