import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { signedAreaMmSq } from "../../../geometry/planar/outline.ts";
import { profileOf, toothOutline } from "../../../geometry/teeth/forms.ts";
import type { Teeth } from "../../../geometry/teeth/teeth.ts";
import { clockPinion, clockWheel, crossingEdges, distanceToSegment, lanternWheel, pointsOf, teeth, truePoints, type Point } from "./sample.ts";

const count = fc.integer({ min: 3, max: 40 });
const shift = fc.double({ min: -1, max: 1.3, noNaN: true });
const angle = fc.double({ min: 5, max: 35, noNaN: true });
const thinning = fc.double({ min: -0.2, max: 0.4, noNaN: true });
const topping = fc.double({ min: -0.5, max: 1, noNaN: true });
const involute = fc.record({ count, shift, pressureAngleDeg: angle, thinning, topping }).map((s) => teeth(s));
const annulus = fc.record({ count: fc.integer({ min: 8, max: 40 }), shift, pressureAngleDeg: angle, thinning, topping }).map((s) => teeth({ ...s, internal: true }));
const straight = fc.record({ count, pressureAngleDeg: angle, thinning, topping }).map((s) => teeth({ ...s, form: "straight" }));
const clock = fc.tuple(fc.integer({ min: 6, max: 40 }), fc.integer({ min: 3, max: 16 }), topping).chain(([wheel, leaves, top]) =>
  fc.constantFrom(clockWheel(wheel, leaves, { topping: top }), clockPinion(leaves, wheel, { topping: top }),
    lanternWheel(wheel, leaves, 1.2, { topping: top }), teeth({ form: "cycloidal", count: wheel, topping: top })));
const any = fc.oneof(involute, annulus, straight, clock);

/** Distance of true points of one half tooth from the edges near them: both lie in the space before the tooth on +x and that tooth. */
function farthestFromOutline(t: Teeth, outline: Float64Array, profilePoints: Point[]): number {
  const near = pointsOf(outline);
  const reach = Math.PI / t.count + 0.3;
  const edges = near.map((a, i) => [a, near[(i + 1) % near.length]!] as const)
    .filter(([a]) => Math.abs(Math.atan2(a[1], a[0])) < reach || t.count < 12);
  return Math.max(...profilePoints.map(([x, y]) => edges.reduce((least, [a, b]) => Math.min(least, distanceToSegment(x, y, a, b)), Infinity)));
}

