import { describe, expect, it } from "vitest";
import { plantArbor } from "../../src/commands/planting.ts";
import { readInstrument, writeInstrument } from "../../src/document/index.ts";
import { createActions } from "../../src/state/actions.ts";
import { NO_HISTORY, stepped } from "../../src/state/history.ts";
import { copyName, createKeeper, FORBIDDEN, FULL, OPEN_ELSEWHERE, PUT_BACK_DAYS, wouldLose } from "../../src/state/keeper.ts";
import type { Keep } from "../../src/state/keeping.ts";
import { createStateStore } from "../../src/state/store.ts";
import type { Tabs } from "../../src/state/tabs.ts";
import { createWorker } from "../../src/state/worked.ts";
import { type Examined, examineWorked, type Examining } from "../../src/workers/examining.ts";
import { latestOnly } from "../../src/workers/latest.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";
import { roomOfTabs, shelfOf, storeOf } from "./shelf.ts";

const quiet = () => new Promise<void>((done) => { setTimeout(done, 5); });
const DAY_MS = 86_400_000;

/** A browser: tabs opened in it share the shelf and the locks. */
function browser(shelf = shelfOf(), tabs: () => Tabs = roomOfTabs()) {
  const clock = { nowMs: Date.UTC(2026, 0, 13, 12) };
  const openTab = async (keep: Keep = storeOf(), wanted: string | null = null) => {
    const far = latestOnly<Examining, Examined>({ ask: () => Promise.reject(new Error("not asked")) });
    const store = createStateStore(createWorker({ near: Promise.resolve(examineWorked), far }, () => 0));
    const nowMs = () => clock.nowMs;
    const actions = createActions(store, nowMs);
    const keeper = createKeeper({ store, actions, shelf, tabs: tabs(), nowMs });
    const opened = await keeper.start(keep, wanted);
    await quiet();
    return { store, actions, keeper, opened, move: (x: number) => actions.run(plantArbor, { arbor: "B", x, y: 0 }) };
  };
  return { shelf, openTab, clock };
}
const xOf = (text: string) => {
  const read = readInstrument(text);
  return read.ok ? read.instrument.arbors.find((a) => a.id === "B")?.x : null;
};

describe("the keeper", () => {
  it("keeps every step as it is made, with its name, and opens it again as it was", async () => {
    const { shelf, openTab } = browser();
    const tab = await openTab();
    tab.actions.open(SLIPWAY, "slipway.instrument.json");
    for (const x of [31, 32, 33]) {
      tab.move(x);
      await tab.keeper.settled();
      expect([...shelf.held.values()].map((h) => xOf(h.text))).toEqual([x]);
      expect(tab.store.getState()).toMatchObject({ kept: true, notKept: null });
    }
    tab.actions.undo();
    await tab.keeper.settled();
    tab.actions.putAway();
    await quiet();
    const later = await openTab();
    expect(later.opened).toBe(true);
    const { history, file, instrument } = later.store.getState();
    expect(instrument?.arbors.find((a) => a.id === "B")?.x).toBe(32);
    expect([history.past.length, history.future.length, history.savedAt, file]).toEqual([2, 1, 0, "slipway.instrument.json"]);
    later.actions.goTo(0);
    expect(later.store.getState().instrument).toEqual(SLIPWAY);
  });

  it("writes everything in the day book, undoing too, and keeps it", async () => {
    const { openTab } = browser();
    const tab = await openTab();
    tab.actions.open(SLIPWAY, null);
    tab.move(31);
    tab.actions.undo();
    tab.actions.redo();
    await tab.keeper.settled();
    tab.actions.putAway();
    await quiet();
    const later = await openTab();
    expect(later.store.getState().book).toEqual(["B planted", "undone: B planted", "done again: B planted"].map((says) => ({ at: "2026-01-13T12:00:00.000Z", says })));
  });

  it("drops what was opened and never changed, once another is opened", async () => {
    const { shelf, openTab } = browser();
    const tab = await openTab();
    tab.actions.open(SLIPWAY, null);
    await tab.keeper.settled();
    expect(shelf.held.size).toBe(1);
    tab.actions.open({ ...SLIPWAY, name: "Ferry clock" }, null);
    await quiet();
    expect([...shelf.held.values()].map((h) => h.name)).toEqual(["Ferry clock"]);
  });

  it("takes over earlier work once, and only then lets it go", async () => {
    const { shelf, openTab } = browser();
    const store = storeOf();
    const moved = { ...SLIPWAY, name: "Slipway clock, moved" };
    store.setItem("endshake.work", JSON.stringify({ text: writeInstrument(moved), history: stepped(NO_HISTORY, SLIPWAY, moved, "named"), file: null }));
    shelf.fault = "QuotaExceededError";
    const full = await openTab(store);
    expect(full.store.getState().instrument).toEqual(moved);
    expect(store.held.size).toBe(1);
    full.actions.putAway();
    shelf.fault = null;
    await openTab(store);
    await quiet();
    expect(store.held.size).toBe(0);
    expect([...shelf.held.values()].map((h) => [h.name, h.steps.length])).toEqual([["Slipway clock, moved", 1]]);
  });
});

