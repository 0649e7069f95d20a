// Keeps slow machines in step: tells when pictures follow one another slowly, so that they can be drawn coarser until
// nothing moves any more. Milliseconds.

/** With no frame for so long, nothing moves any more. */
export const REST_MS = 300;
/** A frame so soon after the last one is part of a motion; where frames themselves are slow, so much later still. */
const MOTION_MS = 300, SLOW_MOTION_MS = 2000;
/** Frames slower than this on average are slow. */
const SLOW_MS = 45;

/** Told of each frame; answers whether it is part of a slow motion. `slow`: known beforehand, as where there is no graphics card. */
export function createPace(slow: boolean): (nowMs: number) => boolean {
  let last = -Infinity, average = slow ? Infinity : 0;
  return (nowMs) => {
    const since = nowMs - last;
    last = nowMs;
    const moving = since < (slow ? SLOW_MOTION_MS : MOTION_MS);
    if (moving && !slow) average += 0.2 * (since - average);
    return moving && average > SLOW_MS;
  };
}