describe("the outline of all teeth", () => {
  it("[TEETH5] is closed, anticlockwise and crosses itself nowhere, for any figures", () => {
    fc.assert(fc.property(any, (t) => {
      const outline = toothOutline(t, 0.02);
      expect(outline.every(Number.isFinite)).toBe(true);
      expect(signedAreaMmSq(outline)).toBeGreaterThan(0);
      expect(crossingEdges(outline)).toBeNull();
    }), { seed: 20261125, numRuns: 150 });
  });
  it("[TEETH5] repeats with every tooth and is its own mirror in the middle of the tooth on +x", () => {
    fc.assert(fc.property(any, (t) => {
      const p = pointsOf(toothOutline(t, 0.01)), each = p.length / t.count;
      expect(Number.isInteger(each)).toBe(true);
      const step = (2 * Math.PI) / t.count, c = Math.cos(step), s = Math.sin(step);
      p.forEach(([x, y], i) => {
        const [nx, ny] = p[(i + each) % p.length]!;
        expect(Math.hypot(c * x - s * y - nx, s * x + c * y - ny)).toBeLessThan(1e-9 * t.count);
        expect(Math.min(...p.map(([mx, my]) => Math.hypot(mx - x, my + y)))).toBeLessThan(1e-9 * t.count);
      });
    }), { seed: 20261125, numRuns: 40 });
  });
  it("[TEETH5] lies within the chord error of the true curve, and the true curve within it of the outline", () => {
    fc.assert(fc.property(any, fc.constantFrom(0.001, 0.01, 0.05), (t, chord) => {
      const outline = toothOutline(t, chord);
      expect(farthestFromOutline(t, outline, truePoints(profileOf(t), 60))).toBeLessThan(chord * 1.0001 + 1e-9);
    }), { seed: 20261125, numRuns: 120 });
  });
  it("[TEETH5] is only longer with a greater module", () => {
    fc.assert(fc.property(any, fc.double({ min: 0.1, max: 8, noNaN: true }), (t, module) => {
      const mate = t.lanternMate && { ...t.lanternMate, trundleDiameter: t.lanternMate.trundleDiameter * module };
      const small = truePoints(profileOf(t), 8), large = truePoints(profileOf({ ...t, module, lanternMate: mate }), 8);
      expect(large.length).toBe(small.length);
      small.forEach(([x, y], i) => expect(Math.hypot(large[i]![0] - module * x, large[i]![1] - module * y)).toBeLessThan(1e-6 * module));
    }), { seed: 20261125, numRuns: 100 });
  });
  it("[TEETH5] takes about a score of points a tooth or fewer at a hundredth of a millimetre, module 1", () => {
    for (const t of [clockWheel(96, 8), clockPinion(8, 96), teeth({ count: 96 }), teeth(), teeth({ count: 12 }), teeth({ count: 60, internal: true }),
      lanternWheel(48, 6, 1.2), teeth({ form: "straight", count: 60 })])
      expect(toothOutline(t, 0.01).length / 2 / t.count).toBeLessThanOrEqual(22);
  });
  it("[TEETH5] has an answer for no chord error at all: the finest there is", () => {
    expect(toothOutline(teeth({ count: 8 }), 0).length).toBeLessThan(40000);
  });
  it("[TEETH17] comes of pieces that run end to end, with normals square to them and out of the metal", () => {
    fc.assert(fc.property(any, (t) => {
      const { pieces } = profileOf(t), side = t.internal ? -1 : 1;
      const first = pieces[0]!.at(pieces[0]!.from), last = pieces.at(-1)!.at(pieces.at(-1)!.to);
      expect(Math.abs(Math.atan2(first.y, first.x) + Math.PI / t.count)).toBeLessThan(1e-9);
      expect(Math.abs(last.y)).toBeLessThan(1e-8);
      pieces.forEach((piece, i) => {
        const end = piece.at(piece.to), next = pieces[i + 1]?.at(pieces[i + 1]!.from);
        if (next) expect(Math.hypot(end.x - next.x, end.y - next.y)).toBeLessThan(1e-7);
        for (let k = 1; k < 10; k++) {
          const u = piece.from + (k / 10) * (piece.to - piece.from), h = (piece.to - piece.from) * 1e-4;
          const a = piece.at(u - h), b = piece.at(u + h), p = piece.at(u);
          const length = Math.hypot(b.x - a.x, b.y - a.y);
          expect(Math.hypot(p.nx, p.ny)).toBeCloseTo(1, 9);
          if (length < 1e-9) continue;
          expect(Math.abs((b.x - a.x) * p.nx + (b.y - a.y) * p.ny) / length).toBeLessThan(2e-3);
          expect((side * ((b.y - a.y) * p.nx - (b.x - a.x) * p.ny)) / length).toBeGreaterThan(0.99);
        }
      });
    }), { seed: 20261125, numRuns: 200 });
  });
  it("[TEETH17] tells by formula where a piece comes to a radius, wherever it has one", () => {
    const formulas = new Set<string>();
    fc.assert(fc.property(fc.oneof(any, fc.constant(teeth({ form: "lantern", count: 8, trundleDiameter: 1.2 }))), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (t, share) => {
      for (const piece of profileOf(t).pieces) {
        if (piece.atRadius === undefined || piece.name === "root" || piece.name === "top") continue;
        formulas.add(`${t.internal ? "annulus" : t.form} ${piece.name}`);
        const { x, y } = piece.at(piece.from + share * (piece.to - piece.from)), radius = Math.hypot(x, y), found = piece.at(piece.atRadius(radius));
        // Where the flank runs along its circle its place is lost to rounding, never its radius.
        expect(Math.abs(Math.hypot(found.x, found.y) - radius)).toBeLessThan(1e-9 * radius);
        expect(Math.hypot(found.x - x, found.y - y)).toBeLessThan(1e-6 * radius);
      }
    }), { seed: 20261125, numRuns: 300 });
    expect([...formulas].sort()).toEqual(["annulus fillet", "annulus flank", "cycloidal flank", "cycloidal tip", "involute flank", "lantern flank", "straight flank"]);
  });
});
