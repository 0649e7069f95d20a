import { describe, expect, it } from "vitest";
import { workOut } from "../../geometry/index.ts";
import { applyCure } from "../../src/commands/cure.ts";
import { atDistance } from "../../src/commands/distance.ts";
import { takeDistance } from "../../src/commands/take-distance.ts";
import { freshInstrument } from "../../src/commands/fresh.ts";
import { raisePart } from "../../src/commands/heights.ts";
import { holdSteady, keepPlaces, plantArbor } from "../../src/commands/planting.ts";
import type { Outcome } from "../../src/commands/command.ts";
import { readInstrument, writeInstrument } from "../../src/document/index.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

const done = (outcome: Outcome) => {
  if ("refused" in outcome) throw new Error(outcome.refused);
  return outcome;
};
const refused = (outcome: Outcome) => ("refused" in outcome ? outcome.refused : null);
const frozen = Object.freeze(structuredClone(SLIPWAY));

describe("commands", () => {
  it("plant an arbor where it is typed, to a ten-thousandth of a millimetre, and share the rest", () => {
    const { instrument, says } = done(plantArbor.run(frozen, { arbor: "B", x: 30.00004, y: -0.00003 }));
    expect(instrument.arbors[1]).toMatchObject({ x: 30, y: 0 });
    expect(Object.is(instrument.arbors[1]?.y, 0)).toBe(true);
    expect(instrument.arbors[0]).toBe(frozen.arbors[0]);
    expect(says).toBe("B planted");
  });

  it("refuse in words what is no place, no arbor, or not the maker's to choose", () => {
    expect(refused(plantArbor.run(frozen, { arbor: "B", x: Number.NaN, y: 0 }))).toBe("A place is two lengths within 10,000 mm.");
    expect(refused(plantArbor.run(frozen, { arbor: "Q", x: 0, y: 0 }))).toBe("There is no arbor called Q.");
    const riding = { ...frozen, arbors: frozen.arbors.map((a) => (a.id === "C" ? { ...a, rides: { on: "B", radius: 0, angle: 0 } } : a)) };
    expect(refused(keepPlaces.run(riding, { arbor: "C", places: new Map() }))).toBe("C rides on B and stands where that stands.");
  });

  it("keep the arbor in hand and its followers as one step", () => {
    const places = new Map([["B", { x: 28, y: 10 }], ["C", { x: 29, y: 33 }]]);
    const { instrument, says } = done(keepPlaces.run(frozen, { arbor: "B", places }));
    expect(instrument.arbors.map((a) => [a.x, a.y])).toEqual([[0, 0], [28, 10], [29, 33]]);
    expect(says).toBe("B moved");
  });

  it("hold an arbor steady and set it free again without leaving a trace in the file", () => {
    const steady = done(holdSteady.run(frozen, { arbor: "B", steady: true })).instrument;
    expect(steady.arbors[1]?.steady).toBe(true);
    expect(done(holdSteady.run(steady, { arbor: "B", steady: false })).instrument).toEqual(frozen);
  });

  it("raise a part, and name it by which way it went", () => {
    expect(done(raisePart.run(frozen, { part: "B1", z: 9.5 })).says).toBe("B1 raised");
    expect(done(raisePart.run(frozen, { part: "B1", z: 7 })).says).toBe("B1 lowered");
  });

  it("take a distance where the one that may move keeps its other distance too: two circles met", () => {
    const movement = workOut(SLIPWAY), to = { movement, engagement: "A1-B1", mm: 31 };
    const b = done(takeDistance.run(SLIPWAY, to)).instrument.arbors[1]!;
    expect(Math.hypot(b.x!, b.y!)).toBeCloseTo(31, 3);
    expect(Math.hypot(b.x! - 30, b.y! - 24)).toBeCloseTo(24, 3);
    expect(b.y).toBeLessThan(5);
    // It is shown, while it is tried, where it comes to stand.
    const tried = atDistance(SLIPWAY, movement, to.engagement, to.mm);
    if ("refused" in tried) throw new Error(tried.refused);
    expect([tried.place.x, tried.place.y]).toEqual([expect.closeTo(b.x!, 4), expect.closeTo(b.y!, 4)]);
    expect(refused(takeDistance.run(SLIPWAY, { ...to, mm: 0 }))).toBe("A distance is a length above 0 and within 10,000 mm.");
  });

  it("take a distance along the line of centres where nothing else holds the arbor, or no place keeps both", () => {
    const held = { ...SLIPWAY, arbors: SLIPWAY.arbors.map((a) => (a.id === "B" ? { ...a, steady: true } : a)) };
    expect(done(takeDistance.run(held, { movement: workOut(held), engagement: "A1-B1", mm: 31 })).instrument.arbors[0]).toMatchObject({ x: -1, y: 0 });
    // C stands hypot(30, 24) = 38.4 mm from A, so that no place is 64 mm from the one and 24 mm from the other.
    const movement = workOut(SLIPWAY);
    expect(done(takeDistance.run(SLIPWAY, { movement, engagement: "A1-B1", mm: 64 })).instrument.arbors[1]).toMatchObject({ x: 64, y: 0 });
  });

  it("apply a cure in plan from where the arbor stands, and in height from where the part sits", () => {
    const movement = workOut(SLIPWAY);
    const inPlan = applyCure.run(SLIPWAY, { movement, remedy: { says: "", move: "C", by: { x: 1, y: -2 } } });
    expect(done(inPlan).instrument.arbors[2]).toMatchObject({ x: 31, y: 22 });
    const inHeight = applyCure.run(SLIPWAY, { movement, remedy: { says: "", move: "C1", by: { z: 0.5 } } });
    expect(done(inHeight).instrument.arbors[2]?.parts[0]?.z).toBe(19.5);
    expect(refused(applyCure.run(SLIPWAY, { movement, remedy: { says: "", move: "Z9", by: { z: 0.5 } } }))).toBe("There is no part called Z9.");
  });

  it("begin with a plate that can be written, read again and examined", () => {
    const fresh = freshInstrument(110);
    const read = readInstrument(writeInstrument(fresh));
    expect(read).toMatchObject({ ok: true, instrument: fresh });
    expect(workOut(fresh).arbors.map((a) => a.id)).toEqual(["A"]);
  });
});
