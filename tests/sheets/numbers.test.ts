import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { type Instrument, ORDINARY_HEAD, ratio, trainTo, workOut } from "../../geometry/index.ts";
import { putTrain } from "../../src/commands/numbers.ts";
import { isRefused } from "../../src/commands/command.ts";
import { beginningFor, questionOf } from "../../src/sheets/numbers/ask.ts";
import { oversOf } from "../../src/sheets/numbers/Standing.tsx";
import { waysOfDividing } from "../../src/sheets/numbers/Dividing.tsx";
import { bestSays } from "../../src/sheets/numbers/weights.ts";
import { goodFor, oneIn, typedRange } from "../../src/sheets/numbers/words.ts";
import { type NumberingAnswer, numberingSteps } from "../../src/workers/numbering.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

const estuary = JSON.parse(readFileSync(resolve(import.meta.dirname, "../../public/instruments/estuary-dial.instrument.json"), "utf8")) as Instrument;
const movement = workOut(estuary);
const moon = movement.displays.findIndex((d) => d.id === "moon");

const lastOf = (steps: Iterable<{ readonly done: number; readonly answer: NumberingAnswer | null }>): NumberingAnswer | null => {
  const all = [...steps];
  expect(all.map((s) => s.done)).toEqual(all.map((s) => s.done).sort((a, b) => a - b));
  return all.at(-1)?.answer ?? null;
};

describe("the train written as wheels over pinions", () => {
  it("runs from the crank to the pointer, and over a friction-tight hand turn for turn", () => {
    const slipway = workOut(SLIPWAY), steps = trainTo(slipway, 2);
    expect(oversOf(steps ?? [])).toEqual([{ over: 40, under: 20 }, { over: 32, under: 16 }]);
    expect(trainTo(slipway, 0)).toEqual([]);
    const hand = workOut({
      ...SLIPWAY, couplings: [{ kind: "friction", between: ["C", "H"] }],
      arbors: [...SLIPWAY.arbors, { id: "H", diameter: 6, bore: 4.04, foot: 32.5, head: 35, rides: { on: "C", radius: 0, angle: 0 }, parts: [] }],
    });
    expect(oversOf(trainTo(hand, 3) ?? [])).toEqual(oversOf(steps ?? []));
  });
});

