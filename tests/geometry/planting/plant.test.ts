// Where arbors come to stand. Closed forms from tangent circles and triangles; hidden instruments planted again.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Arbor, Engagement, Instrument, Plate } from "../../../geometry/instrument.ts";
import type { Movement } from "../../../geometry/movement.ts";
import { workOut } from "../../../geometry/workout.ts";
import { arbor, gear, instrument, pipeOn, studOn, wheel } from "../train/made.ts";

const of = (m: Movement, id: string) => m.arbors[m.arborIndex.get(id)!];
const misses = (m: Movement) => m.engagements.map((e) => Math.abs(e.distance - (e.computed ?? NaN)));
const at = (x: number, y: number) => ({ x, y });
const plate: Plate = { id: "back", z: -2, thickness: 2, outline: { rectangle: { width: 200, height: 100, x: 40, y: 5 } } };

describe("places the file gives", () => {
  const made = workOut(instrument([
    arbor("A", [], at(3, 4)), arbor("P", [], pipeOn("A")), arbor("S", [], studOn("P", 10, 30)), arbor("Q", [], pipeOn("S")),
    arbor("M", [], { ...at(50, 0), measured: at(50.02, -0.01) }), arbor("N", [], pipeOn("M")),
    arbor("T", [], { ...studOn("A", 8), measured: at(11.1, 4) }), arbor("U", [], pipeOn("T")),
  ], []));

  it("[PLANT1] stand, a measured hole before a drawn one, and riders follow what they ride on", () => {
    expect(of(made, "A")).toMatchObject({ x: 3, y: 4, planted: "file" });
    expect(of(made, "P")).toMatchObject({ x: 3, y: 4, planted: "file" });
    expect(of(made, "M")).toMatchObject({ x: 50.02, y: -0.01, planted: "file" });
    expect(of(made, "N")).toMatchObject({ x: 50.02, y: -0.01, planted: "file" });
    for (const id of ["S", "Q"]) {
      expect(of(made, id).x).toBeCloseTo(3 + 10 * Math.cos(Math.PI / 6), 12);
      expect(of(made, id).y).toBeCloseTo(4 + 5, 12);
    }
    for (const id of ["T", "U"]) expect(of(made, id)).toMatchObject({ x: 11.1, y: 4, planted: "file" });
  });

  it("[PLANT1] a rider is planted as what it rides on is, and chains and carriers are said nearest first", () => {
    const open = workOut(instrument([arbor("A", [wheel("a", 20)], at(0, 0)), arbor("B", [wheel("b", 20)]), arbor("P", [], pipeOn("B")), arbor("S", [], studOn("P", 5))], [gear("a", "b")]));
    expect(open.arbors.map((a) => a.planted)).toEqual(["file", "open", "open", "open"]);
    expect(open.arbors.map((a) => a.chain)).toEqual([[], [], [1], [2, 1]]);
    expect(open.arbors.map((a) => a.carrier)).toEqual([null, null, null, 2]);
  });
});

describe("places given to riders only", () => {
  it("[PLANT1] plant what they ride on where the file gives it no place, and count for nothing where it does", () => {
    const made = (post: Partial<Arbor>) => workOut(instrument([arbor("A", [], post), arbor("P", [], { ...pipeOn("A"), ...at(7, 8) }), arbor("S", [], { ...studOn("A", 5), ...at(1, 1) })], []));
    expect(made({}).arbors.map(({ x, y, planted }) => [x, y, planted])).toEqual([[7, 8, "file"], [7, 8, "file"], [12, 8, "file"]]);
    expect(made(at(0, 0)).arbors.map(({ x, y }) => [x, y])).toEqual([[0, 0], [0, 0], [5, 0]]);
  });
});

