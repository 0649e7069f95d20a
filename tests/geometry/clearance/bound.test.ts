import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leastGap } from "../../../geometry/clearance/follow.ts";
import { spinOf } from "../../../geometry/clearance/spin.ts";
import { gapsOf, sceneOf } from "../../../geometry/clearance/gaps.ts";
import type { Arbor, Instrument, Part } from "../../../geometry/instrument.ts";
import { unevenOf } from "../../../geometry/motion/uneven.ts";
import { workOut } from "../../../geometry/workout.ts";

const wheel = (id: string, teeth: number): Part => ({ id, kind: "wheel", teeth, z: 2, thickness: 1 });
const arbor = (id: string, x: number, parts: Part[]): Arbor => ({ id, x, y: 0, diameter: 2, foot: 0, head: 30, parts });

/** A stud with an arm carried round past a post, and two arms in gear: each pair that is followed, and knows its bends. */
function spins(teeth: number, angle: number) {
  const instrument: Instrument = {
    endshake: 1, name: "bends", engagements: [{ driver: "a", driven: "b" }, { driver: "a", driven: "k" }], input: { arbor: "A", days: 1, sense: "clockwise" },
    frame: { plates: [], pillars: [{ id: "P", x: 20, y: 12, diameter: 3, from: 0, to: 30 }] },
    arbors: [arbor("A", 0, [wheel("a", 40), { id: "m", kind: "arm", length: 26, width: 4, angle, z: 16, thickness: 2 }]),
      arbor("B", 20 + teeth / 2, [wheel("b", teeth), { id: "n", kind: "pointer", length: 24, tail: 9, width: 3, angle: -angle, z: 16, thickness: 2 }]),
      { id: "K", diameter: 1, foot: 0, head: 30, parts: [wheel("k", 31), { id: "q", kind: "pin", radius: 6, angle, diameter: 2, z: 22, thickness: 3 }], rides: { on: "A", radius: 24, angle: 40 } }],
  };
  const movement = workOut(instrument), uneven = unevenOf(movement);
  return gapsOf(sceneOf(movement)).pairs.flatMap(({ a, b, verdict }) => {
    const spin = spinOf(movement, uneven, a, verdict.cylinders[0], b, verdict.cylinders[1]);
    return spin?.least === undefined || spin.phases.length === 0 ? [] : [spin];
  });
}

describe("how far two things certainly stay apart", () => {
  it("[FOLLOW4] no gap anywhere in a box is less than its bound", () => {
    let asked = 0;
    fc.assert(fc.property(fc.integer({ min: 37, max: 71 }), fc.double({ min: 0, max: 360, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 1e-4, max: 0.2, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }),
      (teeth, angle, at, half, off) => {
        for (const spin of spins(teeth, angle)) {
          const middle = spin.phases.map((_, i) => at + 0.3 * i), bound = spin.least?.(middle, middle.map(() => half)) ?? 0;
          asked++;
          for (const to of [off, 1, -1, off / 3]) expect(spin.gap(middle.map((v, i) => v + half * (i % 2 === 0 ? to : -to)))).toBeGreaterThanOrEqual(bound - 1e-9);
        }
      }), { numRuns: 150, seed: 7 });
    expect(asked).toBeGreaterThan(300);
  });

  it("[FOLLOW4] near a least gap it falls short with the square of the box, where the slopes fall short with the box", () => {
    const spin = spins(61, 140).find((s) => s.phases.length === 1);
    if (spin?.least === undefined) throw new Error("a pair is followed by one phase");
    const turns = leastGap(spin).turns, at = [turns * Number(spin.phases[0]?.rate.valueOf() ?? 1)];
    const short = (half: number) => spin.gap(at) - (spin.least?.(at, [half]) ?? 0);
    expect(short(1e-4)).toBeLessThan((spin.slopes[0] ?? 0) * 1e-4 / 4);
    expect(short(1e-4) / short(2e-4)).toBeLessThan(0.4);
  });
});
