// Dragging one arbor: what it may do, what follows, what holds it.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Movement } from "../../../geometry/movement.ts";
import { dragArbor, type Drag } from "../../../geometry/planting/drag.ts";
import { withPlaces } from "../../../geometry/planting/places.ts";
import { workOut } from "../../../geometry/workout.ts";
import { arbor, gear, instrument, pipeOn, studOn, wheel } from "../train/made.ts";

const at = (x: number, y: number) => ({ x, y });
const steady = (x: number, y: number) => ({ x, y, steady: true });
const after = (m: Movement, d: Drag) => workOut(withPlaces(m.instrument, d.places));
const place = (m: Movement, id: string) => m.arbors[m.arborIndex.get(id)!];
const misses = (m: Movement) => m.engagements.map((e) => Math.abs(e.distance - (e.computed ?? NaN)));

const pair = workOut(instrument([arbor("A", [wheel("a", 20)], steady(0, 0)), arbor("B", [wheel("b", 30)], at(25, 0))], [gear("a", "b")]));
/** Steady A, then B, then C: arm lengths 25 and 25. */
const chain = workOut(instrument([
  arbor("A", [wheel("a", 20)], steady(0, 0)), arbor("B", [wheel("b", 30)], at(25, 0)), arbor("C", [wheel("c", 20)], at(25, 25)),
], [gear("a", "b"), gear("b", "c")]));

