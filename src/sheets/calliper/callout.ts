// Where words on a drawing stand beside the place they are about: a box that covers as little as can be, joined to its
// place by a leader. Pixels; y downward.

export interface Spot { readonly x: number; readonly y: number }
export interface Box extends Spot { readonly width: number; readonly height: number }
/** The upper left corner of the words, and the end of the leader on their edge. */
export interface CalloutPlace extends Spot { readonly from: Spot }

/** Round the clock from the upper right. */
const AROUND_DEG = [-45, -135, 45, 135, 0, 180, -90, 90, -20, -160, 20, 160];
const REACHES_PX = [50, 80, 120, 170, 230];
/** Air kept about what must not be covered. */
const AIR_PX = 4;
/** Pixels of leader that a square pixel covered is as bad as. */
const COVERED = 4;

export function placeCallout(at: Spot, words: { readonly width: number; readonly height: number }, keepClear: readonly Box[], room: { readonly width: number; readonly height: number }): CalloutPlace {
  let best: Spot = { x: 0, y: 0 }, least = Infinity;
  for (const reach of REACHES_PX) for (const deg of AROUND_DEG) {
    const rad = (deg * Math.PI) / 180;
    const x = within(at.x + reach * Math.cos(rad) - words.width / 2 + (Math.cos(rad) * words.width) / 2, room.width - words.width);
    const y = within(at.y + reach * Math.sin(rad) - words.height / 2 + (Math.sin(rad) * words.height) / 2, room.height - words.height);
    const own = { x: x - AIR_PX, y: y - AIR_PX, width: words.width + 2 * AIR_PX, height: words.height + 2 * AIR_PX };
    const cost = COVERED * keepClear.reduce((sum, box) => sum + shared(own, box), 0) + reach + (isIn(own, at) ? 1e6 : 0);
    if (cost < least) { best = { x, y }; least = cost; }
  }
  return { ...best, from: { x: within(at.x - best.x, words.width) + best.x, y: within(at.y - best.y, words.height) + best.y } };
}

const within = (value: number, most: number): number => Math.min(Math.max(0, value), Math.max(0, most));

const isIn = (box: Box, { x, y }: Spot): boolean => x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;

function shared(a: Box, b: Box): number {
  const w = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x), h = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return w > 0 && h > 0 ? w * h : 0;
}
