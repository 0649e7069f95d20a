import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dragArbor, examine, type Instrument, type PartKind, workOut } from "../../geometry/index.ts";
import { type Outcome } from "../../src/commands/command.ts";
import { applyCure } from "../../src/commands/cure.ts";
import { takeDistance } from "../../src/commands/take-distance.ts";
import { addThing, copyThing, putOn, rename, setField, takeAway } from "../../src/commands/edit.ts";
import { putInGear } from "../../src/commands/gear.ts";
import { raisePart, raisePlate, setEnd } from "../../src/commands/heights.ts";
import { holdSteady, keepPlaces, plantArbor } from "../../src/commands/planting.ts";
import { asKind, freshArbor, freshCase, freshIn, freshPart } from "../../src/commands/things.ts";
import { plantTrain, readStages } from "../../src/commands/train.ts";
import { readInstrument, writeInstrument } from "../../src/document/index.ts";
import { NO_HISTORY, redone, stepped, undone } from "../../src/state/history.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

const KINDS: readonly PartKind[] = ["wheel", "pinion", "lantern", "collet", "pointer", "disc", "pin", "slot", "arm", "ratchet", "square"];
const done = (outcome: Outcome) => {
  if ("refused" in outcome) throw new Error(outcome.refused);
  return outcome;
};
const refused = (outcome: Outcome) => ("refused" in outcome ? outcome.refused : null);

