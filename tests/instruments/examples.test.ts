// The examples: each is read, validates against the published schema, is written as the program writes, shows what it
// is meant to show, and is free of faults — or, the first draft, has each of the faults planted in it.
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import Ajv from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { examine, workOut } from "../../geometry/index.ts";
import type { Instrument, Sheet } from "../../geometry/index.ts";
import { readInstrument, writeInstrument } from "../../src/document/index.ts";

const published = resolve(import.meta.dirname, "../../public");
const folder = join(published, "instruments");
const NAMES = ["estuary-dial", "estuary-dial-first-draft", "going-train", "small-tellurian"];
const SOUND = NAMES.filter((name) => name !== "estuary-dial-first-draft");

const textOf = (name: string): string => readFileSync(join(folder, `${name}.instrument.json`), "utf8");
function instrument(name: string): Instrument {
  const read = readInstrument(textOf(name));
  if (!read.ok) throw new Error(`${name} is refused: ${JSON.stringify(read.refused)}`);
  return read.instrument;
}
const sheetOf = (name: string): Sheet => examine(workOut(instrument(name)));
const display = (sheet: Sheet, id: string) => sheet.displays.find((d) => d.id === id);
const rateOf = (sheet: Sheet, id: string) => sheet.arbors.find((a) => a.id === id)?.rate;

describe("every example", () => {
  it("[READ12] is one of four, validates against the published schema and holds nothing unknown", () => {
    expect(readdirSync(folder).sort()).toEqual(NAMES.map((name) => `${name}.instrument.json`).sort());
    const schema = JSON.parse(readFileSync(join(published, "instrument.schema.json"), "utf8"));
    const validate = new Ajv({ strict: true, strictTypes: false, strictRequired: false }).compile(schema);
    for (const name of NAMES) {
      expect(validate(JSON.parse(textOf(name))), `${name}: ${JSON.stringify(validate.errors)}`).toBe(true);
      expect(readInstrument(textOf(name)), name).toMatchObject({ ok: true, unknown: [] });
    }
  });

  it("[READ13] stands in the file as the program writes it", () => {
    for (const name of NAMES) expect(writeInstrument(instrument(name)), name).toBe(textOf(name));
  });

  it("[READ1] but the first draft has nothing foul and nothing tight", () => {
    for (const name of SOUND) {
      const { findings, counts } = sheetOf(name);
      expect(findings.map((f) => `${f.severity} ${f.code} ${f.between.join(" ")}`), name).toEqual([]);
      expect(counts.free).toBeGreaterThan(300);
    }
  });
});

describe("the estuary dial", () => {
  it("[READ1] shows the day, the Moon's age, the hour of high water, the week and the year, all clockwise", () => {
    const sheet = sheetOf("estuary-dial");
    expect(sheet.arbors.length).toBe(15);
    expect(sheet.displays.map((d) => d.sense)).toEqual(new Array(5).fill("clockwise"));
    expect(display(sheet, "hour")?.rate).toBe("1");
    expect(display(sheet, "day")?.rate).toBe("1/7");
    // 22·19·19·22 over 39·49·54·50, in lowest terms.
    expect(display(sheet, "moon")?.rate).toBe("43681/1289925");
    expect(display(sheet, "tide")?.rate).toBe("87362/1289925");
    // Mean synodic month 29.530588853 days (Meeus, Astronomical Algorithms); within 2e-5 of a day.
    expect(Math.abs((display(sheet, "moon")?.days ?? 0) - 29.530588853)).toBeLessThan(2e-5);
    // Tropical year 365.2422 days; within 1e-3 of a day.
    expect(Math.abs((display(sheet, "year")?.days ?? 0) - 365.2422)).toBeLessThan(1e-3);
  });
});

