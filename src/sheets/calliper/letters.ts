// Where letters go on a drawing so that none covers another, nor a cross. Pixels; y downward.

export interface Lettered {
  /** What the letter belongs to. */
  readonly x: number;
  readonly y: number;
  readonly text: string;
}
export interface LetterPlace {
  /** Middle of the letter. */
  readonly x: number;
  readonly y: number;
}
interface Box { readonly x: number; readonly y: number; readonly w: number; readonly h: number }

const HEIGHT = 16;
const ADVANCE = 9;
/** Round the clock from the upper right, near first. */
const AROUND = [-45, -135, 45, 135, -90, 0, 180, 90, -20, -160, 20, 160];
const REACHES = [15, 22, 32, 44];

/** A place for each, in order: the first round about it that is clear of everything placed, of every cross and of the edge, else the least covered. */
export function placeLetters(things: readonly Lettered[], room: { readonly width: number; readonly height: number }): readonly LetterPlace[] {
  const crosses: Box[] = things.map(({ x, y }) => ({ x, y, w: 12, h: 12 }));
  const placed: Box[] = [];
  return things.map(({ x, y, text }) => {
    const w = ADVANCE * text.length + 4;
    let best: Box | null = null, bestCover = Infinity;
    for (const reach of REACHES)
      for (const deg of AROUND) {
        const c = Math.cos((deg * Math.PI) / 180), s = Math.sin((deg * Math.PI) / 180);
        const box = { x: x + c * (reach + w / 2 - ADVANCE / 2), y: y + s * reach, w, h: HEIGHT };
        const cover = [...placed, ...crosses].reduce((sum, other) => sum + overlap(box, other), outside(box, room));
        if (cover < bestCover) { best = box; bestCover = cover; }
        if (bestCover === 0) break;
      }
    const box = best ?? { x, y, w, h: HEIGHT };
    placed.push(box);
    return { x: box.x, y: box.y };
  });
}

/** How much of a box lies over the edge of the drawing. */
function outside(b: Box, { width, height }: { readonly width: number; readonly height: number }): number {
  return b.w * b.h - overlap(b, { x: width / 2, y: height / 2, w: width, h: height });
}

function overlap(a: Box, b: Box): number {
  const w = Math.min(a.x + a.w / 2, b.x + b.w / 2) - Math.max(a.x - a.w / 2, b.x - b.w / 2);
  const h = Math.min(a.y + a.h / 2, b.y + b.h / 2) - Math.max(a.y - a.h / 2, b.y - b.h / 2);
  return w > 0 && h > 0 ? w * h : 0;
}
