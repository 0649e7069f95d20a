import { describe, expect, it } from "vitest";
import { canDivide, compoundSettings, differentialSettings, divide, gearsFor, ORDINARY_HEAD, plainSettings } from "../../../geometry/numbers/dividing.ts";
import { ratio, writeRatio } from "../../../geometry/numeric/ratio.ts";

const plain = (n: number) => plainSettings(n, ORDINARY_HEAD).map((s) => `${s.turns} + ${s.holes}-${s.circle}`);

describe("plain indexing", () => {
  // Source: Brown & Sharpe, Practical Treatise on Milling (1914): their plates divide all numbers to 50 and all even numbers to 100 except 96
  // (check-values 7.1 [45]).
  it("[DIV1] the makers' claim for the three common plates holds exactly", () => {
    const reached = (n: number) => plainSettings(n, ORDINARY_HEAD).length > 0;
    for (let n = 2; n <= 50; n++) expect(reached(n), String(n)).toBe(true);
    for (let n = 52; n <= 100; n += 2) expect(reached(n), String(n)).toBe(n !== 96);
    const not = Array.from({ length: 99 }, (_, i) => i + 2).filter((n) => !reached(n));
    expect(not).toEqual([51, 53, 57, 59, 61, 63, 67, 69, 71, 73, 77, 79, 81, 83, 87, 89, 91, 93, 96, 97, 99]);
  });

  // Source: check-values 7.1 (a second maker's plate, 40:1, [44]).
  it("[DIV1] the other common plate", () => {
    const head = { ...ORDINARY_HEAD, plates: [[24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43], [46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66]] };
    const not = Array.from({ length: 98 }, (_, i) => i + 2).filter((n) => plainSettings(n, head).length === 0);
    expect(not).toEqual([61, 63, 67, 69, 71, 73, 77, 79, 81, 83, 87, 89, 91, 93, 97, 99]);
  });

  // Source: check-values 7.2 (published spot values [44] [47], the rest recomputed).
  it("[DIV1] the table of settings", () => {
    expect(plain(6)).toEqual(["6 + 10-15", "6 + 12-18", "6 + 14-21", "6 + 18-27", "6 + 22-33", "6 + 26-39"]);
    expect(plain(42)).toEqual(["0 + 20-21"]);
    expect(plain(15)).toContain("2 + 18-27");
    expect(plain(13)).toEqual(["3 + 3-39"]);
    expect(plain(75)).toEqual(["0 + 8-15"]);
    expect(plain(49)).toEqual(["0 + 40-49"]);
  });

  it("[DIV1] whole turns stand on every circle with 0 holes", () => {
    expect(plain(8)).toHaveLength(18);
    expect(plainSettings(8, ORDINARY_HEAD).every((s) => s.turns === 5 && s.holes === 0)).toBe(true);
  });
});

describe("compound indexing", () => {
  const has = (n: number, a: [number, number], b: [number, number]) => compoundSettings(n, ORDINARY_HEAD)
    .some((s) => s.turns === 0 && s.a.holes === a[0] && s.a.circle === a[1] && s.b.holes === b[0] && s.b.circle === b[1]);

  // Source: Machinery's Handbook compound tables (from memory, recomputed by exhaustive search, check-values 7.5).
  it("[DIV2] published settings are found", () => {
    expect(has(51, [10, 15], [2, 17])).toBe(true);
    expect(has(57, [5, 15], [7, 19])).toBe(true);
    expect(has(63, [11, 21], [3, 27])).toBe(true);
    expect(has(69, [14, 21], [-2, 23]) && has(69, [21, 23], [-11, 33])).toBe(true);
    expect(has(77, [9, 21], [3, 33])).toBe(true);
    expect(has(87, [23, 29], [-11, 33])).toBe(true);
    expect(has(91, [6, 39], [14, 49])).toBe(true);
    expect(has(93, [7, 21], [3, 31])).toBe(true);
    expect(has(96, [3, 18], [4, 16]) || has(96, [4, 16], [3, 18])).toBe(true);
    expect(has(99, [15, 27], [-5, 33])).toBe(true);
    expect(has(154, [1, 21], [7, 33]) && has(182, [3, 39], [7, 49])).toBe(true);
  });

  it("[DIV2] every setting listed is exact, its holes inside the circle and never 0", () => {
    for (const n of [51, 69, 91, 96, 114, 147, 189]) for (const s of compoundSettings(n, ORDINARY_HEAD)) {
      const turns = ratio(s.turns).add(ratio(s.a.holes, s.a.circle)).add(ratio(s.b.holes, s.b.circle));
      expect(turns.equals(ratio(40, n))).toBe(true);
      for (const side of [s.a, s.b]) {
        expect(Math.abs(side.holes)).toBeGreaterThan(0);
        expect(Math.abs(side.holes)).toBeLessThan(side.circle);
      }
      expect(ORDINARY_HEAD.plates.some((p) => p.includes(s.a.circle) && p.includes(s.b.circle))).toBe(true);
    }
  });

  it("[DIV2] none is missed: the same sets as trying every pair of holes", () => {
    const head = { ratio: 40, plates: [[15, 16, 18, 21]], gears: [] };
    for (const n of [96, 63, 84, 112]) {
      const tried = new Set<string>();
      for (const A of head.plates[0] ?? []) for (const B of head.plates[0] ?? []) if (A < B)
        for (let h = 1 - A; h < A; h++) for (let k = 1 - B; k < B; k++) for (let t = 0; t < 4; t++)
          if (h && k && ratio(t).add(ratio(h, A)).add(ratio(k, B)).equals(ratio(40, n))) tried.add(`${t} ${h}/${A} ${k}/${B}`);
      const found = compoundSettings(n, head).map((s) => `${s.turns} ${s.a.holes}/${s.a.circle} ${s.b.holes}/${s.b.circle}`);
      expect(new Set(found)).toEqual(tried);
    }
  });

  // Source: check-values 7.5 (recomputed).
  it("[DIV2] counts that no two circles of one plate give", () => {
    for (const n of [53, 59, 61, 67, 71, 73, 79, 81, 97, 103, 106, 119, 121, 127, 133, 137, 175, 176, 223, 235, 254, 365])
      expect(compoundSettings(n, ORDINARY_HEAD), String(n)).toEqual([]);
  });

  it("[DIV2] it is asked only where plain has none", () => {
    expect(divide(60, ORDINARY_HEAD).compound).toEqual([]);
    expect(divide(51, ORDINARY_HEAD).compound.length).toBeGreaterThan(0);
  });
});

