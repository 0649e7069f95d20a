// The codes that look at one arbor or one display at a time.
import { describe, expect, it } from "vitest";
import { bindFindings } from "../../../geometry/examine/bind.ts";
import { driftFindings, senseFindings } from "../../../geometry/examine/display.ts";
import { edgeFindings } from "../../../geometry/examine/edge.ts";
import { idleFindings } from "../../../geometry/examine/idle.ts";
import { pipeFindings } from "../../../geometry/examine/pipe.ts";
import { pivotFindings } from "../../../geometry/examine/pivot.ts";
import { stackFindings } from "../../../geometry/examine/stack.ts";
import type { Finding } from "../../../geometry/finding.ts";
import type { Arbor, Instrument, Part, Plate } from "../../../geometry/instrument.ts";
import type { Movement, WorkedDisplay } from "../../../geometry/movement.ts";
import { arborOf, collet, handmade, instrumentOf } from "../../fixtures/handmade.ts";

const ROUNDING_MM = 1e-9;
const near = (value: number | undefined, expected: number) => expect(Math.abs((value ?? NaN) - expected)).toBeLessThan(ROUNDING_MM);
const told = (findings: readonly Finding[]) => findings.map((f) => `${f.between.join("+")} ${f.severity}`);

describe("stack", () => {
  const wheel = (id: string, z: number, given: Partial<Part> = {}) => ({ id, kind: "wheel", teeth: 30, z, thickness: 2, ...given }) as Part;
  const stack = (...parts: Part[]) => told(stackFindings(handmade(instrumentOf({ arbors: [arborOf("A", 0, 0, { parts })] }))));

  it("[STACK1] two parts in the same height foul; face on face they do not", () => {
    expect(stack(wheel("v", 0), wheel("w", 1.9))).toEqual(["v+w foul"]);
    expect(stack(wheel("v", 0), wheel("w", 2))).toEqual(["v+w free"]);
    expect(stack(wheel("w", 3), wheel("v", 0))).toEqual(["v+w free"]);
    expect(stack(wheel("v", 0.1), wheel("w", 0.1 + 2 - 1e-12))).toEqual(["v+w free"]);
  });
  it("[STACK1] a measured thickness counts, and collets, pins and squares may stand anywhere", () => {
    expect(stack(wheel("v", 0, { measured: { thickness: 2.2 } }), wheel("w", 2.1))).toEqual(["v+w foul"]);
    const square: Part = { id: "s", kind: "square", across: 2, taper: 1, z: 0, thickness: 2 };
    const pin: Part = { id: "p", kind: "pin", radius: 3, angle: 0, diameter: 1, z: 0, thickness: 2 };
    expect(stack(wheel("v", 0), collet("c", 0, 2, 5), square, pin)).toEqual([]);
  });
  it("[STACK1] parts of two arbors do not stack", () => {
    const arbors = [arborOf("A", 0, 0, { parts: [wheel("v", 0)] }), arborOf("B", 9, 0, { parts: [wheel("w", 0)] })];
    expect(stackFindings(handmade(instrumentOf({ arbors })))).toEqual([]);
  });
});

const round = (id: string, z: number, given: Partial<Plate> = {}): Plate => ({ id, z, thickness: 3, outline: { circle: { diameter: 60 } }, ...given });
const plates = [round("back", -3), round("front", 20)];
/** An arbor whose shoulders stand 0.1 mm inside both plates, with 3 mm pivots. */
const pivoted = (given: Partial<Arbor> = {}) => arborOf("A", 0, 0, {
  foot: -2.9, head: 22.9,
  pivots: { foot: { diameter: 1, length: 3, plate: "back" }, head: { diameter: 1.4, length: 3, plate: "front" } }, ...given,
});
const framed = (arbor: Arbor, list = plates, given: Partial<Instrument> = {}) =>
  handmade(instrumentOf({ frame: { plates: list, pillars: [] }, arbors: [arbor], ...given }));