describe("a store that is full or refused", () => {
  for (const [fault, says] of [["QuotaExceededError", FULL], ["SecurityError", FORBIDDEN]] as const)
    it(`is said at once (${fault}), the work stays, and it is kept as soon as it can be`, async () => {
      const { shelf, openTab } = browser();
      const tab = await openTab();
      tab.actions.open(SLIPWAY, null);
      await tab.keeper.settled();
      shelf.fault = fault;
      tab.move(31);
      await tab.keeper.settled();
      expect(tab.store.getState()).toMatchObject({ kept: false, notKept: says });
      expect(wouldLose(tab.store.getState())).toBe(true);
      expect(tab.store.getState().instrument?.arbors.find((a) => a.id === "B")?.x).toBe(31);
      shelf.fault = null;
      tab.keeper.again();
      await tab.keeper.settled();
      expect(tab.store.getState()).toMatchObject({ kept: true, notKept: null });
      expect(wouldLose(tab.store.getState())).toBe(false);
      expect([...shelf.held.values()].map((h) => xOf(h.text))).toEqual([31]);
    });
});

describe("a second tab on the same instrument", () => {
  const two = async () => {
    const all = browser();
    const first = await all.openTab();
    first.actions.open(SLIPWAY, "slipway.instrument.json");
    first.move(31);
    await first.keeper.settled();
    const second = await all.openTab();
    return { ...all, first, second };
  };

  it("says so, shows what the first does, and writes nothing", async () => {
    const { shelf, first, second } = await two();
    expect(second.store.getState()).toMatchObject({ elsewhere: true, shelf: first.store.getState().shelf });
    first.move(32);
    await first.keeper.settled();
    await quiet();
    expect(second.store.getState().instrument?.arbors.find((a) => a.id === "B")?.x).toBe(32);
    expect(second.store.getState().elsewhere).toBe(true);
    expect(shelf.held.size).toBe(1);
  });

  it("makes a copy of its own at the first step, and the first's work stands", async () => {
    const { shelf, first, second } = await two();
    second.move(40);
    await quiet();
    first.move(33);
    await quiet();
    expect([...shelf.held.values()].map((h) => [h.name, xOf(h.text)])).toEqual([[SLIPWAY.name, 33], [`${SLIPWAY.name}, copy`, 40]]);
    expect(second.store.getState()).toMatchObject({ elsewhere: false, kept: true, file: null });
    expect(second.store.getState().saying).toContain("open in another tab");
    second.actions.undo();
    expect(second.store.getState().instrument?.name).toBe(`${SLIPWAY.name}, copy`);
  });

  it("has it in hand once the first has put it away", async () => {
    const { first, second } = await two();
    first.move(35);
    first.actions.putAway();
    await quiet();
    expect(second.store.getState()).toMatchObject({ elsewhere: false });
    second.move(36);
    await second.keeper.settled();
    expect(second.store.getState()).toMatchObject({ kept: true, file: "slipway.instrument.json" });
    expect(second.store.getState().history.past.length).toBe(3);
  });

  it("never overwrites, even where there are no locks: the stamp on the shelf is another", async () => {
    const { shelf, first } = await two();
    const [id] = shelf.held.keys();
    await shelf.change(id!, (h) => ({ ...h, text: h.text.replace("31", "34") }));
    first.move(50);
    await quiet();
    expect([...shelf.held.values()].map((h) => xOf(h.text)).sort()).toEqual([34, 50]);
    expect(first.store.getState().saying).toContain("changed in another tab");
  });

  it("that only seemed to be there costs nothing: what is new is kept once the lock comes, however late", async () => {
    const late: Tabs = {
      hold: (_, ours, theirs) => {
        theirs();
        const coming = setTimeout(ours, 2);
        return () => clearTimeout(coming);
      },
      held: async () => new Set(), tell: () => {}, hear: () => {},
    };
    const { shelf, openTab } = browser(shelfOf(), () => late);
    const tab = await openTab();
    tab.actions.open(SLIPWAY, null);
    await quiet();
    await tab.keeper.settled();
    expect(tab.store.getState()).toMatchObject({ elsewhere: false, kept: true });
    expect(shelf.held.size).toBe(1);
  });

  it("may not rename or delete what the first has in hand", async () => {
    const { shelf, second } = await two();
    const [id] = shelf.held.keys();
    expect(await second.keeper.rename(id!, "Mine")).toBe(OPEN_ELSEWHERE);
    expect(await second.keeper.remove(id!)).toBe(OPEN_ELSEWHERE);
    expect(shelf.held.get(id!)).toMatchObject({ name: SLIPWAY.name, deletedMs: null });
  });
});

