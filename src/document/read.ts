// Reads an instrument file: whole, or refused whole with every fault. Never throws.
import type { Instrument } from "../../geometry/index.ts";
import { isFields, own } from "./check.ts";
import type { Fault } from "./check.ts";
import { FORMAT, MOST_BYTES, MOST_NESTING } from "./definition.ts";
import { notesOn } from "./faults.ts";
import { nesting, whereBroken } from "./syntax.ts";
import { expected, figure, found } from "./words.ts";

export type Read =
  | { readonly ok: true; readonly instrument: Instrument; /** Paths of fields kept but not understood. */ readonly unknown: string[] }
  | { readonly ok: false; readonly refused: Fault[] };

export function readInstrument(text: string): Read {
  const parsed = parse(text);
  if (!parsed.ok) return refuse([parsed.fault]);
  const file = parsed.value;
  const format = own(file, "endshake");
  if (typeof format === "number" && Number.isFinite(format) && format > FORMAT)
    return refuse([{ path: "endshake", found: found(format), expected: expected({ is: "format", number: FORMAT }, format) }]);
  const notes = notesOn(file);
  if (notes.faults.length > 0) return refuse(notes.faults);
  return { ok: true, instrument: withEmptyLists(file) as Instrument, unknown: notes.unknown };
}

type Parsed = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly fault: Fault };

function parse(text: string): Parsed {
  const fail = (what: string, wanted: string): Parsed => ({ ok: false, fault: { path: "", found: what, expected: wanted } });
  if (text.length > MOST_BYTES || new TextEncoder().encode(text).length > MOST_BYTES)
    return fail("a file of more than 5 MiB", "at most 5 MiB");
  const bare = text.replace(/^\uFEFF/, "");
  const depth = nesting(bare);
  if (depth > MOST_NESTING)
    return fail(`lists and objects ${figure(depth)} deep`, `at most ${MOST_NESTING} inside one another`);
  try {
    return { ok: true, value: JSON.parse(bare) };
  } catch {
    const at = whereBroken(bare);
    if (at === null) return fail("something that is not JSON", "an instrument file in JSON");
    return fail(`${at.found.replace(/[\u0000-\u001f]/g, (c) => JSON.stringify(c).slice(1, -1))} at line ${figure(at.line)}, column ${figure(at.column)}`, at.expected);
  }
}

const refuse = (refused: Fault[]): Read => ({ ok: false, refused });

/** Puts in the lists that a file may leave out, so that nobody after this has to ask. */
function withEmptyLists(file: unknown): unknown {
  const frame = own(file, "frame");
  if (!isFields(file) || !isFields(frame)) return file;
  return { ...file, frame: { plates: [], pillars: [], ...frame } };
}
