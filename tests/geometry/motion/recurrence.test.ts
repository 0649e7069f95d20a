import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cycleOf, evenly, firstInRange, recurrenceOf, type Phase, type Stretch } from "../../../geometry/motion/recurrence.ts";
import { ratio, toNumber, writeRatio } from "../../../geometry/numeric/ratio.ts";

const phase = (p: number, q: number, start: number): Phase => ({ rate: ratio(p, q), start });
const inside = (at: number, low: number, width: number): boolean => {
  const x = at - low - Math.floor(at - low);
  return x <= width + 1e-6 || x >= 1 - 1e-6;
};

describe("the first step that falls in a range", () => {
  it("[COMES1] is what trying every step gives", () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 299 }), fc.integer({ min: 0, max: 40 }), (size, step, l, w) => {
      const low = l % size, high = Math.min(size - 1, low + w);
      let tried: number | null = null;
      for (let k = 0; k < size && tried === null; k++) if ((step * k) % size >= low && (step * k) % size <= high) tried = k;
      expect(firstInRange(step, size, low, high)).toBe(tried);
    }), { seed: 71, numRuns: 2000 });
  });

  it("[COMES1] answers at once for terms of 60 and of 600 digits, at a turn that whole numbers confirm", () => {
    for (const digits of [60n, 600n]) {
      const d = 10n ** digits + 7n, n = 10n ** digits / 3n + 10n ** (digits - 9n), rate = ratio(n, d);
      const found = recurrenceOf([phase(1, 1, 0), { rate, start: 0.1 }]).enter({ low: [0, 0.7], width: [1e-6, 1e-6] }, 0);
      const turns = Math.round((found as Stretch)[0]);
      const at = (k: number) => Number((((n * BigInt(k)) % d) * 10n ** 15n) / d) / 1e15;
      const isIn = (k: number) => Math.abs(((at(k) + 0.1) % 1) - 0.7) < 2e-6;
      expect(isIn(turns)).toBe(true);
      for (let k = 0; k < Math.min(turns, 200_000); k++) if (isIn(k) && ((at(k) + 0.1) % 1) >= 0.7) throw new Error(`${k} is earlier`);
    }
  });
});

describe("phases", () => {
  it("[COMES2] come round after the least common multiple of their periods", () => {
    expect(writeRatio(cycleOf([phase(81, 2392, 0)]))).toBe("2392/81");
    expect(writeRatio(cycleOf([phase(1, 1, 0), phase(81, 2392, 0.2)]))).toBe("2392");
    expect(writeRatio(cycleOf([phase(2, 3, 0), phase(-4, 5, 0)]))).toBe("15/2");
  });

  it("[COMES3] two pins on shafts p : q meet exactly when arithmetic says", () => {
    // φ1 = t, φ2 = 3/7 t + 2/7: both at 0 when t is whole and 3t + 2 is divisible by 7, that is t = 4, 11, …
    const meet = recurrenceOf([phase(1, 1, 0), phase(3, 7, 2 / 7)]);
    const box = { low: [-0.001, -0.001], width: [0.002, 0.002] };
    const found = meet.enter(box, 0);
    expect(found).not.toBeNull();
    expect(Math.round((found as Stretch)[0])).toBe(4);
    expect(Math.round((meet.enter(box, 5) as Stretch)[0])).toBe(11);
    // 3t + 2.5 is never divisible by 7.
    expect(recurrenceOf([phase(1, 1, 0), phase(3, 7, 2.5 / 7)]).enter(box, 0)).toBeNull();
  });

  it("[COMES3] a stretch is where stepping finds the phases inside, and never earlier", () => {
    const rate = fc.record({ p: fc.integer({ min: -9, max: 9 }).filter((p) => p !== 0), q: fc.integer({ min: 1, max: 9 }), start: fc.integer({ min: 0, max: 99 }) });
    const interval = fc.record({ low: fc.integer({ min: 0, max: 99 }), width: fc.integer({ min: 2, max: 30 }) });
    fc.assert(fc.property(fc.array(fc.tuple(rate, interval), { minLength: 1, maxLength: 3 }), (all) => {
      const phases = all.map(([r]) => phase(r.p, r.q, r.start / 100));
      const box = { low: all.map(([, b]) => b.low / 100), width: all.map(([, b]) => b.width / 100) };
      const found = recurrenceOf(phases).enter(box, 0);
      const holds = (t: number, grow: number) => phases.every((p, i) => inside(evenly(p)(t), (box.low[i] ?? 0) - grow, (box.width[i] ?? 0) + 2 * grow));
      const cycle = toNumber(cycleOf(phases));
      let stepped: number | null = null;
      for (let t = 0; t <= cycle && stepped === null; t += 1 / 600) if (holds(t, -0.004)) stepped = t;
      if (found === null) expect(stepped).toBeNull();
      else {
        expect(found).not.toBe("unknown");
        const [enters, leaves] = found as Stretch;
        expect(leaves).toBeGreaterThanOrEqual(enters);
        expect(holds(enters, 1e-6)).toBe(true);
        expect(holds(leaves, 1e-6)).toBe(true);
        if (stepped !== null) expect(enters).toBeLessThanOrEqual(stepped + 1e-6);
      }
    }), { seed: 72, numRuns: 400 });
  });

  it("[COMES4] stay exact over millions of turns", () => {
    const p = phase(81, 2392, 0.25);
    expect(evenly(p)(2392e6)).toBeCloseTo(0.25, 9);
    expect(evenly(p)(2392e6 + 2392 / 162)).toBeCloseTo(0.75, 6);
  });

  it("[COMES3] after so many turns that a double no longer tells them apart finely, asking goes on and comes to an end", () => {
    // A phase of one turn in 1e24: past its stretch there is no other for a whole turn of it.
    const slow = recurrenceOf([{ rate: ratio(1n, 10n ** 24n + 7n), start: 0 }]), box = { low: [0.3], width: [0.001] };
    const [enters, leaves, next] = slow.enter(box, 0) as Stretch;
    expect(Math.abs(enters / 3e23 - 1)).toBeLessThan(1e-6);
    expect(Math.abs(leaves / 3.01e23 - 1)).toBeLessThan(1e-6);
    expect((slow.enter(box, next) as Stretch)[0]).toBeGreaterThan(1.29e24);
    const fast = recurrenceOf([phase(1, 1, 0), phase(3, 7, 0)]).enter({ low: [0.5, 0.0714], width: [1e-7, 1e-3] }, 2 ** 45) as Stretch;
    expect(fast[0]).toBeGreaterThanOrEqual(2 ** 45);
    expect(fast[2]).toBeGreaterThan(fast[1]);
  });

  it("[COMES3] a meeting that comes once in a million turns is found without stepping", () => {
    const phases = [phase(1, 1, 0), phase(999983, 1000003, 0.5)];
    const found = recurrenceOf(phases).enter({ low: [0, 0], width: [1e-6, 1e-6] }, 0) as Stretch;
    expect(found[0]).toBeGreaterThan(1000);
    expect(inside(evenly(phases[1] as Phase)(found[0]), 0, 1e-6)).toBe(true);
  });
});
