// How a movement moves, worked out once so that a frame loop needs no ratio, no map and no allocation. Plain data.
import { ZERO, toNumber } from "../numeric/ratio.ts";
import type { Movement } from "../movement.ts";
import { LIMBS, limbsInto } from "./phase.ts";
import { unevenOf, type Uneven } from "./uneven.ts";

export interface Motion {
  /** +1: the input turns anticlockwise seen from the dial side; −1: clockwise. */
  readonly sign: 1 | -1;
  /** Mean turns for one turn of the input, one an arbor; 0 for what stands. */
  readonly rate: Float64Array;
  /** The same modulo 1, LIMBS limbs an arbor (see phase.ts). */
  readonly limbs: Float64Array;
  /** x, y in mm with the input at 0, stride 2. */
  readonly home: Float64Array;
  /** The arbor whose turning carries the axis round, −1: none. */
  readonly carrier: Int32Array;
  /** 1: nothing drives it, so it stands on what carries it. */
  readonly idle: Uint8Array;
  /** Arbors, each after its carrier. */
  readonly order: Uint32Array;
  /** Pins in slots, each after those that its pin's motion depends on. */
  readonly uneven: readonly Uneven[];
}

/** The motion of a movement. */
export function motionOf(movement: Movement): Motion {
  const n = movement.arbors.length;
  const rate = new Float64Array(n), limbs = new Float64Array(LIMBS * n), home = new Float64Array(2 * n);
  const carrier = new Int32Array(n), idle = new Uint8Array(n);
  movement.arbors.forEach((a, i) => {
    rate[i] = toNumber(a.rate ?? ZERO);
    limbsInto(limbs, LIMBS * i, a.rate ?? ZERO);
    home[2 * i] = a.x;
    home[2 * i + 1] = a.y;
    carrier[i] = a.carrier ?? -1;
    idle[i] = a.rate === null ? 1 : 0;
  });
  const sign = movement.instrument.input.sense === "clockwise" ? -1 : 1;
  return { sign, rate, limbs, home, carrier, idle, order: carriersFirst(carrier), uneven: unevenOf(movement) };
}

function carriersFirst(carrier: Int32Array): Uint32Array {
  const depth = Array.from(carrier, (_, i) => {
    let d = 0;
    for (let c = carrier[i]; c >= 0 && d <= carrier.length; c = carrier[c]) d++;
    return d;
  });
  return Uint32Array.from(depth.keys()).sort((a, b) => depth[a] - depth[b] || a - b);
}
