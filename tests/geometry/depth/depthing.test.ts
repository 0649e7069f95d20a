import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cycleOf } from "../../../geometry/depth/cycle.ts";
import { depthOf } from "../../../geometry/depth/depth.ts";
import { depthingOf, runningOf } from "../../../geometry/depth/depthing.ts";
import { figuresOf } from "../../../geometry/depth/figures.ts";
import { pairOf } from "../../../geometry/depth/pair.ts";
import { depthFindings } from "../../../geometry/examine/depth.ts";
import type { Part } from "../../../geometry/instrument.ts";
import { lantern, pairStand, pinion, wheel } from "./stand.ts";

const clock = { form: "cycloidal" };
const clockPair = (distance?: number, practice = {}) => pairStand(wheel("A1", 60, clock), pinion("B1", 8, clock), distance, practice);

describe("a pair depthed", () => {
  it("[DEPTH20] is deep, right or shallow by its backlash as it stands, with both run-outs at the tightest and slackest", () => {
    const at = (distance?: number) => depthingOf(pairStand(wheel("A1", 60), pinion("B1", 20), distance), 0);
    expect([39.9, 40, 40.2].map((d) => at(d).state)).toEqual(["deep", "right", "shallow"]);
    const figures = figuresOf(pairOf(pairStand(wheel("A1", 60), pinion("B1", 20)), 0))!;
    expect(at().backlash).toEqual({ tightest: figures.backlashMm(40 - 0.03), slackest: figures.backlashMm(40 + 0.03) });
    expect(at().tipClearance).toBeCloseTo(0.25, 12);
    expect(at()).toMatchObject({ id: "A1-B1", distance: 40, computed: 40, butting: false });
  });
  it("[DEPTH15] [DEPTH20] counts clock teeth from their own freedom: right at the computed distance, with half a module to spare", () => {
    const right = depthingOf(clockPair(), 0);
    expect(right.state).toBe("right");
    expect(right.backlash.tightest).toBeGreaterThan(0.4);
    expect(depthingOf(clockPair(33.9), 0).state).toBe("deep");
    expect(depthingOf(clockPair(34.4), 0).state).toBe("shallow");
    expect(depthOf(clockPair(), 0).countedBacklash).toBeCloseTo(0.1, 12);
  });
  it("[DEPTH17] [DEPTH18] has a window whose ends are where it ceases to work and to meet the practice, and a tolerance to the nearer", () => {
    for (const movement of [pairStand(wheel("A1", 60), pinion("B1", 20)), clockPair(), pairStand(wheel("A1", 80, { internal: true, outsideDiameter: 90 }), pinion("B1", 40)), pairStand(wheel("A1", 64, clock), lantern("B1", 8, 1.2))]) {
      const { window: { nearest, farthest, nearestWanted, farthestWanted }, distance, holeTolerance } = depthingOf(movement, 0);
      const severity = (d: number) => depthFindings({ ...movement, engagements: movement.engagements.map((e) => ({ ...e, distance: d })) })[0].severity;
      expect(severity(nearest! - 2e-5)).toBe("foul");
      expect(severity(nearest! + 2e-5)).not.toBe("foul");
      expect(severity(farthest! + 2e-5)).toBe("foul");
      expect(severity(farthest! - 2e-5)).not.toBe("foul");
      expect(severity(nearestWanted! + 2e-5)).toBe("free");
      expect(severity(farthestWanted! - 2e-5)).toBe("free");
      expect(severity(nearestWanted! - 2e-5)).not.toBe("free");
      expect(severity(farthestWanted! + 2e-5)).not.toBe("free");
      expect(holeTolerance).toBeCloseTo(Math.min(distance - nearestWanted!, farthestWanted! - distance), 12);
      expect(depthingOf(movement, 0, farthestWanted! + 0.01).holeTolerance).toBeCloseTo(-0.01, 9);
    }
  });
  it("[DEPTH17] has none where the shakes leave none, and says so", () => {
    const loose = depthingOf(pairStand(wheel("A1", 60), pinion("B1", 20), 40, { runout: 0.6 }), 0);
    expect(loose.window).toEqual({ nearest: null, farthest: null, nearestWanted: null, farthestWanted: null });
    expect(loose.holeTolerance).toBeNull();
    expect(loose.says).toContain("no distance lets them work");
  });
  it("[DEPTH17] [DEPTH14] has no distance in its window at which a tip butts or the driven waits, of any form", () => {
    const filed = { form: "straight" };
    for (const [a, b] of [[wheel("A1", 60, filed), pinion("B1", 8, filed)], [wheel("A1", 40, filed), wheel("B1", 50, filed)], [pinion("A1", 8, clock), wheel("B1", 60, clock)],
      [lantern("A1", 8, 1.2), wheel("B1", 64, clock)], [wheel("A1", 96, clock), pinion("B1", 12, clock)]]) {
      const movement = pairStand(a, b, undefined, { runout: 0, sideshake: 0 }), { window: { nearest, farthest } } = depthingOf(movement, 0);
      for (let i = 0; i <= 12; i++) {
        const there = depthingOf(movement, 0, nearest! + (i / 12) * (farthest! - nearest!) - 1e-6);
        expect(there.butting).toBe(false);
        expect(there.contactRatio).toBeGreaterThanOrEqual(1);
        expect(there.rate.least).toBeGreaterThan(0);
      }
      const beyond = depthingOf(movement, 0, farthest! + 1e-4);
      expect(beyond.butting || beyond.contactRatio! < 1).toBe(true);
    }
  });
  it("[DEPTH16] butts when so shallow that a tip comes in against a tip", () => {
    const butts = (opened: number) => depthingOf(clockPair(34 + opened), 0).butting;
    expect(butts(0)).toBe(false);
    const far = Array.from({ length: 40 }, (_, i) => 1 + i * 0.03).map((opened) => butts(opened));
    expect(far).toContain(true);
  });
  it("[DEPTH16] is told by `depth` at the shallowest", () => {
    const opened = Array.from({ length: 80 }, (_, i) => i * 0.03).find((o) => depthOf(clockPair(34 + o), 0).buttsAtShallowest) ?? NaN;
    expect(depthFindings(clockPair(34 + opened))[0].severity).toBe("foul");
  });
});

