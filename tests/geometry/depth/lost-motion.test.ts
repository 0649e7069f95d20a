import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lostMotionOf, responsesOf } from "../../../geometry/depth/lost-motion.ts";
import { lostMotionFindings } from "../../../geometry/examine/lost-motion.ts";
import type { Movement } from "../../../geometry/movement.ts";
import { pinion, stand, wheel } from "./stand.ts";

/** Of the first display, by engagement on the way. */
const responses = (movement: Parameters<typeof lostMotionOf>[0]) => responsesOf(movement, movement.displays[0]?.arbor ?? -1, movement.displays[0]?.against ?? null);

/** Driver, 30 to 60 and 20 to 40 teeth, in line. */
const plain = (more: object = {}) => stand({
  arbors: [
    { id: "A", x: 0, y: 0, parts: [wheel("A1", 30)] }, { id: "B", x: 45, y: 0, parts: [wheel("B1", 60), pinion("B2", 20)] },
    { id: "C", x: 75, y: 0, parts: [wheel("C1", 40)] },
  ],
  engagements: [{ driver: "A1", driven: "B1" }, { driver: "B2", driven: "C1" }], displays: [["C"], ["A"]], ...more,
});

const deg = (backlashMm: number, radiusMm: number) => (backlashMm / radiusMm) * (180 / Math.PI);

/** Sun of 20 on the input, planet of 16 on a stud, fixed annulus of 52, the carrier read. */
const planetary = (extra: readonly string[] = []) => stand({
  arbors: [
    { id: "S", x: 0, y: 0, parts: [wheel("S1", 20)] },
    { id: "K", x: 0, y: 0, parts: [] },
    { id: "R", x: 0, y: 0, fixed: true, parts: [wheel("R1", 52, { internal: true, outsideDiameter: 60 })] },
    ...["P", ...extra].map((id, i) => ({ id, x: 18 * Math.cos(2 * i), y: 18 * Math.sin(2 * i), parts: [wheel(`${id}1`, 16)], rides: { on: "K", radius: 18, angle: 0 } })),
  ],
  engagements: ["P", ...extra].flatMap((id) => [{ driver: "S1", driven: `${id}1` }, { driver: `${id}1`, driven: "R1" }]),
  displays: [["K"], ["K", "S"]], carriers: Object.fromEntries(["P", ...extra].map((id) => [id, "K"])), carrier: "K",
});

