// What the browser's small storage holds: the maker's own choices, where a tab was, and the work that earlier versions
// kept there. It may be full, forbidden or hold nonsense; each is passed over, never thrown.
import type { Instrument } from "../../geometry/index.ts";
import { type Fault, readInstrument } from "../document/index.ts";
import { type History, NO_HISTORY } from "./history.ts";
import type { State } from "./state.ts";

/** The part of the browser's storage that is used. */
export interface Keep {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

export type Choices = Pick<State, "units" | "look" | "singleKeys">;
/** Where a tab was in an instrument of the shelf. */
export interface Standing {
  readonly id: string;
  readonly sheet: string;
  readonly chosen: string | null;
  readonly turns: number;
}
export interface EarlierWork {
  readonly instrument: Instrument;
  readonly history: History;
  readonly file: string | null;
}

const WORK = "endshake.work";
/** Earlier work that cannot be read: said once, and left there for whoever wants its text. */
const UNREAD = "endshake.work.unread";
const CHOICES = "endshake.choices";
const STANDING = "endshake.standing";

/** Storage that may be forbidden altogether. */
export function keepOf(storage: () => Keep): Keep {
  try {
    return storage();
  } catch {
    return { getItem: () => null, setItem: () => {}, removeItem: () => {} };
  }
}

/** The work that an earlier version kept; what is wrong with it where it cannot be read any more; null where there is none. */
export function earlierWork(keep: Keep): EarlierWork | { readonly refused: readonly Fault[] } | null {
  const kept = parsed(keep, WORK);
  if (!kept || typeof kept.text !== "string") return null;
  const read = readInstrument(kept.text);
  if ("refused" in read) return { refused: read.refused };
  return {
    instrument: read.instrument,
    history: isHistory(kept.history) ? kept.history : { ...NO_HISTORY, savedAt: null },
    file: typeof kept.file === "string" ? kept.file : null,
  };
}

/** It has been taken over, or cannot be: it is not asked for again. */
export function earlierTaken(keep: Keep, readable: boolean): void {
  const text = keep.getItem(WORK);
  if (!readable && text !== null) put(keep, UNREAD, text);
  keep.removeItem(WORK);
}

export const keepChoices = (keep: Keep, { units, look, singleKeys }: Choices): void => put(keep, CHOICES, JSON.stringify({ units, look, singleKeys }));

export function keptChoices(keep: Keep): Partial<Choices> {
  const kept = parsed(keep, CHOICES);
  return {
    ...(kept?.units === "inch" || kept?.units === "mm" ? { units: kept.units } : {}),
    ...(kept?.look === "light" || kept?.look === "dark" ? { look: kept.look } : {}),
    ...(typeof kept?.singleKeys === "boolean" ? { singleKeys: kept.singleKeys } : {}),
  };
}

export const keepStanding = (keep: Keep, standing: Standing): void => put(keep, STANDING, JSON.stringify(standing));

export function keptStanding(keep: Keep): Standing | null {
  const kept = parsed(keep, STANDING);
  if (typeof kept?.id !== "string") return null;
  return {
    id: kept.id, sheet: typeof kept.sheet === "string" ? kept.sheet : "", chosen: typeof kept.chosen === "string" ? kept.chosen : null,
    turns: typeof kept.turns === "number" && Number.isFinite(kept.turns) ? kept.turns : 0,
  };
}

function put(keep: Keep, key: string, value: string): void {
  try {
    keep.setItem(key, value);
  } catch {
    return; // a choice that is not kept is made again in one click; what is kept on the shelf has its own sentence
  }
}

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
