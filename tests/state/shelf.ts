// Stand-ins for what a browser has: small storage of a given room, a shelf in memory that tabs share, and locks.
import type { Keep } from "../../src/state/keeping.ts";
import type { Held, Line, Shelf } from "../../src/state/shelf.ts";
import type { Tabs } from "../../src/state/tabs.ts";

/** A store that holds so many characters. */
export function storeOf(room = Infinity): Keep & { readonly held: Map<string, string> } {
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

/** A shelf in memory. While `fault` names an error, every write fails with it. */
export function shelfOf(): Shelf & { readonly held: Map<string, Held & Line>; fault: string | null } {
  const held = new Map<string, Held & Line>();
  const shelf: ReturnType<typeof shelfOf> = {
    held, fault: null,
    list: async () => [...held.values()],
    read: async (id) => structuredClone(held.get(id) ?? null),
    write: async (writing, seen) => {
      if (shelf.fault) throw new DOMException("refused", shelf.fault);
      const there = held.get(writing.id);
      if (there && there.stamp !== seen?.stamp) return null;
      const stamp = (there?.stamp ?? 0) + 1;
      held.set(writing.id, structuredClone({ ...writing, passing: writing.passing && there?.passing !== false, stamp, deletedMs: null }));
      return stamp;
    },
    change: async (id, change) => {
      const there = held.get(id);
      const next = there && change(there);
      if (next === null) held.delete(id);
      else if (there && next && next !== there) held.set(id, { ...there, ...next, stamp: there.stamp + 1 });
    },
  };
  return shelf;
}

/** Locks that several tabs share, and what each is told. */
export function roomOfTabs(): () => Tabs {
  const waiting = new Map<string, { readonly ours: () => void }[]>();
  const hearers: { readonly of: object; readonly told: (id: string) => void }[] = [];
  return () => {
    const me = {};
    return {
      hold(id, ours, theirs) {
        const line = waiting.get(id) ?? [];
        waiting.set(id, line);
        const mine = { ours };
        line.push(mine);
        queueMicrotask(line[0] === mine ? ours : theirs);
        return () => {
          const first = line[0] === mine;
          const at = line.indexOf(mine);
          if (at >= 0) line.splice(at, 1);
          if (first) line[0]?.ours();
        };
      },
      held: async () => new Set([...waiting].flatMap(([id, line]) => (line.length > 0 ? [id] : []))),
      tell: (id) => { for (const { of, told } of hearers) if (of !== me) told(id); },
      hear: (told) => { hearers.push({ of: me, told }); },
    };
  };
}
