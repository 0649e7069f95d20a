// The frame of a sheet: borders and centring marks of ISO 5457, a head with the title, cautions that are never left out,
// and at the foot a title block with the data fields of ISO 7200, 180 mm wide.
import type { PaperSize, TitleBlock } from "./drawing.ts";
import { PAPER } from "./drawing.ts";
import { brokenInto } from "./lettering.ts";
import { type Box, circle, frameOf, line, type Page, polyline, rectangle, text } from "./page.ts";

export interface Notes {
  readonly cautions: readonly string[];
  readonly fouls: number;
}

const BLOCK = { width: 180, rows: [14, 11, 11] } as const;
const BLOCK_HEIGHT = BLOCK.rows.reduce((sum, row) => sum + row, 0);
/** Between the two lines of the border, and from there to what is written. */
const BORDER = 1.2, MARGIN = 5;
const HEAD = 16, LINE = 4;

/** What the frame leaves for the drawing. */
export function roomOf(size: PaperSize, notes: Notes): Box {
  const f = frameOf(size);
  return {
    left: f.left + BORDER + MARGIN, right: f.right - BORDER - MARGIN,
    top: f.top - BORDER - HEAD, bottom: f.bottom + BLOCK_HEIGHT + BORDER + 2 + stripHeight(size, notes),
  };
}

export function frame(page: Page, block: TitleBlock, side: string, notes: Notes): void {
  const f = frameOf(page.size), { width, height } = PAPER[page.size];
  rectangle(page, f.left, f.bottom, f.right, f.top, "wide", "frame");
  rectangle(page, f.left + BORDER, f.bottom + BLOCK_HEIGHT + BORDER, f.right - BORDER, f.top - BORDER, "narrow", "frame");
  for (const [x1, y1, x2, y2] of [
    [width / 2, f.top - BORDER, width / 2, height - 4], [width / 2, 4, width / 2, f.bottom], [14, height / 2, f.left, height / 2], [f.right, height / 2, width - 4, height / 2],
  ] as const) line(page, x1, y1, x2, y2, "wide", "frame");
  head(page, block, side);
  strip(page, notes);
  titleBlock(page, block, f);
}

function head(page: Page, block: TitleBlock, side: string): void {
  const { left, right } = page.room, y = frameOf(page.size).top - BORDER - 9.5;
  const title = text(page, left, y, block.title, { height: 5, face: "italic", layer: "frame", within: 0.7 * (right - left) });
  const sideWidth = text(page, right, y, side, { align: "right", layer: "frame" });
  text(page, left + title + 6, y, block.subtitle, { layer: "frame", within: Math.max(1, right - left - title - 12 - sideWidth) });
  line(page, left, y - 3.4, right, y - 3.4, "narrow", "frame");
  line(page, left, y - 4.2, right, y - 4.2, "narrow", "frame");
}

/** Cautions above the title block, or beside it where the sheet is broad enough. */
function strip(page: Page, notes: Notes): void {
  const f = frameOf(page.size), { left, width, top } = stripPlace(page.size, notes);
  let y = top - 3.2;
  const lines = stripLines(width, notes);
  if (top > f.bottom + BLOCK_HEIGHT && lines.length > 0) line(page, left, top, left + width, top, "narrow", "frame");
  for (const { words, strong } of lines) {
    text(page, left, y, words, { face: "italic", layer: "frame", ink: strong ? "foul" : "ink" });
    y -= LINE;
  }
}

function stripLines(width: number, { cautions, fouls }: Notes): { readonly words: string; readonly strong: boolean }[] {
  const said = fouls === 0 ? [] : [{ words: `This instrument fouls in ${fouls === 1 ? "one place" : `${fouls} places`}: see the examiner’s sheet before cutting metal.`, strong: true }];
  const all = cautions.length > 0 ? [{ words: `Caution. ${cautions.join(" ")}`, strong: false }] : [];
  return [...said, ...all].flatMap(({ words, strong }) => brokenInto(words, width, 2.5, "italic").map((line) => ({ words: line, strong })));
}

