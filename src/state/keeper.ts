// Keeps what is done: every step goes to the shelf as it is made, the newest at once after the one being written. It says
// when the shelf is full or refused, never writes over what another tab wrote, and opens, copies and takes away what is kept.
import type { Instrument } from "../../geometry/index.ts";
import { readInstrument, writeInstrument } from "../document/index.ts";
import { type Actions, freshId } from "./actions.ts";
import { isSaved, isUntouched, lineOf, type History } from "./history.ts";
import { earlierTaken, earlierWork, type Keep } from "./keeping.ts";
import type { Held, Line, Shelf, Writing } from "./shelf.ts";
import type { State } from "./state.ts";
import type { Store } from "./store.ts";
import type { Tabs } from "./tabs.ts";

export const FULL = "This browser has no room left to keep your work. It stands in memory: save it to a file, or delete what you kept and no longer want.";
export const FORBIDDEN = "This browser does not let Endshake keep anything. Your work stands in memory until the tab closes: save it to a file.";
export const OPEN_ELSEWHERE = "It is open in another tab; do it there.";
const IN_HAND_THERE = "is open in another tab, so what";
/** What was deleted can be put back so long; what was only looked at is dropped after a day. */
export const PUT_BACK_DAYS = 30;
const DAY_MS = 86_400_000;

export interface Keeper {
  /** Takes earlier work over, or opens what was last in hand, by preference the one of this id. False: there is none. */
  start(keep: Keep, wanted: string | null): Promise<boolean>;
  /** Everything asked for until now is written, or refused. */
  settled(): Promise<void>;
  again(): void;
  list(): Promise<readonly Held[]>;
  open(id: string): Promise<void>;
  /** Another of the same on the shelf; the one in hand stays in hand. */
  copy(id: string): Promise<void>;
  /** Null: done; else why not. */
  rename(id: string, name: string): Promise<string | null>;
  remove(id: string): Promise<string | null>;
  putBack(id: string): Promise<void>;
  removeForGood(id: string): Promise<void>;
  /** An instrument that is kept, for comparing. */
  look(id: string): Promise<Instrument | null>;
}
export interface Around {
  readonly store: Store;
  readonly actions: Actions;
  readonly shelf: Shelf;
  readonly tabs: Tabs;
  readonly nowMs: () => number;
}
interface Seen extends Line { readonly stamp: number }

export function createKeeper(around: Around): Keeper {
  const { store, actions, shelf, tabs, nowMs } = around;
  const seen = new Map<string, Seen>();
  /** Which instrument this tab has in hand, and whether no other has; null: not known yet. */
  let hold: { readonly id: string; ours: boolean | null; decided: Promise<void>; letGo: () => void } | null = null;
  const writer = createWriter(around, seen, (id) => hold?.id === id && hold.ours === null, () => becomeCopy());
  const { written } = writer;

  const ask = () => {
    const state = store.getState();
    if (!state.instrument || state.shelf === null || hold?.id !== state.shelf || hold.ours === false) return;
    writer.ask(writingOf(state, nowMs()));
  };
  const becomeCopy = (why = "was changed in another tab too. What") => {
    const name = store.getState().instrument?.name ?? "";
    actions.becomeCopy(copyName(name));
    actions.set({ saying: `“${name}” ${why} you do here is kept as a copy.` });
  };
  const take = (state: State) => {
    const before = hold;
    hold = null;
    if (before) void before.decided.then(written).then(before.letGo);
    const { shelf: id, instrument } = state;
    if (id === null) return;
    let decide = () => {};
    const mine = { id, ours: null as boolean | null, letGo: () => {}, decided: new Promise<void>((done) => { decide = done; }) };
    hold = mine;
    mine.letGo = tabs.hold(id, () => {
      const waited = mine.ours === false;
      mine.ours = true;
      decide();
      if (hold !== mine) return writer.run();
      store.setState({ elsewhere: false });
      if (waited) void readAgain(id).then(ask);
      else ask();
    }, () => {
      mine.ours = false;
      decide();
      writer.forget(id);
      if (hold !== mine) return;
      store.setState({ elsewhere: true, kept: true });
      if (store.getState().instrument !== instrument) becomeCopy(IN_HAND_THERE);
    });
  };
  /** What the other tab has done meanwhile is shown here. */
  const readAgain = async (id: string) => {
    const held = await shelf.read(id).catch(() => null);
    if (held && store.getState().shelf === id && held.stamp !== seen.get(id)?.stamp) openHeld(held, true);
  };
  const openHeld = (held: Held & Line, again = false) => {
    const read = readInstrument(held.text);
    if ("refused" in read) return actions.refuse(held.name, read.refused);
    seen.set(held.id, { stamp: held.stamp, steps: held.steps, book: held.book });
    const { chosen } = store.getState();
    const handle = isHandle(held.handle) ? held.handle : null;
    actions.open(read.instrument, held.file, { shelf: held.id, history: historyOf(held), book: held.book, handle });
    if (again) store.setState({ chosen, elsewhere: hold?.ours === false });
  };
  const settled = async () => {
    await hold?.decided;
    await written();
  };

  store.subscribe((now, before) => {
    const same = now.shelf === before.shelf;
    if (!same) {
      // A copy made of what another tab has in hand leaves that one alone.
      const left = before.shelf;
      if (left !== null && before.instrument && isUntouched(before.history) && !before.elsewhere)
        void settled().then(() => shelf.change(left, (held) => (held.passing ? null : held))).catch(() => {});
      take(now);
    }
    if (now.instrument === before.instrument && now.history === before.history && now.book === before.book) return;
    if (same && now.elsewhere && before.elsewhere && now.instrument !== before.instrument) return becomeCopy(IN_HAND_THERE);
    ask();
  });
  tabs.hear((id) => { if (store.getState().elsewhere && store.getState().shelf === id) void readAgain(id); });

  return {
    settled, again: ask,
    start: (keep, wanted) => start(around, keep, wanted, openHeld, settled),
    list: () => shelf.list(),
    ...onShelf(around, settled, openHeld),
  };
}

