import { describe, expect, it } from "vitest";
import { facesOf, marksBy, workOut } from "../../geometry/index.ts";
import { followsLaw, ringsOf } from "../../scenes/dials/rings.ts";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Instrument } from "../../geometry/index.ts";

const estuary = JSON.parse(readFileSync(resolve(import.meta.dirname, "../../public/instruments/estuary-dial.instrument.json"), "utf8")) as Instrument;
const said = (dials: NonNullable<Instrument["dials"]>) => workOut({ ...estuary, dials });
const moonOf = (dials: NonNullable<Instrument["dials"]>) => ringsOf(said(dials), marksBy).find((r) => r.display === "moon");
const ring = { display: "moon", insideDiameter: 39, outsideDiameter: 47 };

describe("rings in the movement", () => {
  it("are as the file says them", () => {
    const moon = moonOf([{ id: "face", rings: [{ ...ring, divisions: 2, labels: ["new", "full"], carrier: "E" }] }]);
    expect(moon).toMatchObject({ insideMm: 19.5, outsideMm: 23.5, carrier: workOut(estuary).arborIndex.get("E"), letters: [{ turn: 0, text: "new" }, { turn: 0.5, text: "full" }] });
    const two = ringsOf(said([{ id: "face", rings: [ring, { ...ring, insideDiameter: 50, outsideDiameter: 60 }, { insideDiameter: 62, outsideDiameter: 70, divisions: 4 }] }]));
    expect(two.map((r) => [r.id, r.display])).toEqual([["face ring 1", "moon"], ["face ring 2", "moon"], ["face ring 3", null]]);
  });

  it("have uneven marks where the table or the law puts them, as on the sheet", () => {
    const table = moonOf([{ id: "face", rings: [{ ...ring, marks: [{ at: 0, label: "new" }, { at: 200 }], zero: 0, sense: "anticlockwise" }] }]);
    expect(table?.marks).toEqual([{ turn: 0.25, weight: 2 }, { turn: expect.closeTo(0.25 - 200 / 360 + 1, 12) as unknown, weight: 0 }]);
    for (const follows of ["calendar", "calendar by the Sun", "equation of time", "height of the tide"] as const) {
      const dials = [{ id: "face", rings: [{ ...ring, follows }] }];
      expect(moonOf(dials)?.marks).toEqual(facesOf(said(dials))[0]?.rings[0]?.marks);
      expect(followsLaw(said(dials))).toBe(true);
      expect(ringsOf(said(dials))[0]?.marks).toEqual([]); // until the law is fetched
    }
    expect(followsLaw(workOut(estuary))).toBe(false);
  });

  it("have the openings of the dial as far as they lie in them, unless they turn under them", () => {
    const dial = { id: "face", apertures: [{ radius: 23, angle: 180, width: 36, height: 4 }] };
    expect(moonOf([{ ...dial, rings: [ring] }])?.windows).toEqual([{ turn: 0.75, breadth: 0.1, fromMm: 21, toMm: 23.5 }]);
    expect(moonOf([{ ...dial, rings: [{ ...ring, carrier: "E" }] }])?.windows).toEqual([]);
    expect(moonOf([{ ...dial, rings: [{ ...ring, outsideDiameter: 41 }] }])?.windows).toEqual([]);
  });

  it("are laid out by their pointers where the file says none, just under them", () => {
    const laid = ringsOf(workOut(estuary));
    expect(laid.map((r) => r.display).sort()).toEqual(["day", "hour", "moon", "tide", "year"]);
    const written = ringsOf(workOut({ ...estuary, dials: [{ id: "face", rings: [ring] }] }))[0];
    expect(written?.z).toBeCloseTo(laid.find((r) => r.display === "moon")?.z ?? NaN, 1);
  });
});