describe("commands on anything", () => {
  it("set a field, say it in a few words, and make what encloses it", () => {
    expect(done(setField.run(SLIPWAY, { path: ["arbors", 1, "parts", 0, "teeth"], to: 44 }))).toMatchObject({ says: "B1 teeth 44" });
    const { instrument, says } = done(setField.run(SLIPWAY, { path: ["practice", "planGap"], to: 0.8 }));
    expect([instrument.practice, says]).toEqual([{ planGap: 0.8 }, "practice plan gap 0.8"]);
    expect(done(setField.run(instrument, { path: ["practice", "planGap"], to: undefined })).instrument).toEqual(SLIPWAY);
  });

  it("refuse with the reader's own words what the reader would refuse", () => {
    expect(refused(setField.run(SLIPWAY, { path: ["arbors", 1, "parts", 0, "teeth"], to: 2 })))
      .toBe("arbors[1].parts[0].teeth: 2; expected a whole number from 3 to 2,000.");
    expect(refused(rename.run(SLIPWAY, { from: "B", to: "A" }))).toContain("A is already");
    expect(refused(takeAway.run(SLIPWAY, { path: ["arbors", 0] }))).toBe("The input would turn nothing: choose another arbor for it first.");
  });

  it("rename an id wherever it stands", () => {
    const { instrument } = done(rename.run(SLIPWAY, { from: "front", to: "dial-plate" }));
    expect(JSON.stringify(instrument)).not.toContain('"front"');
    expect(instrument.arbors.map((a) => a.pivots?.head?.plate)).toEqual(["dial-plate", "dial-plate", "dial-plate"]);
    expect(done(rename.run(SLIPWAY, { from: "B1", to: "Q" })).instrument.engagements[0]).toEqual({ driver: "A1", driven: "Q" });
  });

  it("take away what cannot be without it, and say how many engagements went", () => {
    const { instrument, says } = done(takeAway.run(SLIPWAY, { path: ["arbors", 2] }));
    expect(instrument.displays).toEqual([]);
    expect(instrument.engagements).toEqual([{ driver: "A1", driven: "B1" }]);
    expect(says).toBe("C taken away, and one engagement");
    const without = done(takeAway.run(SLIPWAY, { path: ["frame", "plates", 1] })).instrument;
    expect(without.arbors[0]?.pivots).toEqual({ foot: SLIPWAY.arbors[0]?.pivots?.foot });
  });

  it("copy an arbor under the next letter, its parts under its own", () => {
    const { instrument } = done(copyThing.run(SLIPWAY, { path: ["arbors", 1] }));
    expect(instrument.arbors.map((a) => a.id)).toEqual(["A", "B", "D", "C"]);
    expect(instrument.arbors[2]?.parts.map((p) => p.id)).toEqual(["D1", "D2"]);
  });

  it("put a part on another arbor, and turn it into another kind with its count", () => {
    const { instrument } = done(putOn.run(SLIPWAY, { part: "B2", arbor: "A" }).valueOf() as Outcome);
    expect(instrument.arbors[0]?.parts.map((p) => p.id)).toEqual(["A1", "B2"]);
    const b = SLIPWAY.arbors[1]!;
    expect(asKind(SLIPWAY, b, { ...b.parts[0]!, module: 0.8 } as typeof b.parts[0], "pinion")).toEqual({ id: "B1", kind: "pinion", leaves: 40, module: 0.8, z: 9, thickness: 2 });
  });

  it("put two wheels in gear at their distance and height where one of them is free", () => {
    const arbor = freshArbor(SLIPWAY, "arbor", null);
    const started = done(addThing.run(SLIPWAY, { list: ["arbors"], thing: { ...arbor, x: -20, y: -20, parts: [{ id: "D1", kind: "wheel", teeth: 40, z: 25, thickness: 2 }] } })).instrument;
    const { instrument, says } = done(putInGear.run(started, { driver: "A1", driven: "D1" }));
    const pair = workOut(instrument).engagements.at(-1)!;
    expect(says).toBe("A1 and D1 in gear");
    expect(pair.distance).toBeCloseTo(pair.computed!, 3);
    expect(instrument.arbors.at(-1)?.parts[0]?.z).toBe(9);
    expect(instrument.arbors.slice(0, 3)).toEqual(SLIPWAY.arbors);
  });

  it("make every kind of part, arbor and thing as the reader accepts it", () => {
    let instrument: Instrument = SLIPWAY;
    for (const kind of KINDS)
      instrument = done(addThing.run(instrument, { list: ["arbors", 1, "parts"], thing: freshPart(instrument, instrument.arbors[1]!, kind) })).instrument;
    for (const kind of ["arbor", "pipe", "stud", "post"] as const)
      instrument = done(addThing.run(instrument, { list: ["arbors"], thing: freshArbor(instrument, kind, "A") })).instrument;
    instrument = done(addThing.run(instrument, { list: ["arbors", 0, "parts"], thing: freshPart(instrument, instrument.arbors[0]!, "pin") })).instrument;
    for (const list of ["plates", "pillars"])
      instrument = done(addThing.run(instrument, { list: ["frame", list], thing: freshIn(instrument, list) })).instrument;
    for (const list of ["displays", "dials", "cutters"])
      instrument = done(addThing.run(instrument, { list: [list], thing: freshIn(instrument, list) })).instrument;
    for (const kind of ["pin and slot", "click", "friction"])
      instrument = done(addThing.run(instrument, { list: ["couplings"], thing: freshIn(instrument, "couplings", kind) })).instrument;
    instrument = done(setField.run(instrument, { path: ["frame", "case"], to: freshCase(instrument) })).instrument;
    expect(readInstrument(writeInstrument(instrument))).toMatchObject({ ok: true, instrument });
  });
});

/** One step that a maker might take, by numbers that are shared out over what there is. */
const step = fc.record({ what: fc.nat(19), a: fc.nat(40), b: fc.nat(40), to: fc.double({ min: -30, max: 30, noNaN: true }) });

