import { describe, expect, it } from "vitest";
import { workOut } from "../../geometry/index.ts";
import { ringsOf } from "../../scenes/dials/rings.ts";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Instrument } from "../../geometry/index.ts";

const estuary = JSON.parse(readFileSync(resolve(import.meta.dirname, "../../public/instruments/estuary-dial.instrument.json"), "utf8")) as Instrument;
const moonOf = (dials: NonNullable<Instrument["dials"]>) => ringsOf(workOut({ ...estuary, dials })).find((r) => r.id === "moon");

describe("rings in the movement", () => {
  it("are as the file says them where it says them", () => {
    const ring = moonOf([{ id: "face", rings: [{ display: "moon", insideDiameter: 39, outsideDiameter: 47, divisions: 2, labels: ["new", "full"], carrier: "E" }] }]);
    expect(ring).toMatchObject({ innerMm: 19.5, outerMm: 23.5, divisions: 2, carrier: workOut(estuary).arborIndex.get("E") });
    expect(ring?.numerals).toEqual([{ at: 2, text: "new" }, { at: 1, text: "full" }]);
  });

  it("are laid out by their pointers where it says none, or says marks that do not stand evenly", () => {
    const laid = ringsOf(workOut(estuary)).find((r) => r.id === "moon");
    expect(moonOf([{ id: "face", rings: [{ display: "tide", insideDiameter: 60, outsideDiameter: 70 }] }])).toEqual(laid);
    expect(moonOf([{ id: "face", rings: [{ display: "moon", insideDiameter: 39, outsideDiameter: 47, follows: "calendar" }] }])).toEqual(laid);
  });
});
