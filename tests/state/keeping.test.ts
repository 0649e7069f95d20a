import { describe, expect, it } from "vitest";
import { writeInstrument } from "../../src/document/index.ts";
import { NO_HISTORY, stepped } from "../../src/state/history.ts";
import { earlierTaken, earlierWork, keepChoices, keepOf, keepStanding, keptChoices, keptStanding } from "../../src/state/keeping.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";
import { storeOf } from "./shelf.ts";

const moved = { ...SLIPWAY, name: "Slipway clock, moved" };
const history = stepped(NO_HISTORY, SLIPWAY, moved, "named");

describe("work that an earlier version kept", () => {
  it("is read whole, with what can be undone, until it has been taken over", () => {
    const store = storeOf();
    store.setItem("endshake.work", JSON.stringify({ text: writeInstrument(moved), history, file: "slipway.instrument.json", sheet: "dials" }));
    expect(earlierWork(store)).toEqual({ instrument: moved, history, file: "slipway.instrument.json" });
    earlierTaken(store, true);
    expect(earlierWork(store)).toBeNull();
    expect(store.held.size).toBe(0);
  });

  it("is passed over where the store holds nonsense", () => {
    for (const text of ["", "{", "[]", "null", '{"text": 5}']) {
      const store = storeOf();
      store.setItem("endshake.work", text);
      expect(earlierWork(store)).toBeNull();
    }
  });

  it("is refused with its faults once, as a file is, and its text stays", () => {
    const store = storeOf();
    store.setItem("endshake.work", JSON.stringify({ text: '{"endshake": 99}' }));
    expect(earlierWork(store)).toMatchObject({ refused: [{ path: "endshake" }] });
    earlierTaken(store, false);
    expect(earlierWork(store)).toBeNull();
    expect([...store.held.values()].join()).toContain("99");
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

  it("cost nothing where the store is full or forbidden", () => {
    expect(() => keepChoices(storeOf(3), { units: "mm", look: "light", singleKeys: true })).not.toThrow();
    const forbidden = keepOf(() => { throw new DOMException("no", "SecurityError"); });
    expect(keptChoices(forbidden)).toEqual({});
  });
});

describe("where a tab was", () => {
  it("comes back, and nonsense is passed over", () => {
    const store = storeOf();
    const standing = { id: "a", sheet: "dials", chosen: "B", turns: 12.5 };
    keepStanding(store, standing);
    expect(keptStanding(store)).toEqual(standing);
    store.setItem("endshake.standing", '{"id": "a", "turns": "many", "chosen": 4}');
    expect(keptStanding(store)).toEqual({ id: "a", sheet: "", chosen: null, turns: 0 });
    store.setItem("endshake.standing", '{"id": 3}');
    expect(keptStanding(store)).toBeNull();
  });
});
