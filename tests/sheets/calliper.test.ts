import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sweptThings, workOut } from "../../geometry/index.ts";
import { axesOf, engagedAxes, rowOf } from "../../src/sheets/calliper/axes.ts";
import { placeLetters } from "../../src/sheets/calliper/letters.ts";
import { HEIGHTS_TO_WIDTHS, layRow } from "../../src/sheets/calliper/row.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

const movement = workOut(SLIPWAY);

describe("the axes of a plan", () => {
  it("letter arbors that stand in line together, once", () => {
    const piped = workOut({ ...SLIPWAY, arbors: [...SLIPWAY.arbors, { id: "D", diameter: 6, bore: 4.04, foot: 24, head: 29, rides: { on: "A", radius: 0, angle: 0 }, parts: [] }] });
    expect(axesOf(piped).map((a) => a.letters)).toEqual(["A D", "B", "C"]);
  });

  it("are joined by one line of centres for each engaged pair of axes", () => {
    expect(engagedAxes(movement, axesOf(movement))).toEqual([[0, 1], [1, 2]]);
  });

  it("stand in a row each beside its neighbour in the train, every one once", () => {
    expect(rowOf(movement, axesOf(movement))).toEqual([0, 1, 2]);
  });
});

describe("the developed elevation", () => {
  const row = layRow(movement, sweptThings(movement), { width: 460, height: 240 });

  it("hides no wheel behind another that shares its height", () => {
    const wheels = row.bars.filter((b) => b.kind !== "arbor");
    for (const a of wheels) for (const b of wheels)
      if (a.arbor !== b.arbor && a.y < b.y + b.h - 1e-9 && b.y < a.y + a.h - 1e-9) {
        const clear = Math.max(a.x, b.x) - Math.min(a.x + a.w, b.x + b.w);
        expect(clear).toBeGreaterThan(0);
      }
  });

  it("has heights three times the widths: a wheel of 42 mm and 2 mm thick is 7 times as wide as high", () => {
    const wheel = row.bars.find((b) => b.id === "B1")!;
    expect(wheel.w / wheel.h).toBeCloseTo(42 / (HEIGHTS_TO_WIDTHS * 2), 9);
  });

  it("letters no axis over another: a long name steps down a line", () => {
    const named = workOut({ ...SLIPWAY, arbors: SLIPWAY.arbors.map((a) => (a.id === "B" ? { ...a, id: "second-arbor-of-the-slipway" } : a)) });
    const { columns } = layRow(named, sweptThings(named), { width: 300, height: 240 });
    expect(columns.map((c) => c.line)).toEqual([0, 1, 0]);
  });

  it("keeps inside the room it is given, in both ways", () => {
    expect(row.height).toBeLessThanOrEqual(240 + 1e-9);
    for (const b of [...row.bars, ...row.plates]) {
      expect(b.x).toBeGreaterThanOrEqual(-1e-9);
      expect(b.x + b.w).toBeLessThanOrEqual(460 + 1e-9);
    }
  });
});

describe("letters", () => {
  it("never cover one another where the crosses stand a letter's width apart", () => {
    const grid = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 5 })), { minLength: 1, maxLength: 14, selector: String });
    fc.assert(fc.property(grid, (cells) => {
      const things = cells.map(([i, j]) => ({ x: 10 + 40 * i, y: 10 + 40 * j, text: "M" }));
      const places = placeLetters(things, { width: 220, height: 220 });
      for (const p of places) expect(Math.min(p.x, p.y, 220 - p.x, 220 - p.y)).toBeGreaterThanOrEqual(6.5 - 1e-9);
      places.forEach((p, i) => places.slice(i + 1).forEach((q) => {
        expect(Math.abs(p.x - q.x) >= 13 - 1e-9 || Math.abs(p.y - q.y) >= 16 - 1e-9).toBe(true);
      }));
    }), { seed: 20260116, numRuns: 200 });
  });
});
