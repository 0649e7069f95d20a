import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isSaved, lineOf, NO_HISTORY, redone, savedThen, STEPS_KEPT, stepped, stoodAt, undone, type History } from "../../src/state/history.ts";

interface Doc { readonly x: number }

/** Takes steps through a list of values and gives the history and the last value. */
const walk = (values: readonly number[], from: History = NO_HISTORY): { history: History; value: Doc } =>
  values.reduce(({ history, value }, x) => ({ history: stepped(history, value, { x }, `to ${x}`), value: { x } }), { history: from, value: { x: 0 } as Doc });

describe("history", () => {
  it("undoes and redoes through any steps to exactly the values that stood there", () => {
    fc.assert(fc.property(fc.array(fc.integer(), { maxLength: 30 }), (xs) => {
      let { history, value } = walk(xs);
      const end = value;
      const stood = [0, ...xs].filter((x, i, all) => i === 0 || x !== all[i - 1]);
      for (const x of stood.slice(0, -1).reverse()) {
        const back = undone(history, value);
        expect(back?.value).toEqual({ x });
        ({ history, value } = back!);
      }
      expect(undone(history, value)).toBeNull();
      for (let on = redone(history, value); on; on = redone(history, value)) ({ history, value } = on);
      expect(value).toEqual(end);
    }), { seed: 20260115, numRuns: 100 });
  });

  it("takes no step where nothing changed", () => {
    expect(walk([0, 0]).history).toBe(NO_HISTORY);
  });

  it("knows the saved state again after undoing and redoing past it", () => {
    const { history, value } = walk([1, 2]);
    const saved = savedThen(history, history);
    expect(isSaved(saved)).toBe(true);
    const back = undone(saved, value)!;
    expect(isSaved(back.history)).toBe(false);
    expect(isSaved(redone(back.history, back.value)!.history)).toBe(true);
  });

  it("never calls another branch saved once the saved one is lost", () => {
    const { history, value } = walk([1, 2]);
    const back = undone(savedThen(history, history), value)!;
    const other = stepped(back.history, back.value, { x: 9 }, "to 9");
    expect(other.past.length).toBe(history.past.length);
    expect(isSaved(other)).toBe(false);
  });

  it("keeps a bounded number of steps, and forgets a saved state older than they are", () => {
    const { history } = walk(Array.from({ length: STEPS_KEPT + 205 }, (_, i) => i + 1));
    expect(history.past.length).toBe(STEPS_KEPT + 4);
    expect(history.savedAt).toBeNull();
  });

  it("goes to where any number of steps lie in the past, back or on, and keeps every step", () => {
    const { history, value } = walk([1, 2, 3, 4]);
    const back = stoodAt(history, value, 1);
    expect(back.value).toEqual({ x: 1 });
    expect(stoodAt(back.history, back.value, 3).value).toEqual({ x: 3 });
    expect(lineOf(back.history)).toEqual(lineOf(history));
    expect(stoodAt(history, value, 99).value).toEqual({ x: 4 });
  });

  it("calls saved what was written, not the steps made while it was being written", () => {
    const then = walk([1, 2]);
    const later = stepped(then.history, then.value, { x: 3 }, "to 3");
    expect(isSaved(savedThen(later, then.history))).toBe(false);
    expect(isSaved(stoodAt(savedThen(later, then.history), { x: 3 }, 2).history)).toBe(true);
    const back = undone(then.history, then.value)!;
    const other = stepped(back.history, back.value, { x: 9 }, "to 9");
    expect(savedThen(other, then.history).savedAt).toBeNull();
  });
});
