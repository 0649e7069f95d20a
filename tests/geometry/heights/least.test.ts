import { describe, expect, it } from "vitest";
import { isPossible, leastStack, type Lift, type Stack, type Stacked } from "../../../geometry/heights/least.ts";
import { sourceOf } from "../../fixtures/random.ts";

const solve = (stack: Stack, random: (() => number) | null = null): Stacked => {
  const search = leastStack(stack, { branches: 100_000, random });
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
};

/** Levels 2 … n + 1 of given thicknesses between base and top; pairs that may not share a height. */
function stackOf(thick: readonly number[], pairs: readonly [number, number, number][], more: readonly Lift[] = []): Stack {
  return {
    levels: thick.length + 2,
    lifts: [...thick.flatMap((t, i) => [{ over: i + 2, under: 0, by: 0 }, { over: 1, under: i + 2, by: t }]), ...more],
    choices: pairs.map(([a, b, gap]) => [{ over: a + 2, under: b + 2, by: thick[b]! + gap }, { over: b + 2, under: a + 2, by: thick[a]! + gap }]),
  };
}

/** Every order of every pair, each by relaxing over and over: slow and plain. */
function exhaustive({ levels, lifts, choices }: Stack): number {
  let best = Infinity;
  for (let pick = 0; pick < 2 ** choices.length; pick++) {
    const all = [...lifts, ...choices.map((c, i) => c[(pick >> i) & 1]!)];
    const h = new Float64Array(levels).fill(-Infinity);
    h[0] = 0;
    let moved = true;
    for (let round = 0; moved && round <= levels; round++) {
      moved = false;
      for (const { over, under, by } of all) if (h[under]! + by > h[over]! + 1e-12) { h[over] = h[under]! + by; moved = true; }
    }
    if (!moved && h[0] === 0) best = Math.min(best, h[1]!);
  }
  return best;
}

describe("the least stack", () => {
  it("[LEVEL1] of levels that may not share a height is their sum with the gaps, and of others the thickest", () => {
    expect(solve(stackOf([2, 3, 4], [[0, 1, 0.5], [1, 2, 0.5], [0, 2, 0.5]])).heights![1]).toBeCloseTo(10, 12);
    expect(solve(stackOf([2, 3, 4], [])).heights![1]).toBeCloseTo(4, 12);
    // A chain of three, the first and last clear of one another: two levels suffice.
    expect(solve(stackOf([2, 2, 2], [[0, 1, 0.5], [1, 2, 0.5]])).heights![1]).toBeCloseTo(4.5, 12);
  });

  it("[LEVEL1] equals trying every order of every pair, on random small stacks with faces that must stay together", () => {
    let solved = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const s = sourceOf(seed), n = s.whole(3, 6);
      const thick = Array.from({ length: n }, () => s.between(1, 4));
      const pairs: [number, number, number][] = [];
      for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) if (s.chance(0.5) && pairs.length < 10) pairs.push([i, j, s.between(0, 1)]);
      const a = s.whole(0, n - 1), b = s.whole(0, n - 1), together = a !== b && s.chance(0.7);
      const more = together ? [{ over: a + 2, under: b + 2, by: -thick[a]! + 0.6 }, { over: b + 2, under: a + 2, by: -thick[b]! + 0.6 }] : [];
      const stack = stackOf(thick, pairs, more), known = exhaustive(stack), found = solve(stack);
      expect(found.proved).toBe(true);
      if (known === Infinity) expect(found.heights).toBeNull();
      else { expect(found.heights![1]).toBeCloseTo(known, 9); solved++; }
      const shuffled = solve(stack, sourceOf(seed).between.bind(null, 0, 1)).heights;
      if (known !== Infinity) expect(shuffled![1]).toBeCloseTo(known, 9);
    }
    expect(solved).toBeGreaterThan(100);
  });

  it("[LEVEL1] says that there is none where lifts contradict one another, and which lift could never hold", () => {
    const stack = stackOf([2, 3], [], [{ over: 2, under: 3, by: 1 }, { over: 3, under: 2, by: 1 }]);
    expect(solve(stack)).toMatchObject({ heights: null, proved: true });
    const one = stackOf([2, 3], [], [{ over: 2, under: 3, by: 1 }]);
    expect(isPossible(one, { over: 3, under: 2, by: 1 })).toBe(false);
    expect(isPossible(one, { over: 3, under: 2, by: -5 })).toBe(true);
  });

  it("[LEVEL2] tells how much is done as it goes, and says where it was not all", () => {
    const s = sourceOf(4), n = 14;
    const thick = Array.from({ length: n }, () => s.between(1, 4)), pairs: [number, number, number][] = [];
    for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) if (s.chance(0.6)) pairs.push([i, j, 0.5]);
    const steps = [...leastStack(stackOf(thick, pairs), { branches: 2000 })];
    expect(steps.length).toBeGreaterThan(2);
    for (let i = 1; i < steps.length; i++) expect(steps[i]!.done).toBeGreaterThanOrEqual(steps[i - 1]!.done);
    expect(steps.at(-1)!.done).toBeLessThan(1);
  });
});