describe("free arc round the full cycle", () => {
  const cycle = (z1: number, z2: number, e1: number, e2: number) => {
    const pair = pairOf(pairStand(wheel("A1", z1, { measured: { runout: e1 } }), wheel("B1", z2, { measured: { runout: e2 } })), 0);
    return { found: cycleOf(pair, figuresOf(pair)!, pair.distanceMm)!, figures: figuresOf(pair)!, distance: pair.distanceMm };
  };
  it("[DEPTH19] is as long as the least common multiple, and cancels equal run-outs of equal wheels put together high against low", () => {
    const { found, figures, distance } = cycle(30, 30, 0.02, 0.02);
    expect(found.teeth).toBe(30);
    expect(found.best).toBe(15);
    expect(found.slackest - found.tightest).toBeLessThan(1e-9);
    expect(found.worst.tightest).toBeCloseTo(figures.backlashMm(distance - 0.04)!, 9);
    expect(found.worst.slackest).toBeCloseTo(figures.backlashMm(distance + 0.04)!, 9);
  });
  it("[DEPTH19] names the assembly that spreads the free arc itself least, and the spread of the worst: every assembly and tooth tried", () => {
    for (const [z1, z2, e1, e2] of [[40, 30, 0.05, 0.04], [60, 40, 0.02, 0.06], [24, 36, 0.08, 0.08]] as const) {
      const { found, figures, distance } = cycle(z1, z2, e1, e2);
      const spreads = Array.from({ length: (z1 * z2) / found.teeth }, (_, moved) => {
        const arcs = Array.from({ length: found.teeth }, (_, tooth) =>
          figures.backlashMm(distance - e1 * Math.cos((2 * Math.PI * tooth) / z1) - e2 * Math.cos((2 * Math.PI * (tooth + moved)) / z2))!);
        return Math.max(...arcs) - Math.min(...arcs);
      });
      // To 5e-5 mm: the free arc along a cycle is read off a parabola.
      expect(spreads[found.best]).toBeCloseTo(Math.min(...spreads), 4);
      expect(found.slackest - found.tightest).toBeCloseTo(Math.min(...spreads), 4);
      expect(found.worst.slackest - found.worst.tightest).toBeCloseTo(Math.max(...spreads), 4);
    }
  });
  it("[DEPTH19] of counts without a common measure comes to both run-outs together whatever the assembly", () => {
    const { found, figures, distance } = cycle(30, 31, 0.02, 0.01);
    expect(found.teeth).toBe(930);
    expect(found.freeArcMm).toHaveLength(930);
    expect(found.tightest).toBeCloseTo(figures.backlashMm(distance - 0.03)!, 6);
    expect(found.slackest).toBeCloseTo(figures.backlashMm(distance + 0.03)!, 3);
    expect(runningOf(clockPair(), 0).cycle?.teeth).toBe(120);
  });
});