describe("pivot", () => {
  const pivot = (arbor: Arbor, list = plates) => pivotFindings(framed(arbor, list));

  it("[PIVOT2] [PIVOT3] endshake is what both shoulders leave, against the arbor's own, else the practice's", () => {
    expect(pivot(pivoted())).toMatchObject([{ between: ["A", "back"], severity: "free", gap: expect.closeTo(0.2, 9), wanted: 0.15 }]);
    expect(pivot(pivoted({ endshake: 0.25 }))).toMatchObject([{ severity: "tight", gap: expect.closeTo(0.2, 9), wanted: 0.25 }]);
    expect(pivot(pivoted({ endshake: 0.2 }))).toMatchObject([{ severity: "free" }]);
  });
  it("[PIVOT1] no endshake is a foul, wherever the arbor is drawn between its plates", () => {
    expect(pivot(pivoted({ foot: -3, head: 23 }))).toMatchObject([{ severity: "foul", gap: expect.closeTo(0, 9) }]);
    expect(pivot(pivoted({ foot: -3.2, head: 22.7 }))).toMatchObject([{ severity: "tight", gap: expect.closeTo(0.1, 9) }]);
  });
  it("[PIVOT1] an axis off its plate, on its edge or in an opening is a foul", () => {
    for (const place of [{ x: 31, y: 0 }, { x: 30, y: 0 }]) expect(told(pivot(pivoted(place)))).toEqual(["A+back foul"]);
    expect(told(pivot(pivoted({ x: 29, y: 0 })))).toEqual(["A+back free"]);
    const opened = [round("back", -3), round("front", 20, { openings: [{ x: 5, y: 0, diameter: 8 }] })];
    expect(told(pivot(pivoted({ x: 3, y: 0 }), opened))).toEqual(["A+back foul"]);
    expect(told(pivot(pivoted({ measured: { x: 40, y: 0 } })))).toEqual(["A+back foul"]);
  });
  it("[PIVOT1] a pivot that leaves its plate at the end of the shake, either way, is a foul", () => {
    const short = (length: number) => pivoted({
      foot: 0.1 - length, pivots: { foot: { diameter: 1, length, plate: "back" }, head: { diameter: 1.4, length: 3, plate: "front" } },
    });
    expect(told(pivot(short(0.25)))).toEqual(["A+back free"]);
    expect(pivot(short(0.2))).toMatchObject([{ severity: "foul", gap: expect.closeTo(0.1, 9), worst: expect.closeTo(0, 9) }]);
    expect(pivot(short(0.15))).toMatchObject([{ severity: "foul", worst: expect.closeTo(-0.05, 9) }]);
    const single = pivoted({ foot: -9, pivots: { foot: { diameter: 1, length: 3, plate: "back" } } });
    expect(told(pivot(single))).toEqual(["A+back foul"]);
  });
  it("[PIVOT3] with a head pivot alone its plate is named; without pivots there is nothing to examine", () => {
    expect(told(pivot(pivoted({ pivots: { head: { diameter: 1, length: 3, plate: "front" } } })))).toEqual(["A+front free"]);
    expect(pivot(arborOf("A", 0, 0))).toEqual([]);
  });
});

describe("edge", () => {
  it("[EDGE1] the metal between a hole and the edges: what is left, what is wanted, what breaks out", () => {
    const edge = (x: number) => edgeFindings(framed(pivoted({ x, y: 0 })));
    const [back, front] = edge(20);
    expect([back?.severity, front?.severity]).toEqual(["free", "free"]);
    near(back?.worst, 10 - 0.5 - 0.015);
    near(front?.worst, 10 - 0.7 - 0.015);
    expect(told(edge(27.5))).toEqual(["A+back tight", "A+front tight"]);
    expect(told(edge(29.4))).toEqual(["A+back tight", "A+front foul"]);
  });
  it("[EDGE1] an opening's edge counts as the plate's own, and the hole follows the arbor's own sideshake", () => {
    const list = [round("back", -3, { openings: [{ x: 6, y: 0, diameter: 6 }] }), round("front", 20)];
    near(edgeFindings(framed(pivoted({ sideshake: 0.2 }), list))[0]?.worst, 3 - 0.6);
    expect(told(edgeFindings(framed(pivoted({ x: 2.8 }), list)))).toEqual(["A+back foul", "A+front free"]);
  });
});

