// Figures that belong to places close together along a line, spread so that they do not run into one another, each with
// a line from its place.
import { line, type Page, text } from "./page.ts";

export interface Placed { readonly x: number; readonly from: number; readonly words: string }

/** mm between upright figures. */
const APART = 4;

/** Upright figures in a row at `level`, above or below the places; lines rise from each place and lean to its figure. */
export function spreadUpright(page: Page, items: readonly Placed[], level: number, least: number, most: number): void {
  const sorted = [...items].sort((a, b) => a.x - b.x), at = spread(sorted.map((i) => i.x), APART, least, most), down = items.some((i) => i.from > level);
  const sign = down ? -1 : 1;
  sorted.forEach((item, i) => {
    const x = at[i]!, knee = level - sign * 6;
    line(page, item.x, item.from + sign * 0.8, item.x, knee, "narrow", "dimension");
    line(page, item.x, knee, x, level - sign, "narrow", "dimension");
    text(page, x + 0.9, level, item.words, { face: "figures", turn: 90, align: down ? "right" : "left", layer: "dimension" });
  });
}

/** As near to where they are wanted as keeps them so far apart and, if it can be, within the limits. */
export function spread(wanted: readonly number[], apart: number, least: number, most: number): number[] {
  // Groups that lean on one another stand about the mean of what their members want.
  const groups: { sum: number; n: number }[] = [];
  const middle = (g: { sum: number; n: number }): number => Math.max(least + ((g.n - 1) * apart) / 2, Math.min(most - ((g.n - 1) * apart) / 2, g.sum / g.n));
  for (const x of wanted) {
    groups.push({ sum: x, n: 1 });
    for (;;) {
      const b = groups.at(-1), a = groups.at(-2);
      if (!a || !b || middle(b) - middle(a) >= ((a.n + b.n) * apart) / 2) break;
      groups.splice(-2, 2, { sum: a.sum + b.sum, n: a.n + b.n });
    }
  }
  return groups.flatMap((g) => Array.from({ length: g.n }, (_, i) => middle(g) + (i - (g.n - 1) / 2) * apart));
}
