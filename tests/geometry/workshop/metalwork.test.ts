import { describe, expect, it } from "vitest";
import type { Arbor } from "../../../geometry/instrument.ts";
import { bendAllowanceMm, bendDeductionMm, neutral, patternMm } from "../../../geometry/workshop/allowances.ts";
import { cardOf } from "../../../geometry/workshop/card.ts";
import { cotterFigures, cotterTravelMm, homeMm, squarePlayDeg, washerMm } from "../../../geometry/workshop/cotter.ts";
import { housingFigures } from "../../../geometry/workshop/housing.ts";
import { densityOf, massG } from "../../../geometry/workshop/metal.ts";
import { seatOf } from "../../../geometry/workshop/seats.ts";

describe("bends and contraction", () => {
  // Source: bend allowance formula of sheet-metal handbooks (from memory), recomputed.
  it("[SHOP4] bend allowance is the neutral line's own length", () => {
    expect([[90, 2, 1, 0.5, 3.92699], [90, 2, 1, 0.44, 3.83274], [90, 1, 1, 0.33, 2.08916], [90, 3, 1.5, 0.44, 5.74911], [45, 5, 2, 0.5, 4.71239]].every(([a, r, t, k, ba]) => Math.abs(bendAllowanceMm(a!, r!, t!, k!) - ba!) < 1e-5)).toBe(true);
    expect(bendDeductionMm(90, 2, 1, 0.5)).toBeCloseTo(2.07301, 5);
    expect(bendDeductionMm(90, 2, 1, 0.44)).toBeCloseTo(2.16726, 5);
    expect([0.5, 1.5, 5].map((r) => neutral(r, 1))).toEqual([0.33, 0.44, 0.5]);
  });
  // Source: W. H. Dooley, Applied Science for Metal Workers, ch. 31: brass 3/16 in a foot, and a 24 3/8 in rule for 24.
  it("[SHOP4] a pattern is longer by the contraction: 100 mm of brass from 101.5625, 24 inches from 24 3/8", () => {
    expect(patternMm(100, "brass")).toBeCloseTo(101.5625, 9);
    expect(patternMm(24, "brass")).toBeCloseTo(24.375, 9);
    expect(patternMm(1200, "bronze") / 1200 - 1).toBeCloseTo(0.01302, 5);
  });
  // Source: CZ121 (CW614N) 8.47 g/cm³, makers' public data.
  it("[SHOP4] a cubic centimetre of brass weighs 8.47 g, of an unknown stuff nothing is said", () => {
    expect(massG(1000, "brass")).toBeCloseTo(8.47, 9);
    expect([densityOf("blued steel"), densityOf("boxwood")]).toEqual([7.85, null]);
  });
});

describe("a dividing card", () => {
  it("[SHOP5] ends after whole turns of the head, and every check is what was counted", () => {
    for (const count of [12, 39, 50, 52, 94, 235]) {
      const card = cardOf(count, undefined), last = card.checks.at(-1)!;
      expect([card.way, last.tooth, last.turns, last.holes]).toEqual(["plain", count, 40, [0]]);
      for (const c of card.checks) expect((c.turns + c.holes[0]! / (card.setting as { circle: number }).circle) * count).toBeCloseTo(40 * c.tooth, 6);
    }
  });
  it("[SHOP5] of an even count has the opposite tooth at half the turns; of an odd count a space stands opposite", () => {
    expect(cardOf(52, undefined).checks.find((c) => c.tooth === 26)).toEqual({ tooth: 26, turns: 20, holes: [0] });
    expect(cardOf(39, undefined).opposite).toBe(19.5);
  });
  it("[SHOP5] has every tenth tooth; a count that the head does not give is said", () => {
    expect(cardOf(50, undefined).checks.map((c) => c.tooth)).toEqual([10, 20, 25, 30, 40, 50]);
    expect(cardOf(53, { ratio: 40, circles: [15, 16] })).toMatchObject({ way: "none", setting: null, checks: [] });
  });
});

