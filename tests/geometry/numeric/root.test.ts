import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lastHolding, risingRoot, risingRootOfLeast } from "../../../geometry/numeric/root.ts";

describe("roots", () => {
  it("of rising functions of any bend, and with infinite ends, are where halving finds them, in far fewer looks", () => {
    const given = fc.record({ root: fc.double({ min: -0.9, max: 0.9, noNaN: true }), bend: fc.double({ min: 0.1, max: 4, noNaN: true }), end: fc.double({ min: 0.91, max: 3, noNaN: true }) });
    fc.assert(fc.property(given, ({ root, bend, end }) => {
      let looks = 0;
      const f = (x: number) => { looks++; return x > end ? Infinity : x < -end ? -Infinity : Math.sinh(bend * (x - root)) + (x - root) ** 3; };
      expect(Math.abs(risingRoot(f, -2, 2, 1e-11) - root)).toBeLessThan(1e-11);
      expect(looks).toBeLessThan(20);
      expect(Math.abs(lastHolding(-2, 2, 40, (x) => f(x) < 0) - root)).toBeLessThan(1e-11);
    }), { seed: 31, numRuns: 200 });
  });
  it("lie at the nearer end where the function does not come to 0 in between, and at a jump where it only jumps", () => {
    expect(risingRoot((x) => x + 5, 0, 1, 1e-9)).toBe(0);
    expect(risingRoot((x) => x - 5, 0, 1, 1e-9)).toBe(1);
    expect(Math.abs(risingRoot((x) => (x < 0.3 ? -1 : 2), 0, 1, 1e-9) - 0.3)).toBeLessThan(1e-9);
  });
  it("of the least of several are those of the least at every place, whichever is asked first, and all are seldom looked at", () => {
    const line = fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true }), slope: fc.double({ min: 0.1, max: 9, noNaN: true }), jump: fc.boolean() });
    fc.assert(fc.property(fc.array(line, { minLength: 1, maxLength: 30 }), fc.nat(), (lines, first) => {
      let looks = 0;
      const one = (x: number, i: number) => { const { at, slope, jump } = lines[i]!; return jump && x < at ? -Infinity : slope * (x - at); };
      const all = (x: number) => { looks++; return lines.map((_, i) => one(x, i)); };
      const found = risingRootOfLeast({ all, one }, -0.5, 2, 1e-9, first % lines.length);
      expect(Math.abs(found.at - Math.max(...lines.map((l) => l.at)))).toBeLessThan(3e-9);
      expect(looks).toBeLessThan(60);
    }), { seed: 32, numRuns: 300 });
  });
});