describe("places that two circles settle", () => {
  const third = (apart: number, a: number, x: number, b: number, more: Partial<Arbor> = {}) => workOut(instrument(
    [arbor("A", [wheel("a", a)], at(0, 0)), arbor("B", [wheel("b", b)], at(apart, 0)), arbor("X", [wheel("x", x)], more)], [gear("a", "x"), gear("x", "b")]));

  it("[PLANT2] centres 30 apart, a third at 20 and 25: x 11.25, y ±16.535945694 (plane triangle)", () => {
    const x = of(third(30, 20, 20, 30), "X");
    expect(x.planted).toBe("solved");
    expect(x.x).toBeCloseTo(11.25, 9);
    expect(Math.abs(x.y)).toBeCloseTo(16.535945694, 9);
  });

  it("[PLANT2] centres 50 apart, a third at 30 and 40: x 18, y ±24 (right angle)", () => {
    const x = of(third(50, 20, 40, 40), "X");
    expect(x.x).toBeCloseTo(18, 9);
    expect(Math.abs(x.y)).toBeCloseTo(24, 9);
  });

  it("[PLANT3] circles that never meet: half way between them, solved", () => {
    const outside = third(50, 20, 20, 30);
    expect(of(outside, "X")).toMatchObject({ x: 22.5, y: 0, planted: "solved" });
    expect(misses(outside)).toEqual([2.5, 2.5]);
    const inside = third(50, 8, 12, 110);
    expect(of(inside, "X")).toMatchObject({ x: -10.5, y: 0, planted: "solved" });
    expect(misses(inside)).toEqual([0.5, 0.5]);
  });

  it("[PLANT4] of the two points the one with more room is taken", () => {
    const crowded = (y: number) => of(workOut(instrument([
      arbor("A", [wheel("a", 20)], at(0, 0)), arbor("B", [wheel("b", 30)], at(30, 0)), arbor("W", [wheel("w", 20)], at(11, y)), arbor("X", [wheel("x", 20)]),
    ], [gear("a", "x"), gear("x", "b")])), "X").y;
    expect(crowded(30)).toBeLessThan(0);
    expect(crowded(-30)).toBeGreaterThan(0);
    const edge = (y: number) => of(workOut({
      ...instrument([
        arbor("A", [wheel("a", 20)], at(0, 0)), arbor("B", [wheel("b", 30)], at(30, 0)),
        arbor("X", [wheel("x", 20)], { pivots: { foot: { diameter: 1, length: 2, plate: "back" } } }),
      ], [gear("a", "x"), gear("x", "b")]),
      frame: { plates: [{ ...plate, outline: { circle: { diameter: 60, x: 10, y } } }], pillars: [] },
    }), "X").y;
    expect(edge(20)).toBeGreaterThan(0);
    expect(edge(-20)).toBeLessThan(0);
  });

  it("[PLANT5] of several pairs on the same two axes the first of the file plants", () => {
    const reverted = (order: readonly Engagement[]) => workOut(instrument(
      [arbor("A", [wheel("a1", 20), wheel("a2", 30)], at(0, 0)), arbor("B", [wheel("b1", 20), wheel("b2", 31)])], order));
    expect(reverted([gear("a1", "b1"), gear("a2", "b2")]).engagements[0].distance).toBeCloseTo(20, 9);
    expect(reverted([gear("a2", "b2"), gear("a1", "b1")]).engagements[0].distance).toBeCloseTo(30.5, 9);
    const inLine = workOut(instrument([
      arbor("A", [wheel("a", 20)], at(0, 0)), arbor("P", [wheel("p", 30)], at(0, 0)), arbor("X", [wheel("x", 20), wheel("y", 30)]),
    ], [gear("a", "x"), gear("p", "y")]));
    expect(of(inLine, "X").planted).toBe("open");
    expect(inLine.engagements[0].distance).toBeCloseTo(20, 9);
  });

  it("[PLANT6] four circles that touch one another, curvatures −1, 2, 2, 3, close as an annulus and three wheels (Descartes)", () => {
    const made = workOut(instrument([
      arbor("R", [wheel("r", 60, { internal: true })], at(0, 0)), arbor("B", [wheel("b", 30)]), arbor("C", [wheel("c", 30)]), arbor("D", [wheel("d", 20)]),
    ], [gear("r", "b"), gear("r", "c"), gear("b", "c"), gear("b", "d"), gear("c", "d"), gear("r", "d")]));
    expect(Math.max(...misses(made))).toBeLessThan(1e-9);
    expect(made.arbors.map((a) => a.planted)).toEqual(["file", "open", "solved", "solved"]);
  });

  it("[PLANT6] six equal wheels close round a seventh (1/sin(π/6) − 1 = 1)", () => {
    const ring = ["1", "2", "3", "4", "5", "6"];
    const made = workOut(instrument([arbor("O", [wheel("o", 20)], at(0, 0)), ...ring.map((i) => arbor(`W${i}`, [wheel(`w${i}`, 20)]))],
      [...ring.map((i) => gear("o", `w${i}`)), ...ring.map((i, k) => gear(`w${i}`, `w${ring[(k + 1) % 6]}`))]));
    expect(Math.max(...misses(made))).toBeLessThan(1e-6);
  });
});

