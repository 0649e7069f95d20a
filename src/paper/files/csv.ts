// A table as comma-separated values (RFC 4180: a line end is CR LF, quotation marks doubled inside quotation marks), in
// UTF-8. After the rows and an empty line stand its source and what is to be heeded, one to a line.
import type { Table } from "../drawing.ts";

export function tableCsv(table: Table, notes: readonly string[] = []): string {
  const said = [...(table.source === undefined ? [] : [table.source]), ...notes].filter((note) => note !== "");
  const lines = [table.columns, ...table.rows, ...(said.length > 0 ? [[], ...said.map((note) => [note])] : [])];
  return lines.map((cells) => `${cells.map(cell).join(",")}\r\n`).join("");
}

function cell(value: string | number): string {
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
