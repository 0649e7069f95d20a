import { describe, expect, it } from "vitest";
import { type Keep, keepChoices, keepWork, keptChoices, keptWork, NOT_KEPT, type Work } from "../../src/state/keeping.ts";
import { NO_HISTORY, stepped } from "../../src/state/history.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

/** A store that holds so many characters. */
function storeOf(room = Infinity): Keep & { readonly held: Map<string, string> } {
  const held = new Map<string, string>();
  return {
    held,
    getItem: (key) => held.get(key) ?? null,
    removeItem: (key) => { held.delete(key); },
    setItem: (key, value) => {
      if (value.length > room) throw new DOMException("full", "QuotaExceededError");
      held.set(key, value);
    },
  };
}

const moved = { ...SLIPWAY, name: "Slipway clock, moved" };
const WORK: Work = {
  instrument: moved, history: stepped(NO_HISTORY, SLIPWAY, moved, "named"), file: "slipway.instrument.json",
  sheet: "dials", chosen: "B", turns: 12.5,
};

describe("work in hand", () => {
  it("comes back whole after a reload, with what can be undone", () => {
    const store = storeOf();
    expect(keepWork(store, WORK)).toBeNull();
    expect(keptWork(store)).toEqual(WORK);
  });

  it("is kept without its history where there is only room for that, and still says it is not saved", () => {
    const store = storeOf();
    keepWork(store, { ...WORK, history: NO_HISTORY });
    const without = [...store.held.values()][0]!.length;
    const small = storeOf(without + 20);
    const long = { ...WORK.history, past: Array.from({ length: 40 }, () => WORK.history.past[0]!) };
    expect(keepWork(small, { ...WORK, history: long })).toBeNull();
    expect(keptWork(small)).toMatchObject({ history: { past: [], future: [], savedAt: null } });
  });

  it("is said in words where the store is full", () => {
    expect(keepWork(storeOf(50), WORK)).toBe(NOT_KEPT);
  });

  it("is passed over where the store holds nonsense", () => {
    for (const text of ["", "{", "[]", "null", '{"text": 5}']) {
      const store = storeOf();
      store.setItem("endshake.work", text);
      expect(keptWork(store)).toBeNull();
    }
  });
});

describe("work that cannot be read any more", () => {
  it("is refused with its faults, as a file is", () => {
    const store = storeOf();
    store.setItem("endshake.work", JSON.stringify({ text: '{"endshake": 99}' }));
    const kept = keptWork(store);
    expect(kept).toMatchObject({ refused: [{ path: "endshake" }] });
  });
});

describe("the maker's choices", () => {
  it("are kept apart from the work, and nonsense among them is left out", () => {
    const store = storeOf();
    keepChoices(store, { units: "inch", look: "dark", singleKeys: false });
    expect(keptChoices(store)).toEqual({ units: "inch", look: "dark", singleKeys: false });
    store.setItem("endshake.choices", '{"units": "cubit", "look": 3, "singleKeys": true}');
    expect(keptChoices(store)).toEqual({ singleKeys: true });
  });
});
