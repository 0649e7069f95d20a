// The shelf: every instrument that is kept in this browser, with its steps and its day book, in IndexedDB. A write is one
// transaction, all or nothing, and carries the stamp that its writer last saw: where another has written since, nothing
// is written. Steps and entries are single records, so that a step costs what it is, not what lies before it.
import type { DayBookEntry } from "../../geometry/index.ts";
import type { Step } from "./history.ts";

export interface Held {
  readonly id: string;
  readonly name: string;
  /** The instrument as its file would be. */
  readonly text: string;
  /** Written so many times. */
  readonly stamp: number;
  readonly touchedMs: number;
  /** Opened and never changed: it goes when another is opened. */
  readonly passing: boolean;
  /** When it was deleted; null: it was not. */
  readonly deletedMs: number | null;
  readonly file: string | null;
  /** The browser's own handle on that file, where it has such. */
  readonly handle?: unknown;
  /** How many of its steps are done, the rest undone, and at how many it was saved. */
  readonly done: number;
  readonly savedAt: number | null;
}
export interface Line {
  readonly steps: readonly Step[];
  readonly book: readonly DayBookEntry[];
}
export type Writing = Omit<Held, "stamp" | "deletedMs"> & Line;

export interface Shelf {
  list(): Promise<readonly Held[]>;
  read(id: string): Promise<(Held & Line) | null>;
  /** `seen`: what was last written or read of it here; null for one that is new. Gives its stamp, or null where another has written. */
  write(writing: Writing, seen: Line & { readonly stamp: number } | null): Promise<number | null>;
  /** Changes what is said of one, or takes it away for good. */
  change(id: string, change: (held: Held) => Held | null): Promise<void>;
}

const NAME = "endshake";
const HELD = "instruments", STEPS = "steps", BOOK = "book";

export function browserShelf(factory: () => IDBFactory): Shelf {
  let opening: Promise<IDBDatabase> | null = null;
  /** A failure to open is not remembered: the next step tries again. */
  const open = () => (opening ??= opened(factory).then((db) => {
    db.onclose = () => { opening = null; };
    db.onversionchange = () => { db.close(); opening = null; };
    return db;
  }).catch((fault: unknown) => { opening = null; throw fault; }));
  const within = async <T>(mode: IDBTransactionMode, work: (tx: IDBTransaction) => Promise<T>): Promise<T> => {
    const tx = (await open()).transaction([HELD, STEPS, BOOK], mode, { durability: "strict" });
    const ended = new Promise<void>((done, failed) => {
      tx.oncomplete = () => done();
      tx.onabort = () => failed(tx.error ?? new DOMException("the store gave up", "AbortError"));
    });
    const [result] = await Promise.all([work(tx), ended]);
    return result;
  };
  return {
    list: () => within("readonly", (tx) => asked<Held[]>(tx.objectStore(HELD).getAll())),
    read: (id) => within("readonly", async (tx) => {
      const [held, steps, book] = await Promise.all([
        asked<Held | undefined>(tx.objectStore(HELD).get(id)), asked<Step[]>(tx.objectStore(STEPS).getAll(from(id, 0))),
        asked<DayBookEntry[]>(tx.objectStore(BOOK).getAll(from(id, 0))),
      ]);
      return held ? { ...held, steps, book } : null;
    }),
    write: ({ steps, book, ...writing }, seen) => within("readwrite", async (tx) => {
      const there = await asked<Held | undefined>(tx.objectStore(HELD).get(writing.id));
      if (there && there.stamp !== seen?.stamp) return null;
      const stamp = (there?.stamp ?? 0) + 1;
      putTail(tx.objectStore(STEPS), writing.id, steps, there ? sameUntil(steps, seen?.steps ?? []) : 0);
      putTail(tx.objectStore(BOOK), writing.id, book, there ? sameUntil(book, seen?.book ?? []) : 0);
      tx.objectStore(HELD).put({ ...writing, passing: writing.passing && there?.passing !== false, stamp, deletedMs: null } satisfies Held);
      return stamp;
    }),
    change: (id, change) => within("readwrite", async (tx) => {
      const there = await asked<Held | undefined>(tx.objectStore(HELD).get(id));
      if (!there) return;
      const next = change(there);
      if (next === there) return;
      if (next) return void tx.objectStore(HELD).put({ ...next, stamp: there.stamp + 1 });
      tx.objectStore(HELD).delete(id);
      for (const name of [STEPS, BOOK]) tx.objectStore(name).delete(from(id, 0));
    }),
  };
}

/** How many at the beginning are the very same. */
export function sameUntil<T>(a: readonly T[], b: readonly T[]): number {
  let at = 0;
  while (at < a.length && at < b.length && a[at] === b[at]) at++;
  return at;
}

function putTail(store: IDBObjectStore, id: string, all: readonly unknown[], same: number): void {
  store.delete(from(id, same));
  for (let i = same; i < all.length; i++) store.put(all[i], [id, i]);
}

const from = (id: string, at: number): IDBKeyRange => IDBKeyRange.bound([id, at], [id, Infinity]);

const asked = <T>(request: IDBRequest): Promise<T> => new Promise((give, fail) => {
  request.onsuccess = () => give(request.result as T);
  request.onerror = () => fail(request.error ?? new DOMException("the store gave nothing", "UnknownError"));
});

const opened = async (factory: () => IDBFactory): Promise<IDBDatabase> => {
  const request = factory().open(NAME, 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore(HELD, { keyPath: "id" });
    request.result.createObjectStore(STEPS);
    request.result.createObjectStore(BOOK);
  };
  return asked<IDBDatabase>(request);
};