describe("pipe", () => {
  const pipe = (bore: number | undefined, radius = 0) => pipeFindings(handmade(instrumentOf({ arbors: [
    arborOf("A", 0, 0, { diameter: 3 }), arborOf("P", radius, 0, { diameter: 5, rides: { on: "A", radius, angle: 0 }, ...(bore === undefined ? {} : { bore }) }),
  ] })));

  it("[PIPE1] a bore less what it rides on: none is a foul, less than wanted is tight", () => {
    expect(told(pipe(3))).toEqual(["P+A foul"]);
    expect(told(pipe(3.03))).toEqual(["P+A tight"]);
    expect(told(pipe(3.04))).toEqual(["P+A free"]);
    near(pipe(3.03)[0]?.gap, 0.03);
  });
  it("[PIPE1] a rider without a bore, and a stud, are not examined", () => {
    expect(pipe(undefined)).toEqual([]);
    expect(pipe(3.03, 8)).toEqual([]);
  });
});

describe("idle and bind", () => {
  it("[IDLE1] what nothing drives is tight, what is fixed or bound is not idle", () => {
    const movement = handmade(instrumentOf({ arbors: [arborOf("A", 0, 0), arborOf("B", 9, 0), arborOf("C", 9, 0, { fixed: true }), arborOf("D", 9, 0)] }), { B: null, D: null });
    const bound: Movement = { ...movement, arbors: movement.arbors.map((a) => (a.id === "D" ? { ...a, bound: true } : a)) };
    expect(told(idleFindings(bound))).toEqual(["A free", "B tight"]);
  });
  it("[BIND1] a ring that contradicts itself names its engagements and says what cannot turn", () => {
    const movement = handmade(instrumentOf({ arbors: [arborOf("A", 0, 0)] }));
    const [finding] = bindFindings({ ...movement, binds: [{ engagements: ["e1", "e2", "e3"], arbors: ["A", "B"], because: "ring" }] });
    expect(finding).toMatchObject({ severity: "foul", between: ["e1", "e2", "e3"] });
    expect(finding?.says).toContain("A and B cannot turn");
  });
});

describe("sense and drift", () => {
  const shown = (given: Partial<WorkedDisplay>, sense?: "clockwise" | "anticlockwise"): Movement => ({
    ...handmade(instrumentOf({ arbors: [arborOf("A", 0, 0)], displays: [{ id: "moon", name: "Moon", arbor: "A", ...(sense ? { sense } : {}) }] })),
    displays: [{
      id: "moon", name: "Moon", arbor: 0, against: null, rate: null, days: 30, wanted: 30, degreesPerYear: 0, yearsToOneDegree: null,
      sense: "clockwise", divisions: 360, ...given,
    }],
  });

  it("[SENSE1] a display that turns the wrong way is a foul", () => {
    expect(told(senseFindings(shown({}, "anticlockwise")))).toEqual(["moon foul"]);
    expect(told(senseFindings(shown({}, "clockwise")))).toEqual(["moon free"]);
    expect(senseFindings(shown({}))).toEqual([]);
    expect(senseFindings(shown({ sense: null }, "clockwise"))).toEqual([]);
  });
  it("[DRIFT1] more than one division in ten years is tight, either way; at exactly one it is free", () => {
    expect(told(driftFindings(shown({ degreesPerYear: -0.11 })))).toEqual(["moon tight"]);
    expect(told(driftFindings(shown({ degreesPerYear: 0.1 })))).toEqual(["moon free"]);
    expect(told(driftFindings(shown({ degreesPerYear: 0.11, divisions: 59 })))).toEqual(["moon free"]);
    expect(driftFindings(shown({ degreesPerYear: null }))).toEqual([]);
  });
});
