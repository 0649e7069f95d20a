import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import type { DialRing, Instrument } from "../../../geometry/instrument.ts";
import { roman, type FaceRing } from "../../../geometry/dials/face.ts";
import { dialsFor } from "../../../geometry/dials/said.ts";
import { facesOf } from "../../../geometry/dials/faces.ts";
import { dayOfDate } from "../../../geometry/sky/calendar.ts";
import { equationOfTimeMin, quantityOf, turnsAt } from "../../../geometry/sky/quantities.ts";
import { workOut } from "../../../geometry/workout.ts";

const instrument = JSON.parse(readFileSync(resolve(import.meta.dirname, "../../../public/instruments/estuary-dial.instrument.json"), "utf8")) as Instrument;
const ringOf = (ring: Partial<DialRing>): FaceRing => {
  const face = facesOf(workOut({ ...instrument, dials: [{ id: "face", rings: [{ insideDiameter: 20, outsideDiameter: 30, ...ring }] }] }))[0];
  if (!face?.rings[0]) throw new Error("a face has its ring");
  return face.rings[0];
};

describe("rings as drawn", () => {
  it("[DIAL1] have their marks evenly from the top, the last numeral at the 0 mark", () => {
    const ring = ringOf({ divisions: 12, parts: 5 });
    expect(ring.marks).toHaveLength(60);
    expect(ring.marks.filter((m) => m.weight === 2)).toHaveLength(12);
    expect(ring.letters.find((l) => l.text === "XII")?.turn).toBeCloseTo(0, 12);
    expect(ring.letters.find((l) => l.text === "III")?.turn).toBeCloseTo(0.25, 12);
    expect(ringOf({ divisions: 12, sense: "anticlockwise" }).letters.find((l) => l.text === "III")?.turn).toBeCloseTo(0.75, 12);
    expect(ringOf({ divisions: 12, zero: 0 }).letters.find((l) => l.text === "XII")?.turn).toBeCloseTo(0.25, 12);
    expect([4, 9, 14, 24, 40, 99, 365].map(roman)).toEqual(["IIII", "IX", "XIV", "XXIV", "XL", "XCIX", "365"]);
  });

  it("[DIAL1] have at most 24 numerals, whatever their divisions", () => {
    for (const divisions of [1, 3, 7, 30, 31, 60, 365, 360, 5000]) {
      const { letters } = ringOf({ divisions });
      expect(letters.length).toBeGreaterThan(0);
      expect(letters.length).toBeLessThanOrEqual(24);
    }
  });

  it("[DIAL1] need not come out even: a Moon's age of 29½", () => {
    const ring = ringOf({ divisions: 29.5, parts: 2, every: 2 });
    expect(ring.marks).toHaveLength(59);
    expect(ring.letters.map((l) => l.text)).toEqual(["2", "4", "6", "8", "10", "12", "14", "16", "18", "20", "22", "24", "26", "28"]);
    expect(ring.letters.at(-1)?.turn).toBeCloseTo(28 / 29.5, 12);
  });

  it("[DIAL2] put uneven marks exactly where the table says", () => {
    const ring = ringOf({ marks: [{ at: 0, label: "low" }, { at: 100.25 }], zero: 180, sense: "anticlockwise" });
    expect(ring.marks.map((m) => m.turn)).toEqual([0.75, expect.closeTo(0.75 - 100.25 / 360, 12)]);
    expect(ring.letters).toEqual([{ turn: 0.75, text: "low" }]);
  });

  it("[DIAL2] put dates where the true Sun stands, and minutes where the equation of time has them", () => {
    const sun = quantityOf("longitude of the Sun");
    if (sun === null) throw new Error("the Sun is known");
    const calendar = ringOf({ follows: "calendar by the Sun" }), plain = ringOf({ follows: "calendar" });
    expect([calendar.marks.length, plain.marks.length, plain.letters.length]).toEqual([365, 365, 12]);
    expect(calendar.letters.find((l) => l.text === "Jul")?.turn).toBeCloseTo(turnsAt(sun, dayOfDate(2001, 7, 1)), 12);
    expect(plain.letters.find((l) => l.text === "Mar")?.turn).toBeCloseTo(59 / 365, 12);
    const equation = ringOf({ follows: "equation of time" });
    const tens = equation.letters.filter((l) => l.text === "+10");
    expect(tens).toHaveLength(2); // once rising in September, once falling in December
    for (const ten of tens) expect(equationOfTimeMin(dayOfDate(2001, 1, 1) + 365 * ten.turn)).toBeCloseTo(10, 4);
    expect(equation.letters.filter((l) => l.text === "0")).toHaveLength(4); // April, June, September, December
  });

  it("[DIAL2] put the tenths of a tide where its cosine has them", () => {
    const tide = ringOf({ follows: "height of the tide" });
    expect(tide.marks).toHaveLength(40);
    expect(tide.letters).toHaveLength(20);
    for (const { turn, text } of tide.letters) {
      const tenths = text === "high" ? 10 : text === "low" ? 0 : Number(text);
      expect((1 + Math.cos(2 * Math.PI * turn)) / 2).toBeCloseTo(tenths / 10, 12);
    }
    expect(tide.letters.filter((l) => l.text === "5").map((l) => l.turn)).toEqual([expect.closeTo(0.25, 12), expect.closeTo(0.75, 12)]);
  });

  it("[DIAL3] are carried by the arbor they name, else as the display's dial", () => {
    const movement = workOut(instrument);
    expect(ringOf({ carrier: "E" }).carrier).toBe(movement.arborIndex.get("E"));
    expect(ringOf({ display: "moon" }).carrier).toBeNull();
    const against = workOut({ ...instrument, displays: (instrument.displays ?? []).map((d) => (d.id === "moon" ? { ...d, against: "A" } : d)) });
    expect(facesOf(against).flatMap((f) => f.rings).find((r) => r.display !== null && against.displays[r.display]?.id === "moon")?.carrier)
      .toBe(against.arborIndex.get("A"));
  });
});

describe("dials that the file does not say", () => {
  const movement = workOut(instrument);
  it("[DIAL4] are one an axis, with a ring for every display and none over another", () => {
    const faces = facesOf(movement);
    expect(faces.flatMap((f) => f.rings.map((r) => r.display)).sort()).toEqual([0, 1, 2, 3, 4]);
    for (const { rings } of faces) rings.forEach((r, i) => {
      expect(r.outsideMm).toBeGreaterThan(r.insideMm);
      if (i > 0) expect(r.insideMm).toBeGreaterThanOrEqual(rings[i - 1]?.outsideMm ?? 0);
    });
  });

  it("[DIAL4] can be written into the file and are then read back as the same rings", () => {
    const dials = dialsFor(movement);
    const again = facesOf(workOut({ ...instrument, dials }));
    expect(again.map((f) => [f.x, f.y, f.rings.length])).toEqual(facesOf(movement).map((f) => [f.x, f.y, f.rings.length]));
    expect(new Set(dials.map((d) => d.id)).size).toBe(dials.length);
  });
});
