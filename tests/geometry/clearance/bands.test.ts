import { describe, expect, it } from "vitest";
import { mayRise } from "../../../geometry/clearance/bands.ts";
import { allGapsOf, sceneOf } from "../../../geometry/clearance/gaps.ts";
import type { Instrument } from "../../../geometry/instrument.ts";
import { workOut } from "../../../geometry/workout.ts";
import { jumble } from "../../fixtures/jumble.ts";
import { sourceOf } from "../../fixtures/random.ts";

const RANK = { free: 0, tight: 1, foul: 2 };

describe("where a part may stand on its arbor", () => {
  it("[LEVEL3] is full where another that it overlaps in plan stands, with what is wanted on either side", () => {
    const instrument: Instrument = {
      endshake: 1, name: "two", practice: { planGap: 0.5, faceGap: 0.3, endshake: 0.2, wobble: 0, runout: 0, sideshake: 0 }, engagements: [],
      frame: { plates: [], pillars: [] }, input: { arbor: "A", days: 1, sense: "clockwise" },
      arbors: ["A", "B"].map((id, i) => ({ id, x: 10 * i, y: 0, diameter: 1, foot: 0, head: 20, parts: [{ id: `${id}1`, kind: "disc", diameter: 14, z: 6, thickness: 2 }] })),
    };
    // Each arbor rises and falls by 0.1: two discs 2 thick foul within 2.2 of height of one another, and are tight within 0.3 more.
    const { bands, at, severity } = mayRise(workOut(instrument), "B1");
    expect([at, severity]).toEqual([6, "foul"]);
    expect(bands.map((b) => [b.severity, b.by])).toEqual([["free", null], ["tight", "A1"], ["foul", "A1"], ["tight", "A1"], ["free", null]]);
    expect(bands.map((b) => b.to)).toEqual([3.5, 3.8, 8.2, 8.5, 18].map((z) => expect.closeTo(z, 9)));
  });

  it("[LEVEL3] agrees with judging every gap of the part at random heights", () => {
    let seen = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const s = sourceOf(seed), instrument = jumble(seed, 6);
      const arbor = instrument.arbors.findIndex((a) => a.parts.length > 0);
      if (arbor < 0) continue;
      const part = s.whole(0, instrument.arbors[arbor]!.parts.length - 1), { id } = instrument.arbors[arbor]!.parts[part]!;
      const { bands } = mayRise(workOut(instrument), id);
      for (const band of bands) {
        const z = s.between(band.from + 1e-6, band.to - 1e-6);
        const moved = { ...instrument, arbors: instrument.arbors.map((a, i) => (i !== arbor ? a : { ...a, parts: a.parts.map((p, k) => (k === part ? { ...p, z } : p)) })) };
        const worst = allGapsOf(sceneOf(workOut(moved))).pairs.filter((p) => p.a.id === id || p.b.id === id).reduce((w, p) => Math.max(w, RANK[p.verdict.severity]), 0);
        expect({ seed, z, is: RANK[band.severity] }).toEqual({ seed, z, is: worst });
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(100);
  });

  it("[LEVEL3] speaks of parts only", () => {
    expect(() => mayRise(workOut(jumble(1, 3)), "nothing")).toThrow("there is no part nothing");
  });
});
