// Involute wheels measured on their drawn outlines: thickness at a radius, span over teeth and size over pins, as in the
// metric gear handbook of the stock-gear makers (Elements of Metric Gear Technology, section 10; values recomputed), and
// counts that undercut (any gear handbook; the rounded 17 and 32). The oracle is a rack moved past the blank step by step.
import { describe, expect, it } from "vitest";
import { INVOLUTE } from "../../../geometry/teeth/involute.ts";
import { profileOf, toothOutline } from "../../../geometry/teeth/forms.ts";
import { rackOf } from "../../../geometry/teeth/rack.ts";
import type { Teeth } from "../../../geometry/teeth/teeth.ts";
import { distanceToOutline, halfAngleAt, isInside, pointsOf, teeth } from "./sample.ts";

const FINE = 1e-6;

describe("involute teeth", () => {
  it.each([[9.5, 1.7549618], [10, 1.5707963], [10.5, 1.2050003]])(
    "[TEETH6] of module 1 and 20 teeth are as thick at %d mm as the formula says, to 1e-5 mm", (radius, thickness) => {
      expect(Math.abs(2 * radius * halfAngleAt(radius, toothOutline(teeth(), FINE)) - thickness)).toBeLessThan(1e-5);
    });
  // Its flank begins at 17.12 mm; below that the fillet adds metal to the formula's.
  it.each([[18, 6.0226818], [20, 4.5645378]])(
    "[TEETH6] of module 3, 12 teeth and shift 0.6 likewise at %d mm", (radius, thickness) => {
      const outline = toothOutline(teeth({ module: 3, count: 12, shift: 0.6 }), FINE);
      expect(Math.abs(2 * radius * halfAngleAt(radius, outline) - thickness)).toBeLessThan(2e-5);
    });
  it("[TEETH6] have lands of 0.69487998 mm at the tip", () => {
    const land = profileOf(teeth()).pieces.at(-1)!;
    expect(land.name).toBe("top");
    expect(Math.abs(2 * 11 * (land.to - land.from) - 0.69487998)).toBeLessThan(1e-7);
  });
  it.each([
    [1, 8, 2, 0, 20, 4.54024147], [1, 17, 2, 0, 20, 4.66629132], [1, 20, 3, 0, 20, 7.66043938], [1, 30, 4, 0, 20, 10.7526262],
    [1, 40, 5, 0, 20, 13.844813], [3, 24, 4, 0.4, 20, 32.8266272], [1, 24, 2, 0, 14.5, 4.69112571],
  ])("[TEETH6] of module %d and %d teeth span %d teeth (shift %d, %d°) over %d mm, to 2e-5 mm", (module, count, k, shift, angle, span) => {
    // Jaws are closed on the teeth until they touch: the least width of k teeth between parallel lines.
    const outline = toothOutline(teeth({ module, count, shift, pressureAngleDeg: angle }), FINE);
    expect(Math.abs(spanOver(outline, count, k, (module * count * Math.cos((angle * Math.PI) / 180)) / 2 + module / 20) - span)).toBeLessThan(2e-5);
  });
  it.each([[1, 20, 0, 1.728, 22.3900182], [1, 20, 0, 1.68, 22.2248851], [1, 21, 0, 1.68, 23.1665626], [1, 30, 0, 1.728, 32.4101996], [3, 20, 0.3, 6, 71.0981709]])(
    "[TEETH6] of module %d and %d teeth (shift %d) measure over pins of %d mm %d mm, to 2e-5 mm", (module, count, shift, pin, over) => {
      const outline = toothOutline(teeth({ module, count, shift }), FINE);
      const space = Math.PI / count;
      let near = module * count / 2 - pin, far = module * count;
      for (let i = 0; i < 24; i++) {
        const r = (near + far) / 2;
        if (distanceToOutline(r * Math.cos(space), r * Math.sin(space), outline) < pin / 2 || isInside(r * Math.cos(space), r * Math.sin(space), outline)) near = r;
        else far = r;
      }
      const across = count % 2 === 0 ? 2 * near + pin : 2 * near * Math.cos(Math.PI / 2 / count) + pin;
      expect(Math.abs(across - over)).toBeLessThan(2e-5);
    });
  it("[TEETH6] thinned by 0.1 modules are so much thinner on the pitch circle and no deeper", () => {
    const full = toothOutline(teeth(), FINE), thin = toothOutline(teeth({ thinning: 0.1 }), FINE);
    expect(20 * (halfAngleAt(10, full) - halfAngleAt(10, thin))).toBeCloseTo(0.1, 5);
    expect(profileOf(teeth({ thinning: 0.1 })).leastRadius).toBe(8.75);
  });
  it("[TEETH6] keep the full corner of 0.38 modules where it fits, and a smaller one where not", () => {
    expect(rackOf(teeth({ module: 2 })).cornerMm).toBeCloseTo(0.76, 12);
    const steep = rackOf(teeth({ pressureAngleDeg: 28 }));
    expect(steep.cornerMm).toBeLessThan(0.38);
    expect(steep.asideMm).toBeCloseTo(0, 12);
    // ISO 53: the largest full corner for a clearance of 0.25 is 0.25/(1 − sin 20°) = 0.37995.
    expect(0.25 / (1 - Math.sin(Math.PI / 9))).toBeCloseTo(0.38, 4);
  });
  it.each([
    [17, 0, 20], [20, 0, 20], [12, 0, 20], [9, 0, 20], [7, 0.2, 20], [8, 0.5, 20], [12, 0.6, 20], [20, -0.5, 20], [24, 0, 14.5], [16, 0, 14.5], [11, 1.1, 20], [40, 0, 25],
  ])("[TEETH6] [TEETH7] of %d teeth (shift %d, %d°) are what a rack leaves that rolls past the blank", (count, shift, angle) => {
    const t = teeth({ count, shift, pressureAngleDeg: angle, thinning: 0.05 });
    const left = leftByRack(t);
    for (const piece of profileOf(t).pieces.filter((p) => p.name !== "top"))
      for (let k = 1; k < 24; k++) {
        const { x, y, nx, ny } = piece.at(piece.from + (k / 24) * (piece.to - piece.from));
        expect(left(x - 2e-3 * nx, y - 2e-3 * ny)).toBe(true);
        expect(left(x + 2e-3 * nx, y + 2e-3 * ny)).toBe(false);
      }
  });
});

