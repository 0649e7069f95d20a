// Clock teeth on their drawn outlines. Proportions: a cutter maker's chart of profiles said to follow BS 978-2; tops of
// pinions and the addendum arc: BS 978-2 (from memory). The generating circle is rolled here by hand.
import { describe, expect, it } from "vitest";
import { BRITISH_ARC, CLOCK_PRACTICE, TOPS, wheelTipSays, type ClockPractice } from "../../../geometry/teeth/clock-practice.ts";
import { CYCLOIDAL, cycloidalForm } from "../../../geometry/teeth/cycloidal.ts";
import { profileOf, toothOutline } from "../../../geometry/teeth/forms.ts";
import type { Teeth } from "../../../geometry/teeth/teeth.ts";
import { clockPinion, clockWheel, crossingEdges, halfAngleAt, pointsOf, teeth, truePoints } from "./sample.ts";

const FINE = 1e-6;
/** A corner on the pitch circle: either side of it, not on it. */
const JUST = 1e-7;

/** The place of a marked point of a circle of radius q that has rolled without slip by `roll` on one of radius R. */
function rolled(R: number, q: number, roll: number): { radius: number; polar: number } {
  const turned = (roll * q) / R, x = (R + q) * Math.cos(turned) - q * Math.cos(turned + roll), y = (R + q) * Math.sin(turned) - q * Math.sin(turned + roll);
  return { radius: Math.hypot(x, y), polar: Math.atan2(y, x) };
}

describe("a clock wheel", () => {
  it("[TEETH10] has teeth half the pitch thick with radial flanks below the pitch circle", () => {
    const outline = toothOutline(clockWheel(64, 8), FINE);
    for (const r of [32 - 1.5, 31, 32 - JUST]) expect(halfAngleAt(r, outline)).toBeCloseTo(Math.PI / 128, 7);
  });
  it.each([[96, 8], [64, 8], [48, 6], [96, 12], [30, 10]])("[TEETH10] of %d teeth for %d leaves follows the rolled circle of a quarter of the leaves", (wheel, leaves) => {
    const outline = toothOutline(clockWheel(wheel, leaves), FINE);
    for (let roll = 0.2; rolled(wheel / 2, leaves / 4, roll).radius < CYCLOIDAL.tipRadius(clockWheel(wheel, leaves)); roll += 0.2) {
      const { radius, polar } = rolled(wheel / 2, leaves / 4, roll);
      expect(Math.abs(Math.PI / (2 * wheel) - polar - halfAngleAt(radius, outline))).toBeLessThan(1e-6);
    }
  });
  it("[TEETH10] is cut at 0.95 of the theoretical addendum, with a land there, and comes to a point at the whole of it", () => {
    const t = clockWheel(96, 8);
    expect(profileOf(t).greatestRadius).toBeCloseTo(48 + 0.95 * 1.56961, 4);
    expect(profileOf(t).pieces.map((p) => p.name)).toEqual(["root", "flank", "tip", "top"]);
    const whole = profileOf({ ...t, topping: -1 });
    expect(whole.greatestRadius).toBeCloseTo(48 + 1.56961, 4);
    expect(whole.pieces.at(-1)!.name).toBe("tip");
  });
  it("[TEETH10] that engages nothing is as a general cutter leaves it: 1.38 modules high, 0.95 of where its flanks meet", () => {
    const t = teeth({ form: "cycloidal", count: 60 });
    expect(profileOf(t).greatestRadius).toBeCloseTo(31.38, 9);
    expect(profileOf({ ...t, topping: -1 }).greatestRadius).toBeCloseTo(30 + 1.38 / 0.95, 6);
  });
  it("[TEETH11] has the arc of the British practice where it is asked for, through the flank's end and the tip, its f said", () => {
    const t = clockWheel(96, 8);
    const arc = (of: "practical" | "theoretical") => cycloidalForm({ ...CLOCK_PRACTICE, wheelTip: { ...BRITISH_ARC, of } as ClockPractice["wheelTip"] });
    for (const [of, radius] of [["practical", 1.4 * 0.95 * 1.56961], ["theoretical", 2.19745]] as const) {
      const pieces = arc(of).profile(t).pieces, tip = pieces.find((p) => p.name === "tip")!;
      const a = tip.at(tip.from), b = tip.at(tip.to);
      expect(Math.hypot(a.x, a.y)).toBeCloseTo(48, 9);
      expect(b.x).toBeCloseTo(48 + 0.95 * 1.56961, 4);
      expect(b.y).toBeCloseTo(0, 6);
      expect(Math.hypot(b.x - a.x, b.y - a.y) / Math.hypot(b.nx - a.nx, b.ny - a.ny)).toBeCloseTo(radius, 4);
    }
    expect(wheelTipSays({ ...CLOCK_PRACTICE, wheelTip: BRITISH_ARC })).toMatch(/1\.4 × f modules.*0\.95 of the theoretical/);
    expect(arc("practical").doesNotCover.join(" ")).toMatch(/1\.4 × f/);
    expect(crossingEdges(arc("practical").outline(t, 0.02))).toBeNull();
  });
});

