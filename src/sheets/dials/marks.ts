// A table of uneven marks as text, one a line: where it stands in degrees from the 0 mark, and what is written at it; or, as
// a table of values is pasted, the value, its angle and what is written. Read with a fault for each line that is none.
import type { DialRing } from "../../../geometry/index.ts";
import { typedFigure } from "../../commands/typed.ts";

export type Marks = NonNullable<DialRing["marks"]>;

export interface ReadMarks {
  /** Of the lines that are right. */
  readonly marks: Marks;
  /** One sentence for each line that is not. */
  readonly faults: readonly string[];
}

const MOST_LINES = 1000;

export function readMarks(text: string): ReadMarks {
  const lines = text.split(/\r?\n/).map((line, i) => ({ at: i + 1, cells: cellsOf(line) })).filter((line) => line.cells.length > 0);
  if (lines.length > MOST_LINES) return { marks: [], faults: [`${lines.length} lines are more than a ring can take; at most ${MOST_LINES}.`] };
  // A table of values has figures in its first two columns, and a third in some line.
  const valued = lines.some(({ cells }) => cells.length > 2 && isFigure(cells[0]) && isFigure(cells[1]));
  const marks: Marks[number][] = [], faults: string[] = [], stands = new Map<number, number>();
  for (const { at: line, cells } of lines) {
    const [value = "", ...rest] = cells;
    const [figure = "", ...words] = valued ? rest : cells;
    const read = typedFigure(figure, "angle"), says = (what: string) => faults.push(`Line ${line}: ${what}.`);
    if (valued && !isFigure(value)) { says(`a value was wanted, not “${value}”`); continue; }
    if ("fault" in read) { says(figure === "" ? "no angle stands after the value" : `degrees were wanted, not “${figure}”`); continue; }
    const at = Math.round(read.value * 1e9) / 1e9 || 0;
    if (at < 0 || at >= 360) { says(`${figure}° does not lie from 0 up to 360`); continue; }
    const before = stands.get(at);
    if (before !== undefined) { says(`a mark stands at ${figure}° already, on line ${before}`); continue; }
    stands.set(at, line);
    marks.push(words.length === 0 ? { at } : { at, label: words.join(" ") });
  }
  return { marks: marks.sort((a, b) => a.at - b.at), faults };
}

/** As it is typed. */
export const writtenMarks = (marks: Marks): string =>
  marks.map(({ at, label }) => `${String(Math.round(at * 1e6) / 1e6).replace("-", "−")}${label === undefined ? "" : `\t${label}`}`).join("\n");

/** Columns parted by tabs or semicolons, else by commas where there is no space and it is no decimal, else by spaces. */
function cellsOf(line: string): string[] {
  const text = line.trim();
  const by = /[\t;]/.test(text) ? /\s*[\t;]\s*/ : /\s/.test(text) || /^\d*,\d+$/.test(text) ? /,?\s+/ : /,/;
  return text.split(by).filter((cell) => cell !== "");
}

const isFigure = (cell: string | undefined): boolean => cell !== undefined && !("fault" in typedFigure(cell, "angle"));
