import { Body, MakeTime, SearchMoonPhase, SearchRelativeLongitude, Seasons } from "astronomy-engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOfDate, dayOfMs, msOfDay, yearOf } from "../../../geometry/sky/calendar.ts";
import { equationOfTimeMin, meanAt, meanDays, QUANTITIES, quantityOf, turnsAt } from "../../../geometry/sky/quantities.ts";

const named = (name: string) => {
  const found = quantityOf(name);
  if (found === null) throw new Error(`no quantity ${name}`);
  return found;
};
const offDeg = (name: string, day: number): number => {
  const off = turnsAt(named(name), day) - meanAt(named(name), day);
  return 360 * (off - Math.round(off));
};

describe("the calendar", () => {
  it("[SKY1] agrees with the language's own dates over many thousand years", () => {
    fc.assert(fc.property(fc.integer({ min: -4000, max: 9000 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }), (year, month, day) => {
      const date = new Date(0);
      date.setUTCFullYear(year, month - 1, day);
      expect(dayOfDate(year, month, day)).toBe(dayOfMs(date.getTime()));
      expect(yearOf(dayOfMs(date.getTime()))).toBe(year);
      expect(msOfDay(dayOfDate(year, month, day))).toBe(date.getTime());
    }), { seed: 81 });
  });
});

describe("mean periods", () => {
  // Source: IERS Conventions 2010, TN 36, eq. 5.43 and 5.44, as recomputed in check-values 5.1 and 5.2; 1e-9 relative.
  it.each([
    ["age of the Moon", 29.5305888577], ["longitude of the Moon", 27.3215822492], ["Moon among the stars", 27.3216615508],
    ["anomaly of the Moon", 27.5545498824], ["Moon from its node", 27.2122208206], ["node of the Moon", 6798.38347],
    ["apse of the Moon", 3231.49568], ["longitude of the Sun", 365.242190424], ["sidereal year", 365.256362959],
    ["anomalistic year", 365.259635842], ["mean longitude of Mercury", 87.96843403], ["mean longitude of Venus", 224.69543632],
    ["mean longitude of Mars", 686.92971972], ["mean longitude of Jupiter", 4330.5961084], ["mean longitude of Saturn", 10746.94288],
    ["lunar day", 24.84120241 / 24],
  ])("[SKY2] of %s is %d days", (name, days) => {
    expect(Math.abs(meanDays(named(name)) / days - 1)).toBeLessThan(2e-9);
  });

  // Source: published speeds in degrees an hour, IHO/Schureman, to 1e-7 (check-values 5.3 [40]).
  it.each([
    ["M2", 28.9841042], ["S2", 30], ["N2", 28.4397295], ["K2", 30.0821373], ["K1", 15.0410686], ["O1", 13.9430356], ["P1", 14.9589314],
    ["Q1", 13.3986609], ["Mf", 1.0980331], ["Mm", 0.5443747], ["MSf", 1.0158958], ["Ssa", 0.0821373], ["Sa", 0.0410686], ["M4", 57.9682084],
  ])("[SKY3] tide %s goes %d degrees an hour", (name, speed) => {
    expect(Math.abs((named(`tide ${name}`).mean.perDay * 360) / 24 - speed)).toBeLessThan(1.01e-7);
  });
});

describe("true places", () => {
  it("[SKY2] stay within their known swing of the mean over 200 years", () => {
    const swings: Record<string, number> = {
      "age of the Moon": 10.2, "longitude of the Moon": 8.4, "Moon among the stars": 8.5, "longitude of the Sun": 1.96, "sidereal time": 0.02,
      "longitude of Mars": 11, "longitude of Jupiter": 6.3, "longitude of Saturn": 7.3, "longitude of Mercury": 24.1, "longitude of Venus": 0.9,
    };
    for (const [name, limit] of Object.entries(swings))
      for (let day = -36525; day <= 36525; day += 733.3) expect(Math.abs(offDeg(name, day))).toBeLessThan(limit);
  });

  // Outside: the library's own searches of new moons, equinoxes and conjunctions; a straight line through the new moons of 200 years
  // has 29.53058886006 d (check-values 5.4), here to 1e-6 from every twelfth.
  it("[SKY1] new Moon, the equinox and a conjunction are 0, and the lunations of 200 years fit the mean", () => {
    let time = SearchMoonPhase(0, MakeTime(dayOfDate(1900, 1, 1)), 40);
    const first = time?.ut ?? 0;
    expect(Math.abs(360 * (turnsAt(named("age of the Moon"), first) - Math.round(turnsAt(named("age of the Moon"), first))))).toBeLessThan(0.01);
    let n = 0, sn = 0, st = 0, snn = 0, snt = 0;
    for (let lunation = 0; time !== null && time.ut < dayOfDate(2100, 1, 1); lunation += 12) {
      n++; sn += lunation; st += time.ut - first; snn += lunation ** 2; snt += lunation * (time.ut - first);
      time = SearchMoonPhase(0, MakeTime(time.ut + 12 * 29.530588 - 5), 12);
    }
    expect(n).toBe(207);
    expect(Math.abs((n * snt - sn * st) / (n * snn - sn * sn) - 29.53058886)).toBeLessThan(5e-5);
    const equinox = Seasons(2026).mar_equinox.ut;
    expect(Math.abs(offTurn("longitude of the Sun", equinox))).toBeLessThan(1e-4);
    const meeting = SearchRelativeLongitude(Body.Mars, 180, MakeTime(dayOfDate(2026, 1, 1))).ut;
    expect(Math.abs(360 * (turnsAt(named("Mars seen from the Earth"), meeting) - turnsAt(named("longitude of the Sun"), meeting)))).toBeLessThan(0.05);
  });

  // Source: equation of time in 2024, least −14.194 min on 11 February, greatest +16.454 min on 2 November (check-values 5.4).
  it("[SKY2] the equation of time has its published greatest and least", () => {
    const values = Array.from({ length: 366 }, (_, k) => equationOfTimeMin(dayOfDate(2024, 1, 1) + k + 0.5));
    expect(Math.abs(Math.min(...values) + 14.194)).toBeLessThan(0.002);
    expect(Math.abs(Math.max(...values) - 16.454)).toBeLessThan(0.002);
    expect([values.indexOf(Math.min(...values)), values.indexOf(Math.max(...values))]).toEqual([41, 306]);
  });

  it("[SKY1] midnight, Sunday and New Year are 0; names are known in any case, and by older names", () => {
    for (const [name, day] of [["mean time", dayOfDate(2026, 7, 1)], ["weekday", dayOfDate(2026, 1, 4)], ["calendar", dayOfDate(2028, 1, 1)]] as const)
      expect(Math.abs(offTurn(name, day))).toBeLessThan(1e-9);
    expect(turnsAt(named("weekday"), dayOfDate(2026, 1, 1)) * 7).toBeCloseTo(4, 9); // a Thursday
    expect(quantityOf("  AGE of  the moon")?.name).toBe("age of the Moon");
    expect(quantityOf("Moon’s age")?.name).toBe("age of the Moon");
    expect([quantityOf("the price of coal"), quantityOf(undefined)]).toEqual([null, null]);
    expect(new Set(QUANTITIES.map((q) => q.name.toLowerCase())).size).toBe(QUANTITIES.length);
  });
});

function offTurn(name: string, day: number): number {
  const turns = turnsAt(named(name), day);
  return turns - Math.round(turns);
}
