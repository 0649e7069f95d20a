// Where letters stand round their arbors' heads: boxes on leaders that cover neither one another nor the heads. Pixels,
// y downwards. Greedy, in order; a letter keeps its old place while that is nearly as good, so that nothing flickers.

export interface Anchor {
  readonly x: number;
  readonly y: number;
  /** Of the box. */
  readonly width: number;
  readonly height: number;
}
/** Which of the tried places a letter took; kept from frame to frame. */
export type Slot = number;
export interface Placed {
  /** Middle of the box. */
  readonly x: number;
  readonly y: number;
  readonly slot: Slot;
}
export interface Field {
  readonly width: number;
  readonly height: number;
  /** Kept free at the top. */
  readonly top: number;
  /** Letters lead away from here: the middle of the movement. */
  readonly middle: { readonly x: number; readonly y: number };
}

const LENGTHS = [38, 58, 84, 120];
/** px: in smaller pictures leaders are shorter in proportion, down to six tenths. */
const FULL_WIDTH = 700;
const TURNS = [0, 0.4, -0.4, 0.8, -0.8, 1.25, -1.25, 1.8, -1.8, 2.5, -2.5];
const AIR = 4;

export function placeLetters(anchors: readonly Anchor[], field: Field, before: readonly (Slot | undefined)[], taken: readonly Box[] = []): Placed[] {
  const boxes: Box[] = [...taken];
  return anchors.map((anchor, i) => {
    const outward = directionOf(anchor, field);
    let best: Placed = { x: anchor.x, y: anchor.y, slot: 0 }, least = Infinity;
    for (let slot = 0; slot < LENGTHS.length * TURNS.length; slot++) {
      const place = at(anchor, outward, slot, field);
      const cost = costOf(place, slot, anchor, anchors, boxes) - (before[i] === slot ? 6 : 0);
      if (cost < least) [best, least] = [{ ...place, slot }, cost];
    }
    boxes.push({ ...best, width: anchor.width, height: anchor.height });
    return best;
  });
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Area in px² that two boxes share, each given `AIR` all round between them. */
export function shared(a: Box, b: Box, air = AIR): number {
  const w = (a.width + b.width) / 2 + air - Math.abs(a.x - b.x);
  const h = (a.height + b.height) / 2 + air - Math.abs(a.y - b.y);
  return w > 0 && h > 0 ? w * h : 0;
}

/** Where the leader leaves the box on its way to the anchor. */
export function edgeTowards(box: Box, to: { readonly x: number; readonly y: number }): { x: number; y: number } {
  const dx = to.x - box.x, dy = to.y - box.y;
  const share = Math.min(1, 1 / Math.max(Math.abs(dx) / (box.width / 2), Math.abs(dy) / (box.height / 2), 1e-6));
  return { x: box.x + share * dx, y: box.y + share * dy };
}

/** Outward from the middle, and always somewhat upwards, where a picture of a movement has room. */
function directionOf(anchor: Anchor, { middle }: Field): number {
  const dx = anchor.x - middle.x, dy = anchor.y - middle.y, away = Math.hypot(dx, dy);
  if (away < 8) return -Math.PI / 2 - 0.3;
  return Math.atan2((0.7 * dy) / away - 0.75, (0.7 * dx) / away);
}

function at(anchor: Anchor, outward: number, slot: Slot, field: Field): { x: number; y: number } {
  const length = (LENGTHS[Math.floor(slot / TURNS.length)] ?? 38) * Math.min(1, Math.max(0.6, field.width / FULL_WIDTH));
  const angle = outward + (TURNS[slot % TURNS.length] ?? 0);
  const x = anchor.x + length * Math.cos(angle), y = anchor.y + length * Math.sin(angle);
  return {
    x: Math.min(field.width - anchor.width / 2 - 2, Math.max(anchor.width / 2 + 2, x)),
    y: Math.min(field.height - anchor.height / 2 - 2, Math.max(field.top + anchor.height / 2, y)),
  };
}

function costOf(place: { x: number; y: number }, slot: Slot, own: Anchor, anchors: readonly Anchor[], boxes: readonly Box[]): number {
  const box = { ...place, width: own.width, height: own.height };
  let cost = 14 * Math.floor(slot / TURNS.length) + 9 * Math.abs(TURNS[slot % TURNS.length] ?? 0);
  for (const other of boxes) cost += 5 * shared(box, other);
  for (const other of anchors) cost += shared(box, { x: other.x, y: other.y, width: 6, height: 6 }) > 0 ? 40 : 0;
  return cost;
}
