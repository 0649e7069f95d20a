import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  involuteBacklashMm, involuteContactRatio, involuteInterferes, type InvolutePair, leastShiftWithoutUndercut, workingAngleRad,
} from "../../../geometry/depth/involute.ts";
import { toDeg, toRad } from "../../../geometry/numeric/angle.ts";

interface Given { m: number; z1: number; z2: number; tips?: [number, number]; shifts?: [number, number]; thinning?: number; internal?: boolean }
const pair = ({ m, z1, z2, tips, shifts = [0, 0], thinning = 0, internal = false }: Given): InvolutePair => ({
  moduleMm: m, pressureAngleDeg: 20, internal,
  first: { count: z1, shift: shifts[0], thinning, tipRadiusMm: tips?.[0] ?? m * (z1 / 2 + 1 + shifts[0]) },
  second: { count: z2, shift: shifts[1], thinning, tipRadiusMm: tips?.[1] ?? m * (z2 / 2 + (internal ? -1 : 1) + shifts[1]) },
});

describe("backlash of involutes", () => {
  // Handbook of a stock-gear maker (QTC), section 14: the first-order rule; the exact form recomputed from tooth thickness.
  it.each([[0.01, 0.0072880889], [0.05, 0.036613702], [0.1, 0.073658654], [0.2, 0.14903009]])(
    "[DEPTH2] module 1, 20 and 60 teeth opened by %f mm gain %f mm along the working pitch circle (1e-8 mm)", (opened, wanted) => {
      expect(involuteBacklashMm(pair({ m: 1, z1: 20, z2: 60 }), 40 + opened)).toBeCloseTo(wanted, 8);
    });

  it("[DEPTH2] gains more than the first-order rule says, and the same in the limit", () => {
    fc.assert(fc.property(fc.integer({ min: 8, max: 80 }), fc.integer({ min: 8, max: 200 }), fc.double({ min: 1e-3, max: 0.5, noNaN: true }), (z1, z2, da) => {
      const exact = involuteBacklashMm(pair({ m: 1, z1, z2 }), (z1 + z2) / 2 + da) ?? NaN;
      const first = 2 * da * Math.tan(toRad(20));
      expect(exact).toBeGreaterThan(first);
      expect(exact / first - 1).toBeLessThan(20 * da / (z1 + z2) * 4);
    }), { seed: 11 });
  });

  it("[DEPTH2] at the reference distance is both thinnings, for an annulus too", () => {
    expect(involuteBacklashMm(pair({ m: 0.8, z1: 20, z2: 60, thinning: 0.05 }), 32)).toBeCloseTo(0.08, 12);
    expect(involuteBacklashMm(pair({ m: 0.8, z1: 20, z2: 60, thinning: 0.05, internal: true }), 16)).toBeCloseTo(0.08, 12);
  });

  it("[DEPTH2] of an annulus grows as its pinion comes nearer to its axis, as much as the tooth thicknesses say", () => {
    const given = pair({ m: 1, z1: 20, z2: 60, internal: true });
    // Thickness at the working pitch radii (any handbook on gears): space of the annulus less the pinion's tooth.
    const a = 19.9, rw1 = 10 * a / 20, rw2 = 30 * a / 20, base = (r: number) => Math.acos((r === rw1 ? 10 : 30) * Math.cos(toRad(20)) / r);
    const inv = (x: number) => Math.tan(x) - x;
    const tooth = 2 * rw1 * (Math.PI / 40 + inv(toRad(20)) - inv(base(rw1)));
    const space = 2 * rw2 * (Math.PI / 120 + inv(toRad(20)) - inv(base(rw2)));
    expect(involuteBacklashMm(given, a)).toBeCloseTo(space - tooth, 10);
    expect(space - tooth).toBeGreaterThan(0);
  });

  it("[DEPTH3] has no working angle where base circles overlap, and no figure", () => {
    const close = 40 * Math.cos(toRad(20)) - 1e-6;
    for (const d of [close, 1, 0]) {
      expect(workingAngleRad(pair({ m: 1, z1: 20, z2: 60 }), d)).toBeNull();
      expect(involuteBacklashMm(pair({ m: 1, z1: 20, z2: 60 }), d)).toBeNull();
      expect(involuteContactRatio(pair({ m: 1, z1: 20, z2: 60 }), d)).toBeNull();
    }
    expect(involuteBacklashMm(pair({ m: 1, z1: 20, z2: 60, internal: true }), 20 * Math.cos(toRad(20)) - 1e-6)).toBeNull();
  });

  it("[DEPTH2] with shifts is counted from the distance that the shifts give", () => {
    // SDP/SI, Elements of Metric Gear Technology, table 4-4/4-5 (from memory, recomputed): centres 56.4998697, angle 26.0885634°.
    const given = pair({ m: 3, z1: 12, z2: 24, shifts: [0.6, 0.36] });
    expect(toDeg(workingAngleRad(given, 56.4998697) ?? NaN)).toBeCloseTo(26.0885634, 6);
    expect(involuteBacklashMm(given, 56.4998697)).toBeCloseTo(0, 6);
  });
});

