import { describe, expect, it } from "vitest";
import { allGapsOf, sceneOf, type JudgedPair } from "../../../geometry/clearance/gaps.ts";
import type { Arbor, Instrument, Part } from "../../../geometry/instrument.ts";
import { ratio, type Ratio } from "../../../geometry/numeric/ratio.ts";
import { arborOf, collet, handmade, instrumentOf, noFrame } from "../../fixtures/handmade.ts";

const ROUNDING_MM = 1e-9;
const near = (value: number, expected: number) => expect(Math.abs(value - expected)).toBeLessThan(ROUNDING_MM);

/** Practice without run-out, shakes or wobble, so that one of them at a time can be looked at. */
const rigid = { runout: 0, wobble: 0, sideshake: 0, endshake: 0 };

function pairs(given: Partial<Instrument>, rates: Record<string, Ratio | null> = {}): JudgedPair[] {
  const gaps = allGapsOf(sceneOf(handmade(instrumentOf({ practice: rigid, ...given }), rates)));
  return [...gaps.pairs];
}

function pair(list: readonly JudgedPair[], a: string, b: string) {
  const found = list.find((p) => [a, b].includes(p.a.id) && [a, b].includes(p.b.id));
  if (found === undefined) throw new Error(`${a} and ${b} were not examined`);
  return found.verdict;
}
const isExamined = (list: readonly JudgedPair[], a: string, b: string) =>
  list.some((p) => [a, b].includes(p.a.id) && [a, b].includes(p.b.id));

/** Two arbors far apart in height of everything but their parts: each carries one disc. */
const twoDiscs = (a: Partial<Part>, b: Partial<Part>, apart: number, own: [Partial<Arbor>, Partial<Arbor>] = [{}, {}]) => [
  arborOf("A", 0, 0, { foot: -90, head: -80, ...own[0], parts: [collet("a", 0, 2, 20, a)] }),
  arborOf("B", apart, 0, { foot: 80, head: 90, ...own[1], parts: [collet("b", 0, 2, 10, b)] }),
];

