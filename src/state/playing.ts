// Putting together as it is played: which step is in hand, and how high what goes in still hangs over its place. The
// height changes sixty times a second, so it lives outside every screen part, as the crank's turns do.
import type { Frames } from "./clock.ts";

/** What the movement shows at one step. */
export interface Hung {
  /** Ids of what is not in yet. */
  readonly hidden: ReadonlySet<string>;
  /** What goes in, the first of it on the chain line. */
  readonly ids: readonly string[];
  /** mm over its place at the highest; below 0 for what comes from behind. */
  readonly by: number;
}

export interface Played {
  /** Index of the step in hand; what comes later is not in yet. */
  readonly step: number;
  /** It is going on by itself: 1 putting together, −1 taking down, 0 standing. */
  readonly way: 1 | 0 | -1;
}

export interface Playing {
  /** Null: the movement stands whole. A new object only where something has changed. */
  now(): Played | null;
  /** What is shown at the step in hand, or null. */
  hung(): Hung | null;
  /** 1: what goes in hangs clear over its place … 0: it is in. */
  height(): number;
  /** Called after every change of either; gives back how to stop. */
  subscribe(hear: () => void): () => void;
  /** The steps there are now, first to last. A step in hand stays in hand where there still is one of its number. */
  prepare(steps: readonly Hung[]): void;
  /** Holds a step over its place; null lets the movement stand whole. */
  show(step: number | null): void;
  /** The next step, hanging, after this one has gone in; the one before. */
  on(): void;
  back(): void;
  /** From the step in hand (where none is: from the first, or for taking down from the last) to the end. `still`: by whole steps. */
  play(way: 1 | -1, still: boolean): void;
  stop(): void;
}

/** ms a step hangs, goes down, and rests before the next. */
const HANGS_MS = 350, GOES_MS = 800, RESTS_MS = 250;
const STEP_MS = HANGS_MS + GOES_MS + RESTS_MS;

export function createPlaying(frames: Frames): Playing {
  const hearers = new Set<() => void>();
  let steps: readonly Hung[] = [], played: Played | null = null, height = 0;
  let cancel: (() => void) | null = null;
  const set = (next: Played | null, high: number) => {
    if (next?.step !== played?.step || next?.way !== played?.way) played = next;
    height = high;
    for (const hear of hearers) hear();
  };
  const halt = () => {
    cancel?.();
    cancel = null;
  };
  const stop = () => {
    halt();
    if (played) set({ step: played.step, way: 0 }, height);
  };
  const show = (step: number | null) => {
    halt();
    set(step === null ? null : { step, way: 0 }, step === null ? 0 : 1);
  };
  const play = (way: 1 | -1, still: boolean) => {
    halt();
    if (steps.length < 1) return;
    const first = played ? played.step : way > 0 ? 0 : steps.length - 1;
    let startMs: number | null = null;
    const frame = (ms: number) => {
      startMs ??= ms;
      const made = (ms - startMs) / STEP_MS, step = first + way * Math.floor(made);
      if (step < 0) return show(0);
      if (step >= steps.length) { halt(); return set(null, 0); }
      cancel = frames.next(frame);
      set({ step, way }, heightAt((made % 1) * STEP_MS, way, still));
    };
    set({ step: first, way }, way > 0 ? 1 : 0);
    cancel = frames.next(frame);
  };
  return {
    now: () => played, height: () => height, hung: () => steps[played?.step ?? -1] ?? null, show, play, stop,
    prepare: (next) => {
      steps = next;
      if (played && played.step >= steps.length) show(null);
    },
    subscribe: (hear) => { hearers.add(hear); return () => { hearers.delete(hear); }; },
    on: () => show(played === null ? 0 : played.step + 1 < steps.length ? played.step + 1 : null),
    back: () => show(played === null ? steps.length - 1 : Math.max(0, played.step - 1)),
  };
}

/** Hangs, goes down with ease, rests; the other way round for taking down. Still: only hanging, then in. */
function heightAt(ms: number, way: 1 | -1, still: boolean): number {
  const t = Math.min(1, Math.max(0, (ms - HANGS_MS) / GOES_MS));
  const down = still ? Number(t >= 1) : t * t * (3 - 2 * t);
  return way > 0 ? 1 - down : down;
}
