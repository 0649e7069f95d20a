// What survives a reload: the work in hand, and the maker's own choices. Both are kept as text in a store that may be
// full, forbidden or hold nonsense; each of these is said or passed over, never thrown.
import type { Instrument } from "../../geometry/index.ts";
import { type Fault, readInstrument, writeInstrument } from "../document/index.ts";
import { type History, NO_HISTORY } from "./history.ts";
import type { SheetName, State } from "./state.ts";

/** The part of the browser's storage that is used. */
export interface Keep {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

export interface Work {
  readonly instrument: Instrument;
  readonly history: History;
  readonly file: string | null;
  readonly sheet: SheetName;
  readonly chosen: string | null;
  readonly turns: number;
}
export type Choices = Pick<State, "units" | "look" | "singleKeys">;

const WORK = "endshake.work";
const CHOICES = "endshake.choices";
const SHEETS: readonly SheetName[] = ["numbers", "calliper", "depthing", "dials"];

export const NOT_KEPT = "This browser has no room to keep the work in hand; save it to a file, or a reload will lose it.";

/** Null when kept, else a sentence that says it was not. */
export function keepWork(keep: Keep, work: Work): string | null {
  const { instrument, ...rest } = work;
  const text = writeInstrument(instrument);
  for (const history of [work.history, { ...NO_HISTORY, savedAt: isSavedAt(work.history) ? 0 : null }])
    try {
      keep.setItem(WORK, JSON.stringify({ ...rest, text, history }));
      return null;
    } catch {
      continue;
    }
  keep.removeItem(WORK);
  return NOT_KEPT;
}

/** The work kept before; what is wrong with it where it cannot be read any more; null where there is none. */
export function keptWork(keep: Keep): Work | { readonly refused: readonly Fault[] } | null {
  const kept = parsed(keep, WORK);
  if (!kept || typeof kept.text !== "string") return null;
  const read = readInstrument(kept.text);
  if ("refused" in read) return { refused: read.refused };
  return {
    instrument: read.instrument,
    history: isHistory(kept.history) ? kept.history : { ...NO_HISTORY, savedAt: null },
    file: typeof kept.file === "string" ? kept.file : null,
    sheet: SHEETS.find((s) => s === kept.sheet) ?? "calliper",
    chosen: typeof kept.chosen === "string" ? kept.chosen : null,
    turns: typeof kept.turns === "number" && Number.isFinite(kept.turns) ? kept.turns : 0,
  };
}

export function keepChoices(keep: Keep, { units, look, singleKeys }: Choices): void {
  try {
    keep.setItem(CHOICES, JSON.stringify({ units, look, singleKeys }));
  } catch {
    return; // a choice that is not kept is made again in one click; the work's own sentence says that the store is full
  }
}

export function keptChoices(keep: Keep): Partial<Choices> {
  const kept = parsed(keep, CHOICES);
  return {
    ...(kept?.units === "inch" || kept?.units === "mm" ? { units: kept.units } : {}),
    ...(kept?.look === "light" || kept?.look === "dark" ? { look: kept.look } : {}),
    ...(typeof kept?.singleKeys === "boolean" ? { singleKeys: kept.singleKeys } : {}),
  };
}

const isSavedAt = (history: History): boolean => history.savedAt === history.past.length;

function isHistory(value: unknown): value is History {
  const h = value as History | null;
  return typeof h === "object" && h !== null && [h.past, h.future].every((steps) => Array.isArray(steps)
    && steps.every((s) => typeof s?.says === "string" && Array.isArray(s.changes))) && (h.savedAt === null || Number.isInteger(h.savedAt));
}

function parsed(keep: Keep, key: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(keep.getItem(key) ?? "null");
    return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}
