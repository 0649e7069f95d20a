import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { examine, examineSteps } from "../../../geometry/examine/sheet.ts";
import type { Arbor, Instrument, Part } from "../../../geometry/instrument.ts";
import { ratio } from "../../../geometry/numeric/ratio.ts";
import { workOut } from "../../../geometry/workout.ts";
import { stepsOf } from "../../../src/workers/searching.ts";

const wheel = (id: string, teeth: number, z: number): Part => ({ id, kind: "wheel", teeth, z, thickness: 1 });
const arbor = (id: string, x: number, parts: Part[], more: Partial<Arbor> = {}): Arbor => ({ id, x, y: 0, diameter: 2, foot: 0, head: 30, parts, ...more });
const instrumentOf = (arbors: Arbor[], engagements: Instrument["engagements"], more: Partial<Instrument> = {}): Instrument => ({
  endshake: 1, name: "until", arbors, engagements, input: { arbor: "A", days: 1, sense: "clockwise" },
  frame: { plates: [], pillars: [] }, practice: { sideshake: 0.02, runout: 0.01, planGap: 1, wobble: 0, endshake: 0.1 }, ...more,
});
/** A pin on A and an arm on B, 40 : 61. */
const pinAndArm = instrumentOf([
  arbor("A", 0, [wheel("a", 40, 2), { id: "p", kind: "pin", radius: 24, angle: 0, diameter: 2, z: 15, thickness: 4 }]),
  arbor("B", 50.5, [wheel("b", 61, 2), { id: "m", kind: "arm", length: 26, width: 4, angle: 140, z: 16, thickness: 2 }]),
], [{ driver: "a", driven: "b" }]);
const found = (until?: number) => examine(workOut(pinAndArm), { all: true, ...(until === undefined ? {} : { until }) }).findings
  .find((f) => f.code === "gap" && f.between.includes("p") && f.between.includes("m"))!;

describe("turned only so far", () => {
  it("[MOVE8] a meeting that comes later is free, and stands as it was from its turn on", () => {
    const whole = found(), first = whole.when!.turns;
    expect(whole.severity).toBe("foul");
    expect(found(first - 0.01).severity).not.toBe("foul");
    expect(found(first + 0.001).severity).toBe("foul");
    expect(found(61)).toEqual(whole);
    expect(found(1e9)).toEqual(whole);
    expect(found(0).severity).toBe("free");
  });
  it("[MOVE8] the nearest is that of the turns asked for: never less than the whole cycle's, never more as they grow", () => {
    const gaps = [0, 1, 3, 7, 20, 45, 61].map((turns) => found(turns).gap!);
    for (let i = 1; i < gaps.length; i++) expect(gaps[i]).toBeLessThanOrEqual(gaps[i - 1]! + 0.002);
    expect(Math.abs(gaps.at(-1)! - found().gap!)).toBeLessThan(0.001);
  });
  it("[MOVE8] steps end with the sheet of the whole, their progress rises to 1, and the worker tells the same", () => {
    const steps = examineSteps(workOut(pinAndArm), { until: 30 }), told: number[] = [];
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) told.push(step.value);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBe(1);
    expect(step.value).toEqual(examine(workOut(pinAndArm), { until: 30 }));
    expect([...stepsOf({ kind: "turning", instrument: pinAndArm, turns: 30 })].at(-1)).toEqual({ kind: "turning", done: 1, best: step.value });
  });
  it("[MOVE8] a thousand years of the estuary dial give what its whole cycle gives, in under a second", () => {
    const dial = JSON.parse(readFileSync(new URL("../../../public/instruments/estuary-dial.instrument.json", import.meta.url), "utf8")) as Instrument;
    const movement = workOut(dial), start = performance.now();
    const sheet = examine(movement, { until: 365_250 });
    expect(performance.now() - start).toBeLessThan(1000);
    expect(sheet.counts.foul).toBe(examine(movement).counts.foul);
  });
});