describe("lost motion", () => {
  it("[LOST1] of a plain train is each backlash over the driven's radius, times what the pointer turns for one turn of it", () => {
    // 0.1 mm at each: over 30 mm and half as much again turned at C; over 20 mm.
    expect(lostMotionOf(plain(), 0)).toBeCloseTo(deg(0.1, 30) * 0.5 + deg(0.1, 20), 12);
  });
  it("[LOST3] of the input's own pointer is 0", () => expect(lostMotionOf(plain(), 1)).toBe(0));
  it("[LOST1] counts the backlash at the distance as it stands, and none where it is negative", () => {
    const deep = plain({ arbors: [
      { id: "A", x: 0, y: 0, parts: [wheel("A1", 30)] }, { id: "B", x: 44.5, y: 0, parts: [wheel("B1", 60), pinion("B2", 20)] },
      { id: "C", x: 74.5, y: 0, parts: [wheel("C1", 40)] }] });
    expect(lostMotionOf(deep, 0)).toBeCloseTo(deg(0.1, 20), 12);
  });
  it("[LOST1] against a turning dial counts both ways", () => {
    const dial = plain({ displays: [["C", "B"]] });
    // Play at B1 turns B by so much and C by half of it the other way: three halves between them.
    expect(lostMotionOf(dial, 0)).toBeCloseTo(deg(0.1, 30) * 1.5 + deg(0.1, 20), 12);
  });
  it("[LOST1] passes through a planet as the equations say", () => {
    const byEngagement = responses(planetary());
    // Sun held: one turn of the planet against the carrier takes it 16 teeth round the sun or the annulus; 72 teeth stand against it.
    expect(byEngagement.map((r) => Math.abs(r.turns))).toEqual([16 / 72, 52 / 72]);
    expect(lostMotionOf(planetary(), 0)).toBeCloseTo((deg(0.1, 8) * 16) / 72 + (deg(0.1, 26) * 52) / 72, 12);
    expect(lostMotionOf(planetary(), 1)).toBeCloseTo(lostMotionOf(planetary(), 0) ?? NaN, 12);
  });
  it("[LOST2] of three planets is that of one: spare ways are not counted beside the first", () => {
    expect(responses(planetary(["Q", "T"]))).toHaveLength(2);
    expect(lostMotionOf(planetary(["Q", "T"]), 0)).toBeCloseTo(lostMotionOf(planetary(), 0) ?? NaN, 12);
  });
  it("[LOST2] is passed on by couplings without loss", () => {
    const coupled = plain({
      arbors: [...plain().arbors.map(({ arbor }) => ({ ...arbor, x: arbor.x ?? 0, y: arbor.y ?? 0 })), { id: "D", x: 75, y: 0, parts: [] }],
      displays: [["D"]], couplings: [{ kind: "friction", between: ["C", "D"] }],
    });
    expect(lostMotionOf(coupled, 0)).toBeCloseTo(lostMotionOf(plain(), 0) ?? NaN, 12);
  });
  it("[LOST1] of a differential adds both sides, each by its share", () => {
    // A drives both suns of a differential whose carrier K is read: planet P with sun S (20/20) and annulus R (60).
    const both = stand({
      arbors: [
        { id: "A", x: 0, y: 60, parts: [wheel("A1", 30), wheel("A2", 24)] },
        { id: "S", x: 0, y: 0, parts: [wheel("S1", 20), wheel("S2", 90)] },
        { id: "R", x: 0, y: 0, parts: [wheel("R1", 60, { internal: true, outsideDiameter: 70 }), wheel("R2", 96)] },
        { id: "K", x: 0, y: 0, parts: [] },
        { id: "P", x: 20, y: 0, parts: [wheel("P1", 20)], rides: { on: "K", radius: 20, angle: 0 } },
      ],
      engagements: [{ driver: "A1", driven: "S2" }, { driver: "A2", driven: "R2" }, { driver: "S1", driven: "P1" }, { driver: "P1", driven: "R1" }],
      displays: [["K"]], carriers: { P: "K" }, carrier: "K",
    });
    const turns = new Map(responses(both).map((r) => [r.engagement, Math.abs(r.turns)]));
    // Willis: 20 S + 60 R = 80 K (SDP/SI handbook, table 13-1, the same construction).
    expect(turns.get(0)).toBeCloseTo(20 / 80, 12);
    expect(turns.get(1)).toBeCloseTo(60 / 80, 12);
    expect(turns.get(2)).toBeCloseTo(20 / 80, 12);
    expect(turns.get(3)).toBeCloseTo(60 / 80, 12);
  });
  it("[LOST3] is unknown where nothing drives the display, or a backlash on the way has no figure", () => {
    const idle: Movement = { ...plain(), displays: plain().displays.map((d) => ({ ...d, rate: null })) };
    expect(lostMotionOf(idle, 0)).toBeNull();
    const unequal = plain({ gearing: {}, arbors: plain().arbors.map(({ arbor }) => ({ ...arbor, x: arbor.x ?? 0, y: arbor.y ?? 0, parts: arbor.parts.map((p) => (p.id === "C1" ? { ...p, module: 0.9 } : p)) })) });
    expect(lostMotionOf(unequal, 0)).toBeNull();
    expect(lostMotionFindings(unequal)).toHaveLength(1);
  });
  it("[LOST4] is held against the practice in divisions of its own dial", () => {
    const lostDeg = lostMotionOf(plain(), 0) ?? NaN;
    const severity = (divisions: number, lostMotion: number) => lostMotionFindings({
      ...plain(), practice: { ...plain().practice, lostMotion }, displays: plain().displays.map((d) => ({ ...d, divisions })),
    })[0].severity;
    expect(severity(360, lostDeg - 0.001)).toBe("tight");
    expect(severity(360, lostDeg + 0.001)).toBe("free");
    expect(severity(60, lostDeg / 6 + 0.001)).toBe("free");
    expect(severity(60, lostDeg / 6 - 0.001)).toBe("tight");
  });
  it("[LOST1] in a plain train of any length is |rate of display / rate of driven| at each engagement", () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.integer({ min: 18, max: 99 }), fc.integer({ min: 18, max: 99 })), { minLength: 1, maxLength: 8 }), (pairs) => {
      const xs = pairs.reduce<number[]>((sum, [a, b]) => [...sum, sum[sum.length - 1] + (a + b) / 2], [0]);
      const movement = stand({
        arbors: xs.map((x, i) => ({ id: `N${i}`, x, y: 0, parts: [...(i > 0 ? [wheel(`W${i}`, pairs[i - 1][1])] : []), ...(i < pairs.length ? [wheel(`D${i}`, pairs[i][0])] : [])] })),
        engagements: pairs.map((_, i) => ({ driver: `D${i}`, driven: `W${i + 1}` })), displays: [[`N${pairs.length}`]],
      });
      const wanted = pairs.reduce((sum, [, driven], i) => sum + deg(0.1, driven / 2) * pairs.slice(i + 1).reduce((r, [a, b]) => (r * a) / b, 1), 0);
      expect(lostMotionOf(movement, 0)).toBeCloseTo(wanted, 9);
    }), { seed: 7, numRuns: 60 });
  });
});