describe("seats", () => {
  const arbor: Arbor = { id: "B", diameter: 2.5, foot: 0, head: 30, parts: [
    { id: "W", kind: "wheel", teeth: 40, z: 5, thickness: 1.4, join: { by: "rivet" } }, { id: "K", kind: "collet", diameter: 6.5, z: 4.2, thickness: 3 }, { id: "P", kind: "pinion", leaves: 12, z: 12, thickness: 4, join: { by: "press" } },
  ] };
  it("[SHOP6] a wheel that shares height with a collet is mounted on its spigot, half way out; what has none sits on the arbor", () => {
    expect(seatOf(arbor, arbor.parts[0]!)).toMatchObject({ diameter: 4.5, collet: "K", says: "4.5 H7/h6, rivet" });
    expect(seatOf(arbor, arbor.parts[2]!)).toMatchObject({ diameter: 2.5, collet: null, says: "2.5 H7/p6, press", bore: { lower: 0, upper: 0.01 }, shaft: { lower: 0.006, upper: 0.012 } });
  });
});

describe("cottered squares", () => {
  it("[SHOP7] a hole wider by w goes w/(2 tan taper) up a square, and the cotter its own taper times as far", () => {
    expect(homeMm(0.01, 1)).toBeCloseTo(0.005 / Math.tan(Math.PI / 180), 9);
    expect(homeMm(0.01, 0)).toBe(0);
    expect(cotterTravelMm(0.05, 48)).toBeCloseTo(2.4, 9);
    const c = cotterFigures(4, 1, 8, { width: 1.2, height: 2 });
    expect((c.highLarge - c.highSmall) * c.cotterTaper).toBeCloseTo(c.length, 9);
    expect(c.highLarge).toBeGreaterThan(2);
    expect(c.highSmall).toBeLessThan(2);
  });
  it("[SHOP7] play of a loose square: turned so far, its corners touch the flats and no sooner", () => {
    for (const [across, loose] of [[4, 0.01], [3, 0.1], [6, 0.5]] as const) {
      const a = (squarePlayDeg(across, loose) * Math.PI) / 180;
      expect((across / 2) * (Math.cos(a) + Math.sin(a))).toBeCloseTo((across + loose) / 2, 9);
    }
    expect([squarePlayDeg(4, 0), squarePlayDeg(4, 3)]).toEqual([0, 45]);
    expect(washerMm(1.25, 0.2)).toBeCloseTo(1.05, 12);
  });
});

describe("a round case", () => {
  const h = housingFigures({ insideDiameter: 100, floor: -2, rim: 40, wall: 2 });
  it("[SHOP8] fabricated: the strip is the neutral line with what the joint takes, disc and strip have metal to trim", () => {
    expect(h.fabricated.stripNet).toBeCloseTo(Math.PI * 102, 9);
    expect(h.fabricated.stripLength - h.fabricated.stripNet).toBeCloseTo(h.fabricated.joint, 9);
    expect(h.fabricated.discFitted + 2 * h.fabricated.solderGap).toBe(100);
    expect(h.fabricated.stockMassG).toBeGreaterThan(h.fabricated.massG);
  });
  it("[SHOP8] cast: the pattern is the rough casting and its contraction; more is melted than is cast, more cast than is left", () => {
    expect(h.cast.patternOutside).toBeCloseTo((104 + 2 * h.cast.machining) * 1.015625, 9);
    expect(h.cast.toMeltG).toBeGreaterThan(h.cast.castMassG);
    expect(h.cast.castMassG).toBeGreaterThan(h.cast.finishedMassG);
    expect(h.cast.finishedMassG).toBeCloseTo(((Math.PI / 4) * (104 ** 2 * 44 - 100 ** 2 * 42) * 8.47) / 1000, 6);
  });
});
