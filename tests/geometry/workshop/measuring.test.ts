import { describe, expect, it } from "vitest";
import type { Teeth } from "../../../geometry/teeth/teeth.ts";
import { bandOf, cutterFor } from "../../../geometry/workshop/cutters.ts";
import { overPins, spanOf, usualSpan } from "../../../geometry/workshop/span.ts";
import { toothOutline } from "../../../geometry/teeth/forms.ts";

const involute = (module: number, count: number, shift = 0, pressureAngleDeg = 20): Teeth => ({
  form: "involute", role: "wheel", count, module, pressureAngleDeg, shift, thinning: 0, topping: 0, internal: false, trundleDiameter: 0,
  addendumFactor: null, mateCount: null, lanternMate: null, measuredTipRadius: null,
});

describe("spans and pins", () => {
  // Source: the base tangent formula of gear handbooks, recomputed; m 3, z 24, x 0.4 is an example of Elements of Metric Gear Technology, section 10 (from memory).
  it.each([[8, 2, 4.54024147], [10, 2, 4.56825255], [12, 2, 4.59626363], [17, 2, 4.66629132], [18, 2, 4.68029686], [20, 3, 7.66043938], [24, 3, 7.71646153], [30, 4, 10.7526262], [36, 4, 10.8366594], [40, 5, 13.844813]])(
    "[SHOP2] %i teeth of module 1 span, over %i, %f mm", (z, k, w) => {
      expect(spanOf(involute(1, z), k)?.mm).toBeCloseTo(w, 6);
      expect(usualSpan(involute(1, z))).toBe(k);
    });
  it("[SHOP2] shift and pressure angle count", () => {
    expect(spanOf(involute(3, 24, 0.4), 3)?.mm).toBeCloseTo(23.9702329, 6);
    expect(spanOf(involute(3, 24, 0.4))).toEqual({ over: 4, mm: expect.closeTo(32.8266272, 6) });
    expect(spanOf(involute(1, 24, 0, 14.5), 2)?.mm).toBeCloseTo(4.69112571, 6);
  });
  it("[SHOP2] one tooth more is one base pitch more, and thinning takes its own off along the base circle", () => {
    const t = involute(1, 30);
    expect(spanOf(t, 5)!.mm - spanOf(t, 4)!.mm).toBeCloseTo(2.95213143, 8);
    expect(spanOf(t, 4)!.mm - spanOf({ ...t, thinning: 0.05 }, 4)!.mm).toBeCloseTo(0.05 * Math.cos(Math.PI / 9), 9);
  });
  // Source: Elements of Metric Gear Technology, section 10 (m 3, z 20, x 0.3, pin 6: 71.0982, from memory); the others recomputed.
  it.each([[1, 20, 0, 1.728, 22.3900182], [1, 20, 0, 1.68, 22.2248851], [1, 21, 0, 1.68, 23.1665626], [1, 30, 0, 1.728, 32.4101996], [3, 20, 0.3, 6, 71.0981709]])(
    "[SHOP2] over pins: module %f, %i teeth, shift %f, pin %f: %f mm", (m, z, x, d, M) => {
      expect(overPins(involute(m, z, x), d)?.mm).toBeCloseTo(M, 6);
    });
  it("[SHOP2] a pin laid into the drawn outline stands where the formula says, thinning included (0.003 mm)", () => {
    const teeth = { ...involute(1, 20), thinning: 0.05 }, outline = toothOutline(teeth, 0.0005), pin = 1.7, said = overPins(teeth, pin)!.mm / 2 - pin / 2;
    const a = Math.PI / 20, touches = (r: number) => {
      let least = Infinity;
      for (let i = 0; i < outline.length; i += 2) least = Math.min(least, Math.hypot(outline[i]! - r * Math.cos(a), outline[i + 1]! - r * Math.sin(a)));
      return least - pin / 2;
    };
    let low = 9, high = 13;
    for (let i = 0; i < 50; i++) { const mid = (low + high) / 2; if (touches(mid) < 0) low = mid; else high = mid; }
    expect(Math.abs(low - said)).toBeLessThan(0.003);
  });
  it("[SHOP2] teeth that are not outside involutes have neither", () => {
    expect([spanOf({ ...involute(1, 20), internal: true }), overPins({ ...involute(1, 20), form: "cycloidal" })]).toEqual([null, null]);
  });
});

describe("form cutters", () => {
  // Source: J. Rose, Modern Machine-Shop Practice (1887), the set of eight.
  it("[SHOP3] serve the bands of the set of eight, at either end of each", () => {
    const byPitch = (z: number) => bandOf(z)?.byPitch ?? null;
    expect([11, 12, 13, 14, 16, 17, 20, 21, 25, 26, 34, 35, 54, 55, 134, 135, 500].map(byPitch)).toEqual([null, 8, 8, 7, 7, 6, 6, 5, 5, 4, 4, 3, 3, 2, 2, 1, 1]);
    expect(bandOf(50)).toEqual({ from: 35, to: 54, byModule: 6, byPitch: 3 });
  });
  it("[SHOP3] are owned where form, module, angle and count agree", () => {
    const owned = { form: "involute", module: 1, pressureAngle: 20, from: 35, to: 54 };
    expect(cutterFor(involute(1, 40), [owned]).owned).toBe(owned);
    expect([involute(1, 55), involute(0.9, 40), involute(1, 40, 0, 14.5)].map((t) => cutterFor(t, [owned]).owned)).toEqual([null, null, null]);
    expect(cutterFor({ ...involute(1, 40), form: "cycloidal" }, [{ form: "cycloidal", module: 1 }]).owned).not.toBeNull();
  });
});