describe("a gap as drawn", () => {
  it("[GAP1] in plan is the distance of the axes less both radii", () => {
    near(pair(pairs({ arbors: twoDiscs({}, {}, 18) }), "a", "b").plan.gap, 3);
    near(pair(pairs({ arbors: twoDiscs({}, {}, 12) }), "a", "b").plan.gap, -3);
  });

  it("[GAP2] inside a ring is its radius less the distance less the other's radius", () => {
    const ring = { id: "ring", kind: "wheel", internal: true, teeth: 42, outsideDiameter: 60, z: 0, thickness: 3 } as Part;
    const arbors = (apart: number) => [
      arborOf("A", 0, 0, { foot: -90, head: -80, parts: [ring] }), arborOf("B", apart, 0, { foot: 80, head: 90, parts: [collet("b", 0, 3, 6)] }),
    ];
    near(pair(pairs({ arbors: arbors(14) }), "ring", "b").plan.gap, 20 - 14 - 3);
    near(pair(pairs({ arbors: arbors(24) }), "ring", "b").plan.gap, Math.max(20 - 24 - 3, 24 - 30 - 3));
    near(pair(pairs({ arbors: arbors(40) }), "ring", "b").plan.gap, 40 - 30 - 3);
  });

  it("[GAP2] a ring inside a ring is counted from the hole to the outside of the inner one", () => {
    const ring = (id: string, teeth: number, outsideDiameter: number) =>
      ({ id, kind: "wheel", internal: true, teeth, outsideDiameter, z: 0, thickness: 3 }) as Part;
    const arbors = [
      arborOf("A", 0, 0, { foot: -90, head: -80, parts: [ring("outer", 82, 100)] }),
      arborOf("B", 5, 0, { foot: 80, head: 90, parts: [ring("inner", 42, 60)] }),
    ];
    near(pair(pairs({ arbors }), "outer", "inner").plan.gap, 40 - 5 - 30);
  });

  it("[GAP2] [BODY7] inside the case, and over its bottom", () => {
    const frame = { ...noFrame, case: { insideDiameter: 60, floor: -5, rim: 30, wall: 2 } };
    const list = pairs({ frame, arbors: [arborOf("A", 20, 0, { foot: -4, parts: [collet("a", 0, 2, 10)] })] });
    near(pair(list, "a", "case").plan.gap, 30 - 20 - 5);
    near(pair(list, "A", "case").height.gap, 1);
    expect(pair(list, "A", "case").way).toBe("height");
  });

  it("[GAP3] against a plate: clear outside its outline, or inside one of its openings, whichever is more", () => {
    const plate = { id: "p", z: 0, thickness: 2, outline: { rectangle: { width: 40, height: 40 } }, openings: [{ x: 10, y: 0, diameter: 8 }] };
    const at = (x: number) => pair(pairs({ frame: { plates: [plate], pillars: [] }, arbors: [arborOf("A", x, 0)] }), "A", "p");
    near(at(25).plan.gap, 5 - 1);
    near(at(11).plan.gap, 4 - 1 - 1);
    near(at(0).plan.gap, Math.max(-20 - 1, 4 - 10 - 1));
    near(at(19).plan.gap, -1 - 1);
  });

  it("[GAP4] in height is from the top of the lower to the bottom of the upper, in the order that gives more", () => {
    near(pair(pairs({ arbors: twoDiscs({ z: 0 }, { z: 2.7 }, 0) }), "a", "b").height.gap, 0.7);
    near(pair(pairs({ arbors: twoDiscs({ z: 5 }, { z: 2.7 }, 0) }), "a", "b").height.gap, 0.3);
    near(pair(pairs({ arbors: twoDiscs({ z: 0 }, { z: 1.5 }, 0) }), "a", "b").height.gap, -0.5);
    near(pair(pairs({ arbors: twoDiscs({ z: 0, thickness: 9 }, { z: 3, thickness: 2 }, 0) }), "a", "b").height.gap, -5);
  });

  it("[GAP5] a carried axis is taken where it comes nearest, inside a ring where it comes farthest", () => {
    const ring = { id: "ring", kind: "wheel", internal: true, teeth: 82, outsideDiameter: 90, z: 0, thickness: 3 } as Part;
    const stud = arborOf("S", 20, 0, { foot: 80, head: 90, rides: { on: "C", radius: 20, angle: 0 }, parts: [collet("s", 0, 3, 6)] });
    const arbors = [
      arborOf("C", 0, 0, { foot: 70, head: 75 }), stud,
      arborOf("R", 4, 0, { foot: -90, head: -80, fixed: true, parts: [ring] }), arborOf("X", -30, 0, { foot: -60, head: -50, parts: [collet("x", 0, 2, 4)] }),
    ];
    const turning = pairs({ arbors }, { C: ratio(1, 5) });
    near(pair(turning, "s", "ring").plan.gap, 40 - 24 - 3);
    near(pair(turning, "s", "x").plan.gap, 10 - 3 - 2);
    const still = pairs({ arbors }, { C: ratio(0) });
    near(pair(still, "s", "ring").plan.gap, 40 - 16 - 3);
    near(pair(still, "s", "x").plan.gap, 50 - 3 - 2);
  });
});

