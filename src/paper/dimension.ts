// Dimensions and leaders: narrow lines with filled heads 2.5 mm long, figures above their line (ISO 129-1).
import { fill, line, type Page, text } from "./page.ts";
import { textWidthMm } from "./lettering.ts";

const HEAD = 2.5, HALF = 0.42;

/** A filled head at x, y that points along an angle (rad). */
export function arrow(page: Page, x: number, y: number, angle: number): void {
  const c = Math.cos(angle), s = Math.sin(angle);
  fill(page, [[x, y, x - HEAD * c - HALF * s, y - HEAD * s + HALF * c, x - HEAD * c + HALF * s, y - HEAD * s - HALF * c]], "ink", "dimension");
}

/** Level, between x0 and x1, on a line at `y`; the ends are led from y0 and y1. Figures above the line, or `clear` mm after it where there is no room. */
export function levelDimension(page: Page, x0: number, y0: number, x1: number, y1: number, y: number, what: string, after: "left" | "right" = "right", clear = 4): void {
  const [a, b] = x0 <= x1 ? [x0, x1] : [x1, x0];
  lead(page, x0, y0, x0, y);
  lead(page, x1, y1, x1, y);
  const room = textWidthMm(what, 2.5, "figures");
  if (b - a >= Math.max(2 * HEAD + 1, room + 1)) {
    line(page, a, y, b, y, "narrow", "dimension");
    arrow(page, a, y, Math.PI);
    arrow(page, b, y, 0);
    text(page, (a + b) / 2, y + 1, what, { face: "figures", align: "middle", layer: "dimension" });
    return;
  }
  const right = after === "right" ? b + clear + room + 1 : b + 5, left = after === "left" ? a - clear - 1 - room : a - 5;
  line(page, left, y, a, y, "narrow", "dimension");
  line(page, b, y, right, y, "narrow", "dimension");
  arrow(page, a, y, 0);
  arrow(page, b, y, Math.PI);
  if (b > a) line(page, a, y, b, y, "narrow", "dimension");
  text(page, after === "right" ? b + clear : a - clear, y + 1, what, { face: "figures", align: after === "right" ? "left" : "right", layer: "dimension" });
}

/** Upright, between y0 and y1, on a line at `x`; figures along the line. */
export function uprightDimension(page: Page, x0: number, y0: number, x1: number, y1: number, x: number, what: string): void {
  const [a, b] = y0 <= y1 ? [y0, y1] : [y1, y0];
  lead(page, x0, y0, x, y0);
  lead(page, x1, y1, x, y1);
  const room = textWidthMm(what, 2.5, "figures"), inside = b - a >= 2 * HEAD + 1, fits = room + 1 <= b - a;
  line(page, x, inside ? a : a - 5, x, fits ? b : b + (inside ? 2 : 5) + room + 1, "narrow", "dimension");
  arrow(page, x, a, inside ? -Math.PI / 2 : Math.PI / 2);
  arrow(page, x, b, inside ? Math.PI / 2 : -Math.PI / 2);
  text(page, x - 1, fits ? (a + b) / 2 : b + (inside ? 2 : 5) + room / 2, what, { face: "figures", align: "middle", turn: 90, layer: "dimension" });
}

/** The line that leads from a point of the part to a dimension: a small gap, and a little past. */
function lead(page: Page, x: number, y: number, toX: number, toY: number): void {
  const length = Math.hypot(toX - x, toY - y);
  if (length < 1.6) return;
  const c = (toX - x) / length, s = (toY - y) / length;
  line(page, x + 0.8 * c, y + 0.8 * s, toX + 1.2 * c, toY + 1.2 * s, "narrow", "dimension");
}

/** A leader with a head at x, y from words beside toX, toY. */
export function leader(page: Page, x: number, y: number, toX: number, toY: number, words: readonly string[], align: "left" | "right" = toX >= x ? "left" : "right"): void {
  line(page, x, y, toX, toY, "narrow", "dimension");
  arrow(page, x, y, Math.atan2(y - toY, x - toX));
  words.forEach((word, i) => text(page, toX + (align === "left" ? 1 : -1), toY - 1 + (words.length - 1) * 2 - i * 4, word, { face: "figures", align, layer: "dimension" }));
}

/** 100 mm on a true print, by tens. */
export function checkBar(page: Page, x: number, y: number, upright = false): void {
  const at = (u: number, v: number): readonly [number, number] => (upright ? [x - v, y + u] : [x + u, y + v]);
  const stroke = (u0: number, v0: number, u1: number, v1: number) => line(page, ...at(u0, v0), ...at(u1, v1), "narrow", "dimension");
  stroke(0, 0, 100, 0);
  for (let i = 0; i <= 10; i++) stroke(10 * i, i % 10 === 0 ? -1.8 : i === 5 ? -1.2 : -0.7, 10 * i, i % 10 === 0 ? 1.8 : i === 5 ? 1.2 : 0.7);
  const [tx, ty] = at(102, -0.9);
  text(page, tx, ty, "100 mm on a true print", { turn: upright ? 90 : 0, layer: "dimension" });
}
