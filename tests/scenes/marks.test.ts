// Letters, findings and words over the picture. Pixels.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { workOut, type Finding } from "../../geometry/index.ts";
import { edgeTowards, placeLetters, shared, type Anchor, type Field } from "../../scenes/marks/place.ts";
import { arborOf, placeOf, thingsIn } from "../../scenes/marks/quarrel.ts";
import { figureOf, headingOf, nameOf } from "../../scenes/marks/words.ts";
import { FOUL, HARBOUR_DIAL } from "./gallery/harbour-dial.ts";

const FIELD: Field = { width: 900, height: 760, top: 8, middle: { x: 450, y: 380 } };
const at = (x: number, y: number): Anchor => ({ x, y, width: 22, height: 22 });
const boxes = (anchors: readonly Anchor[], placed: readonly { x: number; y: number }[]) =>
  placed.map((p, i) => ({ ...p, width: anchors[i]?.width ?? 0, height: anchors[i]?.height ?? 0 }));
const movement = workOut(HARBOUR_DIAL);

describe("letters", () => {
  it("of nine arbors, three of them on one axis, neither touch one another nor leave the picture", () => {
    const anchors = [at(450, 250), at(450, 262), at(450, 270), at(400, 290), at(516, 290), at(590, 340), at(582, 380), at(460, 405), at(330, 325)];
    const placed = boxes(anchors, placeLetters(anchors, FIELD, []));
    for (let i = 0; i < placed.length; i++)
      for (let j = 0; j < i; j++) expect(shared(placed[i]!, placed[j]!, 0)).toBe(0);
    for (const b of placed) for (const a of anchors) expect(shared(b, { ...a, width: 4, height: 4 }, 0)).toBe(0);
  });

  it("stay inside the picture wherever heads are, even outside it", () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.integer({ min: -500, max: 1400 }), fc.integer({ min: -500, max: 1300 })), { maxLength: 20 }), (heads) => {
      for (const p of placeLetters(heads.map(([x, y]) => at(x, y)), FIELD, [])) {
        expect(p.x).toBeGreaterThanOrEqual(11);
        expect(p.x).toBeLessThanOrEqual(FIELD.width - 11);
        expect(p.y).toBeGreaterThanOrEqual(FIELD.top + 11);
        expect(p.y).toBeLessThanOrEqual(FIELD.height - 11);
      }
    }), { seed: 20261125, numRuns: 100 });
  });

  it("keep their places while heads move by a pixel", () => {
    const anchors = [at(450, 250), at(400, 290), at(516, 290), at(590, 340)];
    const first = placeLetters(anchors, FIELD, []).map((p) => p.slot);
    const next = placeLetters(anchors.map((a) => ({ ...a, x: a.x + 1 })), FIELD, first).map((p) => p.slot);
    expect(next).toEqual(first);
  });

  it("make way for a finding's caption", () => {
    const taken = { x: 450, y: 210, width: 220, height: 60 };
    const placed = boxes([at(450, 250)], placeLetters([at(450, 250)], FIELD, [], [taken]));
    expect(shared(placed[0]!, taken, 0)).toBe(0);
  });

  it("have leaders that start on the edge of the box towards the head", () => {
    expect(edgeTowards({ x: 10, y: 10, width: 20, height: 10 }, { x: 50, y: 10 })).toEqual({ x: 20, y: 10 });
    expect(edgeTowards({ x: 10, y: 10, width: 20, height: 10 }, { x: 10, y: 60 })).toEqual({ x: 10, y: 15 });
    expect(edgeTowards({ x: 10, y: 10, width: 20, height: 10 }, { x: 12, y: 10 })).toEqual({ x: 12, y: 10 });
  });
});

describe("a finding in the picture", () => {
  const of = (more: Partial<Finding>): Finding => ({ code: "depth", severity: "tight", between: [], says: "", remedies: [], ...more });

  it("colours the parts of an engagement, the pointer of a display, else what it names", () => {
    expect(thingsIn(FOUL, movement)).toEqual(["D1", "G"]);
    expect(thingsIn(of({ between: ["E2-G1", "G2-F1"] }), movement)).toEqual(["E2", "G1", "G2", "F1"]);
    expect(thingsIn(of({ between: ["moon"] }), movement)).toEqual(["E3", "E"]);
  });

  it("stands where it says, else where the pair meets", () => {
    expect(placeOf(FOUL, movement)).toEqual([20.4, 2.9, 13.2]);
    const place = placeOf(of({ between: ["A1", "B1"] }), movement);
    // 17 leaves of module 0.8 from A at the origin towards B: 6.8 mm, scaled to the distance as it stands.
    const distance = Math.hypot(-22.3, 7.7);
    expect(Math.hypot(place?.[0] ?? 0, place?.[1] ?? 0)).toBeCloseTo((distance * 17) / 59, 9);
    expect(placeOf(of({ between: ["nothing"] }), movement)).toBeNull();
  });

  it("belongs to the arbor that its thing turns with", () => {
    expect([arborOf("G2", movement), arborOf("G", movement), arborOf("P1", movement)]).toEqual([6, 6, -1]);
  });

  it("has a heading without its figure, and the figure with a real minus sign", () => {
    expect(headingOf(FOUL)).toBe("Wheel D1 fouls arbor G");
    expect(headingOf({ ...FOUL, says: "Wheel N1 fouls wheel Q1 by 0.06 mm in height" })).toBe("Wheel N1 fouls wheel Q1");
    expect(figureOf(FOUL)).toBe("−0.42 mm in plan");
    expect(figureOf(of({}))).toBeNull();
    expect(headingOf(of({ says: "Arbor X is idle" }))).toBe("Arbor X is idle");
  });

  it("names things as a maker would", () => {
    expect(["D1", "A2", "G", "P3", "front", "case"].map((id) => nameOf(id, movement)))
      .toEqual(["Wheel D1", "Pinion A2", "Arbor G", "Pillar P3", "Front plate", "Case"]);
  });
});
