import { describe, expect, it } from "vitest";
import { continuedFraction, convergents, mediantPath, primeFactors } from "../../../geometry/numbers/fractions.ts";
import { decimalRatio, ratio, writeRatio } from "../../../geometry/numeric/ratio.ts";

const expansion = (text: string, most: number) => continuedFraction(decimalRatio(text), most).map(Number);
const firstConvergents = (text: string, most: number) => convergents(continuedFraction(decimalRatio(text), most)).map(writeRatio);

describe("continued fractions", () => {
  // Source: expansions of well-known numbers (any text on number theory); the year and month from check-values 6.2 (recomputed).
  it("[NUM7] published expansions", () => {
    expect(expansion("3.14159265358979323846264338327950288", 8)).toEqual([3, 7, 15, 1, 292, 1, 1, 1]);
    expect(expansion("2.71828182845904523536028747135266249", 12)).toEqual([2, 1, 2, 1, 1, 4, 1, 1, 6, 1, 1, 8]);
    expect(expansion("1.41421356237309504880168872420969807", 8)).toEqual([1, 2, 2, 2, 2, 2, 2, 2]);
    expect(expansion("365.2421897", 9)).toEqual([365, 4, 7, 1, 3, 27, 2, 16, 1]);
    expect(expansion("29.530588861", 9)).toEqual([29, 1, 1, 7, 1, 2, 17, 2, 6]);
    expect(expansion("12.368266", 8)).toEqual([12, 2, 1, 2, 1, 1, 17, 3]);
  });

  it("[NUM7] published convergents", () => {
    expect(firstConvergents("3.14159265358979323846264338327950288", 6)).toEqual(["3", "22/7", "333/106", "355/113", "103993/33102", "104348/33215"]);
    expect(firstConvergents("365.2421897", 5)).toEqual(["365", "1461/4", "10592/29", "12053/33", "46751/128"].slice(0, 5));
    expect(firstConvergents("12.368266", 7)).toEqual(["12", "25/2", "37/3", "99/8", "136/11", "235/19", "4131/334"]);
  });

  // Source: Huygens' 77708431 : 2640858 for Saturn, convergent 206/7 (check-values 4.2 [22]).
  it("[NUM7] Huygens' Saturn", () => {
    const q = continuedFraction(ratio(77708431, 2640858));
    expect(q.map(Number)).toEqual([29, 2, 2, 1, 5, 1, 4, 1, 1, 2, 1, 6, 1, 10, 2, 2, 3]);
    expect(convergents(q).slice(0, 8).map(writeRatio)).toEqual(["29", "59/2", "147/5", "206/7", "1177/40", "1383/47", "6709/228", "8092/275"]);
  });

  it("[NUM7] the last convergent is the number itself", () => {
    for (const [p, q] of [[191, 23], [1, 7], [355, 113], [6, 1], [2392, 81]] as const)
      expect(convergents(continuedFraction(ratio(p, q))).at(-1)?.equals(ratio(p, q))).toBe(true);
  });
});

describe("the mediant tree", () => {
  // Source: Brocot's shaft of 23 minutes against 191 (Revue chronométrique 1861; from memory, every number recomputed, check-values 6.1).
  it("[NUM8] Brocot's own example, step by step with its errors", () => {
    const path = mediantPath(ratio(191, 23)).map((s) => [writeRatio(s.ratio), Number(s.errorNumerator)]);
    expect(path).toEqual([["17/2", 9], ["25/3", 2], ["33/4", -5], ["58/7", -3], ["83/10", -1], ["108/13", 1], ["191/23", 0]]);
  });

  // Source: D. Austin, AMS Feature Column, December 2008 (check-values 6.1 [42]): 5/7 = LRRL, 22/7 = RRRLLLLLL.
  it("[NUM8] paths from the root", () => {
    const letters = (p: number, q: number) => mediantPath(ratio(p, q), 200, true).map((s) => ({ left: "L", right: "R", met: "" })[s.turn]).join("");
    expect(letters(5, 7)).toBe("LRRL");
    expect(letters(22, 7)).toBe("RRRLLLLLL");
    expect(letters(191, 23)).toBe("RRRRRRRRLLLRRRL");
  });

  it("[NUM8] a value that is not above 0 has no path", () => {
    expect(mediantPath(ratio(0))).toEqual([]);
    expect(mediantPath(ratio(-3, 2))).toEqual([]);
    expect(mediantPath(ratio(4)).map((s) => s.turn)).toEqual(["met"]);
  });
});

describe("prime factors", () => {
  it("[NUM9] multiply back, and are prime", () => {
    for (const n of [1n, 2n, 59n, 96n, 191n, 1001n, 7560n, 143175n]) {
      const f = primeFactors(n);
      expect(f.reduce((a, b) => a * b, 1n)).toBe(n);
      expect(f.every((p) => primeFactors(p).length === 1)).toBe(true);
    }
  });
});
