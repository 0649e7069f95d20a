import { describe, expect, it } from "vitest";
import { differentialTrains, searchCarried } from "../../../geometry/numbers/epicyclic.ts";
import { cannotDivideSays, inTheWay, standNear } from "../../../geometry/numbers/primes.ts";
import { ORDINARY_HEAD } from "../../../geometry/numbers/dividing.ts";
import { shareTrains, type SharedAnswer, type SharedSearch } from "../../../geometry/numbers/several.ts";
import { decimalRatio, ONE, ratio, writeRatio } from "../../../geometry/numeric/ratio.ts";

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);

function whole<S, A>(run: Generator<S, A>): A {
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}

describe("what is in the way", () => {
  // Source: 191/23, both prime, and 299/36, 465/56, 847/102 near it with all primes up to 31 (check-values 6.1).
  it("[NUM16] a prime over the largest count, and ratios near it without", () => {
    expect(inTheWay(ratio(191, 23), 150)).toBe(191n);
    expect(inTheWay(ratio(299, 36), 31)).toBeNull();
    const near = standNear(ratio(191, 23), 31, 40).map((n) => writeRatio(n.ratio));
    for (const published of ["299/36", "465/56", "847/102"]) expect(near).toContain(published);
  });

  it("[DIV9] says why a count cannot be had and what stands near it", () => {
    expect(cannotDivideSays(127, { ...ORDINARY_HEAD, gears: [] })).toBe(
      "127 cannot be had from this head: it is prime, and no circle holds it, nor do the change gears make it good. Near it stand 126 and 128.");
    expect(cannotDivideSays(96, ORDINARY_HEAD)).toBeNull();
  });
});

describe("trains on a carrier", () => {
  // Source: Ferguson's paradox: wheels of 39, 37 and 44 in the makers' demonstrator, the middle fixed (check-values 4, [17]); Willis's rule.
  it("[NUM17] give one less the product, and every one that brute force gives", () => {
    const counts = range(10, 20), wanted = ratio(-1, 27), within = decimalRatio("0.05");
    const found = whole(searchCarried({ wanted, within, engagements: 2, counts }));
    const brute = counts.flatMap((a) => counts.filter((b) => b <= a).flatMap((b) => counts.flatMap((c) => counts.filter((d) => d <= c).flatMap((d) => {
      const given = ONE.sub(ratio(a * b, c * d));
      return given.div(wanted).sub(ONE).abs().compare(within) <= 0 ? [`${a},${b}/${c},${d}`] : [];
    }))));
    expect(brute.length).toBeGreaterThan(0);
    expect(found.trains.map((t) => `${t.drivers}/${t.driven}`).sort()).toEqual(brute.sort());
    expect(found.trains.every((t) => !t.annulus)).toBe(true);
  });

  it("[NUM17] want an annulus for more than a turn, and nothing for one", () => {
    const found = whole(searchCarried({ wanted: ratio(5, 2), within: ratio(0), engagements: 2, counts: range(10, 30) }));
    expect(found.trains.length).toBeGreaterThan(0);
    expect(found.trains.every((t) => t.annulus && writeRatio(t.ratio) === "5/2")).toBe(true);
    expect(whole(searchCarried({ wanted: ONE, within: ratio(0), engagements: 2, counts: [10] })).says).toMatch(/no wheels/);
  });

  it("[NUM18] a differential gives half the sum or the difference, as brute force says", () => {
    const counts = range(8, 14), wanted = ratio(16, 27), within = decimalRatio("0.003");
    const key = (n: number, d: number) => writeRatio(ratio(n, d));
    const brute = new Set(counts.flatMap((a) => counts.flatMap((b) => counts.flatMap((c) => counts.flatMap((d) => [1, -1].flatMap((sign) => {
      const one = ratio(a, b), two = ratio(c, d);
      if (sign === 1 && two.compare(one) > 0) return [];
      const given = (sign === 1 ? one.add(two) : one.sub(two)).div(ratio(2));
      return given.div(wanted).sub(ONE).abs().compare(within) <= 0 ? [`${key(a, b)} ${sign} ${key(c, d)}`] : [];
    }))))));
    const found = differentialTrains(wanted, within, counts).map((t) => `${key(...t.first)} ${t.sign} ${key(...t.second)}`);
    expect(brute.size).toBeGreaterThan(0);
    expect(found.sort()).toEqual([...brute].sort());
  });
});

describe("several displays at once", () => {
  const run = (search: SharedSearch): SharedAnswer => whole(shareTrains(search));

  it("[NUM19] share what can be shared: twice as fast is led off from the slow one, not made again", () => {
    const counts = [8, 10, 20, 40, 59];
    const displays = [{ id: "moon", wanted: ratio(1, 59), within: ratio(0) }, { id: "tide", wanted: ratio(2, 59), within: ratio(0) }];
    const { best, exhaustive } = run({ displays, counts, engagements: 2 });
    expect([exhaustive, best]).toEqual([true, null]); // 59 alone can be reached by no two of these counts
    const eitherWay = run({ displays: displays.map((d) => ({ ...d, wanted: d.wanted.mul(ratio(10)), eitherWay: true })), counts, engagements: 2 });
    // 10 > 59 for the first; the second from the input by 20 > 59: four wheels; sharing the 59 would need another arbor.
    expect(eitherWay.best).toMatchObject({ wheels: 4 });
    expect(eitherWay.exhaustive).toBe(true);
  });

  it("[NUM19] has as few wheels as trying every tree of two engagements", () => {
    const counts = [8, 9, 12, 15, 16];
    const displays = [{ id: "a", wanted: ratio(-8, 15), within: ratio(1, 100) }, { id: "b", wanted: ratio(8 * 9, 15 * 16), within: ratio(1, 100) }];
    const { best, exhaustive } = run({ displays, counts, engagements: 2 });
    expect(exhaustive).toBe(true);
    // b from the input needs two engagements; from a's arbor one more: 8 > 15 and 9 > 16, four wheels in all.
    expect(best?.wheels).toBe(4);
    expect(best?.displays.every((d) => Math.abs(d.error) <= 0.01)).toBe(true);
  });

  it("[NUM19] refuses in words what cannot be asked, and gives the best so far on the way", () => {
    expect(run({ displays: [], counts: [8], engagements: 1 }).says).toMatch(/no display/);
    expect(run({ displays: [{ id: "a", wanted: ratio(0), within: ratio(0) }], counts: [8], engagements: 1 }).says).toMatch(/does not turn/);
    const steps = [...shareTrains({ displays: [{ id: "a", wanted: ratio(1, 2), within: ratio(1, 50), eitherWay: true }, { id: "b", wanted: ratio(1, 3), within: ratio(1, 50), eitherWay: true }], counts: range(8, 24), engagements: 2 })];
    expect(steps.every((s) => s.done >= 0 && s.done <= 1)).toBe(true);
    expect(steps.some((s) => s.best !== null)).toBe(true);
  });
});
