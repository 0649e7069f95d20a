// The theoretical addendum factor, recomputed from the construction of BS 978-2, appendix A (from memory); its 95 % values
// agree with the recalled printed row for 6 leaves to 0.0014. The lantern's, by the same construction with the pin's centre.
import { describe, expect, it } from "vitest";
import { lanternGreatestAddendum, theoreticalAddendum } from "../../../geometry/teeth/addendum.ts";

const LEAVES = [6, 7, 8, 9, 10, 11, 12, 14, 15, 16];
const TABLE: Record<number, number[]> = {
  3: [1.3254, 1.4053, 1.4771, 1.5426, 1.6030, 1.6591, 1.7118, 1.8084, 1.8530, 1.8957],
  4: [1.3473, 1.4304, 1.5050, 1.5730, 1.6357, 1.6941, 1.7487, 1.8490, 1.8954, 1.9397],
  5: [1.3615, 1.4466, 1.5230, 1.5927, 1.6570, 1.7168, 1.7727, 1.8755, 1.9229, 1.9683],
  6: [1.3714, 1.4579, 1.5356, 1.6065, 1.6719, 1.7326, 1.7896, 1.8940, 1.9423, 1.9883],
  7: [1.3787, 1.4663, 1.5450, 1.6167, 1.6829, 1.7444, 1.8020, 1.9077, 1.9566, 2.0032],
  7.5: [1.3817, 1.4697, 1.5488, 1.6209, 1.6874, 1.7492, 1.8071, 1.9134, 1.9625, 2.0093],
  8: [1.3843, 1.4727, 1.5522, 1.6246, 1.6914, 1.7535, 1.8117, 1.9183, 1.9676, 2.0147],
  9: [1.3888, 1.4779, 1.5579, 1.6309, 1.6981, 1.7607, 1.8193, 1.9267, 1.9764, 2.0238],
  10: [1.3924, 1.4820, 1.5625, 1.6359, 1.7036, 1.7665, 1.8255, 1.9336, 1.9835, 2.0312],
  12: [1.3980, 1.4884, 1.5696, 1.6437, 1.7120, 1.7755, 1.8350, 1.9440, 1.9944, 2.0425],
};

describe("the theoretical addendum", () => {
  it.each(Object.entries(TABLE))("[TEETH10] at ratio %s agrees with the table to 1e-4 for 6 to 16 leaves", (ratio, row) => {
    LEAVES.forEach((leaves, i) => expect(Math.abs(theoreticalAddendum(Number(ratio) * leaves, leaves) - row[i]!)).toBeLessThan(1e-4));
  });
  it.each([[96, 8, 1.56961], [60, 8, 1.54881], [56, 7, 1.47274], [64, 8, 1.55218], [96, 12, 1.81165]])(
    "[TEETH10] of %d for %d is %d", (wheel, leaves, f) => {
      expect(Math.abs(theoreticalAddendum(wheel, leaves) - f)).toBeLessThan(1e-5);
    });
  it.each([[6, 1.42748], [8, 1.60747], [12, 1.88577], [16, 2.10337]])("[TEETH10] comes to its rack's limit: %d leaves", (leaves, f) => {
    expect(Math.abs(theoreticalAddendum(leaves * 1e5, leaves) - f)).toBeLessThan(1e-4);
  });
  it("[TEETH10] grows with the leaves and with the ratio", () => {
    for (let leaves = 3; leaves < 40; leaves++) {
      expect(theoreticalAddendum(60, leaves + 1)).toBeGreaterThan(theoreticalAddendum(60, leaves));
      expect(theoreticalAddendum(20 + leaves + 1, 8)).toBeGreaterThan(theoreticalAddendum(20 + leaves, 8));
    }
  });
});

describe("the greatest addendum for a lantern", () => {
  it.each([
    [6, 1.05, 1.9467], [6, 1.25, 1.7960], [6, Math.PI / 2, 1.5468], [8, 1.05, 2.1994], [8, 1.25, 2.0352], [8, Math.PI / 2, 1.7628],
    [10, 1.05, 2.4070], [10, 1.25, 2.2313], [10, Math.PI / 2, 1.9392], [12, 1.05, 2.5854], [12, 1.25, 2.3995], [12, Math.PI / 2, 2.0902],
  ])("[TEETH13] of %d trundles of %d modules at ratio 8 is %d", (trundles, pin, height) => {
    expect(Math.abs(lanternGreatestAddendum(8 * trundles, trundles, pin) - height)).toBeLessThan(1e-3);
  });
});
