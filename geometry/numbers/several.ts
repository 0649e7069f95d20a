// Several displays at once, on the fewest wheels: in the order given, every display is led off from the input or from an
// arbor that serves another already, and an engagement may use a wheel that is there. Depth first with a bound; the best so far is given at every
// step, so that a maker may stop when it is good enough.
import { ONE, ratio, signOf, toNumber, type Ratio } from "../numeric/ratio.ts";
import { findTrains } from "./trains.ts";

export interface WantedDisplay {
  readonly id: string;
  /** Turns for one turn of the input: above 0 the same way round, below 0 contrary (outside engagements turn it about). */
  readonly wanted: Ratio;
  /** Greatest relative error. */
  readonly within: Ratio;
  /** Either way round will do. */
  readonly eitherWay?: boolean;
}

export interface SharedEngagement {
  /** Index into the arbors, 0 the input; every engagement makes the next arbor. */
  readonly from: number;
  readonly driver: number;
  readonly driven: number;
}

export interface SharedTrains {
  readonly engagements: readonly SharedEngagement[];
  /** Of every arbor, the input first; signed. */
  readonly rates: readonly Ratio[];
  /** By display: the arbor it is read from, and its relative error. */
  readonly displays: readonly { readonly id: string; readonly arbor: number; readonly error: number }[];
  /** Wheels and pinions in all; one that drives two counts once. */
  readonly wheels: number;
  readonly teeth: number;
}

export interface SharedSearch {
  readonly displays: readonly WantedDisplay[];
  readonly counts: readonly number[];
  /** Most engagements between a display and where it leads off. */
  readonly engagements: number;
}

export interface SharedStep { readonly done: number; readonly best: SharedTrains | null }

export interface SharedAnswer {
  /** No sharing within the limits has fewer wheels. */
  readonly exhaustive: boolean;
  readonly best: SharedTrains | null;
  readonly says: string | null;
}

/** Trains of one display that are tried from one arbor before the rest are left aside (the list is then not exhaustive). */
const MOST_LEGS = 400;
const MOST_DISPLAYS = 8, MOST_ENGAGEMENTS = 3;

export function* shareTrains(search: SharedSearch): Generator<SharedStep, SharedAnswer> {
  const refusal = refusalOf(search);
  if (refusal) return { exhaustive: false, best: null, says: refusal };
  const state: State = { search, best: null, cut: false, found: new Map() };
  yield* placed(state, START, 0, 0, 1);
  const says = state.best === null ? "No trains within these limits show them all; a greater error, more engagements or more counts would."
    : state.cut ? "So many trains come near that not all were tried; a smaller error would let the fewest wheels be proved." : null;
  return { exhaustive: !state.cut, best: state.best, says };
}

interface Tree {
  readonly engagements: readonly SharedEngagement[];
  readonly rates: readonly Ratio[];
  readonly displays: SharedTrains["displays"];
  readonly wheels: number;
  readonly teeth: number;
}
interface State {
  readonly search: SharedSearch;
  best: SharedTrains | null;
  cut: boolean;
  /** Trains by ratio wanted and number of engagements. */
  readonly found: Map<string, readonly Leg[]>;
}
type Leg = readonly (readonly [number, number])[];

const START: Tree = { engagements: [], rates: [ONE], displays: [], wheels: 0, teeth: 0 };

const better = (a: Pick<Tree, "wheels" | "teeth">, b: Pick<Tree, "wheels" | "teeth"> | null): boolean =>
  b === null || a.wheels < b.wheels || (a.wheels === b.wheels && a.teeth < b.teeth);

