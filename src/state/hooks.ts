// The store as the page's parts see it.
import { createContext, useContext, useSyncExternalStore } from "react";
import { useStore } from "zustand";
import type { Actions } from "./actions.ts";
import type { Clock } from "./clock.ts";
import type { Keeper } from "./keeper.ts";
import type { Played, Playing } from "./playing.ts";
import type { State } from "./state.ts";
import type { Store } from "./store.ts";

export interface Bench {
  readonly store: Store;
  readonly actions: Actions;
  readonly clock: Clock;
  readonly keeper: Keeper;
}

export const BenchContext = createContext<Bench | null>(null);

export function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (!bench) throw new Error("a part of the screen stands outside the bench");
  return bench;
}

/** Putting together as it is played; the page gives one, and where none is given nothing is played. */
export const PlayingContext = createContext<Playing | null>(null);

export function usePlaying(): Playing {
  const playing = useContext(PlayingContext);
  if (!playing) throw new Error("a part of the screen that plays stands outside what is played");
  return playing;
}

/** Which step is in hand, and which way it goes on; null where the movement stands whole. */
export function usePlayed(): Played | null {
  const playing = usePlaying();
  return useSyncExternalStore(playing.subscribe, playing.now);
}

export const useNow = <T>(pick: (state: State) => T): T => useStore(useBench().store, pick);

export const useActions = (): Actions => useBench().actions;

/** Whether the page matches a media query, followed as it changes. */
export function useMedia(query: string): boolean {
  return useSyncExternalStore(
    (hear) => {
      const list = matchMedia(query);
      list.addEventListener("change", hear);
      return () => list.removeEventListener("change", hear);
    },
    () => matchMedia(query).matches,
  );
}

export const useDark = (): boolean => {
  const system = useMedia("(prefers-color-scheme: dark)");
  const look = useNow((s) => s.look);
  return look === "as the system" ? system : look === "dark";
};
export const useStill = (): boolean => useMedia("(prefers-reduced-motion: reduce)");
export const useNarrow = (): boolean => useMedia("(max-width: 700px)");