describe("a gap at the worst", () => {
  it("[GAP6] in plan loses the run-out of each toothed part and half of each arbor's sideshake", () => {
    const practice = { ...rigid, runout: 0.03, sideshake: 0.1 };
    const arbors = twoDiscs({}, {}, 30, [{ sideshake: 0.04 }, {}]);
    near(pair(pairs({ practice, arbors }), "a", "b").plan.worst, 15 - 0.02 - 0.05);
    const wheel = { id: "w", kind: "wheel", teeth: 18, z: 0, thickness: 2 } as Part;
    const measured = { id: "v", kind: "wheel", teeth: 8, z: 0, thickness: 2, measured: { runout: 0.5 } } as Part;
    const toothed = [arborOf("A", 0, 0, { parts: [wheel] }), arborOf("B", 30, 0, { parts: [measured] })];
    near(pair(pairs({ practice, arbors: toothed }), "w", "v").plan.worst, 30 - 10 - 5 - 0.03 - 0.5 - 0.1);
    near(pair(pairs({ practice, arbors: toothed }), "w", "B").plan.worst, 30 - 10 - 1 - 0.03 - 0.1);
  });

  it("[GAP7] in height loses the upper one's shake downward, the lower one's upward", () => {
    const plates = [
      { id: "back", z: -2, thickness: 2, outline: { circle: { diameter: 200 } } }, { id: "front", z: 20, thickness: 2, outline: { circle: { diameter: 200 } } },
    ];
    const pivoted = (id: string, x: number, up: number, down: number, part: Part) => arborOf(id, x, 0, {
      foot: down - 2, head: 22 - up, parts: [part],
      pivots: { foot: { diameter: 1, length: 2, plate: "back" }, head: { diameter: 1, length: 2, plate: "front" } },
    });
    const arbors = [
      pivoted("A", 0, 0.1, 0.02, collet("a", 3, 2, 20)), pivoted("B", 12, 0.3, 0.07, collet("b", 6, 2, 10)),
    ];
    const list = pairs({ frame: { plates, pillars: [] }, arbors });
    near(pair(list, "a", "b").height.gap, 1);
    near(pair(list, "a", "b").height.worst, 1 - 0.1 - 0.07);
    near(pair(list, "b", "front").height.worst, 12 - 0.3);
    near(pair(list, "a", "back").height.worst, 3 - 0.02);
  });

  it("[GAP7] where both orders give as much, the worse of the two at the worst counts", () => {
    const arbors = (own: Partial<Arbor>) => [
      arborOf("A", 0, 0, { foot: -90, head: -80, ...own, parts: [collet("a", 0, 6, 20)] }),
      arborOf("B", 4, 0, { foot: 80, head: 90, parts: [collet("b", 2, 2, 10)] }),
    ];
    const plates = [
      { id: "back", z: -92, thickness: 2, outline: { circle: { diameter: 1 }, } }, { id: "front", z: -70, thickness: 2, outline: { circle: { diameter: 1 } } },
    ];
    const pivots = { foot: { diameter: 1, length: 1, plate: "back" }, head: { diameter: 1, length: 1, plate: "front" } };
    const list = pairs({ frame: { plates, pillars: [] }, arbors: arbors({ foot: -90.5, head: -70, pivots }) });
    // a goes down 0.5 and up 1.0, b not at all: with a below, its rise counts; with a above, its fall.
    near(pair(list, "a", "b").height.gap, -4);
    near(pair(list, "a", "b").height.worst, -4 - 1);
  });

  it("[GAP8] wobble is felt as far out as the other reaches, and in full from the rim on", () => {
    const practice = { ...rigid, wobble: 0.2 };
    const worst = (apart: number) => pair(pairs({ practice, arbors: twoDiscs({}, { z: 3 }, apart) }), "a", "b").height.worst;
    near(worst(0), 1 - 0.2 * (5 / 10) - 0.2);
    near(worst(3), 1 - 0.2 * (8 / 10) - 0.2);
    near(worst(5), 1 - 0.2 - 0.2);
    near(worst(40), 1 - 0.2 - 0.2);
  });

  it("[GAP8] against a carried axis wobble is felt at the greatest distance, against a plate at its farthest point", () => {
    const practice = { ...rigid, wobble: 0.2 };
    const stud = arborOf("S", 2, 0, { foot: 80, head: 90, rides: { on: "C", radius: 2, angle: 0 }, parts: [{ id: "s", kind: "pin", radius: 0, angle: 0, diameter: 2, z: 3, thickness: 1 }] });
    const arbors = [arborOf("C", 1, 0, { foot: 70, head: 75 }), { ...stud, x: 3 }, arborOf("B", 0, 0, { foot: -90, head: -80, parts: [collet("b", 0, 2, 20)] })];
    near(pair(pairs({ practice, arbors }, { C: ratio(1, 3) }), "s", "b").height.worst, 1 - 0.2 * ((3 + 1) / 10));
    const plates = [{ id: "p", z: 5, thickness: 1, outline: { rectangle: { width: 6, height: 8 } } }];
    const list = pairs({ practice, frame: { plates, pillars: [] }, arbors: [arborOf("A", 0, 0, { foot: -9, head: -5, parts: [collet("a", 0, 2, 20)] })] });
    near(pair(list, "a", "p").height.worst, 3 - 0.2 * (5 / 10));
  });

  it("[GAP8] a pin, a bare arbor and the frame do not wobble; parts on fixed arbors do, and have no shake", () => {
    const practice = { ...rigid, wobble: 0.2, endshake: 0.4, sideshake: 0.3 };
    const arbors = [
      arborOf("post", 0, 0, { foot: -90, head: -80, fixed: true, parts: [collet("a", 0, 2, 20)] }),
      arborOf("B", 6, 0, { foot: 3, head: 9, parts: [{ id: "pin", kind: "pin", radius: 2, angle: 0, diameter: 1, z: 4, thickness: 1 }] }),
    ];
    const list = pairs({ practice, arbors });
    near(pair(list, "a", "B").height.worst, 1 - 0.2 * (7 / 10) - 0.2);
    near(pair(list, "a", "pin").height.worst, 2 - 0.2 * (8.5 / 10) - 0.2);
    near(pair(list, "a", "B").plan.worst, 6 - 10 - 1 - 0.15);
  });

  it("[GAP9] what two things share by riding on the same arbor cancels", () => {
    const practice = { ...rigid, endshake: 0.4, sideshake: 0.2 };
    const arbors = [
      arborOf("A", 0, 0, { parts: [collet("a", 0, 2, 20)] }),
      arborOf("P", 0, 0, { foot: 5, head: 9, rides: { on: "A", radius: 0, angle: 0 }, endshake: 0.1, sideshake: 0.06, parts: [collet("p", 3, 1, 10)] }),
      arborOf("Q", 0, 0, { foot: 10, head: 15, rides: { on: "P", radius: 0, angle: 0 }, endshake: 0.2, sideshake: 0.08, parts: [collet("q", 7, 1, 10)] }),
      arborOf("S", 30, 0, { foot: 10, head: 15, rides: { on: "A", radius: 30, angle: 0 }, endshake: 0.6, sideshake: 0.5, parts: [collet("s", 7, 1, 10)] }),
      arborOf("X", 60, 0, { foot: 60, head: 65, parts: [collet("x", 20, 1, 10)] }),
    ];
    const list = pairs({ practice, arbors }, { A: ratio(0) });
    near(pair(list, "a", "p").height.worst, 1 - 0.05);
    near(pair(list, "a", "q").height.worst, 5 - 0.05 - 0.1);
    near(pair(list, "p", "q").height.worst, 3 - 0.1);
    near(pair(list, "q", "s").plan.worst, 30 - 10 - 0.03 - 0.04 - 0.25);
    near(pair(list, "q", "x").height.worst, 12 - 0.2 - 0.05 - 0.1 - 0.2);
    near(pair(list, "q", "x").plan.worst, 60 - 10 - 0.1 - 0.03 - 0.04 - 0.1);
  });

  it("[GAP9] a shake drawn below nothing cancels too, and hides no pair", () => {
    const plates = [
      { id: "back", z: -2, thickness: 2, outline: { circle: { diameter: 1 } } }, { id: "front", z: 20, thickness: 2, outline: { circle: { diameter: 1 } } },
    ];
    const pivots = { foot: { diameter: 1, length: 2, plate: "back" }, head: { diameter: 1, length: 2, plate: "front" } };
    const arbors = [
      arborOf("A", 0, 0, { foot: -2.5, head: 22.5, pivots, parts: [collet("a", 0, 2, 20)] }),
      arborOf("P", 0, 0, { foot: 5, head: 9, rides: { on: "A", radius: 0, angle: 0 }, parts: [collet("p", 2.3, 1, 10)] }),
    ];
    near(pair(pairs({ frame: { plates, pillars: [] }, arbors }), "a", "p").height.worst, 0.3);
  });
});

