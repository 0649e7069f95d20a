import { describe, expect, it } from "vitest";
import { allowedCounts, headOf, isAwkward } from "../../../geometry/numbers/counts.ts";
import { ORDINARY_HEAD } from "../../../geometry/numbers/dividing.ts";
import { bestAt, driftOf, MERITS, meritsOf, ranked, revertedPairing, roomOf, workshopOf } from "../../../geometry/numbers/merits.ts";
import { findTrains } from "../../../geometry/numbers/trains.ts";
import type { Instrument } from "../../../geometry/instrument.ts";
import { decimalRatio, ratio } from "../../../geometry/numeric/ratio.ts";

describe("the counts that may be asked for", () => {
  it("[NUM13] keep to the ranges, the largest, the cutters and the head", () => {
    expect(allowedCounts({ wheels: [10, 12], pinions: [6, 7] })).toEqual([6, 7, 10, 11, 12]);
    expect(allowedCounts({ wheels: [10, 12], pinions: [6, 11], largest: 9 })).toEqual([6, 7, 8, 9]);
    expect(allowedCounts({ wheels: [20, 40], pinions: [8, 9], cutters: [{ form: "involute", module: 1, from: 21, to: 25 }] })).toEqual([21, 22, 23, 24, 25]);
    const all = allowedCounts({ wheels: [100, 110], pinions: [6, 6], head: { ...ORDINARY_HEAD, gears: [] } });
    expect(all).not.toContain(103);
    expect(all).toContain(104);
  });

  // Source: no exact compound solution on these plates for 53 and 59 (check-values 7.5); 94 falls on the 47 circle (trade 1.13).
  it("[NUM13] a plain list of circles is one plate", () => {
    expect(headOf({ ratio: 40, circles: [15, 17] }).plates).toEqual([[15, 17]]);
    expect(headOf({ ratio: 40, circles: [[15], [17]] }).plates).toEqual([[15], [17]]);
    expect([isAwkward(94, ORDINARY_HEAD), isAwkward(96, ORDINARY_HEAD)]).toEqual([false, true]);
  });
});

describe("what a train costs", () => {
  const found = findTrains({ wanted: decimalRatio("0.0338631"), within: decimalRatio("0.002"), engagements: 2, counts: [6, 7, 8, 9, 10, 30, 36, 40, 44, 48, 59, 60] }).trains;

  it("[NUM14] ranks by what the maker cares for", () => {
    expect(found.length).toBeGreaterThan(1);
    const teeth = ranked(found, { teeth: 1 }, {}).map((t) => meritsOf(t, {}).teeth);
    expect(teeth).toEqual([...teeth].sort((a, b) => a - b));
    const largest = ranked(found, { largest: 1 }, {}).map((t) => meritsOf(t, {}).largest);
    expect(largest).toEqual([...largest].sort((a, b) => a - b));
    expect(ranked(found, {}, {})).toEqual(found);
    expect(meritsOf({ drivers: [96, 8], driven: [59, 8], ratio: ratio(1), error: 0 }, { head: ORDINARY_HEAD, cutters: [{ form: "involute", module: 1, from: 12, to: 60 }] }))
      .toMatchObject({ awkward: 2, cutters: 2, wheels: 4, teeth: 171, largest: 96 });
  });

  const wide = findTrains({ wanted: decimalRatio("0.0338631"), within: decimalRatio("0.02"), engagements: 2, counts: [6, 7, 8, 9, 10, 30, 36, 40, 44, 48, 59, 60] }).trains;

  it("[NUM14] weighs every figure against the greatest of the list", () => {
    const workshop = { head: ORDINARY_HEAD, cutters: [{ form: "involute", module: 1, from: 8, to: 50 }] };
    const weights = { error: 2, teeth: 1, largest: 3, cutters: 1, awkward: 0.5 }, list = ranked(wide, weights, workshop);
    const greatest = (m: (typeof MERITS)[number]) => Math.max(...wide.map((t) => meritsOf(t, workshop)[m]));
    const sums = list.map((t) => MERITS.reduce((sum, m) => sum + ((weights as Partial<Record<string, number>>)[m] ?? 0) * (meritsOf(t, workshop)[m] / (greatest(m) || 1)), 0));
    expect(sums).toEqual([...sums].sort((a, b) => a - b));
  });

  it("[NUM14] says what each is best at, and nothing where all are alike", () => {
    expect(new Set(wide.map((t) => t.error)).size).toBeGreaterThan(3);
    const best = bestAt(wide, {}), at = (merit: string) => wide.filter((t) => (best.get(t) as readonly string[] | undefined)?.includes(merit));
    expect(at("error")).toEqual([wide[0]]);
    expect(at("teeth").map((t) => meritsOf(t, {}).teeth)).toEqual([Math.min(...wide.map((t) => meritsOf(t, {}).teeth))]);
    expect(at("wheels")).toEqual([]);
    expect(bestAt([], {}).size).toBe(0);
  });

  it("[NUM14] of the cutters only those that a new train is cut with come into it", () => {
    const bare = { format: "endshake instrument", version: 1, name: "", units: "mm", input: { arbor: "A", days: 1, sense: "clockwise" }, frame: { plates: [], pillars: [] }, arbors: [], engagements: [] } as never as Instrument;
    expect(workshopOf(bare)).toEqual({});
    const cutters = [{ form: "involute", module: 1, from: 12, to: 60 }, { form: "involute", module: 0.5 }, { form: "cycloidal", module: 1 }];
    expect(workshopOf({ ...bare, cutters, division: { ratio: 60, circles: [20] } })).toEqual({ cutters: [cutters[0]], head: { ratio: 60, plates: [[20]], gears: [] } });
  });

  // Source: a 59-tooth wheel moved daily is one day out in 2.64 years (check-values 4.3 [30]).
  it("[NUM14] drifts by its error: a moon of 59 teeth is a day out in 2.64 years", () => {
    const yearly = driftOf(29.530588858 / 29.5 - 1, 29.530588858);
    expect(Math.abs(360 / 29.530588858 / yearly - 2.64)).toBeLessThan(0.005);
  });

  // Source: of the common motion works only 30/10 × 32/8 is coaxial at one module (check-values 4.4).
  it("[NUM15] knows which motion work is coaxial at one module", () => {
    expect(revertedPairing({ drivers: [10, 8], driven: [32, 30] })?.engagements).toEqual([[10, 30], [8, 32]]);
    expect(revertedPairing({ drivers: [12, 10], driven: [40, 36] })).toBeNull();
    expect(revertedPairing({ drivers: [24, 10], driven: [60, 48] })).toBeNull();
    expect(revertedPairing({ drivers: [20, 10, 8], driven: [44, 32, 30] })?.engagements.at(-1)).toEqual([20, 44]);
  });

  it("[NUM15] needs room for its greatest blank and for its distances", () => {
    expect(roomOf({ drivers: [10, 8], driven: [32, 30] }, 0.5)).toEqual({ largestMm: 17, spanMm: 20 });
  });
});
