import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { pointerErrors } from "../../../geometry/depth/pointer.ts";
import { wanderOf } from "../../../geometry/depth/wander.ts";
import type { Arbor, Instrument, Part } from "../../../geometry/instrument.ts";
import { workOut } from "../../../geometry/workout.ts";

const RAD = Math.PI / 180, DEG = 180 / Math.PI;
const wheel = (id: string, teeth: number, z: number, runout: number, more: object = {}): Part => ({ id, kind: "wheel", teeth, z, thickness: 2, measured: { runout }, ...more });
const arbor = (id: string, x: number, y: number, parts: Part[], more: Partial<Arbor> = {}): Arbor => ({ id, x, y, diameter: 2, foot: 0, head: 40, parts, ...more });
const train = (arbors: Arbor[], engagements: [string, string][], last: string, more: Partial<Instrument> = {}) => workOut({
  endshake: 1, name: "wander", frame: { plates: [], pillars: [] }, arbors, engagements: engagements.map(([driver, driven]) => ({ driver, driven })),
  input: { arbor: arbors[0]!.id, days: 1, sense: "clockwise" }, displays: [{ id: "d", name: "d", arbor: last }], ...more,
});
/** 40 : 20, 30 : 60 at module 1. */
const plain = (e: [number, number, number, number], sense: "clockwise" | "anticlockwise" = "clockwise") => train(
  [arbor("A", 0, 0, [wheel("A1", 40, 2, e[0])]), arbor("B", 30, 0, [wheel("B1", 20, 2, e[1]), wheel("B2", 30, 10, e[2])]), arbor("C", 30, 45, [wheel("C1", 60, 10, e[3])])],
  [["A1", "B1"], ["B2", "C1"]], "C", { input: { arbor: "A", days: 1, sense } });

/** Stepping: each wheel's centre is moved, and each driven turned back so that the pitch points stay together. */
function stepped(e: readonly number[], highDeg: readonly number[], sign: 1 | -1): number {
  let least = Infinity, most = -Infinity;
  for (let k = 0; k < 720; k++) {
    const t = (k / 360) * 2 * Math.PI;
    const turned = [sign * t, -2 * sign * t, -2 * sign * t, sign * t];
    const along = (i: number, pitchDeg: number) => e[i]! * Math.sin(highDeg[i]! * RAD + turned[i]! - pitchDeg * RAD);
    // Along +90° of A's pitch direction; B's is the other way. B's turn off even, in radians:
    const b = -(along(1, 180) + along(0, 0)) / 10;
    const c = -(along(3, 270) + along(2, 90)) / 30 - b * (30 / 60);
    least = Math.min(least, c);
    most = Math.max(most, c);
  }
  return ((most - least) / 2) * DEG;
}

