import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstAtMost, gapAt, leastGap, type Followed } from "../../../geometry/clearance/follow.ts";
import { cycleOf } from "../../../geometry/motion/recurrence.ts";
import { ratio, toNumber, type Ratio } from "../../../geometry/numeric/ratio.ts";

const TAU = 2 * Math.PI;

/** Two pins of radius 1 mm on shafts `apart` mm from one another. */
function pins(apart: number, a: { rate: Ratio; start: number; radius: number }, b: { rate: Ratio; start: number; radius: number }): Followed {
  return {
    phases: [a, b],
    slopes: [TAU * a.radius, TAU * b.radius],
    gap: ([p = 0, q = 0]) => Math.hypot(
      a.radius * Math.cos(TAU * p) - apart - b.radius * Math.cos(TAU * q), a.radius * Math.sin(TAU * p) - b.radius * Math.sin(TAU * q)) - 2,
  };
}

/** Stepping, the oracle: least gap and first turn at or under a gap. */
function stepped(f: Followed, mostMm: number, steps: number): { least: number; first: number | null } {
  const cycle = toNumber(cycleOf(f.phases));
  let least = Infinity, first: number | null = null;
  for (let i = 0; i <= steps; i++) {
    const gap = gapAt(f, (i / steps) * cycle);
    least = Math.min(least, gap);
    if (first === null && gap <= mostMm) first = (i / steps) * cycle;
  }
  return { least, first };
}

describe("following two things through a whole cycle", () => {
  it("[FOLLOW1] a single phase: a pin against a post, by the closed form", () => {
    const f: Followed = { phases: [{ rate: ratio(3, 7), start: 0.3 }], slopes: [TAU * 10], gap: ([p = 0]) => Math.hypot(10 * Math.cos(TAU * p) - 20, 10 * Math.sin(TAU * p)) - 3 };
    const least = leastGap(f);
    expect(least.proved).toBe(true);
    expect(Math.abs(least.gap - 7)).toBeLessThan(0.001);
    expect(Math.abs(least.turns - (0.7 * 7) / 3)).toBeLessThan(0.02);
    // gap ≤ 8: 121 = 100 + 400 − 400 cos θ, cos θ = 379/400.
    const first = firstAtMost(f, 8);
    expect(Math.abs((first?.turns ?? 0) - ((0.7 - Math.acos(379 / 400) / TAU) * 7) / 3)).toBeLessThan(1e-4);
    expect(firstAtMost(f, 6.9)).toBeNull();
  });

  it("[FOLLOW2] agrees with stepping, and is never later, on cycles short enough to step", () => {
    const pin = fc.record({ p: fc.integer({ min: -5, max: 5 }).filter((n) => n !== 0), q: fc.integer({ min: 1, max: 5 }), start: fc.integer({ min: 0, max: 99 }), radius: fc.integer({ min: 3, max: 12 }) });
    fc.assert(fc.property(pin, pin, fc.integer({ min: 15, max: 26 }), (a, b, apart) => {
      const f = pins(apart, { rate: ratio(a.p, a.q), start: a.start / 100, radius: a.radius }, { rate: ratio(b.p, b.q), start: b.start / 100, radius: b.radius });
      const oracle = stepped(f, 1, 20_000);
      const least = leastGap(f);
      expect(least.proved).toBe(true);
      expect(least.gap).toBeLessThan(oracle.least + 0.0011);
      expect(least.gap).toBeGreaterThan(oracle.least - 0.15);
      expect(Math.abs(gapAt(f, least.turns) - least.gap)).toBeLessThan(0.001);
      const first = firstAtMost(f, 1);
      if (oracle.first !== null) {
        expect(first?.proved).toBe(true);
        expect(first?.turns ?? Infinity).toBeLessThan(oracle.first + 1e-6);
        expect(gapAt(f, first?.turns ?? 0)).toBeLessThan(1.001);
      } else if (first) expect(gapAt(f, first.turns)).toBeLessThan(1.001);
    }), { seed: 81, numRuns: 60 });
  });

  it("[FOLLOW3] a meeting that comes once in a very long cycle is found, and its absence proved", () => {
    // Radii 10 and 10, 22.5 apart: the pins are nearest, 0.5 mm, only when both point at one another at once.
    const slow = { rate: ratio(81, 2392), start: 0.5, radius: 10 };
    const f = pins(22.5, { rate: ratio(1000003, 1000000), start: 0.123, radius: 10 }, slow);
    const near = firstAtMost(f, 0.501);
    expect(near?.proved).toBe(true);
    expect(gapAt(f, near?.turns ?? 0)).toBeLessThan(0.5011);
    const never = leastGap(pins(23.5, { rate: ratio(1000003, 1000000), start: 0.123, radius: 10 }, slow));
    expect(never.proved).toBe(true);
    expect(never.gap).toBeGreaterThan(1.498);
  });

  it("[FOLLOW3] shafts 3 : 7 whose pins arithmetic keeps apart never come as near as those it brings together", () => {
    const meet = (start: number) => leastGap(pins(22, { rate: ratio(1), start: 0, radius: 10 }, { rate: ratio(3, 7), start: 0.5 + start, radius: 10 })).gap;
    expect(meet(2 / 7)).toBeLessThan(0.001);
    expect(meet(2.5 / 7)).toBeGreaterThan(0.5);
  });
});
