import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectedTrains } from "../../../geometry/numbers/expected.ts";
import { halvesOf, productsBetween, productsOf, setsOf, setsWithProduct } from "../../../geometry/numbers/products.ts";
import { searchSizes } from "../../../geometry/numbers/sizes.ts";
import { findTrains, searchTrains } from "../../../geometry/numbers/trains.ts";
import { decimalRatio, ratio, toNumber, writeRatio } from "../../../geometry/numeric/ratio.ts";

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** Every set of `size` counts, largest first. */
function everySet(counts: readonly number[], size: number): number[][] {
  if (size === 0) return [[]];
  return counts.flatMap((c, i) => everySet(counts.slice(0, i + 1), size - 1).map((rest) => [c, ...rest]));
}

function bruteForce(wanted: ReturnType<typeof ratio>, within: ReturnType<typeof ratio>, size: number, counts: number[]): string[] {
  const sets = everySet(counts, size);
  const product = (s: number[]) => s.reduce((a, b) => a * BigInt(b), 1n);
  return sets.flatMap((d) => sets.filter((v) => {
    const error = ratio(product(d), product(v)).div(wanted).sub(ratio(1)).abs();
    return error.compare(within) <= 0;
  }).map((v) => `${d}/${v}`)).sort();
}

const written = (found: ReturnType<typeof findTrains>): string[] => found.trains.map((t) => `${t.drivers}/${t.driven}`).sort();

describe("products of counts", () => {
  it("[NUM1] are every distinct product once, ascending", () => {
    fc.assert(fc.property(fc.uniqueArray(fc.integer({ min: 2, max: 40 }), { minLength: 1, maxLength: 7 }), fc.integer({ min: 1, max: 3 }), (some, size) => {
      const counts = some.sort((a, b) => a - b);
      const sets = everySet(counts, size);
      const wanted = [...new Set(sets.map((s) => s.reduce((a, b) => a * b, 1)))].sort((a, b) => a - b);
      expect([...productsOf(counts, size)]).toEqual(wanted);
      expect(setsOf(counts.length, size)).toBe(sets.length);
      expect(wanted.flatMap((p) => setsWithProduct(counts, size, p)).map(String).sort()).toEqual(sets.map(String).sort());
    }), { seed: 61 });
  });
});

describe("a stretch of the products", () => {
  it("[NUM1] is what the whole list has between its limits, both included", () => {
    fc.assert(fc.property(fc.uniqueArray(fc.integer({ min: 2, max: 40 }), { minLength: 1, maxLength: 8 }), fc.integer({ min: 0, max: 5 }), fc.nat(), fc.nat(), (some, size, a, b) => {
      const counts = some.sort((x, y) => x - y);
      const all = [...productsOf(counts, size)];
      const low = all[a % all.length] ?? 0, high = all[b % all.length] ?? 0;
      expect([...productsBetween(halvesOf(counts, size), low, high)]).toEqual(all.filter((p) => p >= low && p <= high));
    }), { seed: 63 });
  });
});