describe("wander of a pointer", () => {
  it("[WANDER1] one wheel off its centre by e wanders e/r at the driven, in the lever's closed form", () => {
    const w = wanderOf(plain([0, 0, 0, 0.03]), 0)!;
    expect(w.wavers.map((v) => [v.part, v.period])).toEqual([["C1", "1"]]);
    expect(w.most).toBeCloseTo((0.03 / 30) * DEG, 9);
    expect(w.least).toBeCloseTo(w.most, 12);
  });
  it("[WANDER1] an early wheel is divided by every later ratio, and has its own period", () => {
    const w = wanderOf(plain([0.02, 0.04, 0, 0]), 0)!;
    const at = (id: string) => w.wavers.find((v) => v.part === id)!;
    expect(at("A1").degrees).toBeCloseTo((0.02 / 10) * 0.5 * DEG, 9);
    expect(at("B1").degrees).toBeCloseTo((0.04 / 10) * 0.5 * DEG, 9);
    expect([at("A1").period, at("B1").period, at("B1").days]).toEqual(["1", "1/2", 0.5]);
  });
  it("[WANDER2] two wheels of one arbor stand against one another at the best phases, and only what they differ by is left", () => {
    const w = wanderOf(plain([0, 0.02, 0.05, 0]), 0)!;
    const [b1, b2] = [(0.02 / 10) * 0.5 * DEG, (0.05 / 30) * DEG];
    expect(w.most).toBeCloseTo(b1 + b2, 9);
    expect(w.least).toBeCloseTo(Math.abs(b1 - b2), 9);
  });
  it("[WANDER2] stepping through whole turns finds no less at any phases, and the least at those that are named", () => {
    for (const sense of ["clockwise", "anticlockwise"] as const) {
      const sign = sense === "clockwise" ? -1 : 1, e = [0.03, 0.02, 0.05, 0.06];
      const m = plain(e as [number, number, number, number], sense), w = wanderOf(m, 0)!;
      const best = ["A1", "B1", "B2", "C1"].map((id) => w.wavers.find((v) => v.part === id)!.best!);
      const forTwo = (i: number, j: number) => stepped(e.map((v, k) => (k === i || k === j ? v : 0)), best, sign);
      // The two periods are 1 : 2 and do not mix: each pair by itself.
      const pairs = forTwo(0, 3) + forTwo(1, 2);
      expect(pairs).toBeCloseTo(w.least, 6);
      fc.assert(fc.property(fc.array(fc.double({ min: 0, max: 360, noNaN: true }), { minLength: 4, maxLength: 4 }), (high) => {
        const any = stepped(e.map((v, k) => (k === 0 || k === 3 ? v : 0)), high, sign) + stepped(e.map((v, k) => (k === 1 || k === 2 ? v : 0)), high, sign);
        expect(any).toBeGreaterThanOrEqual(w.least - 1e-4);
        expect(any).toBeLessThanOrEqual(w.most + 1e-4);
      }), { seed: 111, numRuns: 40 });
    }
  });
  it("[WANDER3] an idler between mates on opposite sides adds its run-out twice, at a right angle as arrows, and takes it back where both stand on one side", () => {
    const idler = (x: number, y: number) => wanderOf(train(
      [arbor("A", 0, 0, [wheel("A1", 30, 2, 0)]), arbor("B", 30, 0, [wheel("B1", 30, 2, 0.04)]), arbor("C", x, y, [wheel("C1", 30, 2, 0)])],
      [["A1", "B1"], ["B1", "C1"]], "C"), 0)!;
    // In line the pitch points lie on opposite sides and slip the same way round: twice e/r. Side by side (30, 30) they add at a right angle.
    const one = (0.04 / 15) * DEG;
    expect(idler(60, 0).most).toBeCloseTo(2 * one, 9);
    expect(idler(30, 30).most).toBeCloseTo(Math.SQRT2 * one, 9);
    expect(idler(0.0001, 0).most).toBeLessThan(1e-4 * one + 1e-4);
  });
  it("[WANDER2] three of one period close a triangle where none is longer than the other two: nothing need be left", () => {
    const m = train([
      arbor("A", 0, 0, [wheel("A1", 30, 2, 0.03)]), arbor("B", 30, 0, [wheel("B1", 30, 2, 0.04), wheel("B2", 30, 10, 0.05)]), arbor("C", 30, 30, [wheel("C1", 30, 10, 0.02)]),
    ], [["A1", "B1"], ["B2", "C1"]], "C");
    const w = wanderOf(m, 0)!;
    expect(w.least).toBe(0);
    const e = [0.03, 0.04, 0.05, 0.02], pitch = [0, 180, 90, 270], way = [-1, 1, 1, -1];
    const factor = [1, 1, 1, 1].map((_, i) => (i < 2 ? 1 / 15 : -1 / 15));
    const best = ["A1", "B1", "B2", "C1"].map((id) => w.wavers.find((v) => v.part === id)!.best!);
    for (let k = 0; k < 36; k++) {
      const sum = e.reduce((s, v, i) => s + v * factor[i]! * Math.sin((best[i]! + way[i]! * 10 * k - pitch[i]!) * RAD), 0);
      expect(Math.abs(sum)).toBeLessThan(1e-9);
    }
  });
  it("[WANDER4] causes: a dial off centre by 0.25 mm at 75 mm is 0.19°, a pointer 2 mm high read from 30° aside is 0.88°", () => {
    // Source: trade figures of dial reading, e/R and gap·tan(eye)/R (common practice).
    const m = train([arbor("A", 0, 0, [{ id: "A9", kind: "pointer", z: 30, thickness: 1, length: 75, tail: 10, width: 2, angle: 0 }])], [], "A",
      { displays: [{ id: "d", name: "d", arbor: "A", divisions: 24, days: 1.001 }] });
    const [{ causes, radius }] = pointerErrors(m) as [ReturnType<typeof pointerErrors>[number]];
    const at = (cause: string) => causes.find((c) => c.cause === cause)!;
    expect(radius).toBe(75);
    expect(at("dial off centre").degrees).toBeCloseTo(0.191, 3);
    expect(at("parallax").degrees).toBeCloseTo(0.882, 3);
    expect(at("parallax").divisions).toBeCloseTo((at("parallax").degrees * 24) / 360, 12);
    expect(at("parallax").days).toBeCloseTo(at("parallax").degrees / 360, 12);
    expect(at("drift").degrees).toBeCloseTo(360 * 365.25 * (1 - 1 / 1.001), 6);
    expect(causes.map((c) => c.degrees)).toEqual(causes.map((c) => c.degrees).sort((a, b) => b - a));
    expect(causes[0]?.cause).toBe("drift");
  });
  it("[WANDER1] [WANDER4] every display of the examples has finite figures, and its least wander is no more than its most", () => {
    for (const name of ["estuary-dial", "going-train", "small-tellurian"]) {
      const m = workOut(JSON.parse(readFileSync(new URL(`../../../public/instruments/${name}.instrument.json`, import.meta.url), "utf8")) as Instrument);
      for (const { causes, wander } of pointerErrors(m)) {
        for (const c of causes) expect(Number.isFinite(c.degrees) && Number.isFinite(c.divisions)).toBe(true);
        expect(wander!.least).toBeLessThanOrEqual(wander!.most + 1e-12);
      }
    }
  });
});
