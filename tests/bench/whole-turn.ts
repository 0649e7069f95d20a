// The whole turn of a 20-arbor instrument: the first meeting of every pair that has one, by certified search, against
// stepping by one tooth of the input. Stepping is timed over at most so many steps and scaled; the search is timed whole.
// It must cost no more over 10,000 years than over one, and never be later than a step that finds metal nearer than wanted.
import { examine } from "../../geometry/examine/sheet.ts";
import { sceneOf, gapsOf } from "../../geometry/clearance/gaps.ts";
import { judgeMoving } from "../../geometry/clearance/moving.ts";
import { spinOf } from "../../geometry/clearance/spin.ts";
import { evenly } from "../../geometry/motion/recurrence.ts";
import { unevenOf } from "../../geometry/motion/uneven.ts";
import type { Arbor, Instrument, Part } from "../../geometry/instrument.ts";
import { workOut } from "../../geometry/workout.ts";
import { figure, medianMs, table } from "./measure.ts";

const ARBORS = 20, TEETH = 41, DAYS_A_YEAR = 365.25;
const MOST_STEPS = 150_000;

export function benchWholeTurn(): string {
  const movement = workOut(instrument());
  const rows = [1, 100, 10_000].map((years) => {
    const until = years * DAYS_A_YEAR;
    const ours = medianMs(5, () => examine(movement, { until }));
    const { ms, steps, latest } = stepped(until);
    return [`${years} years`, figure(ours), figure(ms), `${figure(ms / ours)} ×`, `${steps}`, checksum(until).toFixed(3), latest];
  });
  return table(`Whole turn of ${ARBORS} arbors, against steps of one tooth (scaled from ${MOST_STEPS} at most)`, [
    ["", "ours ms", "steps ms", "times", "steps", "checksum turns", "steps that were earlier"], ...rows,
  ]);

  /** Sum of all first turns that are told. */
  function checksum(until: number): number {
    return examine(movement, { until }).findings.reduce((sum, f) => sum + (f.when?.turns ?? 0), 0);
  }

  function stepped(until: number): { ms: number; steps: number; latest: string } {
    const uneven = unevenOf(movement), scene = sceneOf(movement);
    const spins = gapsOf(scene).pairs.flatMap(({ a, b, verdict }) => {
      const spin = spinOf(movement, uneven, a, verdict.cylinders[0], b, verdict.cylinders[1]);
      return spin ? [{ spin, judged: judgeMoving(movement, uneven, a, b, until) }] : [];
    });
    const steps = Math.round(until * TEETH), made = Math.min(steps, MOST_STEPS);
    let earlier = 0;
    const start = performance.now();
    for (const { spin, judged } of spins) {
      const stands = spin.phases.map(evenly);
      for (let k = 0; k < made; k++) {
        const turns = k / TEETH;
        const gap = spin.gap(stands.map((stand) => stand(turns)));
        if (gap < judged.gap - 0.001) earlier++;
      }
    }
    return { ms: ((performance.now() - start) * steps) / made, steps: steps * spins.length, latest: `${earlier}` };
  }
}

/** A train of twenty whose every other arbor carries an arm that sweeps past the pin of the next but one. */
function instrument(): Instrument {
  const wheels = [41, 43, 47, 53, 59, 61, 67, 71, 73, 79];
  const drivenBy = (i: number) => 37 + ((5 * i) % 11);
  const arbors = Array.from({ length: ARBORS }, (_, i): Arbor => {
    const own = wheels[i % wheels.length] ?? 41, level = 2 + 5 * (i % 2);
    const parts: Part[] = [
      { id: `N${i}w`, kind: "wheel", teeth: own, z: level, thickness: 1 },
      i % 2 === 0
        ? { id: `N${i}m`, kind: "arm", length: 20 + (i % 7), width: 3, angle: 17 * i, z: 30, thickness: 2 }
        : { id: `N${i}p`, kind: "pin", radius: 22, angle: 31 * i, diameter: 2, z: 29, thickness: 4 },
    ];
    if (i > 0) parts.push({ id: `N${i}v`, kind: "wheel", teeth: drivenBy(i), z: 2 + 5 * ((i - 1) % 2), thickness: 1 });
    return { id: `N${i}`, x: 0, y: 0, diameter: 2, foot: 0, head: 40, parts };
  });
  let x = 0;
  const placed = arbors.map((a, i) => {
    if (i > 0) x += ((wheels[(i - 1) % wheels.length] ?? 41) + drivenBy(i)) / 2;
    return { ...a, x };
  });
  return {
    endshake: 1, name: "whole turn", frame: { plates: [], pillars: [] }, arbors: placed, input: { arbor: "N0", days: 1, sense: "clockwise" },
    engagements: Array.from({ length: ARBORS - 1 }, (_, i) => ({ driver: `N${i}w`, driven: `N${i + 1}v` })),
  };
}
