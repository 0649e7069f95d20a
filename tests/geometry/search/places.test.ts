import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Arbor, Instrument } from "../../../geometry/instrument.ts";
import { findPlaces, searchPlaces } from "../../../geometry/search/places.ts";
import { workOut } from "../../../geometry/workout.ts";
import { jumble } from "../../fixtures/jumble.ts";

const PLAIN = { planGap: 0, faceGap: 0.3, runout: 0, wobble: 0, sideshake: 0, endshake: 0, edge: 0 };

/** So many discs of one radius, unplanted, in a round case. */
function cased(count: number, radius: number, inside: number): Instrument {
  return {
    endshake: 1, name: "discs", practice: PLAIN, engagements: [], input: { arbor: "A0", days: 1, sense: "clockwise" },
    frame: { plates: [], pillars: [], case: { insideDiameter: 2 * inside, floor: -1, rim: 9, wall: 1 } },
    arbors: Array.from({ length: count }, (_, i): Arbor => ({ id: `A${i}`, diameter: 1, foot: 0, head: 8, parts: [{ id: `D${i}`, kind: "disc", diameter: 2 * radius, z: 2, thickness: 1 }] })),
  };
}

const example = (name: string): Instrument =>
  JSON.parse(readFileSync(new URL(`../../../public/instruments/${name}.instrument.json`, import.meta.url), "utf8")) as Instrument;

const hidden = (instrument: Instrument): Instrument => ({
  ...instrument, arbors: instrument.arbors.map(({ x, y, ...a }) => (a.steady || a.rides || a.measured ? { ...a, x, y } : a) as Arbor),
});