describe("dragging in gear", () => {
  it("[DRAG1] an arbor with one steady partner slides on its arc to the nearest point, and nothing is said to hold it", () => {
    fc.assert(fc.property(fc.double({ min: -300, max: 300, noNaN: true }), fc.double({ min: -300, max: 300, noNaN: true }), (x, y) => {
      fc.pre(Math.hypot(x, y) > 0.01);
      const d = dragArbor(pair, "B", at(x, y), "in gear"), b = place(after(pair, d), "B");
      expect(b.x).toBeCloseTo((25 * x) / Math.hypot(x, y), 3);
      expect(b.y).toBeCloseTo((25 * y) / Math.hypot(x, y), 3);
      expect(d.holds).toBeNull();
    }), { seed: 1, numRuns: 200 });
  });

  it("[DRAG2] with followers it goes to the hand, or as near as the chain reaches, and all distances are kept", () => {
    fc.assert(fc.property(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -90, max: 90, noNaN: true }), (x, y) => {
      const far = Math.hypot(x, y);
      fc.pre(far > 5);
      const d = dragArbor(chain, "C", at(x, y), "in gear"), moved = after(chain, d), c = place(moved, "C");
      expect(Math.max(...misses(moved))).toBeLessThan(1e-6);
      const reach = Math.min(1, 50 / far);
      expect(Math.hypot(c.x - reach * x, c.y - reach * y)).toBeLessThan(0.02);
      if (far > 50.5) expect(d.holds).toMatch(/^Arbor C can go no farther: arbor B must keep its distance from (C and from A|A and from C)$/);
      if (far < 49.9) expect(d.holds).toBeNull();
    }), { seed: 2, numRuns: 200 });
  });

  it("[DRAG2] what follows moves as little as possible: a loose leaf only as far as its own circle asks", () => {
    const loose = workOut(instrument([arbor("A", [wheel("a", 20)], at(0, 0)), arbor("B", [wheel("b", 30)], at(25, 0))], [gear("a", "b")]));
    const moved = after(loose, dragArbor(loose, "A", at(0, 5), "in gear"));
    expect(place(moved, "A").y).toBeCloseTo(5, 2);
    const far = Math.hypot(25, 5);
    expect(place(moved, "B").x).toBeCloseTo((25 * 25) / far, 2);
    expect(place(moved, "B").y).toBeCloseTo(5 - (25 * 5) / far, 2);
  });

  it("[DRAG3] between two steady partners it stays where their circles meet, and both are named", () => {
    const held = workOut(instrument([
      arbor("A", [wheel("a", 20)], steady(0, 0)), arbor("B", [wheel("b", 30)], at(11.25, 20)), arbor("C", [wheel("c", 20)], steady(30, 0)),
    ], [gear("a", "b"), gear("b", "c")]));
    const d = dragArbor(held, "B", at(40, 40), "in gear");
    expect(d.holds).toMatch(/^Arbor B can go no farther: it must keep its distance from (A and from C|C and from A)$/);
    expect(place(after(held, d), "B").x).toBeCloseTo(15, 3);
    expect(place(after(held, d), "B").y).toBeCloseTo(20, 3);
  });

  it("[DRAG3] where the distances cannot all be kept it stays at the distances it has, and the quarrel is named", () => {
    const never = workOut(instrument([
      arbor("A", [wheel("a", 20)], steady(0, 0)), arbor("B", [wheel("b", 30)], at(25, 0)), arbor("C", [wheel("c", 20)], steady(60, 0)),
    ], [gear("a", "b"), gear("b", "c")]));
    const d = dragArbor(never, "B", at(25, 40), "in gear");
    expect(d.holds).toMatch(/^Arbor B can go no farther: it must keep its distance from C and from A$/);
    expect(Math.hypot(place(after(never, d), "B").x - 25, place(after(never, d), "B").y)).toBeLessThan(0.01);
  });

  it("[DRAG4] steady and measured arbors never move, dragged or not, and the reason is said", () => {
    expect(dragArbor(pair, "A", at(9, 9), "in gear")).toEqual({ places: new Map(), holds: "Arbor A is steady" });
    expect(dragArbor(pair, "A", at(9, 9), "trying").places.size).toBe(0);
    const bored = workOut(instrument([arbor("A", [wheel("a", 20)], { ...at(0, 0), measured: at(0, 0.1) }), arbor("B", [wheel("b", 30)], at(25, 0))], [gear("a", "b")]));
    expect(dragArbor(bored, "A", at(9, 9), "in gear")).toEqual({ places: new Map(), holds: "Arbor A stands where its hole came" });
    expect([...dragArbor(bored, "B", at(0, 40), "in gear").places.keys()]).toEqual(["B"]);
    expect([...dragArbor(chain, "C", at(44, 20), "in gear").places.keys()]).toEqual(["C", "B"]);
  });

  it("[DRAG5] arbors in line move together, and what rides is moved by what it rides on", () => {
    const line = workOut(instrument([
      arbor("A", [wheel("a", 20)], steady(0, 0)), arbor("B", [wheel("b", 30)], at(25, 0)), arbor("L", [wheel("l", 12)], at(25, 0)),
      arbor("P", [], pipeOn("B")), arbor("S", [], studOn("B", 5)),
    ], [gear("a", "b")]));
    for (const id of ["B", "L", "P"]) {
      const d = dragArbor(line, id, at(0, 50), "in gear");
      expect([...d.places.keys()]).toEqual(["B", "L"]);
      for (const i of ["B", "L", "P"]) {
        expect(place(after(line, d), i).x).toBeCloseTo(0, 3);
        expect(place(after(line, d), i).y).toBeCloseTo(25, 3);
      }
    }
    expect(place(after(line, dragArbor(line, "S", at(5, 40), "in gear")), "B").y).toBeCloseTo(25, 3);
    const stays = workOut(instrument([arbor("B", [], at(0, 0)), arbor("L", [], steady(0, 0))], []));
    expect(dragArbor(stays, "B", at(1, 1), "in gear").holds).toBe("Arbor L is steady, and B goes with it");
  });

  it("[DRAG6] nothing jumps: small steps of the hand are small steps of everything", () => {
    let before: Movement | null = null;
    for (let i = 0; i <= 400; i++) {
      const moved = after(chain, dragArbor(chain, "C", at(25 + i * 0.2, 25 - i * 0.05), "in gear"));
      for (const id of before === null ? [] : ["B", "C"]) {
        expect(Math.hypot(place(moved, id).x - place(before!, id).x, place(moved, id).y - place(before!, id).y)).toBeLessThan(3);
      }
      before = moved;
    }
  });

  it("[DRAG6] where the hand is already, nothing moves; an unknown arbor or a hand nowhere moves nothing", () => {
    expect(dragArbor(chain, "C", at(25, 25), "in gear").places.size).toBe(0);
    expect(dragArbor(chain, "none", at(1, 1), "in gear").places.size).toBe(0);
    expect(dragArbor(chain, "C", at(NaN, 1), "in gear").places.size).toBe(0);
  });

  it("[DRAG7] a dragged arbor that is out of depth comes into gear; a pair out of depth elsewhere keeps the distance it has", () => {
    const loose = workOut(instrument([
      arbor("A", [wheel("a", 20)], steady(0, 0)), arbor("B", [wheel("b", 30)], at(26, 0)), arbor("C", [wheel("c", 20)], at(51, 0)), arbor("D", [wheel("d", 20)], at(72, 0)),
    ], [gear("a", "b"), gear("b", "c"), gear("c", "d")]));
    const moved = after(loose, dragArbor(loose, "B", at(26, 1), "in gear"));
    expect(moved.engagements[0].distance).toBeCloseTo(25, 6);
    expect(moved.engagements[1].distance).toBeCloseTo(25, 6);
    expect(moved.engagements[2].distance).toBeCloseTo(21, 6);
  });
});