describe("contact ratio of involutes", () => {
  // SDP/SI, Elements of Metric Gear Technology (from memory, recomputed), and plain pairs recomputed.
  it.each([
    ["3 mm 12/24 shifted and topped", pair({ m: 3, z1: 12, z2: 24, shifts: [0.6, 0.36], tips: [44.839739 / 2, 79.399739 / 2] }), 56.4998697, 1.202102],
    ["3 mm 16/20", pair({ m: 3, z1: 16, z2: 20 }), 54, 1.527786],
    ["1 mm 20/60", pair({ m: 1, z1: 20, z2: 60 }), 40, 1.670776],
    ["17/17", pair({ m: 1, z1: 17, z2: 17 }), 17, 1.5148],
    ["24/24", pair({ m: 2, z1: 24, z2: 24 }), 48, 1.601903],
  ])("[DEPTH4] %s is as published (1e-6)", (_, given, distance, wanted) => {
    expect(involuteContactRatio(given, distance)).toBeCloseTo(wanted, 5);
    expect(involuteInterferes(given, distance)).toBe(false);
  });

  it("[DEPTH4] of the introductory 12/24 pair is cut at the interference point: 1.4053, not 1.5111", () => {
    const given = pair({ m: 3, z1: 12, z2: 24 });
    expect(involuteContactRatio(given, 54)).toBeCloseTo(1.4053, 4);
    expect(involuteInterferes(given, 54)).toBe(true);
  });

  // Shigley, Mechanical Engineering Design, chapter on gears (from memory): greatest mates at 20°.
  it.each([[13, 16], [14, 26], [15, 45], [16, 101], [17, 1309]])("[DEPTH4] a pinion of %i runs with %i and not with one more", (z1, z2) => {
    const interferes = (mate: number) => involuteInterferes(pair({ m: 1, z1, z2: mate }), (z1 + mate) / 2);
    expect(interferes(z2)).toBe(false);
    expect(interferes(z2 + 1)).toBe(true);
  });

  it("[DEPTH4] is 0 where tips do not reach one another", () => {
    expect(involuteContactRatio(pair({ m: 1, z1: 20, z2: 60 }), 43)).toBe(0);
  });

  it("[DEPTH4] of an annulus is the path between its tip circle and its pinion's, cut where the pinion's involute begins", () => {
    const given = pair({ m: 1, z1: 30, z2: 60, internal: true });
    // The same path by coordinates along the line of action, from the pinion's tangent point.
    const alpha = toRad(20), rb1 = 15 * Math.cos(alpha), rb2 = 30 * Math.cos(alpha), a = 15;
    const end = Math.sqrt(16 ** 2 - rb1 ** 2), begin = Math.sqrt(29 ** 2 - rb2 ** 2) - a * Math.sin(alpha);
    expect(begin).toBeGreaterThan(0);
    expect(involuteContactRatio(given, 15)).toBeCloseTo((end - begin) / (Math.PI * Math.cos(alpha)), 10);
    const few = pair({ m: 1, z1: 40, z2: 50, internal: true, tips: [21, 22] });
    expect(involuteInterferes(few, 5)).toBe(true);
    expect(involuteContactRatio(few, 5)).toBeCloseTo(Math.sqrt(21 ** 2 - (20 * Math.cos(alpha)) ** 2) / (Math.PI * Math.cos(alpha)), 10);
  });
});

describe("undercut", () => {
  // Textbook values at 20° and addendum 1 (from memory, recomputed).
  it.each([[6, 0.649067], [7, 0.590578], [8, 0.532089], [12, 0.298133], [16, 0.064178], [17, 0.005689]])(
    "[DEPTH9] %i teeth want a shift of %f modules", (count, shift) => expect(leastShiftWithoutUndercut(count, 20)).toBeCloseTo(shift, 6));
  it("[DEPTH9] is past at 18 teeth at 20° and at 32 at 14.5°", () => {
    expect(leastShiftWithoutUndercut(18, 20)).toBeLessThan(0);
    expect(leastShiftWithoutUndercut(31, 14.5)).toBeGreaterThan(0);
    expect(leastShiftWithoutUndercut(32, 14.5)).toBeLessThan(0);
  });
});