describe("undercut", () => {
  const hasUndercut = (t: Teeth) => {
    // The fillet then meets the flank at a corner; otherwise they run smoothly into one another.
    const { pieces } = profileOf(t), i = pieces.findIndex((p) => p.name === "fillet");
    const a = pieces[i]!.at(pieces[i]!.to), b = pieces[i + 1]!.at(pieces[i + 1]!.from);
    return a.nx * b.nx + a.ny * b.ny < 1 - 1e-9;
  };
  it("[TEETH7] at 20° begins at 17 teeth, as the handbooks say", () => {
    expect(hasUndercut(teeth({ count: 17 }))).toBe(true);
    expect(hasUndercut(teeth({ count: 18 }))).toBe(false);
  });
  it.each([14.5, 17.5, 22.5, 25])("[TEETH7] at %d° begins where the rack's straight flank, down to its corner of 0.38, passes the base circle", (angle) => {
    const sin = Math.sin((angle * Math.PI) / 180);
    const limit = (2 * (1.25 - 0.38 * (1 - sin))) / sin ** 2;
    expect(hasUndercut(teeth({ count: Math.floor(limit), pressureAngleDeg: angle }))).toBe(true);
    expect(hasUndercut(teeth({ count: Math.ceil(limit), pressureAngleDeg: angle }))).toBe(false);
  });
  it.each([[6, 0.649067], [8, 0.532089], [10, 0.415111], [12, 0.298133], [14, 0.181156], [16, 0.064178]])("[TEETH7] of %d teeth is gone from a shift of %d up", (count, least) => {
    expect(hasUndercut(teeth({ count, shift: least - 1e-3 }))).toBe(true);
    expect(hasUndercut(teeth({ count, shift: least + 1e-3 }))).toBe(false);
  });
  it("[TEETH7] that would cut the tooth off at the neck gives way to radial flanks below the base circle", () => {
    const { pieces } = profileOf(teeth({ count: 4, pressureAngleDeg: 14.5, shift: -0.5 }));
    expect(pieces.map((p) => p.name)).toEqual(["root", "flank", "flank", "top"]);
    const a = pieces[1]!.at(0), b = pieces[1]!.at(1);
    expect(Math.atan2(a.y, a.x)).toBeCloseTo(Math.atan2(b.y, b.x), 12);
    expect(Math.hypot(b.x, b.y)).toBeCloseTo(2 * Math.cos((14.5 * Math.PI) / 180), 12);
  });
});