/** Places one display after another; `from` and `share` say what part of the whole search this branch is. */
function* placed(state: State, tree: Tree, display: number, from: number, share: number): Generator<SharedStep, void> {
  const { displays, engagements } = state.search;
  if (display === displays.length) {
    if (better(tree, state.best)) state.best = tree;
    return;
  }
  const want = displays[display];
  // Fewest engagements first, so that a good bound comes early.
  const branches: Tree[] = [];
  for (let n = 0; n <= engagements; n++) for (let arbor = 0; arbor < tree.rates.length; arbor++) {
    if (state.best !== null && tree.wheels + Math.max(0, 2 * n - 1) > state.best.wheels) continue;
    yield { done: from, best: state.best };
    for (const leg of legsOf(state, want, tree.rates[arbor], n)) branches.push(grown(tree, arbor, leg, want));
  }
  branches.sort((a, b) => a.wheels - b.wheels || a.teeth - b.teeth);
  for (const [k, branch] of branches.entries()) {
    if (state.best !== null && !better(branch, state.best)) break; // every later one has as many wheels
    yield* placed(state, branch, display + 1, from + (share * k) / branches.length, share / branches.length);
  }
}

/** Every way of leading a display off from an arbor of this rate by n engagements, in every order and pairing. */
function legsOf(state: State, want: WantedDisplay, rate: Ratio, n: number): readonly Leg[] {
  const ask = want.wanted.div(rate);
  if (!want.eitherWay && (signOf(ask) > 0) !== (n % 2 === 0)) return [];
  if (n === 0) return ask.abs().sub(ONE).abs().compare(want.within) <= 0 ? [[]] : [];
  const key = `${ask.abs().toFraction()} ${want.within.toFraction()} ${n}`;
  const known = state.found.get(key);
  if (known) return known;
  const trains = findTrains({ wanted: ask.abs(), within: want.within, engagements: n, counts: state.search.counts, most: MOST_LEGS });
  if (!trains.exhaustive) state.cut = true;
  const legs = trains.trains.flatMap((t) => orders(t.drivers).flatMap((d) => orders(t.driven).map((v): Leg => d.map((x, i) => [x, v[i]] as const))));
  state.found.set(key, legs);
  return legs;
}

/** The tree with one leg more. A driver that is on the arbor already is not made twice. */
function grown(tree: Tree, arbor: number, leg: Leg, want: WantedDisplay): Tree {
  const engagements = [...tree.engagements], rates = [...tree.rates];
  let { wheels, teeth } = tree, at = arbor;
  for (const [driver, driven] of leg) {
    // A wheel that drives another already, or the very wheel that the arbor is driven by.
    const there = engagements.some((e, i) => (e.from === at && e.driver === driver) || (i + 1 === at && e.driven === driver));
    wheels += there ? 1 : 2;
    teeth += there ? driven : driver + driven;
    engagements.push({ from: at, driver, driven });
    rates.push(rates[at].mul(ratio(-driver, driven)));
    at = rates.length - 1;
  }
  const error = toNumber(rates[at].abs().div(want.wanted.abs()).sub(ONE));
  return { engagements, rates, wheels, teeth, displays: [...tree.displays, { id: want.id, arbor: at, error }] };
}

/** Every order of a few counts, without repeating like ones. */
export function orders(counts: readonly number[]): number[][] {
  if (counts.length === 0) return [[]];
  return [...new Set(counts)].flatMap((c) => {
    const rest = [...counts];
    rest.splice(rest.indexOf(c), 1);
    return orders(rest).map((o) => [c, ...o]);
  });
}

function refusalOf({ displays, counts, engagements }: SharedSearch): string | null {
  if (displays.length === 0) return "There is no display to be shown.";
  if (displays.length > MOST_DISPLAYS) return `${displays.length} displays at once are more than can be searched; take ${MOST_DISPLAYS} at a time.`;
  if (!Number.isInteger(engagements) || engagements < 1 || engagements > MOST_ENGAGEMENTS)
    return `From one to ${MOST_ENGAGEMENTS} engagements between a display and where it leads off can be searched; lead off from an arbor between for more.`;
  if (counts.length === 0) return "There is no count in these ranges; widen the wheels or the pinions.";
  if (displays.some((d) => d.wanted.n === 0n)) return "A display that does not turn wants no train.";
  return null;
}
