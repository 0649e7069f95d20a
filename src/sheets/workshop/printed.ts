// Which marks were printed of each sheet of an instrument, kept in the browser's small storage. It may be full or
// forbidden; then nothing is known to be stale.
import { keepOf } from "../../state/keeping.ts";

const KEY = "endshake.printed";

export type Printed = Readonly<Record<string, string>>;

/** By sheet id, for the instrument of a name. */
export function printedOf(name: string): Printed {
  const marks = all()[name];
  return typeof marks === "object" && marks !== null ? Object.fromEntries(Object.entries(marks).filter((e): e is [string, string] => typeof e[1] === "string")) : {};
}

export function keepPrinted(name: string, marks: Printed): void {
  try {
    keepOf(() => localStorage).setItem(KEY, JSON.stringify({ ...all(), [name]: { ...printedOf(name), ...marks } }));
  } catch {
    // Printed all the same.
  }
}

function all(): Record<string, unknown> {
  try {
    const kept: unknown = JSON.parse(keepOf(() => localStorage).getItem(KEY) ?? "{}");
    return typeof kept === "object" && kept !== null && !Array.isArray(kept) ? { ...kept } : {};
  } catch {
    return {};
  }
}
