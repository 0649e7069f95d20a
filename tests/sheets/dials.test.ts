import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { facesOf, type Instrument, marksBy, pointerOf, shownAt, workOut } from "../../geometry/index.ts";
import { handOf, wanderDeg } from "../../src/sheets/dials/Face.tsx";
import { readMarks, writtenMarks } from "../../src/sheets/dials/marks.ts";
import { readsAs, ringOf } from "../../src/sheets/dials/reads.ts";

const estuary = JSON.parse(readFileSync(resolve(import.meta.dirname, "../../public/instruments/estuary-dial.instrument.json"), "utf8")) as Instrument;
const movement = workOut(estuary);
const at = (id: string) => movement.displays.findIndex((d) => d.id === id);
const reads = (id: string, turns: number, short = false) => readsAs(movement, at(id), shownAt(movement, at(id), turns).part, short);

describe("what a pointer reads", () => {
  it("is said in the words of its dial", () => {
    expect(reads("hour", 0.5)).toBe("12:00");
    expect(reads("hour", 0.75 + 1 / 96)).toBe("18:15");
    expect(reads("day", 0.5)).toBe("Thursday");
    expect(reads("day", 1.5, true)).toBe("Fri");
    expect(reads("moon", 12.5)).toMatch(/^24\.4 days$/);
    expect(reads("tide", 0)).toBe("3 h 22");
    expect(reads("year", 0)).toBe("0.0 days");
  });

  it("has a ring of its own on some dial", () => {
    const faces = facesOf(movement);
    for (let i = 0; i < movement.displays.length; i++) expect(ringOf(faces, i)).not.toBeNull();
  });
});

describe("the hands of a dial", () => {
  it("have the ink for the longest, and others after it", () => {
    expect(["hour", "tide", "moon"].map((id) => handOf(movement, at(id)))).toEqual(["ink", "brass", "blue"]);
  });

  it("wander at the tip by all the sideshakes that they ride on", () => {
    const pointer = pointerOf(movement, at("moon"));
    if (!pointer) throw new Error("the Moon has a pointer");
    const arbor = movement.arbors[movement.displays[at("moon")]?.arbor ?? -1];
    const play = [arbor, ...(arbor?.chain ?? []).map((i) => movement.arbors[i])].reduce((sum, a) => sum + (a?.ownSideshake ?? 0), 0);
    expect(play).toBeGreaterThan(0);
    expect(wanderDeg(movement, at("moon"), pointer)).toBeCloseTo((Math.atan2(play, 19) * 180) / Math.PI, 12);
  });
});

describe("a table of marks as it is typed", () => {
  const marks = (text: string) => readMarks(text).marks, faults = (text: string) => readMarks(text).faults;

  it("is a line a mark: degrees, and what is written there", () => {
    expect(marks("0 low\n\n100,25\n 30\tNew Moon\n2*45; noon")).toEqual([{ at: 0, label: "low" }, { at: 30, label: "New Moon" }, { at: 90, label: "noon" }, { at: 100.25 }]);
    expect(marks("36 10\n72 20")).toEqual([{ at: 36, label: "10" }, { at: 72, label: "20" }]);
    expect(marks("0,Jan\r\n30.5,Feb")).toEqual([{ at: 0, label: "Jan" }, { at: 30.5, label: "Feb" }]);
  });

  it("may have the values before them, as a table of values is pasted", () => {
    expect(marks("1 0 Jan\n32 30.58 Feb\n40 38.5")).toEqual([{ at: 0, label: "Jan" }, { at: 30.58, label: "Feb" }, { at: 38.5 }]);
    expect(faults("1 0 Jan\nx 30 Feb\n3")).toEqual(["Line 2: a value was wanted, not “x”.", "Line 3: no angle stands after the value."]);
  });

  it("says for each line what is wrong with it", () => {
    expect(faults("0 a\nsoon b\n-1\n360\n0 c")).toEqual([
      "Line 2: degrees were wanted, not “soon”.", "Line 3: -1° does not lie from 0 up to 360.", "Line 4: 360° does not lie from 0 up to 360.",
      "Line 5: a mark stands at 0° already, on line 1.",
    ]);
    expect(faults(Array.from({ length: 1001 }, (_, i) => `${i / 3}`).join("\n"))).toEqual(["1001 lines are more than a ring can take; at most 1000."]);
    expect(readMarks("")).toEqual({ marks: [], faults: [] });
  });

  it("is written as it is read, laws written out too", () => {
    for (const law of ["calendar", "calendar by the Sun", "equation of time", "height of the tide"] as const) {
      const table = marksBy(law).map(({ at, label }) => ({ at: Math.round(at * 360e6) / 1e6, ...(label === undefined ? {} : { label }) })).sort((a, b) => a.at - b.at);
      expect(readMarks(writtenMarks(table))).toEqual({ marks: table, faults: [] });
    }
  });
});