describe("the small tellurian", () => {
  it("[READ1] keeps the Earth's axis steady and brings the Moon round it in its month", () => {
    const sheet = sheetOf("small-tellurian");
    // Willis: with the arm at 1 and the first wheel held, the last turns 1 ∓ the train's ratio (Willis, Principles of Mechanism).
    expect(rateOf(sheet, "E")).toBe("0");
    expect(rateOf(sheet, "M")).toBe("11069/828");
    expect(11069 / 828).toBeCloseTo(1 + (55 * 49 * 38) / (20 * 18 * 23), 12);
    // Sidereal periods add: 1/month = 1/year + 1/lunation. Mean lunation 29.530588853, tropical month 27.321582 days; within 3e-4 of a day.
    expect(Math.abs((display(sheet, "age")?.days ?? 0) - 29.530588853)).toBeLessThan(3e-4);
    expect(Math.abs((display(sheet, "month")?.days ?? 0) - 27.321582)).toBeLessThan(3e-4);
    expect(display(sheet, "season")).toMatchObject({ rate: "-1", sense: "clockwise" });
  });
});

describe("the going train", () => {
  it("[READ1] turns its hands in twelve hours, an hour and a minute", () => {
    const sheet = sheetOf("going-train");
    expect(["hours", "minutes", "seconds"].map((id) => display(sheet, id)?.rate)).toEqual(["-1", "-12", "-720"]);
    expect(["hours", "minutes", "seconds"].map((id) => display(sheet, id)?.sense)).toEqual(new Array(3).fill("clockwise"));
  });
});

/** What was planted in the first draft: the code, its severity, between whom, and what the maker did. */
const PLANTED = [
  ["gap", "foul", ["D1", "B"], "arbor B stands within the swing of wheel D1"],
  ["gap", "foul", ["N1", "Q1"], "wheels N1 and Q1 are 0.2 mm apart as drawn, less than their shakes"],
  ["depth", "foul", ["H2", "J1"], "the week arbor stands 1 mm too far out"],
  ["distance", "tight", ["H2", "J1"], "the same, as a distance"],
  ["depth", "tight", ["N2", "Q1"], "the teeth of Q1 are cut too thin"],
  ["lost-motion", "tight", ["year"], "the same, at the pointer on reversing"],
  ["unequal", "foul", ["A2", "H1"], "H1 is cut with a cutter of 14.5°"],
  ["stack", "foul", ["B1", "B2"], "pinion B2 is too long for its place"],
  ["run-off", "foul", ["D2", "E1"], "pinion D2 hardly reaches wheel E1"],
  ["pivot", "foul", ["G", "back"], "the front pivot of G barely enters its plate"],
  ["pivot", "tight", ["L", "back"], "the shoulders of L leave too little endshake"],
  ["edge", "tight", ["H", "front"], "an opening is drilled too near the hole for H"],
  ["pipe", "foul", ["F", "E"], "pipe F is bored to the size of pipe E"],
  ["sense", "foul", ["year"], "the date is numbered the other way round"],
  ["reverted", "foul", ["E2-G1", "G2-F1"], "G1 has a tooth too few"],
  ["distance", "tight", ["E2", "G1"], "the same, as a distance"],
  ["depth", "tight", ["E2", "G1"], "the same, as a depth"],
  ["drift", "tight", ["tide"], "the same, at the pointer"],
  ["idle", "tight", ["K"], "arbor K was left over"],
  ["undercut", "tight", ["K2"], "pinion K2 has ten leaves and no shift"],
  ["dividing", "tight", ["K1"], "wheel K1 has 53 teeth"],
  ["heat", "foul", ["C3", "C2"], "pinion C2 is silver-soldered after the soft solder of its collet"],
] as const;

describe("the first draft", () => {
  const found = sheetOf("estuary-dial-first-draft").findings;

  it.each(PLANTED.map(([code, severity, between, story]) => ({ code, severity, between, story })))(
    "[READ1] has its $code: $story", ({ code, severity, between }) => {
      const it = found.filter((f) => f.code === code && [...f.between].sort().join() === [...between].sort().join());
      expect(it.map((f) => f.severity)).toEqual([severity]);
    });

  it("[READ1] has no other fault", () => {
    const planted = PLANTED.map(([code, , between]) => `${code} ${[...between].sort().join(" ")}`);
    expect(found.map((f) => `${f.code} ${[...f.between].sort().join(" ")}`).filter((f) => !planted.includes(f))).toEqual([]);
  });
});
