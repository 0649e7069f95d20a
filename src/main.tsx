// Starts the page: the bench, the work kept from before or the first example, and the keeping of what is done.
import { createRoot } from "react-dom/client";
import { App } from "./App.tsx";
import { EXAMPLES } from "./head/examples.ts";
import { openExample } from "./head/files.ts";
import { pictureDrawn } from "./picture.ts";
import { SHEETS } from "./sheets/Sheets.tsx";
import { createActions } from "./state/actions.ts";
import { createClock, type Frames } from "./state/clock.ts";
import { type Bench, BenchContext, PlayingContext } from "./state/hooks.ts";
import { createKeeper, type Keeper, wouldLose } from "./state/keeper.ts";
import { keepChoices, keepOf, keepStanding, keptChoices, keptStanding } from "./state/keeping.ts";
import { browserShelf } from "./state/shelf.ts";
import { createPlaying } from "./state/playing.ts";
import { createStateStore } from "./state/store.ts";
import { browserTabs } from "./state/tabs.ts";
import { createWorker } from "./state/worked.ts";
import "./styles.css";
import type { Examined, Examining } from "./workers/examining.ts";
import { latestOnly } from "./workers/latest.ts";
import { workerPort } from "./workers/port.ts";

const far = latestOnly(workerPort<Examining, Examined>(
  () => new Worker(new URL("./workers/examining.worker.ts", import.meta.url), { type: "module" })));
/** The examiner comes after the picture. */
const near = pictureDrawn().then(() => import("./workers/examining.ts")).then((m) => m.examineWorked);
/** What all tabs share, and what is this tab's own. */
const shared = keepOf(() => localStorage), own = keepOf(() => sessionStorage);
const store = createStateStore(createWorker({ near, far }, () => performance.now()), keptChoices(shared));
const frames: Frames = {
  next: (call) => {
    const handle = requestAnimationFrame(call);
    return () => cancelAnimationFrame(handle);
  },
};
const clock = createClock(frames), playing = createPlaying(frames);
const actions = createActions(store);
const channel = "BroadcastChannel" in window ? new BroadcastChannel("endshake") : null;
const keeper = createKeeper({ store, actions, shelf: browserShelf(() => indexedDB), tabs: browserTabs(navigator.locks, channel), nowMs: Date.now });
const bench: Bench = { store, clock, actions, keeper };

void begin(keeper).then(() => keepFollowing(bench));
createRoot(document.getElementById("root")!).render(<BenchContext value={bench}><PlayingContext value={playing}><App /></PlayingContext></BenchContext>);
void near.then(() => import("./offline/offline.ts")).then(({ workOffline }) => workOffline(bench)).catch(() => {});

/** Opens what was last in hand, as it was left, else the first example. */
async function begin(keeper: Keeper): Promise<void> {
  const standing = keptStanding(own) ?? keptStanding(shared);
  const opened = await keeper.start(shared, keptStanding(own)?.id ?? null);
  if (!opened) return openExample(bench, EXAMPLES[0]);
  const sheet = SHEETS.find(({ name }) => name === standing?.sheet);
  if (standing?.id !== store.getState().shelf) return;
  if (sheet) actions.set({ sheet: sheet.name });
  actions.choose(standing.chosen);
  clock.set(standing.turns);
}

/** Where the maker is goes to the small storage, what is chosen for every instrument too; the work itself is the keeper's. */
function keepFollowing({ store, clock }: Bench): void {
  const stand = () => {
    const { shelf, sheet, chosen } = store.getState();
    if (shelf !== null) for (const keep of [own, shared]) keepStanding(keep, { id: shelf, sheet, chosen, turns: clock.turns() });
  };
  store.subscribe((state, before) => {
    if (state.shelf !== before.shelf || state.sheet !== before.sheet || state.chosen !== before.chosen) stand();
    if (state.units !== before.units || state.look !== before.look || state.singleKeys !== before.singleKeys) keepChoices(shared, state);
    if (before.history.past.length === 0 && state.history.past.length > 0) void navigator.storage?.persist?.().catch(() => {});
  });
  stand();
  addEventListener("pagehide", stand);
  addEventListener("beforeunload", (event) => { if (wouldLose(store.getState())) event.preventDefault(); });
}
