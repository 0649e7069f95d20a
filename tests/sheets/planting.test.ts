import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { examine, workOut } from "../../geometry/index.ts";
import { type Box, placeCallout } from "../../src/sheets/calliper/callout.ts";
import { liftsAt } from "../../src/sheets/calliper/ends.ts";
import { facesOf } from "../../src/sheets/calliper/faces.ts";
import { snapped } from "../../src/sheets/calliper/snap.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

const movement = workOut(SLIPWAY);

describe("a hand near a place that would be chosen by eye", () => {
  it("stands opposite, mirrored, a quarter or a third from another axis", () => {
    expect(snapped(movement, "B", { x: -39.9, y: -40.2 }, 0.5)).toEqual({ x: -40, y: -40, says: "opposite P1" });
    expect(snapped(movement, "B", { x: -30.1, y: 24.1 }, 0.5)).toEqual({ x: -30, y: 24, says: "C mirrored" });
    expect(snapped(movement, "B", { x: -24.1, y: 29.9 }, 0.5)).toEqual({ x: -24, y: 30, says: "a quarter from C" });
    const { x, y, says } = snapped(movement, "B", { x: -35.8, y: 14 }, 0.5);
    expect(says).toBe("a third from C");
    expect(Math.hypot(x, y)).toBeCloseTo(Math.hypot(30, 24), 9);
    expect(((Math.atan2(y, x) - Math.atan2(24, 30)) * 180) / Math.PI).toBeCloseTo(120, 9);
  });

  it("stands on a centre line or in line with another, each way by itself, and on a round figure", () => {
    expect(snapped(movement, "C", { x: 0.2, y: 33.3 }, 0.5)).toEqual({ x: 0, y: 33.3, says: "on the centre line" });
    expect(snapped(movement, "C", { x: 29.9, y: 11.2 }, 0.5)).toEqual({ x: 30, y: 11.2, says: "in line with B" });
    expect(snapped(movement, "C", { x: 17.45, y: 11.2 }, 0.5)).toEqual({ x: 17.5, y: 11.2, says: "" });
  });

  it("stands where it is where nothing is near, and never farther than it was drawn aside", () => {
    expect(snapped(movement, "C", { x: 17.25, y: 11.25 }, 0.4)).toEqual({ x: 17.25, y: 11.25, says: null });
    fc.assert(fc.property(fc.double({ min: -60, max: 60, noNaN: true }), fc.double({ min: -60, max: 60, noNaN: true }), fc.double({ min: 0.1, max: 3, noNaN: true }), (x, y, near) => {
      const to = snapped(movement, "B", { x, y }, near);
      expect(Math.hypot(to.x - x, to.y - y)).toBeLessThanOrEqual(near * Math.SQRT2 + 1e-9);
    }), { seed: 20260201, numRuns: 300 });
  });
});

describe("the faces nearest a part", () => {
  it("are those of plates and of what comes within reach of it in plan, with the gaps as drawn", () => {
    // B1 lies from 9 to 11 and is in gear with A1; over it on its own arbor is B2 from 18, under it the back plate, to 0.
    expect(facesOf(movement, "B1")).toEqual({ above: { by: "B2", gap: 7, z: 18 }, below: { by: "back", gap: 9, z: 0 } });
    expect(facesOf(movement, "B2")).toMatchObject({ below: { by: "B1", gap: 7, z: 11 }, above: { by: "front", gap: 8, z: 30 } });
  });

  it("are none of a thing that is not there", () => {
    expect(facesOf(movement, "Z9")).toEqual({ above: null, below: null });
  });
});

describe("the ends of the shakes", () => {
  const { up, down } = movement.arbors[1]!.shake;

  it("lift every arbor by its own shake, and none as drawn", () => {
    expect(up + down).toBeGreaterThan(0);
    expect(liftsAt(movement, "as drawn", null, "B")).toEqual([0, 0, 0]);
    expect(liftsAt(movement, "all up", null, "B")).toEqual(movement.arbors.map((a) => a.shake.up));
    expect(liftsAt(movement, "all down", null, "B")).toEqual(movement.arbors.map((a) => -a.shake.down));
  });

  it("at the worst bring the two of a finding together, the lower up and the upper down; without one the chosen rises among the others", () => {
    const [finding] = examine(movement, { all: true }).findings.filter((f) => f.between.includes("B1") && f.between.includes("C1"));
    expect(liftsAt(movement, "worst", finding!, null)).toEqual([0, up, -movement.arbors[2]!.shake.down]);
    const lifts = liftsAt(movement, "worst", null, "B1");
    expect([Math.sign(lifts[0]!), Math.sign(lifts[1]!), Math.sign(lifts[2]!)]).toEqual([-1, 1, -1]);
  });
});

describe("the words about the smallest gap", () => {
  const room = { width: 500, height: 500 }, words = { width: 120, height: 40 };
  const covers = (place: { x: number; y: number }, box: Box) => place.x < box.x + box.width && box.x < place.x + words.width && place.y < box.y + box.height && box.y < place.y + words.height;

  it("stand within the drawing and never over their place, and cover nothing where there is room", () => {
    const somewhere = fc.record({ x: fc.integer({ min: 0, max: 500 }), y: fc.integer({ min: 0, max: 500 }) });
    fc.assert(fc.property(somewhere, fc.array(somewhere, { maxLength: 6 }), (at, others) => {
      const boxes = others.map(({ x, y }) => ({ x: x - 14, y: y - 14, width: 28, height: 28 }));
      const place = placeCallout(at, words, boxes, room);
      expect(place.x >= 0 && place.y >= 0 && place.x + words.width <= room.width && place.y + words.height <= room.height).toBe(true);
      expect(covers(place, { ...at, width: 0, height: 0 })).toBe(false);
      expect(boxes.filter((b) => covers(place, b))).toEqual([]);
    }), { seed: 20260202, numRuns: 300 });
  });

  it("are joined to their place from the nearest of their edge", () => {
    const { x, y, from } = placeCallout({ x: 250, y: 250 }, words, [], room);
    expect([x, x + words.width]).toContain(from.x);
    expect([y, y + words.height]).toContain(from.y);
  });
});
