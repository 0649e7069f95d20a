import { describe, expect, it } from "vitest";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Instrument } from "../../../geometry/instrument.ts";
import { searchSettled, type Settled, type SettlingStep } from "../../../geometry/search/settle.ts";
import { workOut } from "../../../geometry/workout.ts";

/** Discs of 14 mm at one height, so many mm apart. */
const discs = (apartMm: number, steady: boolean): Instrument => ({
  endshake: 1, name: "discs", practice: { planGap: 0.5 }, engagements: [], input: { arbor: "A", days: 1, sense: "clockwise" },
  frame: { plates: [-2, 20].map((z) => ({ id: `p${z}`, z, thickness: 2, outline: { circle: { diameter: 60 } } })), pillars: [] },
  arbors: ["A", "B"].map((id, i) => ({
    id, x: apartMm * i, y: 0, diameter: 1, foot: 1, head: 19, ...(steady ? { steady } : {}), parts: [{ id: `${id}1`, kind: "disc" as const, diameter: 14, z: 4, thickness: 2 }],
  })),
});

function ran(instrument: Instrument): { steps: SettlingStep[]; settled: Settled } {
  const run = searchSettled(instrument), steps: SettlingStep[] = [];
  for (;;) {
    const step = run.next();
    if (step.done) return { steps, settled: step.value };
    steps.push(step.value);
  }
}
const standing = ({ arbors }: Instrument) => arbors.map(({ x, y }) => [x, y]);

describe("settling what was changed", () => {
  it("[LEVEL8] clears what fouls by places, and tells how far it is", () => {
    const { steps, settled } = ran(discs(8, false));
    expect(examine(workOut(discs(8, false))).counts.foul).toBeGreaterThan(0);
    expect(settled.counts).toMatchObject({ foul: 0 });
    expect(examine(workOut(settled.instrument)).counts).toEqual(settled.counts);
    const done = steps.map((s) => s.done);
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect(done.at(-1)).toBe(1);
    steps.forEach((s, i) => { if (i > 0) expect(s.best.counts.foul).toBeLessThanOrEqual(steps[i - 1]?.best.counts.foul ?? 0); });
  });

  it("[LEVEL8] leaves steady arbors where they are, and clears them by levels", () => {
    const { settled } = ran(discs(10, true));
    expect(standing(settled.instrument)).toEqual(standing(discs(10, true)));
    expect(settled.counts.foul).toBe(0);
    expect(new Set(settled.instrument.arbors.map((a) => a.parts[0]?.z)).size).toBe(2);
  });

  it("[LEVEL8] touches nothing where nothing is amiss", () => {
    const both = discs(20, false), free = { ...both, arbors: both.arbors.slice(0, 1) }, { steps, settled } = ran(free);
    expect(settled.instrument).toBe(free);
    expect(steps.map((s) => s.done)).toEqual([1]);
  });
});