describe("random instruments dragged at random", () => {
  const hand = fc.double({ min: -150, max: 150, noNaN: true });
  const sketch = fc.record({
    turns: fc.array(fc.tuple(fc.double({ min: 0, max: 6.28, noNaN: true }), fc.nat(9), fc.integer({ min: 8, max: 40 })), { minLength: 1, maxLength: 9 }),
    extra: fc.array(fc.tuple(fc.nat(9), fc.nat(9)), { maxLength: 4 }),
    steady: fc.array(fc.nat(4).map((n) => n === 0), { minLength: 10, maxLength: 10 }),
    dragged: fc.nat(9),
  });

  it("[DRAG2] [DRAG4] [DRAG6] every distance is kept, what is steady stays, every place is a number, and twice is the same", () => {
    let moves = 0;
    fc.assert(fc.property(sketch, hand, hand, ({ turns, extra, steady: still, dragged }, x, y) => {
      const places = [at(0, 0)], teeth = [20], pairs: [number, number][] = [];
      turns.forEach(([angle, p, z], i) => {
        const from = p % (i + 1), d = (teeth[from] + z) / 2;
        places.push(at(places[from].x + d * Math.cos(angle), places[from].y + d * Math.sin(angle)));
        teeth.push(z);
        pairs.push([from, i + 1]);
      });
      for (const [a, b] of extra) {
        const [i, j] = [a % places.length, b % places.length];
        if (i !== j && !pairs.some(([k, l]) => (k === i && l === j) || (k === j && l === i))) pairs.push([i, j]);
      }
      const made = workOut(instrument(
        places.map((p, i) => arbor(`A${i}`, [wheel(`w${i}`, teeth[i])], { ...p, steady: still[i] })),
        pairs.map(([a, b]) => gear(`w${a}`, `w${b}`, { ease: Math.hypot(places[a].x - places[b].x, places[a].y - places[b].y) - (teeth[a] + teeth[b]) / 2 }))));
      const id = `A${dragged % places.length}`;
      const d = dragArbor(made, id, at(x, y), "in gear");
      expect(dragArbor(made, id, at(x, y), "in gear")).toEqual(d);
      for (const [moved, p] of d.places) {
        expect(Number.isFinite(p.x) && Number.isFinite(p.y)).toBe(true);
        expect(place(made, moved).arbor.steady).toBe(false);
      }
      if (d.places.size > 0) moves++;
      expect(Math.max(...misses(after(made, d)))).toBeLessThan(1e-6);
      const was = Math.hypot(place(made, id).x - x, place(made, id).y - y), is = Math.hypot(place(after(made, d), id).x - x, place(after(made, d), id).y - y);
      expect(is).toBeLessThan(was + 0.01);
    }), { seed: 6, numRuns: 600 });
    expect(moves).toBeGreaterThan(100);
  });
});

describe("trying the depth", () => {
  it("[DRAG8] the arbor alone goes where the hand is, and rests on a computed distance within 0.15 mm of it", () => {
    const tried = (x: number, y: number) => place(after(chain, dragArbor(chain, "B", at(x, y), "trying")), "B");
    expect(tried(27, 3)).toMatchObject(at(27, 3));
    expect(tried(25.1, 30).x).toBe(25.1);
    expect(tried(-25.14, 0).x).toBeCloseTo(-25, 9);
    expect(tried(-25.16, 0).x).toBeCloseTo(-25.16, 12);
    expect([...dragArbor(chain, "B", at(27, 3), "trying").places.keys()]).toEqual(["B"]);
  });

  it("[DRAG8] near where two computed distances meet it rests on both", () => {
    const b = place(after(chain, dragArbor(chain, "B", at(25.1, 0.06), "trying")), "B");
    expect(b.x).toBeCloseTo(25, 9);
    expect(b.y).toBeCloseTo(0, 9);
  });
});
