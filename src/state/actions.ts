// What a maker can do to the state: open, do, undo, choose, drag. Every command passes through here, so that a gesture
// is one step with a name and whatever was in hand is settled first.
import { dragArbor, type Finding, type Instrument, type Remedy } from "../../geometry/index.ts";
import { applyCure } from "../commands/cure.ts";
import { type Command, isRefused } from "../commands/command.ts";
import { atDistance } from "../commands/distance.ts";
import { cannotMove, keepPlaces, type Place } from "../commands/planting.ts";
import type { Fault } from "../document/index.ts";
import { type Book, entered } from "./book.ts";
import { NO_HISTORY, type History, savedThen, stepped, stoodAt } from "./history.ts";
import type { StandingView, State } from "./state.ts";
import type { Store } from "./store.ts";
import { movementOf } from "./worked.ts";

export interface Actions {
  /** Puts an instrument in place of the one that is open: a new one on the shelf, unless it comes from there. */
  open(instrument: Instrument, file: string | null, from?: Partial<Origin>): void;
  /** Nothing is open any more. */
  putAway(): void;
  refuse(file: string, faults: readonly Fault[]): void;
  closeRefusal(): void;
  run<A>(command: Command<A>, args: A): boolean;
  undo(): void;
  redo(): void;
  /** Goes back or on to where so many steps lie in the past. */
  goTo(steps: number): void;
  /** It has been written, as it was at `then`, to a file of this name. */
  saved(file: string, then: History, handle: State["handle"]): void;
  /** From here on it is another instrument of this name, with the same past: the one it was copied from is left as it is. */
  becomeCopy(name: string): void;
  set(some: Partial<Pick<State, "sheet" | "way" | "planting" | "units" | "look" | "singleKeys" | "lift" | "cut" | "plates" | "saying">>): void;
  /** Asks for a standing view, even for the one last asked for. */
  stand(view: StandingView): void;
  choose(id: string | null): void;
  chooseFinding(finding: Finding | null): void;
  cure(remedy: Remedy): void;
  takeUp(arbor: string): void;
  moveTo(to: Place): void;
  /** Tries a distance of an engaged pair: the one that may move is in hand until it is kept or put back. */
  tryDistance(engagement: string, mm: number): void;
  keep(): void;
  putBack(): void;
}

/** Where an instrument comes from: the shelf, or a file with its handle and its day book. */
export interface Origin {
  readonly history: History;
  readonly shelf: string;
  readonly book: Book;
  readonly handle: State["handle"];
}

const CLOSED = { drag: null, worked: null, chosen: null, finding: null, planting: false, refusal: null, saying: null, elsewhere: false } as const;

/** What a finding is known by while the instrument changes under it. */
export const findingKey = (finding: Finding): string => `${finding.code} ${finding.between.join(" ")}`;

