// Tip radii by the examiner's page; root and tip diameters of the gear handbook's pairs (Elements of Metric Gear
// Technology, tables 4-1 and 4-4; from memory); over-all diameters of a cutter maker's chart of clock profiles.
import { describe, expect, it } from "vitest";
import type { ToothedPart } from "../../../geometry/instrument.ts";
import { drawnTipRadius, profileOf, rootRadius, tipRadiusOf } from "../../../geometry/teeth/forms.ts";
import { lanternGreatestAddendum } from "../../../geometry/teeth/addendum.ts";
import { clockPinion, clockWheel, lanternWheel, teeth } from "./sample.ts";

const lantern = teeth({ form: "lantern", role: "pinion", count: 8, trundleDiameter: 1.2, thinning: 0 });

describe("tip radii", () => {
  it("[TEETH3] of involutes are m(z/2 + 1 + shift − topping), of annuli m(z/2 − 1 + shift + topping)", () => {
    expect(2 * drawnTipRadius(teeth({ module: 3, count: 12 }))).toBe(42);
    expect(2 * drawnTipRadius(teeth({ module: 3, count: 24 }))).toBe(78);
    // The handbook's shifted pair tops its tips by y − x₁ − x₂, so that the clearance is kept.
    const topping = 0.6 + 0.36 - 0.83328991;
    expect(2 * drawnTipRadius(teeth({ module: 3, count: 12, shift: 0.6, topping }))).toBeCloseTo(44.839739, 5);
    expect(2 * drawnTipRadius(teeth({ module: 3, count: 24, shift: 0.36, topping }))).toBeCloseTo(79.399739, 5);
    expect(drawnTipRadius(teeth({ module: 2, count: 60, shift: 0.3, topping: 0.1, internal: true }))).toBeCloseTo(58.8, 12);
  });
  it("[TEETH3] of clock wheels stand at 0.95 f: 96 for 8 is 98.9823, 64 for 8 is 66.9491 across at module 1", () => {
    for (const [wheel, leaves, across] of [[96, 8, 98.9823], [60, 8, 62.9427], [56, 7, 58.7982], [64, 8, 66.9491], [96, 12, 99.4421]] as const)
      expect(Math.abs(2 * drawnTipRadius(clockWheel(wheel, leaves)) - across)).toBeLessThan(1e-4);
  });
  it("[TEETH3] of clock wheels without a pinion are those of the general cutter, N + 2.76 across", () => {
    expect(2 * drawnTipRadius(teeth({ form: "cycloidal", count: 60 }))).toBeCloseTo(62.76, 12);
    expect(2 * drawnTipRadius(lanternWheel(60, 6, 1.2))).toBeCloseTo(62.76, 12);
    expect(2 * drawnTipRadius(lanternWheel(60, 3, 3))).toBeCloseTo(62.76, 12);
  });
  it("[TEETH3] of clock pinions are n + 1.71 across up to 9 leaves and n + 1.61 from 10", () => {
    for (const leaves of [6, 7, 8, 9]) expect(2 * drawnTipRadius(clockPinion(leaves, 60))).toBeCloseTo(leaves + 1.71, 12);
    for (const leaves of [10, 12, 16]) expect(2 * drawnTipRadius(clockPinion(leaves, 60))).toBeCloseTo(leaves + 1.61, 12);
  });
  it("[TEETH3] of straight teeth are m(z/2 + 1), or where the flanks meet if that is lower", () => {
    expect(drawnTipRadius(teeth({ form: "straight", count: 24, module: 2 }))).toBe(26);
    const steep = teeth({ form: "straight", count: 24, pressureAngleDeg: 45, thinning: 0.1 });
    const half = (Math.PI / 2 - 0.1) / 24;
    expect(drawnTipRadius(steep)).toBeCloseTo(12 * (Math.cos(half) + Math.sin(half)), 12);
    expect(drawnTipRadius(teeth({ form: "straight", pressureAngleDeg: 0 }))).toBe(11);
  });
  it("[TEETH3] of lanterns are those of their shrouds, else of their trundles", () => {
    const part: ToothedPart = { id: "L", kind: "lantern", z: 0, thickness: 8, trundles: 8, trundleDiameter: 1.2 };
    expect(tipRadiusOf(part, lantern)).toBeCloseTo(4.6, 12);
    expect(tipRadiusOf({ ...part, shroudDiameter: 11 }, lantern)).toBe(5.5);
  });
  it("[TEETH3] give way to what was measured", () => {
    const part: ToothedPart = { id: "W", kind: "wheel", z: 0, thickness: 2, teeth: 20, measured: { tipDiameter: 21.7 } };
    expect(tipRadiusOf(part, teeth())).toBe(10.85);
    expect(profileOf(teeth({ measuredTipRadius: 10.85 })).greatestRadius).toBeCloseTo(10.85, 9);
  });
  it("[TEETH4] come down by the topping in every form, and up where it is under 0", () => {
    for (const t of [teeth(), teeth({ form: "straight" }), clockWheel(60, 8), clockPinion(8, 60)]) {
      expect(drawnTipRadius({ ...t, topping: 0.2 })).toBeCloseTo(drawnTipRadius(t) - 0.2, 12);
      expect(profileOf({ ...t, topping: 0.2 }).greatestRadius).toBeCloseTo(drawnTipRadius(t) - 0.2, 9);
    }
    expect(profileOf(teeth({ topping: -0.1 })).greatestRadius).toBeCloseTo(11.1, 9);
  });
  it("[TEETH4] of a wheel for a lantern go up to the greatest the pins allow and no further", () => {
    const wheel = lanternWheel(48, 6, 1.05);
    expect(drawnTipRadius({ ...wheel, topping: -0.2 })).toBeCloseTo(24 + 1.58, 12);
    expect(drawnTipRadius({ ...wheel, topping: -5 })).toBeCloseTo(24 + lanternGreatestAddendum(48, 6, 1.05), 12);
  });
});

