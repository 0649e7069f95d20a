import { describe, expect, it } from "vitest";
import { fitOf, holeLimits, shaftLimits, type Hole, type Shaft } from "../../../geometry/workshop/fits.ts";

const limits = (l: { lower: number; upper: number } | null) => l && [l.upper, l.lower];

describe("limits of ISO 286-2", () => {
  // Source: ISO 286-2 tables in public copies (H7, H8, h6, m6); g6, f7, e8, d9, k6, n6, p6, s6 from memory of the standard.
  const SHAFTS: readonly (readonly [Shaft, readonly (readonly [number, number])[]])[] = [
    ["g6", [[-2, -8], [-4, -12], [-5, -14]]], ["h6", [[0, -6], [0, -8], [0, -9]]], ["f7", [[-6, -16], [-10, -22], [-13, -28]]],
    ["e8", [[-14, -28], [-20, -38], [-25, -47]]], ["d9", [[-20, -45], [-30, -60], [-40, -76]]], ["k6", [[6, 0], [9, 1], [10, 1]]],
    ["m6", [[8, 2], [12, 4], [15, 6]]], ["n6", [[10, 4], [16, 8], [19, 10]]], ["p6", [[12, 6], [20, 12], [24, 15]]], ["s6", [[20, 14], [27, 19], [32, 23]]],
  ];
  it("[SHOP1] of shafts are those of the tables, in micrometres", () => {
    for (const [shaft, wanted] of SHAFTS) expect([2, 5, 8].map((d) => limits(shaftLimits(shaft, d)))).toEqual(wanted);
  });
  it("[SHOP1] of holes are those of the tables, not of the formulas: H7 is 15 at 6 to 10 mm, where the formula gives 14", () => {
    expect([2, 5, 8].map((d) => limits(holeLimits("H7", d)))).toEqual([[10, 0], [12, 0], [15, 0]]);
    expect([2, 5, 8].map((d) => limits(holeLimits("H8", d)))).toEqual([[14, 0], [18, 0], [22, 0]]);
  });
  it("[SHOP1] belong to the lower range at its end: 3, 6 and 10 mm", () => {
    expect([3, 3.001, 6, 6.001, 10, 10.001].map((d) => holeLimits("H7", d)?.upper)).toEqual([10, 12, 12, 15, 15, 18]);
  });
  it("[SHOP1] are not made up beyond the table", () => {
    expect([0, -1, Number.NaN, 30.001].map((d) => fitOf("H7", "h6", d))).toEqual([null, null, null, null]);
  });
  // Source: calculated from the tables above.
  it.each<[Hole, Shaft, [number, number][]]>([
    ["H7", "g6", [[2, 18], [4, 24], [5, 29]]], ["H7", "h6", [[0, 16], [0, 20], [0, 24]]], ["H8", "f7", [[6, 30], [10, 40], [13, 50]]], ["H8", "e8", [[14, 42], [20, 56], [25, 69]]],
    ["H9", "d9", [[20, 70], [30, 90], [40, 112]]], ["H7", "k6", [[-6, 10], [-9, 11], [-10, 14]]], ["H7", "n6", [[-10, 6], [-16, 4], [-19, 5]]], ["H7", "p6", [[-12, 4], [-20, 0], [-24, 0]]],
    ["H7", "s6", [[-20, -4], [-27, -7], [-32, -8]]],
  ])("[SHOP1] give the clearances of %s/%s", (hole, shaft, wanted) => {
    expect([2, 5, 8].map((d) => fitOf(hole, shaft, d)).map((f) => f && [f.least, f.greatest])).toEqual(wanted);
  });
});