describe("which way decides", () => {
  const decided = (apart: number, z: number, practice = {}) =>
    pair(pairs({ practice: { ...rigid, planGap: 1, faceGap: 0.5, ...practice }, arbors: twoDiscs({}, { z }, apart) }), "a", "b");

  it("[GAP10] a way is foul at nothing left, tight under what is wanted, else free", () => {
    expect(decided(15, 0)).toMatchObject({ severity: "foul", way: "plan", wanted: 1 });
    expect(decided(15.01, 0)).toMatchObject({ severity: "tight", way: "plan" });
    expect(decided(15.99, 0)).toMatchObject({ severity: "tight", way: "plan" });
    expect(decided(16, 0)).toMatchObject({ severity: "free", way: "plan" });
    expect(decided(0, 2)).toMatchObject({ severity: "foul", way: "height", wanted: 0.5 });
    expect(decided(0, 2.49)).toMatchObject({ severity: "tight", way: "height" });
    expect(decided(0, 2.5)).toMatchObject({ severity: "free", way: "height" });
  });

  it("[GAP11] a pair is as good as its better way, and that way decides", () => {
    expect(decided(15.5, 0)).toMatchObject({ severity: "tight", way: "plan" });
    expect(decided(15.5, 5)).toMatchObject({ severity: "free", way: "height" });
    expect(decided(14, 2.2)).toMatchObject({ severity: "tight", way: "height" });
  });

  it("[GAP11] where both ways are alike the one with more to spare over what is wanted decides, in plan if equal", () => {
    expect(decided(14.8, 1)).toMatchObject({ severity: "foul", way: "plan", gap: expect.closeTo(-0.2, 9) });
    expect(decided(12, 1.9)).toMatchObject({ severity: "foul", way: "height", gap: expect.closeTo(-0.1, 9) });
    expect(decided(15.3, 2.3)).toMatchObject({ severity: "tight", way: "height" });
    expect(decided(15.9, 2.3)).toMatchObject({ severity: "tight", way: "plan" });
    expect(decided(15.8, 2.3)).toMatchObject({ severity: "tight", way: "plan" });
    expect(decided(40, 12)).toMatchObject({ severity: "free", way: "plan" });
  });

  it("[GAP12] of several cylinders the gravest two stand for the pair, of equally grave ones those with least to spare", () => {
    const pivots = { head: { diameter: 6, length: 4, plate: "front" } };
    const plates = [{ id: "front", z: 60, thickness: 2, outline: { circle: { diameter: 1 } } }];
    const verdict = (z: number, thickness: number, apart: number) => pair(pairs({
      practice: { ...rigid, planGap: 1, faceGap: 0.5 }, frame: { plates, pillars: [] },
      arbors: [arborOf("A", 0, 0, { pivots }), arborOf("B", apart, 0, { foot: 80, head: 90, parts: [collet("b", z, thickness, 10)] })],
    }), "A", "b");
    // The pivot (radius 3, from 16 to 20) is nearer in plan than the body (radius 1), unless only the body shares the height.
    near(verdict(10, 8, 8.5).gap, 0.5);
    near(verdict(10, 2, 6.5).gap, 0.5);
    expect(verdict(10, 2, 7)).toMatchObject({ severity: "free" });
    near(verdict(10, 8, 7).gap, -1);
  });
});

