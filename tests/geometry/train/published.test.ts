// Published wheel trains, by their tooth counts. Where a printed decimal contradicts its own counts, the counts stand.
import { describe, expect, it } from "vitest";
import { toNumber, writeRatio } from "../../../geometry/numeric/ratio.ts";
import { workOut } from "../../../geometry/workout.ts";
import { arbor, gear, instrument, wheel, type Extras } from "./made.ts";

/** A train written as makers write it: pairs of driver and driven, one after the other. */
function train(pairs: readonly (readonly [number, number])[], extras: Extras = {}) {
  const arbors = [...pairs, null].map((_, i) => arbor(`A${i}`, [
    ...(i > 0 ? [wheel(`f${i}`, pairs[i - 1][1])] : []), ...(i < pairs.length ? [wheel(`w${i}`, pairs[i][0])] : []),
  ]));
  return workOut(instrument(arbors, pairs.map((_, i) => gear(`w${i}`, `f${i + 1}`)), extras));
}
const last = (pairs: readonly (readonly [number, number])[]): string => {
  const rate = train(pairs).arbors[pairs.length].rate;
  return rate === null ? "null" : writeRatio(rate.abs());
};

describe("published trains", () => {
  it("[TRAIN1] Huygens's planetarium of 1682: turns of each planet for one of the year shaft (Dietzschold, Die Turmuhren, 1894, p. 307; Mercury's 7/12 from memory)", () => {
    expect(last([[121, 17], [7, 12]])).toBe("847/204");
    expect(last([[52, 32]])).toBe("13/8");
    expect(last([[60, 60]])).toBe("1");
    expect(last([[84, 158]])).toBe("42/79");
    expect(last([[14, 166]])).toBe("7/83");
    expect(last([[7, 206]])).toBe("7/206");
  });

  it("[TRAIN14] its Venus is 3.59 degrees wrong after twenty years (a newspaper of 1995 has: not above 3.5), Saturn 0.037", () => {
    const wrong = (pairs: readonly (readonly [number, number])[], tropicalYears: number) => {
      const display = { id: "p", name: "planet", arbor: "A1", days: tropicalYears * 365.24219 };
      return (train(pairs, { days: 365.24219, displays: [display] }).displays[0].degreesPerYear ?? 0) * 20;
    };
    expect(wrong([[52, 32]], 0.615195732)).toBeCloseTo(-3.59, 2);
    expect(wrong([[7, 206]], 29.424155)).toBeCloseTo(-0.037, 3);
  });

  it("[TRAIN1] sidereal from solar day, 72 × 61 over 60 × 73 (Dietzschold p. 306)", () => {
    expect(last([[72, 60], [61, 73]])).toBe("366/365");
  });

  it("[TRAIN14] lunar day from a 24-hour arbor: 25 > 60, 211 > 91 is no lunar day but its counts give 1092/1055 d for the driver (Dietzschold p. 305)", () => {
    expect(last([[60, 25], [91, 211]])).toBe("1092/1055");
    const made = train([[25, 60], [211, 91]], { days: 1, displays: [{ id: "tide", name: "tide", arbor: "A2" }] });
    expect(made.displays[0].days).toBeCloseTo(1092 / 1055, 12);
  });

  it("[TRAIN14] lunar day 43/37 × 57/64 of 24 h is 24.841216216 h (astroclocks.nl, Astroclocks 3)", () => {
    const made = train([[37, 43], [64, 57]], { days: 1, displays: [{ id: "tide", name: "tide", arbor: "A2", days: 24.84120241 / 24 }] });
    expect((made.displays[0].days ?? 0) * 24).toBeCloseTo(24.841216216, 9);
    // 0.050 s a lunar day (same row of figures): 360 × 365.25 × (1/days − 1/wanted) degrees a year.
    expect(made.displays[0].degreesPerYear).toBeCloseTo(360 * 365.25 * (1 / (24.841216216216216 / 24) - 1 / (24.84120241 / 24)), 6);
  });

  it("[TRAIN14] a moon dial of 59 teeth is one day wrong in 2.64 years, of 135 teeth in 122.3 (Vacheron discussions and mathgui.de)", () => {
    const yearsToOneDay = (days: number) => {
      const display = { id: "moon", name: "moon", arbor: "A1", days: 29.530588858 };
      const made = workOut(instrument(
        [arbor("A0", [wheel("w", 32)]), arbor("A1", [wheel("f", 135)])], [gear("w", "f")], { days: (days * 32) / 135, displays: [display] }));
      return (made.displays[0].yearsToOneDegree ?? 0) * (360 / 29.530588858);
    };
    expect(yearsToOneDay(29.5)).toBeCloseTo(2.64, 2);
    expect(yearsToOneDay(29.53125)).toBeCloseTo(122.3, 1);
  });

  it("[TRAIN1] Camus's annual train, 50 × 69 × 83 over 7 × 7 × 8 half-days (Treatise on the Teeth of Wheels, from memory)", () => {
    expect(last([[7, 50], [7, 69], [8, 83]])).toBe("196/143175");
    expect(toNumber(train([[7, 50], [7, 69], [8, 83]]).arbors[3].rate!.abs().inverse()) / 2).toBeCloseTo(365.242346939, 9);
  });

  it("[TRAIN1] an eight-day longcase: great wheel one turn in 12 h, escape wheel 60 turns an hour (common English count, from memory)", () => {
    expect(last([[96, 8]])).toBe("12");
    expect(last([[60, 8], [56, 7]])).toBe("60");
    for (const pairs of [[[64, 8], [60, 8]], [[80, 10], [75, 10]], [[96, 12], [90, 12]]] as const) expect(last(pairs)).toBe("60");
  });

  it("[TRAIN1] motion works of 12 to 1: 24 > 48, 10 > 60 (J. Wild's spruce-plate clock page) and others (common practice)", () => {
    for (const pairs of [[[24, 48], [10, 60]], [[12, 36], [10, 40]], [[8, 32], [8, 24]], [[10, 30], [8, 32]]] as const) expect(last(pairs)).toBe("1/12");
  });
});