describe("finding numbers", () => {
  it("[NUM2] one, two and three engagements give exactly the set that trying every count gives", () => {
    const counts = range(6, 16);
    for (const [size, within] of [[1, "0.05"], [2, "0.003"], [3, "0.0002"]] as const) {
      const wanted = ratio(191, 230);
      const found = findTrains({ wanted, within: decimalRatio(within), engagements: size, counts });
      expect(found.exhaustive).toBe(true);
      expect(written(found)).toEqual(bruteForce(wanted, decimalRatio(within), size, counts));
    }
  });

  it("[NUM2] four engagements and a stated error give the set of all quadruples held against one another", () => {
    const counts = [7, 8, 11, 13, 15, 29, 31, 37];
    const wanted = ratio(1000, 29531);
    const sets = everySet(counts, 4).map((s) => s.reduce((x, y) => x * y, 1));
    const brute = sets.flatMap((d) => sets.filter((v) => Math.abs(d * 29531 - v * 1000) <= 0.002 * v * 1000)).length;
    const found = findTrains({ wanted, within: decimalRatio("0.002"), engagements: 4, counts });
    expect(brute).toBeGreaterThan(0);
    expect(found.trains).toHaveLength(brute);
  });

  it("[NUM2] the same for ratios and errors taken by chance", () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 1, max: 90 }), fc.integer({ min: 0, max: 40 }), (p, q, e) => {
      const search = { wanted: ratio(p, q), within: ratio(e, 1000), engagements: 2, counts: range(6, 14) };
      expect(written(findTrains(search))).toEqual(bruteForce(search.wanted, search.within, 2, search.counts));
    }), { seed: 62, numRuns: 40 });
  });

  it("[NUM3] the best stand first and the error is signed", () => {
    const found = findTrains({ wanted: decimalRatio("0.9"), within: decimalRatio("0.05"), engagements: 1, counts: range(8, 30) });
    const errors = found.trains.map((t) => Math.abs(t.error));
    expect(errors).toEqual([...errors].sort((a, b) => a - b));
    expect(found.trains.some((t) => t.error < 0) && found.trains.some((t) => t.error > 0)).toBe(true);
    for (const t of found.trains) expect(toNumber(t.ratio) / 0.9 - 1 - t.error).toBeCloseTo(0, 14);
  });

  it("[NUM4] a wheel to lead off from is among the drivers of every train, and none is missed", () => {
    const search = { wanted: ratio(5, 7), within: ratio(1, 500), engagements: 2, counts: range(6, 20) };
    const free = findTrains(search), led = findTrains({ ...search, leadOff: 15 });
    expect(written(led)).toEqual(written({ ...free, trains: free.trains.filter((t) => t.drivers.includes(15)) }));
  });

  // Source: the eight-day clock's centre to escape 64/8 × 60/8, 80/10 × 75/10, 96/12 × 90/12 = 60 (check-values 4.4; from
  // memory of common English counts, recomputed exactly).
  it("[NUM2] published trains of 60 to 1 are all found", () => {
    const found = findTrains({ wanted: ratio(60), within: ratio(0), engagements: 2, counts: [...range(6, 20), ...range(30, 144)] });
    const all = written(found);
    for (const train of ["64,60/8,8", "80,75/10,10", "96,90/12,12"]) expect(all).toContain(train);
    expect(found.trains.every((t) => writeRatio(t.ratio) === "60")).toBe(true);
  });

  // Source: lunar day from a 24-hour arbor, 43/37 × 57/64 (check-values 4.3 [28]); Huygens' 7:206 for Saturn (4.2 [21]).
  it("[NUM2] the lunar-day train 43/37 × 57/64 is found and its error against the mean lunar day is +0.05 s", () => {
    const wanted = decimalRatio("24.84120241").div(ratio(24));
    const found = findTrains({ wanted, within: decimalRatio("0.000001"), engagements: 2, counts: range(30, 144) });
    const train = found.trains.find((t) => `${t.drivers}/${t.driven}` === "57,43/64,37");
    expect(train && writeRatio(train.ratio)).toBe("2451/2368");
    expect((train?.error ?? 0) * 24.84120241 * 3600).toBeGreaterThan(0.045);
    expect((train?.error ?? 0) * 24.84120241 * 3600).toBeLessThan(0.055);
  });

  it("[NUM5] what cannot be searched is answered at once, in words that say what would mend it", () => {
    const search = { wanted: ratio(1), within: ratio(1, 1000), engagements: 2, counts: range(6, 20) };
    const says = (s: Partial<typeof search>) => findTrains({ ...search, ...s }).says ?? "";
    expect(says({ wanted: ratio(0) })).toMatch(/above 0/);
    expect(says({ wanted: ratio(-3) })).toMatch(/contrary/);
    expect(says({ counts: [] })).toMatch(/widen/);
    expect(says({ engagements: 0 })).toMatch(/at least one/i);
    expect(says({ engagements: 9, counts: range(6, 300) })).toMatch(/fewer engagements/);
    expect(says({ within: ratio(2) })).toMatch(/error of 1/);
    expect(findTrains({ ...search, engagements: 9, counts: range(6, 300) }).exhaustive).toBe(false);
  });

  it("[NUM5] a list that is cut short says so and keeps the best", () => {
    const search = { wanted: ratio(1), within: ratio(1, 20), engagements: 2, counts: range(6, 30) };
    const all = findTrains(search), few = findTrains({ ...search, most: 50 });
    expect(few.exhaustive).toBe(false);
    expect(few.says).toMatch(/smaller error/);
    expect(few.trains.map((t) => Math.abs(t.error))).toEqual(all.trains.slice(0, 50).map((t) => Math.abs(t.error)));
  });

  it("[NUM6] progress is given as it goes and never falls", () => {
    const run = searchTrains({ wanted: ratio(60), within: ratio(1, 10 ** 6), engagements: 3, counts: range(6, 60) });
    const seen: number[] = [];
    for (let step = run.next(); !step.done; step = run.next()) seen.push(step.value);
    expect(seen[0]).toBe(0);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
  });
});

