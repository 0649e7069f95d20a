import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../../geometry/instrument.ts";
import { dayOfDate } from "../../../geometry/sky/calendar.ts";
import { compareWithSky, errorNow } from "../../../geometry/sky/compare.ts";
import { quantityOf, turnsAt } from "../../../geometry/sky/quantities.ts";
import { checkTable, nearestSetting, settingUp } from "../../../geometry/sky/setting-up.ts";
import { dialRate, nearestTurn, shownAt } from "../../../geometry/sky/shown.ts";
import { workOut } from "../../../geometry/workout.ts";

const example = (name: string): Instrument =>
  JSON.parse(readFileSync(resolve(import.meta.dirname, `../../../public/instruments/${name}.instrument.json`), "utf8")) as Instrument;
const movement = workOut(example("estuary-dial"));
const at = (id: string) => movement.displays.findIndex((d) => d.id === id);
const epoch = dayOfDate(2026, 1, 1);

describe("what a pointer shows", () => {
  it("[SKY4] counts from the dial's 0 with the pointer as it is drawn", () => {
    const hour = shownAt(movement, at("hour"), 0.25), day = shownAt(movement, at("day"), 0), moon = shownAt(movement, at("moon"), 0);
    expect(hour.value).toBeCloseTo(6, 9);
    expect(day.value).toBeCloseTo(4, 4); // Thursday, as 1 January 2026 was
    expect(moon.part * 360).toBeCloseTo(90 + 55.4, 9);
  });

  it("[SKY4] goes the way the dial is numbered, from where a ring says its 0 stands", () => {
    const turned: Instrument = {
      ...movement.instrument, displays: movement.instrument.displays?.map((d) => (d.id === "hour" ? { ...d, sense: "anticlockwise" as const } : d)) ?? [],
      dials: [{ id: "face", rings: [{ display: "hour", insideDiameter: 100, outsideDiameter: 120, zero: 0 }] }],
    };
    const other = workOut(turned);
    // At a quarter of a turn the pointer lies along +x, where this ring has its 0.
    expect(shownAt(other, 0, 0.25).part).toBeCloseTo(0, 9);
    expect(shownAt(other, 0, 0.3).value).toBeCloseTo(24 * 0.95, 9);
    expect(dialRate(other, 0)).toBe(-1);
  });
});

describe("held against the sky", () => {
  const span = { epoch, from: epoch, to: epoch + 730, samples: 1461 };
  const moon = compareWithSky(movement, at("moon"), span);

  it("[SKY5] the error is what is shown less what is true, at every sample", () => {
    const age = quantityOf("age of the Moon");
    if (moon === null || age === null) throw new Error("the Moon is compared");
    for (const i of [0, 100, 777, 1460]) {
      const day = moon.days[i] ?? 0;
      const error = 360 * nearestTurn(shownAt(movement, at("moon"), day - epoch).part - turnsAt(age, day));
      expect(moon.errorDeg[i]).toBeCloseTo(error, 9);
      expect(errorNow(movement, at("moon"), epoch, day)).toBeCloseTo(error, 9);
    }
  });

  // Source: greatest equation of the centre 6.29°, evection 1.27°, variation 0.66° of the Moon (any lunar theory; from memory): a mean
  // train swings by less than their sum, a pin and slot takes away about 6.3° of it and leaves about 2°.
  it("[SKY6] the Moon's error swings monthly, most of it with the anomaly", () => {
    const swing = moon?.swing;
    expect(swing?.greatestDeg).toBeGreaterThan(5.5);
    expect(swing?.greatestDeg).toBeLessThan(8.9);
    expect(Math.abs((swing?.recoveredDeg ?? 0) - 6.29)).toBeLessThan(0.25);
    expect(swing?.leftDeg).toBeLessThan(2.6);
    const middle = Array.from(moon?.evenDeg.slice(moon.evenFrom, moon.evenTo) ?? []);
    expect(Math.max(...middle) - Math.min(...middle)).toBeLessThan(6);
  });

  it("[SKY6] the drift is that of its counts, with its sign", () => {
    const days = movement.displays[at("moon")]?.days ?? 0;
    expect(moon?.driftDegPerYear).toBeCloseTo(360 * 365.25 * (1 / days - 1 / 29.5305888577), 6);
    expect((moon?.yearsByDrift ?? 0) * Math.abs(moon?.driftDegPerYear ?? 0)).toBeCloseTo(moon?.divisionDeg ?? 0, 9);
  });

  it("[SKY7] first out is where the error passes a division, to a thousandth of a day", () => {
    const fine = workOut({ ...movement.instrument, displays: movement.instrument.displays?.map((d) => (d.id === "moon" ? { ...d, divisions: 60 } : d)) ?? [] });
    const first = compareWithSky(fine, at("moon"), span)?.firstOut ?? NaN;
    expect(Math.abs(errorNow(fine, at("moon"), epoch, first) ?? 0)).toBeGreaterThan(6);
    expect(Math.abs(errorNow(fine, at("moon"), epoch, first - 0.0011) ?? 9)).toBeLessThanOrEqual(6);
    expect(compareWithSky(movement, at("year"), { ...span, to: epoch + 30 })?.firstOut).toBeNull();
  });

  it("[SKY5] a dial with its own 0 is right at the epoch, and what names nothing is not compared", () => {
    expect(errorNow(movement, at("tide"), epoch, epoch)).toBeCloseTo(0, 9);
    expect(compareWithSky(movement, at("hour"), span)).toBeNull();
    expect(compareWithSky(movement, at("moon"), { ...span, to: span.from })).toBeNull();
  });
});

describe("setting up", () => {
  it("[SKY8] says where each pointer should stand and where the crank leaves it", () => {
    const [start, later] = checkTable(movement, epoch, [epoch, epoch + 12.5]);
    expect([start?.turns, later?.turns]).toEqual([0, 12.5]);
    const moon = later?.pointers.find((p) => p.display === "moon");
    // 13 January 2026, noon: elongation 24.69 days of 29.53 on the library's Moon.
    expect(Math.abs((moon?.trueValue ?? 0) - 24.66)).toBeLessThan(0.05);
    expect(moon?.errorDeg).toBeCloseTo(errorNow(movement, at("moon"), epoch, epoch + 12.5) ?? NaN, 9);
    expect(settingUp(movement, epoch, epoch).pointers.find((p) => p.display === "hour")).toMatchObject({ truePart: null, errorDeg: null });
  });

  it("[SKY8] the nearest setting stands right, less than half a turn of the pointer away", () => {
    for (const part of [0, 0.3, 0.99]) for (const turns of [-40, 0, 12.5, 1e5]) {
      const to = nearestSetting(movement, at("moon"), part, turns) ?? NaN;
      expect(Math.abs(nearestTurn(shownAt(movement, at("moon"), to).part - part))).toBeLessThan(1e-9);
      expect(Math.abs(to - turns)).toBeLessThanOrEqual(29.5306 / 2);
    }
  });
});