describe("the shelf", () => {
  const one = async () => {
    const all = browser();
    const tab = await all.openTab();
    tab.actions.open(SLIPWAY, null);
    tab.move(31);
    await tab.keeper.settled();
    return { ...all, tab, id: tab.store.getState().shelf! };
  };

  it("copies an instrument with its steps under another name, in no file", async () => {
    const { shelf, tab, id } = await one();
    await tab.keeper.copy(id);
    const [, copy] = [...shelf.held.values()];
    expect(copy).toMatchObject({ name: `${SLIPWAY.name}, copy`, file: null, savedAt: null, passing: false });
    expect(readInstrument(copy!.text)).toMatchObject({ instrument: { name: `${SLIPWAY.name}, copy` } });
    expect(copy!.steps).toEqual(shelf.held.get(id)!.steps);
  });

  it("renames one in hand as a step, and one that is not in its text", async () => {
    const { shelf, tab, id } = await one();
    await tab.keeper.copy(id);
    const other = [...shelf.held.keys()].find((k) => k !== id)!;
    expect(await tab.keeper.rename(other, "Ebb clock")).toBeNull();
    expect(shelf.held.get(other)?.text).toContain("Ebb clock");
    expect(await tab.keeper.rename(id, "Flood clock")).toBeNull();
    expect(shelf.held.get(id)?.name).toBe("Flood clock");
    tab.actions.undo();
    expect(tab.store.getState().instrument?.name).toBe(SLIPWAY.name);
  });

  it("deletes with undo: put away, put back, and gone for good only when asked or after its days", async () => {
    const { shelf, tab, id, openTab, clock } = await one();
    expect(await tab.keeper.remove(id)).toBeNull();
    await quiet();
    expect(tab.store.getState().instrument).toBeNull();
    expect((await openTab()).opened).toBe(false);
    await tab.keeper.putBack(id);
    const other = await openTab();
    expect(other.opened).toBe(true);
    expect(await tab.keeper.remove(id)).toBe(OPEN_ELSEWHERE);
    expect(await other.keeper.remove(id)).toBeNull();
    clock.nowMs += (PUT_BACK_DAYS + 1) * DAY_MS;
    await browser(shelf).openTab();
    expect(shelf.held.size).toBe(1);
    const later = browser(shelf);
    later.clock.nowMs = clock.nowMs;
    await later.openTab();
    await quiet();
    expect(shelf.held.size).toBe(0);
  });

  it("numbers copies of copies", () => {
    expect(["Ebb", "Ebb, copy", "Ebb, copy 2"].map(copyName)).toEqual(["Ebb, copy", "Ebb, copy 2", "Ebb, copy 3"]);
  });
});