describe("differential indexing", () => {
  // Source: Machinery's Handbook differential entries (from memory), ratio and sign recomputed, check-values 7.6.
  it("[DIV3] published settings are found, with the ratio and its sense", () => {
    const table: [number, number, string, [number, number]][] = [
      [51, 50, "-4/5", [32, 40]], [53, 55, "16/11", [64, 44]], [59, 60, "2/3", [32, 48]], [63, 64, "5/8", [40, 64]], [69, 70, "4/7", [32, 56]],
      [73, 72, "-5/9", [40, 72]], [83, 80, "-3/2", [48, 32]], [89, 90, "4/9", [32, 72]], [97, 100, "6/5", [48, 40]], [103, 100, "-6/5", [48, 40]],
      [113, 120, "7/3", [56, 24]], [131, 140, "18/7", [72, 28]], [139, 144, "25/18", [100, 72]], [235, 240, "5/6", [40, 48]],
    ];
    for (const [n, settingFor, r, gears] of table) {
      const found = differentialSettings(n, ORDINARY_HEAD).find((s) => s.settingFor === settingFor);
      expect(found && writeRatio(found.ratio), String(n)).toBe(r);
      expect(found?.gears).toEqual(gears);
    }
  });

  it("[DIV3] N × the crank's turns + the plate's turns make the head's ratio, exactly", () => {
    for (const n of [51, 59, 97, 127, 223, 239, 365]) for (const s of differentialSettings(n, ORDINARY_HEAD)) {
      const crank = ratio(s.turns).add(ratio(s.holes, s.circle));
      expect(crank.mul(ratio(n)).add(s.ratio).equals(ratio(40))).toBe(true);
      const [a = 1, b = 1, c = 1, d = 1] = s.gears;
      expect(ratio(a, b).mul(ratio(c, d)).equals(s.ratio.abs())).toBe(true);
    }
  });

  it("[DIV3] a gear is used twice only if it is owned twice", () => {
    expect(gearsFor(ratio(1), [24, 28, 32])).toBeNull();
    expect(gearsFor(ratio(1), [24, 24, 28])).toEqual([24, 24]);
    expect(gearsFor(ratio(9, 4), [24, 36, 48])).toBeNull();
    expect(gearsFor(ratio(9, 4), [24, 24, 36, 36])).toEqual([36, 24, 36, 24]);
  });

  // Source: check-values 7.6 (recomputed): 109 has no two gears within 14.
  it("[DIV3] 109 has no simple two gears", () => {
    expect(differentialSettings(109, ORDINARY_HEAD).filter((s) => s.gears.length === 2 && Math.abs(s.settingFor - 109) <= 14)).toEqual([]);
  });

  it("[DIV4] a count is had if any of the three ways gives it", () => {
    expect(canDivide(94, ORDINARY_HEAD) && canDivide(51, ORDINARY_HEAD) && canDivide(127, ORDINARY_HEAD)).toBe(true);
    expect(canDivide(59, { ...ORDINARY_HEAD, gears: [] })).toBe(false);
  });
});