describe("what is asked of a search", () => {
  it("begins with limits that the present train lies within, and finds it", () => {
    const asked = beginningFor(movement, moon), question = questionOf(movement, asked);
    if ("fault" in question) throw new Error(question.fault);
    const answer = lastOf(numberingSteps({ kind: "trains", most: 2000, ...question.limits }));
    if (answer?.kind !== "trains") throw new Error("trains were asked for");
    expect(answer.exhaustive).toBe(true);
    expect(answer.trains.map((t) => `${t.driven}/${t.drivers}`)).toContain("54,50,49,39/22,22,19,19");
    expect(question.wantedDays).toBeCloseTo(29.530588853, 9);
  });

  it("says in one sentence what is wrong with it", () => {
    const asked = beginningFor(movement, moon);
    const fault = (some: Partial<typeof asked>) => { const q = questionOf(movement, { ...asked, ...some }); return "fault" in q ? q.fault : null; };
    expect(fault({ wanted: "soon" })).toMatch(/A period such as/);
    expect(fault({ wheels: "60 to 30" })).toMatch(/ranges/);
    expect(fault({ engagements: "3" })).toMatch(/contrary way; one more or one less/);
    expect(fault({ within: "-1" })).toMatch(/parts in a million/);
    expect(fault({ from: "no such" })).toMatch(/does not turn/);
    expect(fault({ engagements: "0" })).toMatch(/1 to 12/);
    expect(fault({ engagements: "1 to 3" })).toBeNull();
    expect(fault({ engagements: "3 to 3" })).toMatch(/one more or one less/);
    expect(fault({ wheel: "no such" })).toMatch(/no wheel no such on A/);
    expect(fault({ by: "ratio", wanted: "191/23", engagements: "3", sense: "contrary" })).toBeNull();
  });

  it("may be for several numbers of engagements, and for a wheel that is there", () => {
    const asked = { ...beginningFor(movement, moon), engagements: "1 to 5", sense: "same" as const };
    const question = questionOf(movement, asked);
    if ("fault" in question) throw new Error(question.fault);
    expect(question.limits.engagements).toEqual([2, 4]);
    const wheel = movement.arbors[movement.arborIndex.get("A") ?? -1]?.arbor.parts.find((p) => p.kind === "wheel" || p.kind === "pinion");
    const led = questionOf(movement, { ...asked, engagements: "4", wheel: wheel?.id ?? "" });
    if ("fault" in led) throw new Error(led.fault);
    const answer = lastOf(numberingSteps({ kind: "trains", most: 50, ...led.limits }));
    if (answer?.kind !== "trains") throw new Error("trains were asked for");
    expect(answer.trains.length).toBeGreaterThan(0);
    expect(answer.trains.every((t) => t.drivers.includes(led.limits.leadOff ?? 0))).toBe(true);
  });

  it("says in words what best means", () => {
    const all = ["error", "teeth", "wheels", "largest", "cutters", "awkward"] as const;
    expect(bestSays({ error: 5 }, all)).toBe("Best is little error alone.");
    expect(bestSays({ teeth: 2, error: 1, largest: 3 }, all)).toBe("Best weighs small wheels, few teeth and little error, each against the worst in the list.");
    expect(bestSays({ teeth: 2 }, ["error"])).toMatch(/Nothing counts/);
  });

  it("is refused at once, in words, where it cannot be answered", () => {
    const asked = { ...beginningFor(movement, moon), engagements: "8", wheels: "20 to 400", divides: false };
    const question = questionOf(movement, asked);
    if ("fault" in question) throw new Error(question.fault);
    const answer = lastOf(numberingSteps({ kind: "trains", most: 10, ...question.limits }));
    expect(answer).toMatchObject({ exhaustive: false, trains: [], says: expect.stringMatching(/would make it answerable/) as unknown });
  });

  it("also finds carriers and differentials, and trains that share wheels", () => {
    const beside = lastOf(numberingSteps({ kind: "beside", wanted: "1000/29531", within: "1/10000", engagements: 2, counts: Array.from({ length: 40 }, (_, i) => 20 + i), most: 20 }));
    expect(beside).toMatchObject({ kind: "beside" });
    const together = lastOf(numberingSteps({
      kind: "together", engagements: 2, counts: [10, 20, 40, 60],
      displays: [{ id: "a", wanted: "1/4", within: "0/1", eitherWay: true }, { id: "b", wanted: "1/6", within: "0/1", eitherWay: true }],
    }));
    expect(together).toMatchObject({ exhaustive: true, best: { wheels: 3 } }); // 10 drives both 40 and 60
  });

  it("reads ranges, and writes errors and years short", () => {
    expect([typedRange("15 to 24"), typedRange("15-24"), typedRange("20"), typedRange("24 to 15"), typedRange("a")]).toEqual([[15, 24], [15, 24], [20, 20], null, null]);
    expect([oneIn(1 / 965), oneIn(-1 / 1.3e6), oneIn(0), oneIn(1 / 6.41e9)]).toEqual(["1 in 965", "1 in 1.3 million", "exact", "1 in 6.4 × 10⁹"]);
    expect([goodFor(5432), goodFor(2.64)]).toEqual(["5,400", "2.6"]);
  });
});

