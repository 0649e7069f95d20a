// A page in the making: a list of entities and the pens that write on it. Coordinates are mm on the paper, y upward.
import type { Entity, Face, Ink, Layer, LetterHeight, LineKind, PaperSize, View } from "./drawing.ts";
import { PAPER } from "./drawing.ts";
import { textWidthMm } from "./lettering.ts";

export interface Box { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number }

export interface Page {
  readonly size: PaperSize;
  readonly entities: Entity[];
  readonly views: View[];
  /** The room that is left for what the sheet shows. */
  readonly room: Box;
}

export type Point = readonly [number, number];

/** Margins of ISO 5457: 20 mm at the binding edge, 10 mm elsewhere. */
export const frameOf = (size: PaperSize): Box => ({ left: 20, right: PAPER[size].width - 10, bottom: 10, top: PAPER[size].height - 10 });

export const newPage = (size: PaperSize, room: Box): Page => ({ size, entities: [], views: [], room });

export function line(page: Page, x1: number, y1: number, x2: number, y2: number, kind: LineKind = "narrow", layer: Layer = "part"): void {
  page.entities.push({ kind: "line", layer, line: kind, x1, y1, x2, y2 });
}

export function polyline(page: Page, points: readonly number[], closed: boolean, kind: LineKind = "wide", layer: Layer = "part"): void {
  page.entities.push({ kind: "polyline", layer, line: kind, points, closed });
}

export function rectangle(page: Page, x0: number, y0: number, x1: number, y1: number, kind: LineKind = "wide", layer: Layer = "part"): void {
  polyline(page, [x0, y0, x1, y0, x1, y1, x0, y1], true, kind, layer);
}

export function circle(page: Page, x: number, y: number, radius: number, kind: LineKind = "wide", layer: Layer = "part"): void {
  page.entities.push({ kind: "circle", layer, line: kind, x, y, radius });
}

export function arc(page: Page, x: number, y: number, radius: number, from: number, to: number, kind: LineKind = "wide", layer: Layer = "part"): void {
  page.entities.push({ kind: "arc", layer, line: kind, x, y, radius, from, to });
}

export function hatch(page: Page, loops: readonly (readonly number[])[], angle = 45, spacing = 1.4, layer: Layer = "part"): void {
  page.entities.push({ kind: "hatch", layer, loops, angle, spacing });
}

export function fill(page: Page, loops: readonly (readonly number[])[], ink: Ink = "ink", layer: Layer = "part"): void {
  page.entities.push({ kind: "fill", layer, ink, loops });
}

export interface TextStyle {
  readonly height?: LetterHeight;
  readonly face?: Face;
  readonly align?: "left" | "middle" | "right";
  readonly turn?: number;
  readonly layer?: Layer;
  readonly ink?: Ink;
  /** mm: set narrower where it would stand wider than this. */
  readonly within?: number;
}

/** Writes a text and gives the width it takes. */
export function text(page: Page, x: number, y: number, what: string, style: TextStyle = {}): number {
  const { height = 2.5, face = "roman", align = "left", turn = 0, layer = "note", ink = "ink", within = Infinity } = style;
  if (what === "") return 0;
  const width = Math.min(within, textWidthMm(what, height, face));
  page.entities.push({ kind: "text", layer, ink, x, y, text: what, height, face, align, turn, width });
  return width;
}

/** A small cross of thin chain lines, long enough to be seen round something of a radius. */
export function cross(page: Page, x: number, y: number, reach: number): void {
  line(page, x - reach, y, x + reach, y, "chain");
  line(page, x, y - reach, x, y + reach, "chain");
}

/** Places a model of mm on the page at a scale, and remembers where, so that a print can be measured. */
export function view(page: Page, name: string, x: number, y: number, scale: number): (mx: number, my: number) => Point {
  page.views.push({ name, x, y, scale });
  return (mx, my) => [x + mx * scale, y + my * scale];
}

/** A closed outline of the model, on the paper. */
export function outlineOn(at: (x: number, y: number) => Point, outline: ArrayLike<number>): number[] {
  const points: number[] = [];
  for (let i = 0; i + 1 < outline.length; i += 2) points.push(...at(outline[i]!, outline[i + 1]!));
  return points;
}
