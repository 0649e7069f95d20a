// The store: one vanilla store, made afresh by tests and once by the page. What a maker can do is in actions.ts; this
// file holds only how state, history and what is worked out are kept in step.
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Instrument } from "../../geometry/index.ts";
import { NO_HISTORY } from "./history.ts";
import type { State } from "./state.ts";
import type { Worker } from "./worked.ts";

export type Store = StoreApi<State>;

export const EMPTY: State = {
  instrument: null, history: NO_HISTORY, file: null, handle: null, shelf: null, book: [], kept: true, notKept: null, elsewhere: false, newer: false,
  sheet: "calliper", chosen: null, finding: null, way: "in gear",
  planting: false, units: "mm", look: "as the system", singleKeys: true, standing: null, lift: 0, cut: 0, plates: 0.14, refusal: null,
  drag: null, trial: null, preview: null, saying: null, worked: null,
};

/** A store in which `worked` follows every change of the instrument and of what is in hand, in plan or in height. */
export function createStateStore(worker: Worker, start: Partial<State> = {}): Store {
  const store = createStore<State>(() => ({ ...EMPTY, ...start }));
  const follow = (state: State, before: Pick<State, "instrument" | "drag" | "trial">) => {
    const anew = state.instrument !== before.instrument;
    if (!anew && state.trial === before.trial && state.drag?.places === before.drag?.places) return;
    const worked = workedFor(anew ? state.instrument : state.trial ?? state.instrument, state);
    store.setState(anew ? { worked, trial: null, preview: null } : { worked });
  };
  const workedFor = (instrument: Instrument | null, { drag, worked }: State): State["worked"] => {
    if (!instrument) return null;
    return worker.work(instrument, drag?.places ?? null, worked, (sheet) => {
      const now = store.getState().worked;
      if (now) store.setState({ worked: { ...now, sheet, examined: "now" } });
    });
  };
  store.subscribe(follow);
  follow(store.getState(), { instrument: null, drag: null, trial: null });
  void worker.ready.then(() => {
    const { instrument, worked } = store.getState();
    if (worked?.examined === "to come") store.setState({ worked: workedFor(instrument, { ...store.getState(), worked: null }) });
  });
  return store;
}