describe("places with a free choice", () => {
  it("[PLANT7] an arbor held by one engagement stands on its circle, open, where there is room", () => {
    const made = workOut(instrument([
      arbor("A", [wheel("a", 40)], at(0, 0)), arbor("N", [wheel("n", 40)], at(40, 0)), arbor("X", [wheel("x", 20)]),
    ], [gear("a", "x")]));
    const x = of(made, "X");
    expect(x.planted).toBe("open");
    expect(Math.hypot(x.x, x.y)).toBeCloseTo(30, 9);
    expect(Math.hypot(x.x - 40, x.y)).toBeGreaterThan(32);
  });

  it("[PLANT7] chains of unplanted arbors between planted ones close, however tight", () => {
    for (const apart of [10, 40, 79, 79.9999, 80]) {
      const made = workOut(instrument([
        arbor("A", [wheel("a", 20)], at(0, 0)), arbor("B", [wheel("b", 20)], at(apart, 0)), arbor("X", [wheel("x", 20)]), arbor("Y", [wheel("y", 20)]), arbor("Z", [wheel("z", 20)]),
      ], [gear("a", "x"), gear("x", "y"), gear("y", "z"), gear("z", "b")]));
      expect(Math.max(...misses(made))).toBeLessThan(2e-5);
      expect(made.arbors.map((a) => a.planted)).toEqual(["file", "file", "open", "open", "solved"]);
    }
  });

  it("[PLANT7] closed rings of unplanted wheels close, also where no one wheel can be settled by two circles", () => {
    const ring = workOut(instrument([
      arbor("A", [wheel("a", 20)], at(0, 0)), ...["X", "Y", "Z"].map((id, i) => arbor(id, [wheel(id.toLowerCase(), 20 + 4 * i)])),
    ], [gear("a", "x"), gear("x", "y"), gear("y", "z"), gear("z", "a")]));
    expect(Math.max(...misses(ring))).toBeLessThan(1e-9);
    const braced = workOut(instrument([
      ...[0, 120, 240].map((deg, i) => arbor(`P${i}`, [wheel(`p${i}`, 20)], at(30 * Math.cos((deg * Math.PI) / 180), 30 * Math.sin((deg * Math.PI) / 180)))),
      ...[0, 1, 2].map((i) => arbor(`X${i}`, [wheel(`x${i}`, 20)])),
    ], [0, 1, 2].flatMap((i) => [gear(`p${i}`, `x${i}`), gear(`x${i}`, `x${(i + 1) % 3}`)])));
    expect(Math.max(...misses(braced))).toBeLessThan(1e-6);
  });

  it("[PLANT8] the first of all stands at the middle of the first plate; what hangs on nothing stands where there is room", () => {
    const made = workOut({ ...instrument([arbor("A", [wheel("a", 40)]), arbor("B", [wheel("b", 40)]), arbor("C", [wheel("c", 40)])], [gear("a", "b")]), frame: { plates: [plate], pillars: [] } });
    expect(of(made, "A")).toMatchObject({ x: 40, y: 5, planted: "open" });
    expect(of(made, "C").planted).toBe("open");
    for (const id of ["A", "B"]) expect(Math.hypot(of(made, "C").x - of(made, id).x, of(made, "C").y - of(made, id).y)).toBeGreaterThan(42);
    expect(workOut(instrument([arbor("A", [])], [])).arbors[0]).toMatchObject({ x: 0, y: 0, planted: "open" });
  });

  it("[PLANT9] what meshes with a carried wheel and has no place stands in line with the carrier, and the other way about", () => {
    const epicyclic = (sun: Partial<Arbor>, carrier: Partial<Arbor>) => workOut(instrument([
      arbor("S", [wheel("s", 16)], sun), arbor("C", [], carrier), arbor("P", [wheel("p", 16)], studOn("C", 16)), arbor("R", [wheel("r", 48, { internal: true })], { fixed: true }),
    ], [gear("s", "p"), gear("p", "r")]));
    const planted = epicyclic({}, at(5, 6));
    for (const id of ["S", "R"]) expect(of(planted, id)).toMatchObject({ x: 5, y: 6, planted: "solved" });
    for (const id of ["C", "R"]) expect(of(epicyclic(at(5, 6), {}), id)).toMatchObject({ x: 5, y: 6, planted: "solved" });
    expect(of(planted, "C").rate?.toFraction()).toBe("1/4");
  });
});