describe("what cannot be worked out", () => {
  const everyFigure = (value: unknown): number[] =>
    typeof value === "number" ? [value] : value && typeof value === "object" ? Object.values(value).flatMap(everyFigure) : [];
  const form = fc.constantFrom("involute", "cycloidal", "straight");
  const part = (id: string) => fc.record({
    kind: fc.constantFrom("wheel", "pinion", "lantern"), count: fc.integer({ min: 3, max: 40 }), form, module: fc.constantFrom(1, 1, 1, 0.9),
    internal: fc.constantFrom(false, false, true), shift: fc.double({ min: -1, max: 1, noNaN: true }), topping: fc.double({ min: -1, max: 1, noNaN: true }),
    trundle: fc.double({ min: 0.2, max: 2.5, noNaN: true }),
  }).map(({ kind, count, trundle, internal, ...more }): Part =>
    kind === "lantern" ? lantern(id, count, trundle, { module: more.module })
      : kind === "pinion" ? pinion(id, count, more) : wheel(id, count, { ...more, ...(internal ? { internal, outsideDiameter: 100 } : {}) }));
  it("[DEPTH21] [DEPTH5] is null and said, never a figure that is not finite, for any two parts at any distance", () => {
    fc.assert(fc.property(part("A1"), part("B1"), fc.double({ min: 0, max: 60, noNaN: true }), fc.boolean(), (a, b, away, near) => {
      const usual = pairStand(a, b).engagements[0].computed ?? 10;
      const movement = pairStand(a, b, near ? Math.max(0, usual + away / 20 - 1) : away);
      const depthing = depthingOf(movement, 0);
      for (const figure of [...everyFigure(depthing), ...everyFigure(depthFindings(movement))]) expect(Number.isFinite(figure)).toBe(true);
      expect(depthing.says.length).toBeGreaterThan(10);
    }), { seed: 23, numRuns: 120 });
  }, 60_000);
  it("[DEPTH21] names the reason", () => {
    expect(depthingOf(pairStand(wheel("A1", 60), pinion("B1", 20, { module: 0.9 }), 40), 0)).toMatchObject({ state: null, contactRatio: null, says: "A1 and B1 cannot work: they do not agree: module 1 against 0.9" });
    expect(depthingOf(pairStand(wheel("A1", 60), pinion("B1", 20), 60), 0)).toMatchObject({ state: "shallow", says: "A1 and B1 do not reach one another at 60 mm" });
    expect(depthingOf(pairStand(wheel("A1", 20, { internal: true, outsideDiameter: 40 }), pinion("B1", 30), 5), 0).says).toContain("no larger than its pinion");
  });
});
