// What the searching worker does: a question in, steps out, each with the best so far. Plain data both ways, so it can be
// called anywhere. Stopping needs no word to it: whoever asked keeps the last step and ends the worker.
import {
  type HowToLevel, type HowToPlant, type Instrument, type LevellingStep, type PlantingStep, type SettlingStep, type Sheet, type WaysStep, examineSteps, searchHeights,
  searchPlaces, searchSettled, searchWaysOut, workOut,
} from "../../geometry/index.ts";
import { runOn } from "./run.ts";

export type Searching =
  | { readonly kind: "places"; readonly instrument: Instrument; readonly how?: HowToPlant }
  | { readonly kind: "heights"; readonly instrument: Instrument; readonly how?: HowToLevel }
  | { readonly kind: "settling"; readonly instrument: Instrument }
  | { readonly kind: "ways out"; readonly instrument: Instrument }
  | { readonly kind: "turning"; readonly instrument: Instrument; readonly turns: number };

export type SearchStep =
  | ({ readonly kind: "places" } & PlantingStep)
  | ({ readonly kind: "heights" } & LevellingStep)
  | ({ readonly kind: "settling" } & SettlingStep)
  | ({ readonly kind: "ways out" } & WaysStep)
  | TurningStep;

/** The instrument turned so far: which part of the pairs is examined, and the sheet at the end. */
export interface TurningStep {
  readonly kind: "turning";
  readonly done: number;
  readonly best: Sheet | null;
}

/** The steps of a search; the last one, where there is any, is done. */
export function* stepsOf(question: Searching): Generator<SearchStep, void, void> {
  switch (question.kind) {
    case "places":
      for (const step of searchPlaces(question.instrument, question.how)) yield { kind: "places", ...step };
      return;
    case "heights":
      for (const step of searchHeights(question.instrument, question.how)) yield { kind: "heights", ...step };
      return;
    case "settling":
      for (const step of searchSettled(question.instrument)) yield { kind: "settling", ...step };
      return;
    case "ways out":
      for (const step of searchWaysOut(question.instrument)) yield { kind: "ways out", ...step };
      return;
    case "turning":
      yield* turningSteps(question.instrument, question.turns);
  }
}

/** A step for each hundredth, so that telling costs nothing beside examining. */
function* turningSteps(instrument: Instrument, turns: number): Generator<TurningStep, void, void> {
  const steps = examineSteps(workOut(instrument), { until: turns });
  let told = 0;
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) {
      yield { kind: "turning", done: 1, best: step.value };
      return;
    }
    if (step.value < told + 0.01) continue;
    told = step.value;
    yield { kind: "turning", done: told, best: null };
  }
}

/** What the worker tells: its steps, and that it is at its end or why it could not go on. */
export type SearchTold = { readonly step: SearchStep } | { readonly ended: true } | { readonly fault: string };

export interface Searcher {
  /** Begins a search; one that was running is stopped. `end` hears null, or why it could not go on; not after a stop. */
  begin(question: Searching, hear: (step: SearchStep) => void, end: (fault: string | null) => void): void;
  /** Ends the search in hand; the last step heard is the best there is. */
  stop(): void;
}

/** A searcher on workers: one for each search, ended with it. */
export function searcherOn(start: () => Worker): Searcher {
  const run = runOn<Searching, SearchTold>(start, (told) => !("step" in told));
  return {
    stop: run.stop,
    begin: (question, hear, end) => run.begin(question, (told) => {
      if ("step" in told) hear(told.step);
      else end("fault" in told ? told.fault : null);
    }, () => end("the worker stopped")),
  };
}