describe("pointed teeth", () => {
  it("[TEETH8] end where their flanks meet, while the tip radius as a figure stays", () => {
    const t = teeth({ count: 8, shift: 1 });
    const { pieces, greatestRadius } = profileOf(t);
    expect(pieces.at(-1)!.name).toBe("flank");
    expect(greatestRadius).toBeLessThan(INVOLUTE.tipRadius(t));
    expect(INVOLUTE.tipRadius(t)).toBe(6);
    // There the thickness s = 2r (s₀/(2r₀) + inv α − inv α_r) is nothing.
    const inv = (a: number) => Math.tan(a) - a, alpha = Math.PI / 9;
    const s0 = Math.PI / 2 + 2 * Math.tan(alpha);
    expect(s0 / 8 + inv(alpha) - inv(Math.acos((4 * Math.cos(alpha)) / greatestRadius))).toBeCloseTo(0, 9);
  });
});

/** Width over k teeth between two jaws that reach in as far as a radius, each against the outer flank of the outermost tooth; the teeth stand about +y. */
function spanOver(outline: Float64Array, count: number, k: number, reach: number): number {
  const turn = Math.PI / 2 - (Math.PI * (k - 1)) / count, c = Math.cos(turn), s = Math.sin(turn);
  const endRad = (Math.PI * k) / count;
  let right = 0, left = 0;
  for (const [x, y] of pointsOf(outline)) {
    if (Math.hypot(x, y) < reach) continue;
    const across = c * x - s * y, offRad = Math.atan2(across, s * x + c * y);
    if (offRad > 0 && offRad < endRad) right = Math.max(right, across);
    if (offRad < 0 && offRad > -endRad) left = Math.max(left, -across);
  }
  return right + left;
}

/** Whether a place of the blank is left by a rack of ISO 53 that rolls past in fine steps, module 1. */
function leftByRack(t: Teeth): (x: number, y: number) => boolean {
  const alpha = (t.pressureAngleDeg * Math.PI) / 180, sin = Math.sin(alpha), cos = Math.cos(alpha), tan = sin / cos;
  const pitch = t.count / 2, deep = 1.25 - t.shift, half = Math.PI / 4 + t.thinning / 2 - t.shift * tan;
  const corner = Math.min(0.38, ((half - deep * tan) * cos) / (1 - sin), deep);
  const cornerAside = half - deep * tan - (corner * (1 - sin)) / cos;
  /** mm within the rack's tooth (under 0: outside), for a place outward from the pitch line and aside from the tooth's middle. */
  const within = (out: number, aside: number): number => {
    const up = out + deep - corner, over = aside - cornerAside;
    if (over > 0 && up * cos + over * sin < 0) return corner - Math.hypot(up, over);
    return Math.min((half + out * tan - aside) * cos, out + deep);
  };
  return (x, y) => {
    const radius = Math.hypot(x, y), polar = Math.atan2(y, x) + Math.PI / t.count;
    for (let roll = -1.6; roll <= 1.6; roll += 0.001)
      if (within(radius * Math.cos(polar + roll) - pitch, Math.abs(radius * Math.sin(polar + roll) - pitch * roll)) > 0) return false;
    return true;
  };
}