describe("several numbers of engagements", () => {
  const search = { wanted: ratio(191, 230), within: decimalRatio("0.002"), counts: range(6, 16) };
  const ran = (run: ReturnType<typeof searchSizes>) => { const done: number[] = []; for (;;) { const step = run.next(); if (step.done) return { done, found: step.value }; done.push(step.value); } };

  it("[NUM6] stand in one list, best first, with one progress", () => {
    const { done, found } = ran(searchSizes({ ...search, engagements: [3, 1, 2, 2] }));
    const apart = [1, 2, 3].flatMap((engagements) => written(findTrains({ ...search, engagements })));
    expect(written(found)).toEqual(apart.sort());
    expect(found.exhaustive).toBe(true);
    const errors = found.trains.map((t) => Math.abs(t.error));
    expect(errors).toEqual([...errors].sort((a, b) => a - b));
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect(Math.max(...done)).toBeLessThanOrEqual(1);
  });

  it("[NUM6] are exhaustive only where each is", () => {
    expect(ran(searchSizes({ ...search, engagements: [1, 0] })).found).toMatchObject({ exhaustive: false, says: expect.stringMatching(/one engagement/) as unknown });
    const cut = ran(searchSizes({ ...search, engagements: [2, 3], most: 3 })).found;
    expect(cut).toMatchObject({ exhaustive: false, says: expect.stringMatching(/More than 3/) as unknown });
    expect(cut.trains).toHaveLength(3);
  });
});

describe("how many trains are to be expected", () => {
  it("[NUM5] is reckoned beforehand to within a third", () => {
    for (const [size, within, wanted] of [[2, "0.005", 3.7123], [3, "0.0001", 0.0341237], [3, "0.00005", 12.41237]] as const) {
      const counts = [...range(8, 18), ...range(30, 72)];
      const { exhaustive, trains } = findTrains({ wanted: decimalRatio(wanted), within: decimalRatio(within), engagements: size, counts });
      expect(exhaustive).toBe(true);
      const share = expectedTrains(counts, size, size, wanted, Number(within)) / trains.length;
      expect(share).toBeGreaterThan(0.67);
      expect(share).toBeLessThan(1.5);
    }
  });

  it("[NUM5] refuses thousands of millions at once, with the error that would do", () => {
    const search = { wanted: ratio(12), within: decimalRatio("0.9"), engagements: 4, counts: range(6, 144) };
    expect(findTrains(search)).toMatchObject({ exhaustive: false, trains: [], says: expect.stringMatching(/e\+1\d trains come within an error of 0.9.* an error of \de-\d+, or fewer counts, would make it answerable/) as unknown });
  });

  it("[NUM5] gives the very best where only so many are wanted, however many come near", () => {
    const search = { wanted: decimalRatio("0.731"), within: decimalRatio("0.05"), engagements: 2, counts: range(20, 60) };
    const all = findTrains(search), few = findTrains({ ...search, most: 50 });
    expect(all.exhaustive).toBe(true);
    expect(all.trains.length).toBeGreaterThan(20_000);
    expect(few.exhaustive).toBe(false);
    expect(few.trains).toEqual(all.trains.slice(0, 50));
  });

  it("[NUM5] says where an error is so small that only exact trains come within it", () => {
    const search = { wanted: ratio(12), engagements: 2, counts: range(6, 40) };
    const exact = findTrains({ ...search, within: ratio(0) }), finest = findTrains({ ...search, within: decimalRatio("1e-40") });
    expect(finest.trains).toEqual(exact.trains);
    expect(finest).toMatchObject({ exhaustive: true, says: expect.stringMatching(/only trains that are exact/) as unknown });
    expect(exact.says).toBeNull();
  });
});