/** Writes what is asked for, one after another, of each instrument only the newest; what has to wait stays until it is run again. */
function createWriter({ store, shelf, tabs }: Around, seen: Map<string, Seen>, waits: (id: string) => boolean, becomeCopy: () => void) {
  const pending = new Map<string, Writing>();
  let running: Promise<void> | null = null;
  const run = () => { running ??= drain().finally(() => { running = null; }); };
  const drain = async () => {
    for (;;) {
      const next = [...pending].find(([id]) => !waits(id));
      if (!next) return;
      pending.delete(next[0]);
      await put(next[1]);
    }
  };
  const put = async (writing: Writing): Promise<void> => {
    const { id } = writing;
    const inHand = () => store.getState().shelf === id;
    try {
      const stamp = await shelf.write(writing, seen.get(id) ?? null);
      if (stamp === null) return await overtaken(writing);
      seen.set(id, { stamp, steps: writing.steps, book: writing.book });
      tabs.tell(id);
      if (inHand()) store.setState({ kept: !pending.has(id), notKept: null });
    } catch (fault) {
      if (inHand()) store.setState({ notKept: refusalInWords(fault) });
    }
  };
  /** Another tab wrote it since: what was done here becomes a copy. */
  const overtaken = async (writing: Writing) => {
    if (store.getState().shelf === writing.id) return becomeCopy();
    await put({ ...writing, id: freshId(), name: copyName(writing.name), passing: false, file: null });
  };
  return {
    run,
    ask: (writing: Writing) => {
      pending.set(writing.id, writing);
      store.setState({ kept: false });
      if (!waits(writing.id)) run();
    },
    forget: (id: string) => { pending.delete(id); },
    written: async () => { while (running) await running; },
  };
}

