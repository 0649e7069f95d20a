// Which tab has an instrument in hand. The browser's own locks say it, and let go by themselves when a tab ends, however
// it ends; where a browser has none, the stamps on the shelf alone keep one tab from writing over another.

export interface Tabs {
  /** Asks for an instrument: `ours` once no other tab has it, `theirs` if one has. Gives back how to let go. */
  hold(id: string, ours: () => void, theirs: () => void): () => void;
  /** Ids that any tab has in hand. */
  held(): Promise<ReadonlySet<string>>;
  /** Tells every other tab that something of this instrument was written. */
  tell(id: string): void;
  hear(told: (id: string) => void): void;
}

const PREFIX = "endshake.instrument.";
/** A page that is loaded afresh may meet its own lock of a moment ago. */
const PATIENCE_MS = 400;

export function browserTabs(locks: LockManager | undefined, channel: BroadcastChannel | null): Tabs {
  return {
    hold(id, ours, theirs) {
      if (!locks) {
        ours();
        return () => {};
      }
      const giveUp = new AbortController();
      let letGo: () => void = () => {};
      const until = new Promise<void>((done) => { letGo = done; });
      let waiting = true;
      // A slow machine may be late with a lock that nobody holds.
      const patience = setTimeout(() => void locks.query().then(({ held }) => {
        if (waiting && held?.some(({ name }) => name === PREFIX + id)) theirs();
      }), PATIENCE_MS);
      locks.request(PREFIX + id, { signal: giveUp.signal }, () => {
        waiting = false;
        clearTimeout(patience);
        ours();
        return until;
      }).catch(() => { waiting = false; });
      return () => {
        waiting = false;
        clearTimeout(patience);
        giveUp.abort();
        letGo();
      };
    },
    held: async () => new Set((await locks?.query())?.held?.flatMap(({ name }) => (name?.startsWith(PREFIX) ? [name.slice(PREFIX.length)] : [])) ?? []),
    tell: (id) => channel?.postMessage(id),
    hear: (told) => channel?.addEventListener("message", ({ data }) => { if (typeof data === "string") told(data); }),
  };
}
