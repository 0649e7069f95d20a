// What was done and can be undone: diffs with names, newest last. Pure; the instrument itself is not in here.
import { type Change, applyChanges, difference, reversedChanges } from "../commands/diff.ts";

export interface Step {
  /** The few words after "Undo:". */
  readonly says: string;
  readonly changes: readonly Change[];
}
export interface History {
  readonly past: readonly Step[];
  /** What was undone, the next to be done again first. */
  readonly future: readonly Step[];
  /** How many steps lay in the past when it was last saved; null: that state cannot be reached any more. */
  readonly savedAt: number | null;
}

/** Steps kept: far more than a sitting at the bench, and a bound on what the store holds. */
export const STEPS_KEPT = 400;

export const NO_HISTORY: History = { past: [], future: [], savedAt: 0 };

export const isSaved = (history: History): boolean => history.savedAt === history.past.length;

/** The history after a step from one value to another; unchanged where nothing changed. */
export function stepped<T>(history: History, from: T, to: T, says: string): History {
  const changes = difference(from, to);
  if (changes.length === 0) return history;
  const past = [...history.past, { says, changes }];
  const lost = history.savedAt !== null && history.savedAt > history.past.length;
  const over = Math.max(0, past.length - STEPS_KEPT);
  const savedAt = lost || history.savedAt === null ? null : history.savedAt - over;
  return { past: past.slice(over), future: [], savedAt: savedAt !== null && savedAt < 0 ? null : savedAt };
}

/** The value one step back, or null where there is none. */
export function undone<T>(history: History, value: T): { readonly history: History; readonly value: T } | null {
  const step = history.past.at(-1);
  if (!step) return null;
  return {
    value: applyChanges(value, reversedChanges(step.changes)),
    history: { ...history, past: history.past.slice(0, -1), future: [step, ...history.future] },
  };
}

/** The value one step on again, or null where nothing was undone. */
export function redone<T>(history: History, value: T): { readonly history: History; readonly value: T } | null {
  const [step, ...future] = history.future;
  if (!step) return null;
  return { value: applyChanges(value, step.changes), history: { ...history, past: [...history.past, step], future } };
}

export const savedNow = (history: History): History => ({ ...history, savedAt: history.past.length });