export function createActions(store: Store, nowMs: () => number = Date.now): Actions {
  const get = store.getState;
  const noted = (says: string) => entered(get().book, says, nowMs());
  const run = <A>(command: Command<A>, args: A): boolean => {
    keep();
    const { instrument, history } = get();
    if (!instrument) return false;
    const outcome = command.run(instrument, args);
    if (isRefused(outcome)) {
      store.setState({ saying: outcome.refused });
      return false;
    }
    const next = stepped(history, instrument, outcome.instrument, outcome.says);
    store.setState({ instrument: outcome.instrument, history: next, saying: null, ...(next === history ? {} : { book: noted(outcome.says) }) });
    return true;
  };
  /** Back or on, one step or many; each way round is written in the day book by the step it ends with. */
  const goTo = (steps: number) => {
    const { instrument, history } = get();
    if (!instrument || steps < 0) return;
    putBack();
    const { value, history: there } = stoodAt(history, instrument, steps);
    const by = there.past.length - history.past.length;
    if (by === 0) return;
    const says = by < 0 ? `undone: ${there.future[0]?.says}` : `done again: ${there.past.at(-1)?.says}`;
    const more = Math.abs(by) - 1;
    store.setState({ instrument: value, history: there, saying: null, book: noted(more > 0 ? `${says} and ${more} more` : says) });
  };
  const travel = (by: number) => (get().drag ? putBack() : goTo(get().history.past.length + by));
  const keep = () => {
    const { drag } = get();
    if (!drag) return;
    store.setState({ drag: null });
    if (drag.places.size > 0) run(keepPlaces, { arbor: drag.arbor, places: drag.places });
  };
  const putBack = () => { if (get().drag) store.setState({ drag: null }); };
  return {
    run, keep, putBack, goTo,
    open: (instrument, file, { history = NO_HISTORY, shelf = freshId(), book = instrument.dayBook ?? [], handle = null } = {}) =>
      store.setState({ ...CLOSED, instrument, history, file, handle, shelf, book }),
    putAway: () => store.setState({ ...CLOSED, instrument: null, history: NO_HISTORY, file: null, handle: null, shelf: null, book: [] }),
    refuse: (file, faults) => store.setState({ refusal: { file, faults }, saying: null }),
    closeRefusal: () => store.setState({ refusal: null }),
    undo: () => travel(-1),
    redo: () => travel(1),
    saved: (file, then, handle) => store.setState({ file, handle, history: savedThen(get().history, then), saying: null, book: noted(`saved as ${file}`) }),
    becomeCopy: (name) => {
      keep();
      const { instrument, history } = get();
      if (instrument) store.setState({
        instrument: { ...instrument, name }, history: { ...history, savedAt: null }, file: null, handle: null, shelf: freshId(), elsewhere: false,
        book: noted(`copied from ${instrument.name}`),
      });
    },
    set: (some) => store.setState(some),
    stand: (view) => store.setState({ standing: { view, nonce: (get().standing?.nonce ?? 0) + 1 } }),
    choose: (chosen) => store.setState({ chosen }),
    chooseFinding: (finding) => store.setState(
      finding ? { finding: findingKey(finding), chosen: arborIn(get(), finding) ?? get().chosen } : { finding: null }),
    cure: (remedy) => {
      const movement = get().worked?.movement;
      if (movement) run(applyCure, { movement, remedy });
    },
    takeUp: (arbor) => takeUp(store, arbor, keep),
    moveTo: (to) => moveTo(store, to),
    tryDistance: (engagement, mm) => tryDistance(store, engagement, mm, keep),
  };
}

/** Known nowhere else, in this browser or another. */
export const freshId = (): string => [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, "0")).join("");

function takeUp(store: Store, arbor: string, keep: () => void): void {
  keep();
  const { instrument } = store.getState();
  if (!instrument) return;
  const fault = cannotMove(instrument, arbor);
  const at = movementOf(instrument).arbors.find((a) => a.id === arbor);
  if (fault || !at) store.setState({ saying: fault });
  else store.setState({ drag: { arbor, from: { x: at.x, y: at.y }, places: new Map(), holds: null }, chosen: arbor, saying: null });
}

/** Every step of a drag is worked out from where it began, so that the way there leaves no trace. */
function moveTo(store: Store, to: Place): void {
  const { drag, instrument, way } = store.getState();
  if (!drag || !instrument) return;
  const { places, holds } = dragArbor(movementOf(instrument), drag.arbor, to, way === "in gear" ? "in gear" : "trying");
  store.setState({ drag: { ...drag, places, holds } });
}

function tryDistance(store: Store, engagement: string, mm: number, keep: () => void): void {
  const { instrument, drag } = store.getState();
  if (!instrument) return;
  const slid = atDistance(instrument, movementOf(instrument), engagement, mm);
  if ("refused" in slid) return store.setState({ saying: slid.refused });
  if (drag?.arbor !== slid.arbor) {
    takeUp(store, slid.arbor, keep);
    // What was in hand before is kept by now, so the pair may stand elsewhere.
    if (drag) return tryDistance(store, engagement, mm, keep);
  }
  const taken = store.getState().drag;
  if (taken) store.setState({ drag: { ...taken, places: new Map([[slid.arbor, slid.place]]), holds: null } });
}

/** The arbor that a finding is about: its last thing that is, or stands on, an arbor. */
function arborIn({ worked }: State, finding: Finding): string | null {
  const movement = worked?.movement;
  if (!movement) return null;
  const arbors = finding.between.flatMap((id) => {
    const at = movement.arborIndex.get(id) ?? movement.partIndex.get(id)?.arbor;
    const arbor = at === undefined ? undefined : movement.arbors[at];
    return arbor ? [arbor.id] : [];
  });
  return arbors.at(-1) ?? null;
}
