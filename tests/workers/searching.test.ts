import { describe, expect, it } from "vitest";
import { findHeights, findPlaces, type Instrument } from "../../geometry/index.ts";
import { searcherOn, stepsOf, type Searching, type SearchStep, type SearchTold } from "../../src/workers/searching.ts";

const instrument: Instrument = {
  endshake: 1, name: "two", practice: { planGap: 0.5 }, engagements: [], input: { arbor: "A", days: 1, sense: "clockwise" },
  frame: { plates: [-2, 20].map((z) => ({ id: `p${z}`, z, thickness: 2, outline: { circle: { diameter: 60 } } })), pillars: [] },
  arbors: ["A", "B"].map((id, i) => ({ id, x: 8 * i, y: 0, diameter: 1, foot: 0, head: 20, parts: [{ id: `${id}1`, kind: "disc", diameter: 14, z: 4, thickness: 2 }] })),
};

/** A worker that does its work when the test says so, and notes whether it was ended. */
function fakeWorkers() {
  const made: { asked: Searching | null; ended: boolean; tell(told: SearchTold): void; fail(): void }[] = [];
  const start = () => {
    const hearers: Record<string, ((e: { data?: SearchTold }) => void)[]> = { message: [], error: [] };
    const own = {
      asked: null as Searching | null, ended: false,
      tell: (told: SearchTold) => hearers.message!.forEach((h) => h({ data: told })), fail: () => hearers.error!.forEach((h) => h({})),
    };
    made.push(own);
    return {
      addEventListener: (name: string, hear: (e: { data?: SearchTold }) => void) => hearers[name]!.push(hear),
      postMessage: (question: Searching) => { own.asked = question; }, terminate: () => { own.ended = true; },
    } as unknown as Worker;
  };
  return { made, start };
}

describe("the searching worker", () => {
  it("gives the steps of each search, the last of which is done and holds what the whole search gives", () => {
    const places = [...stepsOf({ kind: "places", instrument, how: { seed: 2, tries: 3 } })];
    expect(places.map((s) => s.done)).toEqual([1 / 3, 2 / 3, 1]);
    expect(places.at(-1)!.best).toEqual(findPlaces(instrument, { seed: 2, tries: 3 }));
    const heights = [...stepsOf({ kind: "heights", instrument })];
    expect(heights.at(-1)).toMatchObject({ kind: "heights", done: 1, best: { instrument: findHeights(instrument).instrument } });
    expect([...stepsOf({ kind: "settling", instrument })].at(-1)).toMatchObject({ kind: "settling", done: 1 });
    expect([...stepsOf({ kind: "ways out", instrument })].at(-1)).toMatchObject({ kind: "ways out", done: 1 });
  });

  it("passes steps that can be sent to another thread", () => {
    for (const kind of ["places", "heights", "settling", "ways out"] as const) for (const step of stepsOf({ kind, instrument })) expect(structuredClone(step)).toEqual(step);
  });

  it("is one for each search: a new one ends the old, and what the old still says is not heard", () => {
    const { made, start } = fakeWorkers(), searcher = searcherOn(start);
    const heard: SearchStep[] = [], ends: (string | null)[] = [];
    const [step] = [...stepsOf({ kind: "places", instrument, how: { tries: 1 } })];
    const begin = () => searcher.begin({ kind: "places", instrument }, (s) => heard.push(s), (f) => ends.push(f));
    begin();
    begin();
    expect(made.map((w) => w.ended)).toEqual([true, false]);
    made[0]!.tell({ step: step! });
    expect(heard).toEqual([]);
    made[1]!.tell({ step: step! });
    made[1]!.tell({ ended: true });
    expect(heard).toEqual([step]);
    expect(ends).toEqual([null]);
    expect(made[1]!.ended).toBe(true);
  });

  it("says why it could not go on, and nothing more after it was stopped", () => {
    const { made, start } = fakeWorkers(), searcher = searcherOn(start);
    const ends: (string | null)[] = [];
    const begin = () => searcher.begin({ kind: "heights", instrument }, () => undefined, (f) => ends.push(f));
    begin();
    made[0]!.tell({ fault: "no memory" });
    begin();
    made[1]!.fail();
    begin();
    searcher.stop();
    made[2]!.tell({ ended: true });
    expect(ends).toEqual(["no memory", "the worker stopped"]);
    expect(made.every((w) => w.ended)).toBe(true);
  });
});