describe("root radii", () => {
  it("[TEETH6] of the handbook's pairs are 28.5, 64.5, 32.1 and 66.66 across", () => {
    const root = (count: number, shift: number) => 2 * rootRadius(teeth({ module: 3, count, shift }));
    expect(root(12, 0)).toBeCloseTo(28.5, 12);
    expect(root(24, 0)).toBeCloseTo(64.5, 12);
    expect(root(12, 0.6)).toBeCloseTo(32.1, 12);
    expect(root(24, 0.36)).toBeCloseTo(66.66, 12);
  });
  it("[TEETH6] [TEETH9] are as deep as a part's own dedendum says: 2.4 modules of whole depth in fine-pitch practice", () => {
    // Fine-pitch practice as a stock-gear handbook has it: whole depth 2.4 below module 1.25, 2.25 from there up.
    const fine = teeth({ module: 0.5, dedendum: 1.4 });
    expect(drawnTipRadius(fine) - rootRadius(fine)).toBeCloseTo(2.4 * 0.5, 12);
    expect(profileOf(fine).leastRadius).toBeCloseTo(5 - 0.7, 9);
    const coarse = teeth({ module: 1.25 });
    expect(drawnTipRadius(coarse) - rootRadius(coarse)).toBeCloseTo(2.25 * 1.25, 12);
    expect(rootRadius(teeth({ count: 60, internal: true, dedendum: 1.4 }))).toBeCloseTo(31.4, 12);
  });
  it("[TEETH10] [TEETH12] of clock wheels lie half a pitch deep, of pinions the wheel's practical addendum and 0.4 modules", () => {
    expect(rootRadius(clockWheel(64, 8, { module: 2 }))).toBeCloseTo(64 - Math.PI, 12);
    expect(rootRadius(clockPinion(8, 64))).toBeCloseTo(4 - 1.47457 - 0.4, 4);
    expect(rootRadius(teeth({ form: "cycloidal", role: "pinion", count: 12 }))).toBeCloseTo(6 - 1.38 - 0.4, 12);
  });
  it("[TEETH5] are where the drawn spaces end, in every form", () => {
    for (const t of [teeth(), teeth({ count: 12 }), teeth({ form: "straight", count: 30 }), teeth({ form: "straight", count: 8 }),
      clockWheel(60, 8), clockPinion(8, 60), lanternWheel(48, 6, 1.2)])
      expect(profileOf(t).leastRadius).toBeCloseTo(rootRadius(t), 9);
    const ring = teeth({ count: 60, internal: true });
    expect(profileOf(ring).greatestRadius).toBeCloseTo(rootRadius(ring), 9);
    expect(rootRadius(ring)).toBe(31.25);
  });
  it("[TEETH15] never lie deeper than 0.85 of the pitch radius", () => {
    expect(rootRadius(clockPinion(3, 60))).toBeCloseTo(0.15 * 1.5, 12);
    expect(rootRadius(teeth({ count: 3, shift: -1 }))).toBeCloseTo(0.15 * 1.5, 12);
    expect(rootRadius(teeth({ form: "straight", count: 3, pressureAngleDeg: 0 }))).toBeGreaterThanOrEqual(0.15 * 1.5);
  });
});
