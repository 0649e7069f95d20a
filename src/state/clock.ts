// How many turns the crank has made. It changes sixty times a second, so it lives outside every screen part: they
// subscribe and write into the page themselves.

export interface Clock {
  turns(): number;
  set(turns: number): void;
  /** Called after every change; gives back how to stop. */
  subscribe(hear: () => void): () => void;
  running(): boolean;
  /** Runs at so many turns a second; with `toothOf` above 0 it goes by whole teeth of so many a turn. */
  run(turnsPerSecond: number, toothOf?: number): void;
  stop(): void;
}

export interface Frames {
  /** Calls back once with a time in milliseconds; gives back how to cancel. */
  next(call: (ms: number) => void): () => void;
}

/** Farther than any maker cranks, and near enough for doubles to hold a ten-millionth of a turn. */
export const MOST_TURNS = 1e8;

export function createClock(frames: Frames): Clock {
  const hearers = new Set<() => void>();
  let turns = 0;
  let cancel: (() => void) | null = null;
  const tell = () => { for (const hear of hearers) hear(); };
  const set = (to: number) => {
    const next = Number.isFinite(to) ? Math.min(MOST_TURNS, Math.max(-MOST_TURNS, to)) : turns;
    if (next === turns) return;
    turns = next;
    tell();
  };
  const stop = () => {
    if (!cancel) return;
    cancel();
    cancel = null;
    tell();
  };
  const run = (turnsPerSecond: number, toothOf = 0) => {
    cancel?.();
    const start = turns;
    let startMs: number | null = null;
    const frame = (ms: number) => {
      startMs ??= ms;
      cancel = frames.next(frame);
      const made = ((ms - startMs) / 1000) * turnsPerSecond;
      set(toothOf > 0 ? start + Math.floor(made * toothOf) / toothOf : start + made);
    };
    cancel = frames.next(frame);
    tell();
  };
  return {
    turns: () => turns, set, run, stop, running: () => cancel !== null,
    subscribe: (hear) => { hearers.add(hear); return () => { hearers.delete(hear); }; },
  };
}

/** On or back by whole teeth of a wheel of so many; a place that is on a tooth stays on teeth, without drift. */
export function toothOn(turns: number, teeth: number, by: number): number {
  const at = turns * teeth, whole = Math.round(at);
  return ((Math.abs(at - whole) < 1e-6 ? whole : at) + by) / teeth;
}
