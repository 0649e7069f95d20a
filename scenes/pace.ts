// Keeps slow machines in step: while pictures follow one another slowly they are drawn coarser, and sharp again as soon
// as nothing moves. Milliseconds.

export interface Pace {
  /** Before a frame is drawn: whether it is to be coarse. */
  frame(nowMs: number): boolean;
  /** Nothing has moved for `REST_MS`: the next frame is sharp. */
  rest(): void;
}

/** With no frame for so long, nothing moves any more. */
export const REST_MS = 300;
/** A frame so soon after the last one is part of a motion; where frames themselves are slow, so much later still. */
const MOTION_MS = 300, SLOW_MOTION_MS = 2000;
/** Frames slower than this on average are slow. */
const SLOW_MS = 45;

/** `slow`: known beforehand to be so, as where there is no graphics card. */
export function createPace(slow: boolean): Pace {
  let last = -Infinity, average = slow ? Infinity : 0, rested = false;
  return {
    frame(nowMs) {
      const since = nowMs - last;
      last = nowMs;
      if (rested) { rested = false; return false; }
      const moving = since < (slow ? SLOW_MOTION_MS : MOTION_MS);
      if (moving && !slow) average += 0.2 * (since - average);
      return moving && average > SLOW_MS;
    },
    rest() { rested = true; },
  };
}