describe("hidden instruments", () => {
  const sketch = fc.record({
    turns: fc.array(fc.tuple(fc.double({ min: 0, max: 6.28, noNaN: true }), fc.nat(9), fc.integer({ min: 8, max: 40 })), { minLength: 2, maxLength: 8 }),
    extra: fc.array(fc.tuple(fc.nat(9), fc.nat(9)), { maxLength: 5 }),
    hidden: fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }),
  });

  /** A tree of wheels in depth, and extra pairs eased until they too are in depth; then some places are taken away. */
  function drawn({ turns, extra, hidden }: typeof sketch extends fc.Arbitrary<infer T> ? T : never): Instrument {
    const places = [at(0, 0)], teeth = [20];
    const parents = turns.map(([, p], i) => p % (i + 1));
    turns.forEach(([angle, , z], i) => {
      const d = (teeth[parents[i]] + z) / 2;
      places.push(at(places[parents[i]].x + d * Math.cos(angle), places[parents[i]].y + d * Math.sin(angle)));
      teeth.push(z);
    });
    const pairs = [...parents.map((p, i) => [p, i + 1] as const), ...extra.map(([a, b]) => [a % places.length, b % places.length] as const)]
      .filter(([a, b], i, all) => a !== b && all.findIndex(([c, d]) => (a === c && b === d) || (a === d && b === c)) === i);
    return instrument(
      places.map((p, i) => arbor(`A${i}`, [wheel(`w${i}`, teeth[i])], hidden[i] ? {} : p)),
      pairs.map(([a, b]) => gear(`w${a}`, `w${b}`, { ease: Math.hypot(places[a].x - places[b].x, places[a].y - places[b].y) - (teeth[a] + teeth[b]) / 2 })),
    );
  }

  it("[PLANT10] their distances come true again in nearly every case, and a place is never anything but a number", () => {
    let met = 0, all = 0;
    fc.assert(fc.property(sketch, (s) => {
      const made = workOut(drawn(s));
      for (const a of made.arbors) expect(Number.isFinite(a.x) && Number.isFinite(a.y)).toBe(true);
      all++;
      if (Math.max(0, ...misses(made)) < 1e-4) met++;
    }), { seed: 4, numRuns: 500 });
    expect(met / all).toBeGreaterThan(0.97);
  });

  it("[PLANT10] planting is the same every time, and planting what was planted changes nothing", () => {
    fc.assert(fc.property(sketch, (s) => {
      const one = workOut(drawn(s)), other = workOut(drawn(s));
      expect(other.arbors.map(({ x, y }) => [x, y])).toEqual(one.arbors.map(({ x, y }) => [x, y]));
      const stands = workOut({ ...one.instrument, arbors: one.arbors.map((a) => ({ ...a.arbor, x: a.x, y: a.y })) });
      expect(stands.arbors.map(({ x, y }) => [x, y])).toEqual(one.arbors.map(({ x, y }) => [x, y]));
    }), { seed: 5, numRuns: 100 });
  });

  it("[PLANT10] two thousand unplanted arbors take bounded time", () => {
    const start = performance.now();
    const made = workOut(instrument(
      Array.from({ length: 2000 }, (_, i) => arbor(`A${i}`, [wheel(`p${i}`, 12), wheel(`w${i}`, 30)])),
      Array.from({ length: 1999 }, (_, i) => gear(`w${i}`, `p${i + 1}`))));
    expect(performance.now() - start).toBeLessThan(8000);
    expect(Math.max(...misses(made))).toBeLessThan(1e-9);
  });
});
