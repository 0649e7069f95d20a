import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Arbor, Instrument, Plate } from "../../../geometry/instrument.ts";
import { findHeights, searchHeights } from "../../../geometry/search/heights.ts";
import { workOut } from "../../../geometry/workout.ts";
import { generated } from "../../fixtures/generated.ts";
import { jumble } from "../../fixtures/jumble.ts";

const example = (name: string): Instrument =>
  JSON.parse(readFileSync(new URL(`../../../public/instruments/${name}.instrument.json`, import.meta.url), "utf8")) as Instrument;

const PLATES: Plate[] = [-2, 20].map((z, i) => ({ id: i === 0 ? "back" : "front", z, thickness: 2, outline: { circle: { diameter: 100 } } }));

/** Discs of 14 on three arbors 10 apart: each overlaps the others, and none an arbor. Endshake 0.05 either way. */
function threeDiscs(z: readonly number[]): Instrument {
  const arbors = z.map((low, i): Arbor => ({
    id: `A${i}`, x: [0, 10, 5][i]!, y: [0, 0, 5 * Math.sqrt(3)][i]!, diameter: 1, foot: -0.95, head: 20.95, parts: [{ id: `D${i}`, kind: "disc", diameter: 14, z: low, thickness: 1 }],
    pivots: { foot: { diameter: 0.5, length: 1, plate: "back" }, head: { diameter: 0.5, length: 1, plate: "front" } },
  }));
  return {
    endshake: 1, name: "three", practice: { planGap: 0.5, faceGap: 0.3, endshake: 0.1, wobble: 0.05, sideshake: 0 }, engagements: [],
    frame: { plates: PLATES, pillars: [] }, input: { arbor: "A0", days: 1, sense: "clockwise" }, arbors,
  };
}

describe("the search for levels", () => {
  // Three discs 1 thick; between two 0.3 wanted, both shakes 0.05, both wobbles 0.05; to a plate 0.3, one shake, one wobble.
  const LEAST = 3 + 2 * (0.3 + 0.1 + 0.1) + 2 * (0.3 + 0.05 + 0.05);

  it.each([[[3, 8, 14]], [[14, 3, 8]], [[5, 5.2, 5.4]]])("[LEVEL4] sets three discs over one another from %j, as near as shakes and wobble let them", (z) => {
    const found = findHeights(threeDiscs(z));
    expect(found.height).toBeCloseTo(LEAST, 9);
    expect(found.proved).toBe(true);
    const sheet = examine(workOut(found.instrument));
    expect(sheet.findings.filter((f) => f.code !== "idle")).toEqual([]);
    expect(found.counts).toEqual(sheet.counts);
    expect(found.instrument.frame.plates[1]!.z).toBeCloseTo(LEAST, 9);
    expect(found.instrument.arbors[0]!.head).toBeCloseTo(LEAST + 0.95, 9);
  });

  it("[LEVEL4] brings engaged faces together as wanted, and keeps a collet at its wheel", () => {
    const base = threeDiscs([3, 8, 14]);
    const geared: Instrument = {
      ...base, engagements: [{ driver: "W", driven: "P" }],
      arbors: base.arbors.slice(0, 2).map((a, i): Arbor => ({
        ...a, x: 15 * i, parts: i === 0 ? [{ id: "W", kind: "wheel", teeth: 20, z: 3, thickness: 2 }, { id: "H", kind: "collet", diameter: 4, z: 5, thickness: 1 }]
          : [{ id: "P", kind: "pinion", leaves: 10, z: 12, thickness: 2 }],
      })),
    };
    const found = findHeights(geared);
    // Wheel and collet 3 in all, 0.3 + 0.05 + 0.05 to either plate.
    expect(found.height).toBeCloseTo(3 + 2 * 0.4, 9);
    const [wheel, collet] = found.instrument.arbors[0]!.parts;
    expect(collet!.z - wheel!.z).toBeCloseTo(2, 12);
    expect(examine(workOut(found.instrument)).engagements[0]!.faceOverlap).toBeGreaterThanOrEqual(1 - 1e-9);
  });

  it.each(["estuary-dial", "going-train", "estuary-dial-first-draft"])("[LEVEL5] lowers the %s without a new foul or anything newly tight, dial side kept above the front plate", (name) => {
    const given = example(name), before = examine(workOut(given)), found = findHeights(given);
    const after = examine(workOut(found.instrument));
    expect(found.proved).toBe(true);
    expect(after.counts.foul).toBeLessThanOrEqual(before.counts.foul);
    expect(after.counts.tight).toBeLessThanOrEqual(before.counts.tight);
    const raise = found.instrument.frame.plates[1]!.z - given.frame.plates[1]!.z;
    expect(raise).toBeLessThan(0);
    const dialSide = (i: Instrument) => i.arbors.flatMap((a) => a.parts).filter((p) => p.kind === "pointer").map((p) => p.z);
    dialSide(found.instrument).forEach((z, i) => expect(z - dialSide(given)[i]!).toBeCloseTo(raise, 9));
  });

  it("[LEVEL5] is the same for the same seed, and leaves no instrument worse than it was", () => {
    for (let seed = 1; seed <= 25; seed++) {
      const given = jumble(seed, 6), before = examine(workOut(given)).counts;
      const steps = [...searchHeights(given, { seed, branches: 600 })];
      expect([...searchHeights(given, { seed, branches: 600 })]).toEqual(steps);
      let { foul } = before;
      for (const { best } of steps) {
        expect(best.counts.foul).toBeLessThanOrEqual(foul);
        foul = best.counts.foul;
        if (foul === before.foul) expect(best.counts.tight).toBeLessThanOrEqual(before.tight);
        expect(best.counts).toEqual(examine(workOut(best.instrument)).counts);
      }
    }
  });

  it("[LEVEL5] closes up the order as drawn before any other, and says what lower order the examiner would not have", () => {
    const given = generated(60), before = examine(workOut(given)).counts;
    const [first] = searchHeights(given, { branches: 400 });
    expect(first!.best.height).toBeLessThan(given.frame.plates[1]!.z);
    expect(first!.best.counts.foul).toBeLessThanOrEqual(before.foul);
    expect(first!.best.counts.tight).toBeLessThanOrEqual(before.tight);
    expect(findHeights(given, { branches: 400 }).says).toMatch(/Everything would clear at \d+\.\d+ mm, but/);
  });

  it("[LEVEL6] says where there are no two plates, and which pairs no height can part", () => {
    expect(findHeights({ ...threeDiscs([3, 8, 14]), frame: { plates: [], pillars: [] } }).says).toMatch(/no two plates/);
    const wide = threeDiscs([3, 8, 14]);
    const fouling = { ...wide, arbors: wide.arbors.map((a, i) => (i === 0 ? { ...a, parts: a.parts.map((p) => ({ ...p, kind: "disc" as const, diameter: 19.5 })) } : a)) };
    expect(findHeights(fouling).beyond.map((b) => [...b].sort())).toContainEqual(["A1", "D0"]);
  });
});