describe("displays", () => {
  const read = (extras: Extras) => workOut(instrument([
    arbor("A", [wheel("a", 20)]), arbor("B", [wheel("b", 40)]), arbor("D", [wheel("d", 60)]), arbor("I", []),
  ], [gear("a", "b"), gear("b", "d")], extras)).displays[0];

  it("[TRAIN14] are read against the dial's arbor where that turns, and have days, drift and years to one degree", () => {
    expect(writeRatio(read({ displays: [{ id: "x", name: "x", arbor: "B", against: "D" }] }).rate!)).toBe("-5/6");
    expect(writeRatio(read({ displays: [{ id: "x", name: "x", arbor: "B", against: "I" }] }).rate!)).toBe("-1/2");
    const x = read({ days: 2, displays: [{ id: "x", name: "x", arbor: "B", days: 4.01 }] });
    expect(x.days).toBe(4);
    expect(x.degreesPerYear).toBeCloseTo(360 * 365.25 * (1 / 4 - 1 / 4.01), 9);
    expect(x.yearsToOneDegree).toBeCloseTo(1 / (360 * 365.25 * (1 / 4 - 1 / 4.01)), 12);
    expect(x.divisions).toBe(360);
  });

  it("[TRAIN14] have no days, drift or sense where they do not turn, and no years where nothing is wanted or nothing drifts", () => {
    expect(read({ displays: [{ id: "x", name: "x", arbor: "I", days: 3 }] })).toMatchObject({ rate: null, days: null, degreesPerYear: null, yearsToOneDegree: null, sense: null });
    expect(read({ displays: [{ id: "x", name: "x", arbor: "B", against: "B", days: 3 }] })).toMatchObject({ days: null, degreesPerYear: null, sense: null });
    expect(read({ displays: [{ id: "x", name: "x", arbor: "B" }] })).toMatchObject({ days: 2, wanted: null, degreesPerYear: null, yearsToOneDegree: null });
    expect(read({ displays: [{ id: "x", name: "x", arbor: "B", days: 2 }] })).toMatchObject({ degreesPerYear: 0, yearsToOneDegree: null });
  });

  it("[TRAIN14] have no drift at all where the counts show the wanted days exactly, however they are written", () => {
    for (const days of [0.1, 29.530588853, 1e-7, 365.2422]) {
      const wanted = days === 0.1 ? 0.2 : undefined;
      const made = read({ days, displays: [{ id: "x", name: "x", arbor: "B", days: wanted ?? Number((2 * days).toPrecision(15)) }] });
      expect(made).toMatchObject({ degreesPerYear: 0, yearsToOneDegree: null, days: wanted ?? 2 * days });
    }
  });

  it("[TRAIN14] turn the input's way from the dial side where their rate is above 0, else the other way", () => {
    expect(read({ sense: "clockwise", displays: [{ id: "x", name: "x", arbor: "D" }] }).sense).toBe("clockwise");
    expect(read({ sense: "clockwise", displays: [{ id: "x", name: "x", arbor: "B" }] }).sense).toBe("anticlockwise");
    expect(read({ sense: "anticlockwise", displays: [{ id: "x", name: "x", arbor: "B" }] }).sense).toBe("clockwise");
  });
});
