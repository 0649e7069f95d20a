// Ruled tables on a page.
import type { Table } from "./drawing.ts";
import { textWidthMm } from "./lettering.ts";
import { line, type Page, text } from "./page.ts";

export const ROW = 4.5;
const HEADING = 6, UNDER = 6;

/** A head in italics over a wide rule, and a word at its right end. Gives the y under the rule. */
export function heading(page: Page, x: number, y: number, width: number, title: string, right = ""): number {
  const rightWidth = text(page, x + width, y - 4, right, { align: "right" });
  text(page, x, y - 4, title, { face: "italic", height: 3.5, within: width - rightWidth - 3 });
  line(page, x, y - HEADING, x + width, y - HEADING, "wide", "table");
  return y - HEADING;
}

/** Label left, figures right; a row that begins with "!" stands out. Gives the y under the last rule. */
export function figuresTable(page: Page, x: number, top: number, width: number, title: string, rows: readonly (readonly [string, string])[], right = ""): number {
  let y = heading(page, x, top, width, title, right);
  for (const [label, value] of rows) {
    y -= ROW;
    const labelWidth = text(page, x + 1, y + 1.4, label, { layer: "table", within: 0.6 * width });
    text(page, x + width - 1, y + 1.4, value, { layer: "table", face: "figures", align: "right", within: width - labelWidth - 4 });
    line(page, x, y, x + width, y, "narrow", "table");
  }
  return y;
}

const isFigure = (cell: string | number): boolean => typeof cell === "number" || cell === "cold" || /^[−+±ø]?\d[\d.,/°−-]*$/.test(cell);

/** Columns as wide as they need, the rest shared; as many pages as it takes. Gives the page and y where it ended. */
export function ruled(start: { page: Page; y: number }, next: () => Page, table: Table, written: (cell: string | number, column: number) => string = String): { page: Page; y: number } {
  let { page, y } = start;
  const { left, right } = page.room, width = right - left;
  const cells = table.rows.map((row) => row.map((cell, i) => written(cell, i)));
  const figure = table.columns.map((_, i) => table.rows.length > 0 && table.rows.every((row) => row[i] === "" || isFigure(row[i]!)));
  const wants = table.columns.map((c, i) => (!figure[i] && figure[i - 1] ? 6 : 3) + Math.max(textWidthMm(c, 2.5, "italic"), ...cells.map((row) => textWidthMm(row[i]!, 2.5, figure[i] ? "figures" : "roman"))));
  const total = wants.reduce((a, b) => a + b, 0);
  const spare = Math.max(0, width - total) / wants.length;
  const widths = wants.map((w) => (total > width ? (w * width) / total : w + spare));
  const put = (row: readonly string[], face: (i: number) => "figures" | "roman" | "italic") => {
    let x = left;
    row.forEach((cell, i) => {
      const right = figure[i] === true;
      const inset = !right && figure[i - 1] === true ? 4 : 1;
      text(page, right ? x + widths[i]! - 1 : x + inset, y + 1.4, cell, { layer: "table", face: face(i), align: right ? "right" : "left", within: widths[i]! - 1 - inset });
      x += widths[i]!;
    });
  };
  const begin = (again: boolean) => {
    y = heading(page, left, y, width, again ? `${table.title}, continued` : table.title);
    y -= ROW;
    put(table.columns, () => "italic");
    line(page, left, y, right, y, "narrow", "table");
  };
  // A table begins where its head and two rows have room.
  if (y - HEADING - ROW * (1 + Math.min(2, cells.length)) < page.room.bottom) { page = next(); y = page.room.top; }
  begin(false);
  for (const row of cells) {
    if (y - ROW < page.room.bottom) { page = next(); y = page.room.top; begin(true); }
    y -= ROW;
    put(row, (i) => (figure[i] ? "figures" : "roman"));
    line(page, left, y, right, y, "narrow", "table");
  }
  return { page, y: y - UNDER };
}

/** mm that a ruled table takes with what is left free under it. */
export const ruledHeight = ({ rows }: Table): number => HEADING + (1 + rows.length) * ROW + UNDER;

/** Likewise, and under it where its figures come from, if it says so. */
export function ruledWithSource(start: { page: Page; y: number }, next: () => Page, table: Table): { page: Page; y: number } {
  const at = ruled(start, next, table);
  if (table.source === undefined) return at;
  const under = at.y < at.page.room.bottom ? { page: next() } : at, y = under === at ? at.y : under.page.room.top - 4;
  text(under.page, under.page.room.left, y + 1, `Source: ${table.source}`, { face: "italic" });
  return { page: under.page, y: y - 5 };
}
