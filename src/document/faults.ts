// Everything that is wrong with a value as an instrument, and what of it is not understood.
import { check, type Notes } from "./check.ts";
import { INSTRUMENT } from "./definition.ts";
import { checkWhole } from "./whole.ts";
import { figure } from "./words.ts";

export function notesOn(file: unknown): Pick<Notes, "faults" | "unknown"> {
  const notes: Notes = { faults: [], unknown: [], ids: [], references: [], more: 0 };
  check(file, INSTRUMENT, "", notes);
  checkWhole(file, notes);
  if (notes.more > 0) notes.faults.push({ path: "", found: `${figure(notes.more)} more faults`, expected: "none" });
  return notes;
}