/** What can be done to one on the shelf, in hand or not; never to one that another tab has. */
function onShelf(
  { store, shelf, tabs, actions, nowMs }: Around, settled: () => Promise<void>, openHeld: (held: Held & Line) => void,
): Pick<Keeper, "open" | "copy" | "rename" | "remove" | "putBack" | "removeForGood" | "look"> {
  const elsewhere = async (id: string) => {
    const { shelf: mine, elsewhere: theirs } = store.getState();
    return mine === id ? theirs : (await tabs.held()).has(id);
  };
  return {
    open: async (id) => {
      actions.keep();
      await settled();
      const held = await shelf.read(id);
      if (held) openHeld(held);
    },
    copy: async (id) => {
      await settled();
      const held = await shelf.read(id);
      const read = held && readInstrument(held.text);
      if (!held || !read?.ok) return;
      const name = copyName(held.name);
      await shelf.write({
        ...held, id: freshId(), name, text: writeInstrument({ ...read.instrument, name }), passing: false, file: null, handle: null, savedAt: null, touchedMs: nowMs(),
      }, null);
    },
    rename: async (id, name) => {
      if (await elsewhere(id)) return OPEN_ELSEWHERE;
      if (store.getState().shelf === id) {
        actions.run({ name: "Rename", run: (instrument) => ({ instrument: { ...instrument, name }, says: `named ${name}` }) }, null);
        await settled();
        return null;
      }
      await shelf.change(id, (held) => {
        const read = readInstrument(held.text);
        return read.ok ? { ...held, name, text: writeInstrument({ ...read.instrument, name }), passing: false, savedAt: null } : held;
      });
      return null;
    },
    remove: async (id) => {
      if (await elsewhere(id)) return OPEN_ELSEWHERE;
      actions.keep();
      await settled();
      await shelf.change(id, (held) => ({ ...held, passing: false, deletedMs: nowMs() }));
      if (store.getState().shelf === id) actions.putAway();
      return null;
    },
    putBack: (id) => shelf.change(id, (held) => ({ ...held, deletedMs: null })),
    removeForGood: (id) => shelf.change(id, () => null),
    look: async (id) => {
      const held = await shelf.read(id);
      const read = held && readInstrument(held.text);
      return read?.ok ? read.instrument : null;
    },
  };
}

async function start(
  { store, actions, shelf, tabs, nowMs }: Around, keep: Keep, wanted: string | null, openHeld: (held: Held & Line) => void, settled: () => Promise<void>,
): Promise<boolean> {
  const earlier = earlierWork(keep);
  if (earlier && "refused" in earlier) earlierTaken(keep, false);
  else if (earlier) {
    actions.open(earlier.instrument, earlier.file, { history: earlier.history });
    void settled().then(() => { if (store.getState().kept) earlierTaken(keep, true); });
    return true;
  }
  const all = await shelf.list().catch((fault: unknown) => { store.setState({ notKept: refusalInWords(fault) }); return []; });
  void prune(shelf, tabs, all, nowMs());
  const there = all.filter((h) => h.deletedMs === null).sort((a, b) => b.touchedMs - a.touchedMs);
  const last = there.find((h) => h.id === wanted) ?? there[0];
  const held = last && await shelf.read(last.id).catch(() => null);
  if (held) openHeld(held);
  if (earlier) actions.refuse("The work kept from before", earlier.refused);
  return store.getState().instrument !== null;
}

/** Takes away for good what was deleted long ago, and what was looked at and never changed. */
async function prune(shelf: Shelf, tabs: Tabs, all: readonly Held[], nowMs: number): Promise<void> {
  const inHand = await tabs.held();
  const over = (held: Held) => (held.deletedMs !== null ? nowMs - held.deletedMs > PUT_BACK_DAYS * DAY_MS : held.passing && nowMs - held.touchedMs > DAY_MS);
  for (const old of all.filter((held) => over(held) && !inHand.has(held.id)))
    await shelf.change(old.id, (held) => (over(held) ? null : held)).catch(() => {});
}

const writingOf = ({ instrument, history, shelf, book, file, handle }: State, touchedMs: number): Writing => ({
  id: shelf!, name: instrument!.name, text: writeInstrument(instrument!), touchedMs, passing: isUntouched(history),
  file, handle, done: history.past.length, savedAt: history.savedAt, steps: lineOf(history), book,
});

const historyOf = ({ steps, done, savedAt }: Held & Line): History => ({ past: steps.slice(0, done), future: steps.slice(done), savedAt });

/** "Slipway clock, copy", then "Slipway clock, copy 2" and on. */
export function copyName(name: string): string {
  const copied = /^(.*), copy(?: (\d+))?$/.exec(name);
  return copied ? `${copied[1]}, copy ${Number(copied[2] ?? 1) + 1}` : `${name}, copy`;
}

/** A browser that is full says so by this name; any other failure is a refusal. */
const refusalInWords = (fault: unknown): string => ((fault as Error | null)?.name === "QuotaExceededError" ? FULL : FORBIDDEN);

const isHandle = (value: unknown): value is NonNullable<State["handle"]> =>
  typeof value === "object" && value !== null && "file" in value && "changedMs" in value;

/** Whether closing the tab now would lose anything. */
export const wouldLose = ({ instrument, history, kept }: State): boolean => instrument !== null && !kept && !isUntouched(history) && !isSaved(history);
