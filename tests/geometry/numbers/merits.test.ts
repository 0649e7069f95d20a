import { describe, expect, it } from "vitest";
import { allowedCounts, headOf, isAwkward } from "../../../geometry/numbers/counts.ts";
import { ORDINARY_HEAD } from "../../../geometry/numbers/dividing.ts";
import { driftOf, meritsOf, ranked, revertedPairing, roomOf } from "../../../geometry/numbers/merits.ts";
import { findTrains } from "../../../geometry/numbers/trains.ts";
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