function taken(instrument: Instrument, { what, a, b, to }: { what: number; a: number; b: number; to: number }): Outcome {
  const arbor = a % instrument.arbors.length, { id } = instrument.arbors[arbor]!, parts = instrument.arbors[arbor]!.parts, part = b % Math.max(1, parts.length);
  const all = instrument.arbors.flatMap((each) => each.parts.map((p) => p.id));
  switch (what) {
    case 0: return setField.run(instrument, { path: ["arbors", arbor, "x"], to });
    case 1: return setField.run(instrument, { path: ["arbors", arbor, "parts", part, "z"], to });
    case 2: return addThing.run(instrument, { list: ["arbors", arbor, "parts"], thing: freshPart(instrument, instrument.arbors[arbor]!, KINDS[b % KINDS.length]!) });
    case 3: return addThing.run(instrument, { list: ["arbors"], thing: freshArbor(instrument, (["arbor", "pipe", "stud", "post"] as const)[b % 4]!, instrument.arbors[arbor]!.id) });
    case 4: return takeAway.run(instrument, { path: ["arbors", arbor, "parts", part] });
    case 5: return takeAway.run(instrument, { path: ["arbors", arbor] });
    case 6: return copyThing.run(instrument, { path: b % 2 === 0 ? ["arbors", arbor] : ["arbors", arbor, "parts", part] });
    case 7: return rename.run(instrument, { from: instrument.arbors[arbor]!.id, to: `R${b}` });
    case 8: return putInGear.run(instrument, { driver: all[a % Math.max(1, all.length)] ?? "none", driven: all[b % Math.max(1, all.length)] ?? "none" });
    case 9: return setField.run(instrument, { path: ["practice", "faceGap"], to: b % 3 === 0 ? undefined : Math.abs(to) });
    case 10: return plantArbor.run(instrument, { arbor: id, x: to, y: b - 20 });
    case 11: return holdSteady.run(instrument, { arbor: id, steady: b % 2 === 0 });
    case 12: return raisePart.run(instrument, { part: all[b % Math.max(1, all.length)] ?? "none", z: to });
    case 13: return raisePlate.run(instrument, { plate: instrument.frame.plates[b % Math.max(1, instrument.frame.plates.length)]?.id ?? "none", z: to });
    case 14: return setEnd.run(instrument, { arbor: id, end: b % 2 === 0 ? "foot" : "head", z: to });
    case 15: return putOn.run(instrument, { part: all[b % Math.max(1, all.length)] ?? "none", arbor: id });
    default: return takenFromMovement(instrument, what, id, b, to);
  }
}

/** Steps that take what has been worked out: a drag, a distance, a cure, a train put in. */
function takenFromMovement(instrument: Instrument, what: number, arbor: string, b: number, to: number): Outcome {
  const movement = workOut(instrument), none = { refused: "there is nothing of the kind" };
  switch (what) {
    case 16: return keepPlaces.run(instrument, { arbor, places: dragArbor(movement, arbor, { x: to, y: b - 20 }, b % 2 === 0 ? "in gear" : "trying").places });
    case 17: {
      const pair = movement.engagements[b % Math.max(1, movement.engagements.length)];
      return pair ? takeDistance.run(instrument, { movement, engagement: pair.id, mm: Math.abs(to) + 1 }) : none;
    }
    case 18: {
      const cures = examine(movement).findings.flatMap((f) => f.remedies), remedy = cures[b % Math.max(1, cures.length)];
      return remedy ? applyCure.run(instrument, { movement, remedy }) : none;
    }
    default: {
      const written = readStages(`${30 + b}/10 × ${40 + b}/12`);
      if (!("stages" in written)) throw new Error("the train was not read");
      return plantTrain.run(instrument, { stages: written.stages, from: arbor });
    }
  }
}

describe("any sequence of steps", () => {
  it("can be undone to what it began with and done again, and leaves an instrument that writes, reads back and examines the same", () => {
    let kept = 0;
    const did = new Set<number>();
    fc.assert(fc.property(fc.array(step, { minLength: 1, maxLength: 14 }), (steps) => {
      let instrument: Instrument = SLIPWAY, history = NO_HISTORY;
      for (const each of steps) {
        const outcome = taken(instrument, each);
        if ("refused" in outcome) continue;
        history = stepped(history, instrument, outcome.instrument, outcome.says);
        instrument = outcome.instrument;
        kept += 1;
        did.add(each.what);
      }
      const read = readInstrument(writeInstrument(instrument));
      expect(read).toMatchObject({ ok: true, instrument });
      if ("instrument" in read) expect(examine(workOut(read.instrument))).toEqual(examine(workOut(instrument)));
      let back = { value: instrument as Instrument, history };
      for (let again = undone(back.history, back.value); again; again = undone(back.history, back.value)) back = again;
      expect(back.value).toEqual(SLIPWAY);
      for (let again = redone(back.history, back.value); again; again = redone(back.history, back.value)) back = again;
      expect(back.value).toEqual(instrument);
    }), { seed: 20260121, numRuns: 120 });
    expect(kept).toBeGreaterThan(200);
    expect([...did].sort((p, q) => p - q)).toEqual(Array.from({ length: 20 }, (_, what) => what));
  });
});