describe("how a count is divided, in words", () => {
  // Source: the plates' claims and the compound entries 96: 3/18 + 4/16 or 4/15 + 3/20 (Machinery's Handbook, from memory); 42: 20 of 21 (an army training text).
  it("says every way in the order in which a maker would choose", () => {
    const ways = (n: number) => waysOfDividing(n, ORDINARY_HEAD);
    expect([ways(20)[0], ways(40)[0], ways(42)[0], ways(18)[0]]).toEqual(["2 turns on any circle", "1 turn on any circle", "20 of 21", "2 turns and 4 of 18, or 6 of 27"]);
    expect(ways(96).filter((w) => w.startsWith("compound"))).toEqual(expect.arrayContaining(["compound: + 4 of 15 + 3 of 20", "compound: + 4 of 16 + 3 of 18"]));
    expect(ways(127)[0]).toMatch(/^differential: set for 1\d\d, .*gears .*the plate (with|against) the crank$/);
    expect(waysOfDividing(127, { ...ORDINARY_HEAD, gears: [] })).toEqual([]);
  });
});

describe("a found train put into the instrument", () => {
  it("recuts the wheels that stand there, closes the distances, and leaves the rest alone", () => {
    const drivers = [22, 22, 19, 19], driven = [54, 50, 49, 38];
    const outcome = putTrain.run(estuary, { movement, drivers, driven, from: "A", display: "moon" });
    if (isRefused(outcome)) throw new Error(outcome.refused);
    const next = workOut(outcome.instrument);
    const overs = oversOf(trainTo(next, next.displays[moon]?.arbor ?? -1) ?? []);
    expect(overs.map((f) => f.over).sort()).toEqual([...driven].sort());
    expect(outcome.instrument.arbors.map((a) => a.id)).toEqual(estuary.arbors.map((a) => a.id));
    for (const e of next.engagements) expect(Math.abs(e.distance - (e.computed ?? NaN))).toBeLessThan(0.005);
    expect(outcome.says).toBe("new numbers for Age of the Moon");
  });

  it("stands as new arbors in gear where it has another number of engagements", () => {
    const outcome = putTrain.run(estuary, { movement, drivers: [16, 12], driven: [45, 60], from: "A", display: null });
    if (isRefused(outcome)) throw new Error(outcome.refused);
    const next = workOut(outcome.instrument);
    expect(outcome.instrument.arbors).toHaveLength(estuary.arbors.length + 2);
    expect(next.displays.at(-1)).toMatchObject({ name: "New pointer", rate: expect.objectContaining({ s: 1n, n: 16n, d: 225n }) as unknown });
  });

  it("leads off from a wheel that is there, which is then not made again", () => {
    const a = estuary.arbors.find((x) => x.id === "A"), wheel = a?.parts.find((p) => p.kind === "pinion");
    if (wheel?.kind !== "pinion") throw new Error("A has a pinion");
    const outcome = putTrain.run(estuary, { movement, drivers: [16, wheel.leaves], driven: [45, 60], from: "A", wheel: wheel.id, display: null });
    if (isRefused(outcome)) throw new Error(outcome.refused);
    expect(outcome.instrument.arbors.find((x) => x.id === "A")?.parts).toHaveLength(a?.parts.length ?? 0);
    expect(outcome.instrument.engagements.at(-2)).toMatchObject({ driver: wheel.id });
    const rate = workOut(outcome.instrument).displays.at(-1)?.rate;
    expect(rate?.abs().toFraction()).toBe(ratio(16 * wheel.leaves, 45 * 60).toFraction());
    expect(putTrain.run(estuary, { movement, drivers: [16], driven: [45], from: "A", wheel: "no such", display: null })).toHaveProperty("refused");
  });

  it("is refused where counts make no train", () => {
    expect(putTrain.run(estuary, { movement, drivers: [], driven: [], from: "A", display: null })).toHaveProperty("refused");
    expect(putTrain.run(estuary, { movement, drivers: [2], driven: [30], from: "A", display: null })).toHaveProperty("refused");
    expect(putTrain.run(estuary, { movement, drivers: [20], driven: [30], from: "no", display: null })).toHaveProperty("refused");
  });
});
