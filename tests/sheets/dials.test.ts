import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { facesOf, type Instrument, pointerOf, shownAt, workOut } from "../../geometry/index.ts";
import { handOf, wanderDeg } from "../../src/sheets/dials/Face.tsx";
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