describe("a clock pinion", () => {
  it("[TEETH12] has leaves a third of the pitch thick up to 9 (nominal 1.05), two fifths from 10 (nominal 1.25)", () => {
    const thickness = (leaves: number) => leaves * halfAngleAt(leaves / 2 - JUST, toothOutline(clockPinion(leaves, 60), FINE));
    for (const leaves of [6, 7, 8, 9]) expect(thickness(leaves)).toBeCloseTo(Math.PI / 3, 6);
    for (const leaves of [10, 12, 16]) expect(thickness(leaves)).toBeCloseTo(0.4 * Math.PI, 6);
    expect(Math.abs(Math.PI / 3 - 1.05)).toBeLessThan(0.01);
    expect(Math.abs(0.4 * Math.PI - 1.25)).toBeLessThan(0.01);
  });
  it("[TEETH12] has radial flanks, and a top that is an arc of the published radius from the pitch circle to the middle line", () => {
    for (const [leaves, wheel, addendum, radius] of [[6, 48, 0.855, 1.05], [8, 64, 0.855, 1.05], [12, 96, 0.805, 0.83]] as const) {
      const { pieces, greatestRadius } = profileOf(clockPinion(leaves, wheel));
      expect(pieces.map((p) => p.name)).toEqual(["root", "flank", "tip"]);
      const [, flank, tip] = pieces, a = tip!.at(tip!.from), b = tip!.at(tip!.to), f = flank!.at(0), g = flank!.at(1);
      expect(Math.atan2(f.y, f.x)).toBeCloseTo(Math.atan2(g.y, g.x), 12);
      expect(Math.hypot(a.x, a.y)).toBeCloseTo(leaves / 2, 9);
      expect(greatestRadius).toBeCloseTo(leaves / 2 + addendum, 9);
      // The arc of 0.83 is flattened by some hundredths, to stay within the conjugate form.
      const drawn = Math.hypot(b.x - a.x, b.y - a.y) / Math.hypot(b.nx - a.nx, b.ny - a.ny);
      expect(drawn).toBeGreaterThanOrEqual(radius - 1e-9);
      expect(drawn).toBeLessThan(radius + 0.03);
    }
  });
  it("[TEETH12] never goes outside the form conjugate to the wheel's radial flanks, whatever wheel it engages, to 2e-5 modules", () => {
    for (const leaves of [3, 4, 5, 6, 7, 8, 9, 10, 12, 16])
      for (const wheel of [6, 12, 18, 30, 60, 120]) {
        const half = Math.PI * (leaves <= 9 ? 1 / 3 : 0.4) / leaves;
        for (const [x, y] of truePoints(profileOf(clockPinion(leaves, wheel)), 40)) {
          const radius = Math.hypot(x, y);
          if (radius < leaves / 2 + 1e-6) continue;
          let low = 0, high = Math.PI;
          for (let i = 0; i < 40; i++) {
            const mid = (low + high) / 2;
            if (rolled(leaves / 2, wheel / 4, mid).radius < radius) low = mid;
            else high = mid;
          }
          expect(radius * (-Math.atan2(y, x) - half + rolled(leaves / 2, wheel / 4, low).polar)).toBeLessThan(2e-5);
        }
      }
  });
  it("[TEETH12] can have the round and the medium top by another practice", () => {
    for (const top of [...TOPS.few, ...TOPS.many]) {
      const leaves = top.radius < 0.8 && top.addendum !== 0.625 ? 8 : 12;
      const form = cycloidalForm({ ...CLOCK_PRACTICE, pinionTop: () => top });
      expect(form.profile(clockPinion(leaves, 8 * leaves)).greatestRadius).toBeCloseTo(leaves / 2 + top.addendum, 9);
      expect(crossingEdges(form.outline(clockPinion(leaves, 8 * leaves), 0.01))).toBeNull();
    }
  });
  it("[TEETH12] agrees with the published tops on parallel flanks: an arc r on thickness t rises √(r² − (r − t/2)²), to 0.06 modules", () => {
    // The full ogive is published lower than that plain construction; the others agree to 0.01.
    for (const [thickness, tops] of [[1.05, TOPS.few], [1.25, TOPS.many]] as const)
      for (const { name, addendum, radius } of tops)
        expect(Math.abs(Math.sqrt(radius ** 2 - (radius - thickness / 2) ** 2) - addendum)).toBeLessThan(name === "full ogive" ? 0.06 : 0.011);
  });
  it("[TEETH12] clears the wheel's tip by 0.4 modules at the bottom of its spaces", () => {
    const wheel: Teeth = clockWheel(64, 8), pinion = clockPinion(8, 64);
    expect(36 - profileOf(wheel).greatestRadius - profileOf(pinion).leastRadius).toBeCloseTo(0.4, 9);
  });
  it("[TEETH15] of three leaves keeps a core", () => {
    expect(Math.min(...pointsOf(toothOutline(clockPinion(3, 60), 0.01)).map((p) => Math.hypot(...p)))).toBeCloseTo(0.225, 9);
  });
});