describe("hostile instruments", () => {
  const inTime = (instrument: Instrument, ms: number) => {
    const start = performance.now(), sheet = examine(workOut(instrument));
    expect(performance.now() - start).toBeLessThan(ms);
    return sheet;
  };
  /** The rest of the sheet: a heat finding that has nothing to do with what is hostile. */
  const solder = (id: string, order: number, liquidus: number): Part => ({ id, kind: "collet", diameter: 3, z: order, thickness: 0.5, join: { by: "silver solder", order, liquidus } });
  const rest = (sheet: ReturnType<typeof examine>) => sheet.findings.some((f) => f.code === "heat");

  it("[MOVE9] rates with sixty-digit terms end in bounded time, and what cannot be followed to the end is said", () => {
    const primes = [1997, 1993, 1987, 1979, 1973, 1951, 1949, 1933, 1931, 1913, 1907, 1901, 1889, 1879, 1877, 1873, 1871, 1867, 1861, 1847];
    const drivers = [1009, 1013, 1019, 1021, 1031, 1033, 1039, 1049, 1051, 1061, 1063, 1069, 1087, 1091, 1093, 1097, 1103, 1109, 1117, 1123];
    const arbors = primes.map((teeth, i): Arbor => arbor(i === 0 ? "A" : `N${i}`, 2000 * i, [
      wheel(`w${i}`, teeth, 3 * (i % 2)), wheel(`v${i}`, drivers[i]!, 3 * ((i + 1) % 2)),
      ...(i === 0 ? [solder("s1", 20, 700), solder("s2", 25, 800)] : []),
    ]));
    const last: Arbor = arbor("Z", 2000 * 19 + 40, [{ id: "z", kind: "arm", length: 30, width: 3, angle: 10, z: 20, thickness: 2 }, wheel("zw", 31, 30)], { head: 40 });
    const pins: Arbor = { ...arbors[19]!, parts: [...arbors[19]!.parts, { id: "pin", kind: "pin", radius: 25, angle: 0, diameter: 2, z: 20, thickness: 3 }, wheel("zv", 47, 30)], head: 40 };
    const engagements = Array.from({ length: 19 }, (_, i) => ({ driver: `v${i}`, driven: `w${i + 1}` }));
    const instrument = instrumentOf([...arbors.slice(0, 19), pins, last], [...engagements, { driver: "zv", driven: "zw" }]);
    const rate = workOut(instrument).arbors.at(-1)!.rate!;
    expect(rate.n.toString().length + rate.d.toString().length).toBeGreaterThan(100);
    const sheet = inTime(instrument, 10_000);
    expect(rest(sheet)).toBe(true);
    expect(sheet.findings.some((f) => f.code === "gap" && f.between.includes("pin") && f.between.includes("z"))).toBe(true);
  });
  it("[MOVE9] a locked train is a bind, and the rest of the sheet is given", () => {
    const instrument = instrumentOf([
      arbor("A", 0, [wheel("a", 30, 2), wheel("c", 40, 10), solder("s1", 20, 700), solder("s2", 25, 800)]), arbor("B", 30, [wheel("b", 30, 2), wheel("d", 20, 10)]),
    ], [{ driver: "a", driven: "b" }, { driver: "c", driven: "d" }]);
    const sheet = inTime(instrument, 1000);
    expect(sheet.findings.some((f) => f.code === "bind")).toBe(true);
    expect(rest(sheet)).toBe(true);
  });
  it("[MOVE9] hundreds of pins against an arm are each settled", () => {
    const pins = Array.from({ length: 300 }, (_, i): Part => ({ id: `p${i}`, kind: "pin", radius: 24, angle: 1.2 * i, diameter: 0.3, z: 15, thickness: 4 }));
    const instrument = instrumentOf([
      arbor("A", 0, [wheel("a", 40, 2), ...pins, solder("s1", 20, 700), solder("s2", 25, 800)]),
      arbor("B", 50.5, [wheel("b", 61, 2), { id: "m", kind: "arm", length: 26, width: 4, angle: 140, z: 16, thickness: 2 }]),
    ], [{ driver: "a", driven: "b" }]);
    const sheet = inTime(instrument, 20_000);
    expect(sheet.findings.filter((f) => f.code === "gap" && f.between.includes("m")).length).toBe(300);
    expect(rest(sheet)).toBe(true);
  });
  it("[MOVE9] arms of next to no length and arbors on one axis give finite figures", () => {
    const instrument = instrumentOf([
      arbor("A", 0, [wheel("a", 40, 2), { id: "m", kind: "arm", length: 1e-9, width: 1e-9, angle: 0, z: 16, thickness: 2 }, solder("s1", 20, 700), solder("s2", 25, 800)]),
      arbor("B", 0, [{ id: "n", kind: "arm", length: 20, width: 4, angle: 140, z: 16, thickness: 2 }, { id: "q", kind: "pin", radius: 0, angle: 0, diameter: 2, z: 24, thickness: 2 }]),
      arbor("C", 50.5, [wheel("b", 61, 2)]),
    ], [{ driver: "a", driven: "b" }], { couplings: [{ kind: "friction", between: ["A", "B"] }] });
    const sheet = inTime(instrument, 1000);
    for (const f of sheet.findings) for (const figure of [f.gap, f.worst]) expect(figure === undefined || Number.isFinite(figure)).toBe(true);
    expect(rest(sheet)).toBe(true);
    expect(workOut(instrument).arbors[1]?.rate?.equals(ratio(1))).toBe(true);
  });
});
