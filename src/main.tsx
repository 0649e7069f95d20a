// Starts the page: the bench, the work kept from before or the first example, and the keeping of what is done.
import { createRoot } from "react-dom/client";
import { App } from "./App.tsx";
import { EXAMPLES } from "./head/examples.ts";
import { openExample } from "./head/files.ts";
import { createActions } from "./state/actions.ts";
import { createClock, type Frames } from "./state/clock.ts";
import { type Bench, BenchContext, PlayingContext } from "./state/hooks.ts";
import { keepChoices, keepWork, keptChoices, keptWork } from "./state/keeping.ts";
import { createPlaying } from "./state/playing.ts";
import { createStateStore } from "./state/store.ts";
import { createWorker } from "./state/worked.ts";
import "./styles.css";
import type { Examined, Examining } from "./workers/examining.ts";
import { latestOnly } from "./workers/latest.ts";
import { workerPort } from "./workers/port.ts";

const far = latestOnly(workerPort<Examining, Examined>(
  () => new Worker(new URL("./workers/examining.worker.ts", import.meta.url), { type: "module" })));
/** The examiner comes when the picture has been drawn, or has failed to be. */
const near = import("../scenes/MovementView.tsx").catch(() => null)
  .then(() => new Promise((drawn) => { requestAnimationFrame(() => requestAnimationFrame(drawn)); }))
  .then(() => import("./workers/examining.ts")).then((m) => m.examineWorked);
const store = createStateStore(createWorker({ near, far }, () => performance.now()), keptChoices(localStorage));
const frames: Frames = {
  next: (call) => {
    const handle = requestAnimationFrame(call);
    return () => cancelAnimationFrame(handle);
  },
};
const clock = createClock(frames), playing = createPlaying(frames);
const bench: Bench = { store, clock, actions: createActions(store) };

keepFollowing(bench);
const before = keptWork(localStorage);
if (before && !("refused" in before)) {
  bench.actions.open(before.instrument, before.file, before.history);
  bench.actions.set({ sheet: before.sheet });
  bench.actions.choose(before.chosen);
  clock.set(before.turns);
} else {
  void openExample(bench, EXAMPLES[0]).then(() => { if (before) bench.actions.refuse("The work kept from before", before.refused); });
}

createRoot(document.getElementById("root")!).render(<BenchContext value={bench}><PlayingContext value={playing}><App /></PlayingContext></BenchContext>);

/** Keeps the work at every step, and once more when the page is left, for the turns and the sheet. */
function keepFollowing({ store, clock, actions }: Bench): void {
  const keep = () => {
    const { instrument, history, file, sheet, chosen } = store.getState();
    if (!instrument) return;
    const fault = keepWork(localStorage, { instrument, history, file, sheet, chosen, turns: clock.turns() });
    if (fault && store.getState().saying !== fault) actions.set({ saying: fault });
  };
  store.subscribe((state, before) => {
    if (state.instrument !== before.instrument || state.history !== before.history) keep();
    if (state.units !== before.units || state.look !== before.look || state.singleKeys !== before.singleKeys) keepChoices(localStorage, state);
  });
  addEventListener("pagehide", keep);
}