function stripPlace(size: PaperSize, notes: Notes): { readonly left: number; readonly width: number; readonly top: number } {
  const f = frameOf(size), left = f.left + BORDER + MARGIN;
  const beside = f.right - BLOCK.width - left - MARGIN;
  if (beside > 100) return { left, width: beside, top: f.bottom + BLOCK_HEIGHT - 2 };
  return { left, width: f.right - BORDER - MARGIN - left, top: f.bottom + BLOCK_HEIGHT + BORDER + stripHeight(size, notes) };
}

function stripHeight(size: PaperSize, notes: Notes): number {
  const f = frameOf(size), width = f.right - f.left - 2 * (BORDER + MARGIN);
  if (f.right - BLOCK.width - f.left - BORDER - 2 * MARGIN > 100) return 0;
  const lines = stripLines(width, notes).length;
  return lines === 0 ? 0 : lines * LINE + 1.6;
}

function titleBlock(page: Page, block: TitleBlock, f: Box): void {
  const x0 = Math.max(f.left, f.right - BLOCK.width), x1 = f.right;
  const a = x0 + 82, b = x0 + 144, base = f.bottom;
  const [top, middle, low] = [base + BLOCK_HEIGHT, base + BLOCK.rows[2] + BLOCK.rows[1], base + BLOCK.rows[2]];
  rectangle(page, x0, base, x1, top, "wide", "frame");
  for (const y of [middle, low]) line(page, x0, y, x1, y, "narrow", "frame");
  for (const x of [a, b]) line(page, x, base, x, top, "narrow", "frame");
  line(page, x0 + 41, low, x0 + 41, middle, "narrow", "frame");
  line(page, a + 27, low, a + 27, middle, "narrow", "frame");
  field(page, x0, top, a, "Instrument", block.owner, 5);
  field(page, a, top, b, "Title", block.title, 5);
  field(page, b, top, x1, "Drawing no.", block.number, 3.5);
  field(page, x0, middle, x0 + 41, "Drawn, checked", block.drawn);
  field(page, x0 + 41, middle, a, "Date of issue", block.issued);
  field(page, a, middle, a + 27, "Scale", block.scale);
  field(page, a + 27, middle, b, "Sheet", block.sheet);
  field(page, b, middle, x1, "Revision mark", block.mark, 3.5);
  field(page, x0, low, a, "Unless said", block.unless);
  field(page, a, low, b, "Document", block.document);
  field(page, b, low, x1, "Projection", "");
  projection(page, b + 18, base + 4.4);
}

function field(page: Page, x: number, top: number, right: number, label: string, value: string, height: 2.5 | 3.5 | 5 = 2.5): void {
  const within = right - x - 3;
  text(page, x + 1.5, top - 3, label, { height: 1.8, layer: "frame", within });
  const face = height === 5 ? "italic" : height === 3.5 ? "strong" : "roman";
  text(page, x + 1.5, top - (height === 5 ? 11.2 : height === 3.5 ? 9 : 8.2), value, { height, face, layer: "frame", within });
}

/** First angle: the small end of the cone is seen on the right of the side that it is seen from (ISO 5456-2). */
function projection(page: Page, x: number, y: number): void {
  polyline(page, [x - 10, y - 1.5, x - 3, y - 3, x - 3, y + 3, x - 10, y + 1.5], true, "narrow", "frame");
  line(page, x - 12, y, x - 1, y, "chain", "frame");
  circle(page, x + 6, y, 3, "narrow", "frame");
  circle(page, x + 6, y, 1.5, "narrow", "frame");
  line(page, x + 1.5, y, x + 10.5, y, "chain", "frame");
  line(page, x + 6, y - 4, x + 6, y + 4, "chain", "frame");
}
