// Letters beside places of a plan: each goes to the first spot round its place where it stands on no other letter, and of
// those to where it is crossed by the fewest lines.
import type { Entity, Face, LetterHeight } from "./drawing.ts";
import { textWidthMm } from "./lettering.ts";
import { line, type Page, text } from "./page.ts";

export interface Lettered {
  readonly x: number;
  readonly y: number;
  /** What must be kept clear round the place itself. */
  readonly radius: number;
  readonly words: string;
}

const FARTHER = [1.2, 3.5, 6, 9, 12.5, 17];
const DIRECTIONS = 16;

export interface Rect { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number }

export function letterPlaces(page: Page, places: readonly Lettered[], within: Rect, style: { readonly height?: LetterHeight; readonly face?: Face } = {}): void {
  const { height = 2.5, face = "strong" } = style;
  const taken: Rect[] = page.entities.flatMap((e) => (e.kind === "text" ? [textBox(e)] : []));
  const strokes = page.entities.flatMap(strokesOf);
  for (const place of places) {
    const w = textWidthMm(place.words, height, face);
    let best: { cost: number; box: Rect; lead: boolean; cx: number; cy: number } | null = null;
    FARTHER.forEach((away, ring) => {
      for (let k = 0; k < DIRECTIONS; k++) {
        const a = Math.PI / 4 + (2 * Math.PI * k) / DIRECTIONS, r = place.radius + away;
        const cx = place.x + Math.cos(a) * (r + w / 2), cy = place.y + Math.sin(a) * (r + height / 2);
        const box = { left: cx - w / 2 - 0.5, right: cx + w / 2 + 0.5, bottom: cy - height / 2 - 0.5, top: cy + height / 2 + 0.5 };
        if (box.left < within.left || box.right > within.right || box.bottom < within.bottom || box.top > within.top || taken.some((t) => overlap(t, box))) continue;
        const cost = strokes.reduce((n, s) => n + (crosses(s, box) ? 1 : 0), 0) * 4 + ring + (k % 2) * 0.2;
        if (best === null || cost < best.cost) best = { cost, box, lead: ring > 1, cx, cy };
      }
    });
    const found = best as { cost: number; box: Rect; lead: boolean; cx: number; cy: number } | null;
    if (found === null) continue;
    text(page, found.cx, found.cy - height / 2, place.words, { height, face, align: "middle", layer: "dimension" });
    taken.push(found.box);
    if (found.lead) {
      const d = Math.hypot(found.cx - place.x, found.cy - place.y), c = (found.cx - place.x) / d, s = (found.cy - place.y) / d;
      const stop = Math.min(Math.abs((w / 2 + 0.8) / (c || 1e-9)), Math.abs((height / 2 + 0.8) / (s || 1e-9)));
      line(page, place.x + c * place.radius, place.y + s * place.radius, found.cx - c * stop, found.cy - s * stop, "narrow", "dimension");
    }
  }
}

/** The room that a text takes: from its base line to the height of a capital, a little below for tails. */
export function textBox(e: Extract<Entity, { kind: "text" }>): Rect {
  const x0 = e.align === "left" ? 0 : e.align === "middle" ? -e.width / 2 : -e.width, x1 = x0 + e.width, y0 = -0.2 * e.height, y1 = e.height;
  const a = (e.turn * Math.PI) / 180, c = Math.cos(a), s = Math.sin(a);
  const corners = [[x0, y0], [x1, y0], [x1, y1], [x0, y1]].map(([x, y]) => [e.x + c * x! - s * y!, e.y + s * x! + c * y!] as const);
  return {
    left: Math.min(...corners.map((p) => p[0])), right: Math.max(...corners.map((p) => p[0])),
    bottom: Math.min(...corners.map((p) => p[1])), top: Math.max(...corners.map((p) => p[1])),
  };
}

export const overlap = (a: Rect, b: Rect): boolean => a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;

export type Stroke = { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number } | { readonly x: number; readonly y: number; readonly radius: number };

/** Lines of an entity that a letter had better not stand on. */
export function strokesOf(e: Entity): Stroke[] {
  if (e.kind === "line") return [e];
  if (e.kind === "circle") return [{ x: e.x, y: e.y, radius: e.radius }];
  if (e.kind === "arc") return strokesOf({ kind: "polyline", layer: e.layer, line: e.line, points: arcPoints(e), closed: false });
  if (e.kind !== "polyline") return [];
  const found: Stroke[] = [], n = e.points.length / 2;
  for (let i = 0; i + 1 < n + (e.closed ? 1 : 0); i++) {
    const a = i * 2, b = ((i + 1) % n) * 2;
    found.push({ x1: e.points[a]!, y1: e.points[a + 1]!, x2: e.points[b]!, y2: e.points[b + 1]! });
  }
  return found;
}

/** Chords of six degrees and less. */
function arcPoints({ x, y, radius, from, to }: Extract<Entity, { kind: "arc" }>): number[] {
  const sweep = (((to - from) % 360) + 360) % 360, n = Math.max(2, Math.ceil(sweep / 6));
  return Array.from({ length: n + 1 }, (_, i) => ((from + (i * sweep) / n) * Math.PI) / 180).flatMap((a) => [x + radius * Math.cos(a), y + radius * Math.sin(a)]);
}

export function crosses(s: Stroke, box: Rect): boolean {
  if ("radius" in s) {
    const near = Math.hypot(Math.max(box.left - s.x, 0, s.x - box.right), Math.max(box.bottom - s.y, 0, s.y - box.top));
    const far = Math.hypot(Math.max(Math.abs(box.left - s.x), Math.abs(box.right - s.x)), Math.max(Math.abs(box.bottom - s.y), Math.abs(box.top - s.y)));
    return near < s.radius && far > s.radius;
  }
  // Clipped to the box, from one end to the other (Liang and Barsky).
  let t0 = 0, t1 = 1;
  const dx = s.x2 - s.x1, dy = s.y2 - s.y1;
  for (const [p, q] of [[-dx, s.x1 - box.left], [dx, box.right - s.x1], [-dy, s.y1 - box.bottom], [dy, box.top - s.y1]] as const) {
    if (p === 0) { if (q < 0) return false; continue; }
    if (p < 0) t0 = Math.max(t0, q / p);
    else t1 = Math.min(t1, q / p);
  }
  return t0 < t1;
}
