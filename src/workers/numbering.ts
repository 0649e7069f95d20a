// What the numbering worker does: a search for trains in, its progress and its answer out. Plain data both ways, ratios as
// text, so it can be called anywhere. Stopping needs no word to it: whoever asked ends the worker.
import {
  differentialTrains, ratio, searchCarried, searchSizes, shareTrains, writeRatio, type FoundTrain, type FoundTrains, type Ratio, type SharedTrains,
} from "../../geometry/index.ts";
import { runOn } from "./run.ts";

export interface Limits {
  /** "p/q": drivers over driven; relative error likewise. */
  readonly wanted: string;
  readonly within: string;
  readonly counts: readonly number[];
}
export interface TrainLimits extends Limits {
  /** Each number of engagements that is searched. */
  readonly engagements: readonly number[];
  /** A driver that must be there. */
  readonly leadOff?: number;
}
export type Numbering =
  | ({ readonly kind: "trains"; readonly most: number } & TrainLimits)
  | ({ readonly kind: "beside"; readonly engagements: number; readonly most: number } & Limits)
  | {
    readonly kind: "together"; readonly counts: readonly number[]; readonly engagements: number;
    readonly displays: readonly { readonly id: string; readonly wanted: string; readonly within: string; readonly eitherWay: boolean }[];
  };

/** A train as it is told: its ratio as text. */
export interface ToldTrain { readonly drivers: readonly number[]; readonly driven: readonly number[]; readonly ratio: string; readonly error: number }
export interface BesideTrain { readonly says: string; readonly ratio: string; readonly error: number }
export interface Together {
  readonly wheels: number; readonly teeth: number; readonly engagements: SharedTrains["engagements"]; readonly displays: SharedTrains["displays"];
}
export type NumberingAnswer =
  | { readonly kind: "trains"; readonly exhaustive: boolean; readonly says: string | null; readonly trains: readonly ToldTrain[] }
  | { readonly kind: "beside"; readonly exhaustive: boolean; readonly says: string | null; readonly trains: readonly BesideTrain[] }
  | { readonly kind: "together"; readonly exhaustive: boolean; readonly says: string | null; readonly best: Together | null };

export interface NumberingStep {
  readonly done: number;
  /** The best so far where there is one, and at the end the whole. */
  readonly answer: NumberingAnswer | null;
}

/** The steps of a search; the last one carries the answer. */
export function* numberingSteps(question: Numbering): Generator<NumberingStep, void> {
  switch (question.kind) {
    case "trains": return yield* trainSteps(question);
    case "beside": return yield* besideSteps(question);
    case "together": return yield* togetherSteps(question);
  }
}

function* trainSteps(question: Extract<Numbering, { kind: "trains" }>): Generator<NumberingStep, void> {
  const { leadOff, most, engagements, counts } = question;
  const run = searchSizes({ ...limitsOf(question), engagements, counts, most, ...(leadOff === undefined ? {} : { leadOff }) });
  const found: FoundTrains = yield* progressOf(run);
  yield { done: 1, answer: { kind: "trains", exhaustive: found.exhaustive, says: found.says, trains: found.trains.map(told) } };
}

function* besideSteps(question: Extract<Numbering, { kind: "beside" }>): Generator<NumberingStep, void> {
  const { wanted, within } = limitsOf(question), { counts, most } = question;
  const carried = yield* progressOf(searchCarried({ wanted, within, engagements: 2, counts, most }));
  const sums = differentialTrains(wanted, within, counts, most);
  const over = (pair: readonly [number, number]) => `${pair[0]}/${pair[1]}`;
  const trains: BesideTrain[] = [
    ...carried.trains.map((t) => ({
      says: `on a carrier, the first wheel fixed${t.annulus ? ", one an annulus" : ""}: ${t.drivers.join(" × ")} over ${t.driven.join(" × ")}`,
      ratio: writeRatio(t.ratio), error: t.error,
    })),
    ...sums.map((t) => ({ says: `differential: half of ${over(t.first)} ${t.sign > 0 ? "and" : "less"} ${over(t.second)}`, ratio: writeRatio(t.ratio), error: t.error })),
  ].sort((a, b) => Math.abs(a.error) - Math.abs(b.error));
  const cut = trains.length > most || sums.length >= most;
  yield { done: 1, answer: { kind: "beside", exhaustive: carried.exhaustive && !cut, says: carried.says, trains: trains.slice(0, most) } };
}

function* togetherSteps({ displays, counts, engagements }: Extract<Numbering, { kind: "together" }>): Generator<NumberingStep, void> {
  const run = shareTrains({ counts, engagements, displays: displays.map((d) => ({ id: d.id, eitherWay: d.eitherWay, wanted: read(d.wanted), within: read(d.within) })) });
  const tell = (best: SharedTrains | null): Together | null =>
    best && { wheels: best.wheels, teeth: best.teeth, engagements: best.engagements, displays: best.displays };
  for (;;) {
    const step = run.next();
    if (step.done) {
      const { exhaustive, says, best } = step.value;
      return yield { done: 1, answer: { kind: "together", exhaustive, says, best: tell(best) } };
    }
    yield { done: step.value.done, answer: { kind: "together", exhaustive: false, says: null, best: tell(step.value.best) } };
  }
}

function* progressOf<A>(run: Generator<number, A>): Generator<NumberingStep, A> {
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
    yield { done: step.value, answer: null };
  }
}

const told = (t: FoundTrain): ToldTrain => ({ drivers: t.drivers, driven: t.driven, ratio: writeRatio(t.ratio), error: t.error });
const limitsOf = ({ wanted, within }: Pick<Limits, "wanted" | "within">): { wanted: Ratio; within: Ratio } => ({ wanted: read(wanted), within: read(within) });

/** "p/q" of whole numbers, as writeRatio gives it. */
export function read(text: string): Ratio {
  const [p = "0", q = "1"] = text.split("/");
  return ratio(BigInt(p), BigInt(q));
}

export type NumberingTold = NumberingStep | { readonly fault: string };

export interface Numberer {
  /** Begins a search; one that was running is stopped. Not heard after a stop. */
  begin(question: Numbering, hear: (told: NumberingTold) => void): void;
  stop(): void;
}

/** A numberer on workers: one for each search, ended with it. */
export function numbererOn(start: () => Worker): Numberer {
  const run = runOn<Numbering, NumberingTold>(start, (told) => "fault" in told || told.done === 1);
  return {
    stop: run.stop,
    begin: (question, hear) => run.begin(question, hear, () => hear({ fault: "The search stopped short." })),
  };
}
