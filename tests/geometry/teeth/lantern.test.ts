// Lanterns and their wheels. The wheel's tooth: pin-centre curve from a circle of the pinion's whole pitch diameter, set
// back by the pin's radius (Goodrich, The Modern Clock, 1905, as quoted; standard theory).
import { describe, expect, it } from "vitest";
import { profileOf, rootRadius, toothOutline, trundleOutlines } from "../../../geometry/teeth/forms.ts";
import { CLOCK_PRACTICE } from "../../../geometry/teeth/clock-practice.ts";
import { cycloidalForm } from "../../../geometry/teeth/cycloidal.ts";
import { distanceToOutline, halfAngleAt, isInside, lanternWheel, pointsOf, teeth } from "./sample.ts";

const lantern = teeth({ form: "lantern", role: "pinion", count: 8, trundleDiameter: 1.2 });

describe("a lantern", () => {
  it("[TEETH13] has round trundles on the pitch circle, the first on +x", () => {
    const trundles = trundleOutlines(lantern, 0.001);
    expect(trundles.length).toBe(8);
    trundles.forEach((o, i) => {
      const a = (Math.PI * i) / 4;
      for (const [x, y] of pointsOf(o)) expect(Math.hypot(x - 4 * Math.cos(a), y - 4 * Math.sin(a))).toBeCloseTo(0.6, 9);
    });
    expect(rootRadius(lantern)).toBeCloseTo(3.4, 12);
  });
  it("[TEETH17] has half a trundle, from its innermost point to its outermost, for a profile", () => {
    const { pieces, joined } = profileOf(lantern), [half] = pieces;
    expect(joined).toBe(false);
    expect(half!.at(half!.from).x).toBeCloseTo(3.4, 12);
    expect(half!.at(half!.to).x).toBeCloseTo(4.6, 12);
    expect(half!.at((half!.from + half!.to) / 2)).toMatchObject({ ny: -1 });
  });
});

describe("a wheel for a lantern", () => {
  it("[TEETH13] is touched by a trundle, and never cut, all along its tooth as the lantern turns with it", () => {
    const wheel = lanternWheel(48, 8, 1.2), outline = toothOutline(wheel, 1e-5);
    // The wheel's tooth starts where the pin's centre would be on the pitch circle with the pin against the flank.
    const flank = halfAngleAt(23.9, outline) + 0.6 / 24;
    let touches = 0;
    for (let turned = 0.01; turned < 0.2; turned += 0.005) {
      // The pin's centre after the wheel has turned: carried back into the wheel's own axes.
      const pin = turned * 6;
      const x = 28 - 4 * Math.cos(pin), y = 4 * Math.sin(pin);
      const back = turned - flank;
      const px = x * Math.cos(back) + y * Math.sin(back), py = -x * Math.sin(back) + y * Math.cos(back);
      const near = distanceToOutline(px, py, outline);
      expect(isInside(px, py, outline)).toBe(false);
      expect(near).toBeGreaterThan(0.6 - 1e-3);
      if (near < 0.6 + 1e-3) touches++;
    }
    expect(touches).toBeGreaterThan(15);
  });
  it("[TEETH13] is half the pitch thick, thinner where the trundle needs the room, and leaves a freedom of 0.05 modules then", () => {
    const thickness = (pin: number) => 48 * halfAngleAt(23.9, toothOutline(lanternWheel(48, 8, pin), 1e-6));
    expect(thickness(1.05)).toBeCloseTo(Math.PI / 2, 6);
    expect(thickness(1.8)).toBeCloseTo(Math.PI - 1.8 - 0.05, 2);
  });
  it("[TEETH13] is cut to 1.38 modules; filling the whole space between two pins it could go to 2.4's greatest", () => {
    expect(profileOf(lanternWheel(48, 6, 1.05)).greatestRadius).toBeCloseTo(25.38, 9);
    const full = cycloidalForm({ ...CLOCK_PRACTICE, lanternTooth: Math.PI, lanternFreedom: 0 });
    expect(full.profile(lanternWheel(48, 6, 1.05, { topping: -2 })).greatestRadius).toBeCloseTo(24 + 1.9467, 3);
  });
});