describe("what is not examined as a gap", () => {
  const wheel = (id: string, teeth: number, z = 0): Part => ({ id, kind: "wheel", teeth, z, thickness: 2 });

  it("[GAP13] two engaged parts against each other, though their arbors and neighbours are", () => {
    const list = pairs({
      arbors: [arborOf("A", 0, 0, { parts: [wheel("a", 30), collet("c", 4, 1, 5)] }), arborOf("B", 25, 0, { parts: [wheel("b", 20)] })],
      engagements: [{ driver: "a", driven: "b" }],
    });
    expect(isExamined(list, "a", "b")).toBe(false);
    for (const [x, y] of [["a", "B"], ["A", "b"], ["A", "B"], ["c", "b"]] as const) expect(isExamined(list, x, y)).toBe(true);
  });

  it("[GAP13] an arbor against the plates its own pivots run in, though its parts are", () => {
    const plates = ["back", "front", "cock"].map((id, i) => ({ id, z: 20 * i - 2, thickness: 2, outline: { circle: { diameter: 80 } } }));
    const pivots = { foot: { diameter: 1, length: 2, plate: "back" }, head: { diameter: 1, length: 2, plate: "front" } };
    const list = pairs({ frame: { plates, pillars: [] }, arbors: [arborOf("A", 0, 0, { pivots, parts: [collet("a", 3, 1, 5)] })] });
    expect(isExamined(list, "A", "back") || isExamined(list, "A", "front")).toBe(false);
    expect(isExamined(list, "A", "cock") && isExamined(list, "a", "back")).toBe(true);
  });

  it("[GAP13] a pipe, its bare body and its parts, against every bare arbor within it, though not against their parts", () => {
    const list = pairs({ arbors: [
      arborOf("A", 0, 0, { parts: [collet("a", 0, 1, 5)] }),
      arborOf("P", 0, 0, { rides: { on: "A", radius: 0, angle: 0 }, parts: [collet("p", 2, 1, 5)] }),
      arborOf("Q", 0, 0, { rides: { on: "P", radius: 0, angle: 0 }, parts: [collet("q", 4, 1, 5)] }),
    ] });
    for (const [x, y] of [["P", "A"], ["p", "A"], ["Q", "A"], ["Q", "P"], ["q", "A"], ["q", "P"]] as const)
      expect(isExamined(list, x, y)).toBe(false);
    for (const [x, y] of [["P", "a"], ["p", "a"], ["Q", "p"], ["q", "p"], ["q", "a"]] as const) expect(isExamined(list, x, y)).toBe(true);
  });

  it("[GAP13] a stud's bare body against its carrier, bare and its parts; a pipe on the stud as the stud is", () => {
    const list = pairs({ arbors: [
      arborOf("C", 0, 0, { parts: [collet("c", 0, 1, 50)] }),
      arborOf("S", 9, 0, { rides: { on: "C", radius: 9, angle: 0 }, parts: [collet("s", 2, 1, 5)] }),
      arborOf("P", 9, 0, { rides: { on: "S", radius: 0, angle: 0 }, parts: [collet("p", 4, 1, 5)] }),
      arborOf("T", 9, 4, { rides: { on: "S", radius: 4, angle: 90 } }),
    ] });
    for (const [x, y] of [["S", "C"], ["S", "c"], ["P", "C"], ["P", "c"], ["P", "S"], ["p", "S"], ["T", "S"], ["T", "s"]] as const)
      expect(isExamined(list, x, y)).toBe(false);
    for (const [x, y] of [["s", "C"], ["s", "c"], ["p", "C"], ["p", "c"], ["P", "s"], ["p", "s"], ["T", "C"], ["T", "c"], ["T", "P"]] as const)
      expect(isExamined(list, x, y)).toBe(true);
  });

  it("[GAP13] a pin against its slot disc, a ratchet against the arbor its click is on and its parts", () => {
    const pin: Part = { id: "pin", kind: "pin", radius: 5, angle: 0, diameter: 1, z: 0, thickness: 2 };
    const slot: Part = { id: "slot", kind: "slot", diameter: 20, radius: 5, angle: 0, length: 3, width: 1, z: 0, thickness: 2 };
    const ratchet: Part = { id: "r", kind: "ratchet", teeth: 20, diameter: 10, depth: 1, z: 4, thickness: 1 };
    const list = pairs({
      arbors: [
        arborOf("A", 0, 0, { parts: [pin, ratchet] }), arborOf("B", 1, 0, { parts: [slot] }), arborOf("G", 4, 0, { parts: [wheel("g", 30, 6)] }),
      ],
      couplings: [{ kind: "pin and slot", driver: "pin", driven: "slot" }, { kind: "click", ratchet: "r", on: "G", passes: "clockwise" }],
    });
    for (const [x, y] of [["pin", "slot"], ["r", "G"], ["r", "g"]] as const) expect(isExamined(list, x, y)).toBe(false);
    for (const [x, y] of [["pin", "B"], ["A", "slot"], ["A", "g"], ["pin", "g"], ["r", "slot"]] as const) expect(isExamined(list, x, y)).toBe(true);
  });

  it("[GAP14] pairs within one body, the frame being one with the fixed arbors that do not ride", () => {
    const list = pairs({
      frame: { plates: [{ id: "p", z: 0, thickness: 2, outline: { circle: { diameter: 90 } } }], pillars: [{ id: "P1", x: 0, y: 0, diameter: 5, from: 0, to: 9 }] },
      arbors: [arborOf("A", 0, 0, { parts: [collet("a", 0, 1, 5), collet("a2", 0, 1, 5)] }), arborOf("post", 0, 0, { fixed: true, parts: [collet("b", 0, 1, 5)] })],
    });
    for (const [x, y] of [["A", "a"], ["a", "a2"], ["post", "b"], ["post", "p"], ["b", "P1"], ["p", "P1"]] as const)
      expect(isExamined(list, x, y)).toBe(false);
    for (const [x, y] of [["A", "post"], ["a", "b"], ["a", "p"], ["A", "P1"]] as const) expect(isExamined(list, x, y)).toBe(true);
  });
});
