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

/** Steps kept: weeks at the bench. Beyond them the oldest go, many at once, so that those kept stay where they lie. */
export const STEPS_KEPT = 2000;
const STEPS_OVER = 200;

export const NO_HISTORY: History = { past: [], future: [], savedAt: 0 };

export const isSaved = (history: History): boolean => history.savedAt === history.past.length;

/** Opened and never changed. */
export const isUntouched = ({ past, future }: History): boolean => past.length === 0 && future.length === 0;

/** Every step in the order in which they were done, the undone ones last. */
export const lineOf = ({ past, future }: History): readonly Step[] => [...past, ...future];

/** The history after a step from one value to another; unchanged where nothing changed. */
export function stepped<T>(history: History, from: T, to: T, says: string): History {
  const changes = difference(from, to);
  if (changes.length === 0) return history;
  const past = [...history.past, { says, changes }];
  const lost = history.savedAt !== null && history.savedAt > history.past.length;
  const over = past.length > STEPS_KEPT + STEPS_OVER ? past.length - STEPS_KEPT : 0;
  const savedAt = lost || history.savedAt === null ? null : history.savedAt - over;
  return { past: over > 0 ? past.slice(over) : past, future: [], savedAt: savedAt !== null && savedAt < 0 ? null : savedAt };
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

/** The value as it stood when so many steps lay in the past. */
export function stoodAt<T>(history: History, value: T, steps: number): { readonly history: History; readonly value: T } {
  let at = { history, value };
  while (at.history.past.length !== steps) {
    const next = at.history.past.length > steps ? undone(at.history, at.value) : redone(at.history, at.value);
    if (!next) break;
    at = next;
  }
  return at;
}

/** The history now, once it has been saved as it was then: steps made while a file was being written are not in it. */
export function savedThen(now: History, then: History): History {
  const steps = then.past.length;
  const reachable = steps === 0 || lineOf(now)[steps - 1] === then.past[steps - 1];
  return { ...now, savedAt: reachable ? steps : null };
}