describe("the search for places", () => {
  // Radii of the smallest circle round n unit circles: proofs by Graham 1968 (5, 6), Pirl 1969 (8, 9, 10), Melissen 1994
  // (11), Fodor 2003 (13) and 1999 (19); closed forms 1 + 1/sin(π/5), 3, 1 + 1/sin(π/7), …, 2 + √5, 1 + √2 + √6.
  const PACKINGS: readonly [number, number][] = [
    [2, 2], [3, 2.154700538], [4, 2.414213562], [5, 2.701301617], [6, 3], [7, 3], [8, 3.304764871], [9, 3.61312593], [10, 3.813025631],
    [11, 3.9238044], [13, 4.236067977], [19, 4.863703305],
  ];
  it.each(PACKINGS)("[PLACE6] %i discs in a case are never better than the proven packing, and within 1 % of it", (n, optimum) => {
    const radius = 5, inside = radius * optimum * 1.3;
    const found = findPlaces(cased(n, radius, inside), { seed: 3, tries: n > 10 ? 40 : 15 });
    const gap = found.smallest!.worst;
    // With a gap g all round, centres lie within R − r − g of the middle and 2r + g apart: as packed in a circle of 1 + 2 (R − r − g)/(2r + g).
    const packed = 1 + (2 * (inside - radius - gap)) / (2 * radius + gap);
    expect(packed).toBeGreaterThanOrEqual(optimum - 1e-7);
    expect(packed).toBeLessThanOrEqual(optimum * 1.01);
    expect(found.counts.foul).toBe(0);
  });

  it.each([[3, 0.154700538], [6, 1], [12, 2.863703]])("[PLACE6] finds the place among a ring of %i unit circles that touches them all", (n, inner) => {
    // A ring of n unit circles round a centre circle: centre radius 1/sin(π/n) − 1.
    const ring = Array.from({ length: n }, (_, i): Arbor => {
      const r = 10 / Math.sin(Math.PI / n), a = (2 * Math.PI * i) / n;
      return { id: `R${i}`, x: r * Math.cos(a), y: r * Math.sin(a), steady: true, diameter: 1, foot: 0, head: 8, parts: [{ id: `D${i}`, kind: "disc", diameter: 20, z: 2, thickness: 1 }] };
    });
    const small: Arbor = { id: "S", x: 0.31 * inner, y: -0.2 * inner, diameter: 0.2, foot: 0, head: 8, parts: [{ id: "s", kind: "disc", diameter: 0.4, z: 2, thickness: 1 }] };
    const found = findPlaces({ ...cased(0, 1, 9999), frame: { plates: [], pillars: [] }, input: { arbor: "S", days: 1, sense: "clockwise" }, arbors: [...ring, small] }, { seed: 2, tries: 1 });
    expect(found.spare).toBeCloseTo(10 * inner - 0.2, 3);
  });

  it("[PLACE6] finds the Soddy circle between tangent circles of 10, 20 and 30", () => {
    // Descartes' theorem, radii 1, 2, 3: inner circle 6/23.
    const at = (id: string, x: number, y: number, r: number): Arbor => ({ id, x, y, steady: true, diameter: 1, foot: 0, head: 8, parts: [{ id: `${id}1`, kind: "disc", diameter: 2 * r, z: 2, thickness: 1 }] });
    const small: Arbor = { id: "S", x: 11, y: 9, diameter: 0.2, foot: 0, head: 8, parts: [{ id: "s", kind: "disc", diameter: 0.4, z: 2, thickness: 1 }] };
    const found = findPlaces({ ...cased(0, 1, 1), frame: { plates: [], pillars: [] }, input: { arbor: "S", days: 1, sense: "clockwise" }, arbors: [at("A", 0, 0, 10), at("B", 30, 0, 20), at("C", 0, 40, 30), small] }, { tries: 1 });
    expect(found.spare).toBeCloseTo(60 / 23 - 0.2, 3);
  });

  it.each(["estuary-dial", "going-train"])("[PLACE7] finds the hidden places of the %s, or better ones, in gear", (name) => {
    const known = examine(workOut(example(name)));
    const found = findPlaces(hidden(example(name)), { seed: 1, tries: 40 });
    expect(found.counts.foul).toBeLessThanOrEqual(known.counts.foul);
    expect(found.counts.tight).toBeLessThanOrEqual(known.counts.tight);
    // What can be helped has at least as much to spare as where its maker put it.
    expect(found.spare).toBeGreaterThanOrEqual(findPlaces(example(name), { tries: 0 }).spare! - 1e-6);
    for (const e of workOut(found.instrument).engagements) expect(Math.abs(e.distance - e.computed!)).toBeLessThan(1e-6);
  });

  it("[PLACE7] is the same for the same seed, step for step, and never worse from one step to the next", () => {
    const given = example("estuary-dial-first-draft");
    const run = () => [...searchPlaces(given, { seed: 7, tries: 5 })];
    const steps = run();
    expect(run()).toEqual(steps);
    expect(steps.map((s) => s.done)).toEqual([0.2, 0.4, 0.6, 0.8, 1]);
    let { foul } = examine(workOut(given)).counts;
    for (const { best } of steps) {
      expect(best.counts.foul).toBeLessThanOrEqual(foul);
      foul = best.counts.foul;
      expect(best.counts).toEqual(examine(workOut(best.instrument)).counts);
    }
  });

  it("[PLACE7] leaves what is steady or measured where it is, and no instrument worse than it was", () => {
    for (let seed = 1; seed <= 12; seed++) {
      const given = jumble(seed, 6);
      const fixed: Instrument = { ...given, arbors: given.arbors.map((a, i) => (i % 3 === 0 ? { ...a, steady: true } : a)) };
      const before = workOut(fixed), found = findPlaces(fixed, { seed, tries: 4 });
      const after = workOut(found.instrument);
      expect(found.counts.foul).toBeLessThanOrEqual(examine(before).counts.foul);
      after.arbors.forEach((a, i) => {
        if (a.arbor.steady && a.chain.length === 0) expect([a.x, a.y]).toEqual([before.arbors[i]!.x, before.arbors[i]!.y]);
      });
    }
  });

  it("[PLACE8] says which two quarrel where there is no room, and which distance cannot be kept", () => {
    expect(findPlaces(cased(2, 5, 9), { tries: 6 }).quarrel?.says).toMatch(/^(D\d and (D\d|case)) quarrel: at best they share/);
    const wheel = (id: string, more: Partial<Arbor>): Arbor => ({ id, diameter: 1, foot: 0, head: 8, parts: [{ id: `${id}1`, kind: "wheel", teeth: 20, z: 2, thickness: 1 }], ...more });
    const held: Instrument = {
      ...cased(0, 1, 200), input: { arbor: "A", days: 1, sense: "clockwise" },
      arbors: [wheel("A", { x: 0, y: 0, steady: true }), wheel("B", {}), wheel("C", { x: 50, y: 0, steady: true })],
      engagements: [{ driver: "A1", driven: "B1" }, { driver: "B1", driven: "C1" }],
    };
    const found = findPlaces(held, { tries: 4 });
    expect(found.quarrel?.says).toMatch(/cannot come to their distance/);
    expect(found.quarrel?.between).toContain("B");
  });
});
