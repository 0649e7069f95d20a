import { describe, expect, it } from "vitest";
import { drivenPlaceRad, standingAt } from "../../../geometry/depth/standing.ts";
import type { Part } from "../../../geometry/instrument.ts";
import { placed } from "../../../geometry/planar/outline.ts";
import { toothOutline, trundleOutlines } from "../../../geometry/teeth/forms.ts";
import type { Teeth } from "../../../geometry/teeth/teeth.ts";
import { lantern, pairStand, pinion, wheel } from "./stand.ts";

const clock = { form: "cycloidal" } as const;
/** mm: chords of the outlines that are held against the touches. */
const CHORD_MM = 0.0002;

/** Least distance (mm) from a point to the edge of a part's teeth, turned so far about its axis. */
function offEdge(teeth: Teeth, turnRad: number, axisX: number, x: number, y: number): number {
  const outlines = teeth.form === "lantern" ? trundleOutlines(teeth, CHORD_MM) : [toothOutline(teeth, CHORD_MM)];
  let least = Infinity;
  for (const outline of outlines) {
    const p = placed(outline, turnRad, axisX, 0);
    for (let i = 0; i < p.length; i += 2) {
      const j = (i + 2) % p.length, ax = p[i], ay = p[i + 1], dx = p[j] - ax, dy = p[j + 1] - ay;
      const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      least = Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy));
    }
  }
  return least;
}

const PAIRS: readonly (readonly [string, Part, Part, number])[] = [
  ["involutes", wheel("A1", 30), wheel("B1", 45), 0.05],
  ["a clock wheel and its pinion", wheel("A1", 60, clock), pinion("B1", 8, clock), 0],
  ["a pinion that drives a clock wheel", pinion("A1", 12, clock), wheel("B1", 48, clock), 0.03],
  ["straight teeth", wheel("A1", 24, { form: "straight" }), wheel("B1", 36, { form: "straight" }), 0.1],
  ["a wheel and a lantern", wheel("A1", 48, clock), lantern("B1", 8, 1), 0],
  ["a pinion in an annulus", wheel("A1", 20), wheel("B1", 60, { internal: true }), -0.05],
  ["an annulus that drives", wheel("A1", 60, { internal: true }), wheel("B1", 20), -0.05],
];

describe("a pair as it is drawn", () => {
  for (const [name, driver, driven, opened] of PAIRS)
    it(`[DEPTH11] has every touch on the edges of both sets of teeth, within 0.007 mm where they bear: ${name}`, () => {
      const movement = pairStand(driver, driven), computed = standingAt(movement, 0, 1, 1).pair.computedMm!;
      const standing = standingAt(movement, 0, computed + opened, 96), { pair } = standing;
      const axis = pair.annulus === "driven" ? -pair.distanceMm : pair.distanceMm;
      expect(standing.path.filter((p) => p.bears).length).toBeGreaterThan(10);
      for (const { pitches, touch, bears } of standing.path) {
        const first = offEdge(pair.driver.teeth, (pitches * 2 * Math.PI) / pair.driver.teeth.count, 0, touch.x, touch.y);
        const place = drivenPlaceRad(standing, pitches);
        const second = offEdge(pair.driven.teeth, pair.annulus ? place : Math.PI - place, axis, touch.x, touch.y);
        expect(first).toBeLessThan(0.001);
        if (bears) expect(second).toBeLessThan(0.007);
        else expect(second).toBeGreaterThan(0.003);
      }
    });

  it("[DEPTH13] has its path from where contact begins to where it ends, the line of centres between them or at an end", () => {
    const standing = standingAt(pairStand(wheel("A1", 30), wheel("B1", 45)), 0, 37.52, 96);
    const [first, last] = [standing.path[0]!, standing.path.at(-1)!];
    expect(last.pitches - first.pitches).toBeCloseTo(standing.contact!.ends! - standing.contact!.begins!, 9);
    expect(first.touch.y).toBeLessThan(0);
    expect(last.touch.y).toBeGreaterThan(0);
  });

  it("[DEPTH21] stands tooth against space, without figures, where the teeth do not agree or do not reach", () => {
    const unequal = standingAt(pairStand(wheel("A1", 30), wheel("B1", 45, { module: 0.8 })), 0, 34, 48);
    const apart = standingAt(pairStand(wheel("A1", 30), wheel("B1", 45)), 0, 90, 48);
    for (const standing of [unequal, apart]) {
      expect(standing).toMatchObject({ contact: null, backlashMm: null, path: [] });
      expect(drivenPlaceRad(standing, 0)).toBeCloseTo(Math.PI / standing.pair.driven.teeth.count, 12);
    }
  });
});
