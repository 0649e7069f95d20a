// A drawing for cutters and draughtsmen: DXF of release 12, which every reader takes, in mm, one layer for each line
// kind. The group codes are those of the published DXF reference, release 12 (from memory).
import { type Drawing, type Entity, hatchLines, type LineKind, PENS } from "../drawing.ts";
import { inParts } from "../words.ts";

export type DxfLayer = "WIDE" | "NARROW" | "CHAIN" | "DOUBLE_DOT" | "DASHED" | "HATCH" | "FILL" | "TEXT" | "CUT" | "NOTE";

const LAYER_OF: Readonly<Record<LineKind, DxfLayer>> = { "wide": "WIDE", "narrow": "NARROW", "chain": "CHAIN", "double-dot chain": "DOUBLE_DOT", "dashed": "DASHED" };
/** Colour numbers of the format: 7 is ink on paper, 2 brass yellow, 1 red for what is cut. */
const LAYERS: readonly (readonly [DxfLayer, number, string])[] = [
  ["WIDE", 7, "CONTINUOUS"], ["NARROW", 7, "CONTINUOUS"], ["CHAIN", 2, "CHAIN"], ["DOUBLE_DOT", 7, "DOUBLE_DOT"], ["DASHED", 7, "DASHED"],
  ["HATCH", 8, "CONTINUOUS"], ["FILL", 7, "CONTINUOUS"], ["TEXT", 7, "CONTINUOUS"], ["CUT", 1, "CONTINUOUS"], ["NOTE", 7, "CONTINUOUS"],
];
const LINE_TYPES = [["CONTINUOUS", []], ["CHAIN", PENS.chain.dashes], ["DOUBLE_DOT", PENS["double-dot chain"].dashes], ["DASHED", PENS.dashed.dashes]] as const;

export interface Extent { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number }

/** One page of the plans, as it lies on the paper. */
export const drawingDxf = (drawing: Drawing): string =>
  dxfOf(drawing.entities.map(entity).join(""), { left: 0, bottom: 0, right: drawing.width, top: drawing.height }, [drawing.titleBlock.owner, drawing.titleBlock.title]);

/** Entities that were written already, as a whole file; `words` stand as remarks at its head. */
export function dxfOf(entities: string, { left, bottom, right, top }: Extent, words: readonly string[]): string {
  const header = g(9, "$ACADVER") + g(1, "AC1009") + g(9, "$INSUNITS") + g(70, 4) + g(9, "$MEASUREMENT") + g(70, 1)
    + g(9, "$EXTMIN") + g(10, n(left)) + g(20, n(bottom)) + g(9, "$EXTMAX") + g(10, n(right)) + g(20, n(top));
  const types = LINE_TYPES.map(([name, dashes]) => g(0, "LTYPE") + g(2, name) + g(70, 0) + g(3, name.toLowerCase()) + g(72, 65) + g(73, dashes.length)
    + g(40, n(dashes.reduce((sum, d) => sum + d, 0))) + dashes.map((d, i) => g(49, n(i % 2 === 0 ? d : -d))).join("")).join("");
  const layers = LAYERS.map(([name, colour, type]) => g(0, "LAYER") + g(2, name) + g(70, 0) + g(62, colour) + g(6, type)).join("");
  return words.filter((w) => w !== "").map((w) => g(999, written(w))).join("")
    + section("HEADER", header)
    + section("TABLES", table("LTYPE", LINE_TYPES.length, types) + table("LAYER", LAYERS.length, layers))
    + section("ENTITIES", entities) + g(0, "EOF");
}

/** A polyline; interleaved x, y in mm. */
export function polylineDxf(layer: DxfLayer, points: ArrayLike<number>, closed: boolean): string {
  const at: string[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) at.push(g(0, "VERTEX") + g(8, layer) + g(10, n(points[i]!)) + g(20, n(points[i + 1]!)));
  return at.length === 0 ? "" : g(0, "POLYLINE") + g(8, layer) + g(66, 1) + g(70, closed ? 1 : 0) + at.join("") + g(0, "SEQEND") + g(8, layer);
}

export const circleDxf = (layer: DxfLayer, x: number, y: number, radius: number): string => g(0, "CIRCLE") + g(8, layer) + g(10, n(x)) + g(20, n(y)) + g(40, n(radius));

export const lineDxf = (layer: DxfLayer, x1: number, y1: number, x2: number, y2: number): string =>
  g(0, "LINE") + g(8, layer) + g(10, n(x1)) + g(20, n(y1)) + g(11, n(x2)) + g(21, n(y2));

/** `align`: 0 left, 1 middle, 2 right. */
export const textDxf = (layer: DxfLayer, x: number, y: number, height: number, text: string, align: 0 | 1 | 2 = 0, turn = 0): string =>
  g(0, "TEXT") + g(8, layer) + g(10, n(x)) + g(20, n(y)) + g(40, n(height)) + g(1, written(text)) + (turn === 0 ? "" : g(50, n(turn)))
  + (align === 0 ? "" : g(72, align) + g(11, n(x)) + g(21, n(y)));

function entity(e: Entity): string {
  switch (e.kind) {
    case "line": return lineDxf(LAYER_OF[e.line], e.x1, e.y1, e.x2, e.y2);
    case "polyline": return polylineDxf(LAYER_OF[e.line], e.points, e.closed);
    case "circle": return circleDxf(LAYER_OF[e.line], e.x, e.y, e.radius);
    case "arc": return g(0, "ARC") + g(8, LAYER_OF[e.line]) + g(10, n(e.x)) + g(20, n(e.y)) + g(40, n(e.radius)) + g(50, n(e.from)) + g(51, n(e.to));
    case "hatch": return hatchLines(e).map(([x1, y1, x2, y2]) => lineDxf("HATCH", x1, y1, x2, y2)).join("");
    // White that only hides what lies behind it has no place among lines.
    case "fill": return e.ink === "paper" ? "" : e.loops.map((loop) => polylineDxf("FILL", loop, true)).join("");
    case "text": return textDxf("TEXT", e.x, e.y, e.height, e.text, e.align === "left" ? 0 : e.align === "middle" ? 1 : 2, e.turn);
  }
}

const section = (name: string, body: string): string => g(0, "SECTION") + g(2, name) + body + g(0, "ENDSEC");
const table = (name: string, count: number, body: string): string => g(0, "TABLE") + g(2, name) + g(70, count) + body + g(0, "ENDTAB");
const g = (code: number, value: string | number): string => `${code}\r\n${value}\r\n`;
/** To a hundred-thousandth of a mm, without a minus before nothing. */
const n = (value: number): string => inParts(value, 1e5);
/** ø, ° and ± by the format's own signs, any other letter beyond plain ones by its number. */
const written = (text: string): string => text.replace(/[\r\n]+/g, " ").replace(/ø|⌀/g, "%%c").replace(/°/g, "%%d").replace(/±/g, "%%p").replace(/’|‘/g, "'")
  .replace(/[^ -~]/gu, (letter) => [...letter].map((c) => `\\U+${c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}`).join(""));
