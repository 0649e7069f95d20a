import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allGapsOf, gapsOf, sceneOf, type JudgedPair } from "../../../geometry/clearance/gaps.ts";
import { workOut } from "../../../geometry/workout.ts";
import { generated } from "../../fixtures/generated.ts";
import { jumble } from "../../fixtures/jumble.ts";

const RUNS = { seed: 20261125, numRuns: 150 };

const shown = ({ a, b, verdict }: JudgedPair) =>
  `${[a.id, b.id].sort().join(" ")} ${verdict.severity} ${verdict.way} ${verdict.gap} ${verdict.worst} ${verdict.wanted}`;
const notFree = (pairs: readonly JudgedPair[]) => pairs.filter((p) => p.verdict.severity !== "free").map(shown).sort();

describe("the broad phase", () => {
  it("[GAP15] gives on any instrument exactly what judging every pair gives, and counts the same pairs", () => {
    let seen = 0;
    fc.assert(fc.property(fc.integer({ min: 0, max: 1e9 }), (seed) => {
      const scene = sceneOf(workOut(jumble(seed)));
      const quick = gapsOf(scene), every = allGapsOf(scene);
      expect(quick.examined).toBe(every.examined);
      expect(notFree(quick.pairs)).toEqual(notFree(every.pairs));
      seen += quick.pairs.length;
    }), RUNS);
    expect(seen).toBeGreaterThan(500);
  });

  it("[GAP15] gives the same on a large train with a plate of many openings", () => {
    const scene = sceneOf(workOut(generated(150)));
    const quick = gapsOf(scene), every = allGapsOf(scene);
    expect(quick.pairs.length).toBeGreaterThan(2);
    expect(notFree(quick.pairs)).toEqual(notFree(every.pairs));
    expect(quick.examined).toBe(every.examined);
  });

  it("[GAP15] is right for no things and for one", () => {
    const empty = { ...jumble(1), arbors: [], engagements: [], frame: { plates: [], pillars: [] } };
    const lone = { ...empty, frame: { plates: [], pillars: [{ id: "P1", x: 0, y: 0, diameter: 4, from: 0, to: 9 }] } };
    for (const instrument of [empty, lone]) {
      const movement = { ...workOut(jumble(1)), instrument, arbors: [], engagements: [] };
      expect(gapsOf(sceneOf(movement))).toEqual({ pairs: [], examined: 0 });
    }
  });
});
