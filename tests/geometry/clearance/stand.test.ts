import { describe, expect, it } from "vitest";
import { groundOf, severityAt } from "../../../geometry/clearance/ground.ts";
import { mayStand } from "../../../geometry/clearance/stand.ts";
import { smallestGap } from "../../../geometry/clearance/smallest.ts";
import { allGapsOf, sceneOf } from "../../../geometry/clearance/gaps.ts";
import { judgeMoving } from "../../../geometry/clearance/moving.ts";
import { unevenOf } from "../../../geometry/motion/uneven.ts";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Arbor, Instrument, Plate } from "../../../geometry/instrument.ts";
import type { Severity } from "../../../geometry/finding.ts";
import { areaOfLoops } from "../../../geometry/planar/regions.ts";
import { replanted, workOut } from "../../../geometry/workout.ts";
import { jumble } from "../../fixtures/jumble.ts";
import { sourceOf } from "../../fixtures/random.ts";

const PLAIN = { planGap: 0.5, faceGap: 0.3, runout: 0, wobble: 0, sideshake: 0, endshake: 0, edge: 1 };
const disc = (id: string, x: number, y: number, diameter: number, z = 2): Arbor =>
  ({ id, x, y, diameter: 1, foot: 0, head: 8, parts: [{ id: `${id}1`, kind: "disc", diameter, z, thickness: 1 }] });
const of = (arbors: Arbor[], plates: Plate[] = [], more: Partial<Instrument> = {}): Instrument => ({
  endshake: 1, name: "plan", practice: PLAIN, frame: { plates, pillars: [] }, arbors, engagements: [], input: { arbor: arbors[0]!.id, days: 1, sense: "clockwise" }, ...more,
});

/** The gravest of what examining says of an arbor's gaps, pivots and edges, decided as the ground sees them. */
function examined(instrument: Instrument, id: string): Severity {
  const movement = workOut(instrument);
  const own = movement.arbors.flatMap((a) => (a.id === id ? [a.id, ...a.arbor.parts.map((p) => p.id)] : []));
  const found = examine(movement).findings.filter((f) => (f.code === "gap" || f.code === "edge") && f.between.some((b) => own.includes(b)));
  return found.some((f) => f.severity === "foul") ? "foul" : found.some((f) => f.severity === "tight") ? "tight" : "free";
}

describe("where an arbor may stand", () => {
  it("[PLACE1] is foul within the sum of two radii and tight within what is wanted beyond, as areas of true discs", () => {
    const stand = mayStand(workOut(of([disc("A", 0, 0, 10), disc("B", 20, 0, 6)])), "B");
    expect(areaOfLoops(stand.foul)).toBeCloseTo(Math.PI * 8 ** 2, 6);
    expect(areaOfLoops(stand.tight)).toBeCloseTo(Math.PI * (8.5 ** 2 - 8 ** 2), 6);
    expect(stand.at).toEqual({ x: 20, y: 0, severity: "free" });
    expect(stand.slide).toBeNull();
  });

  it("[PLACE1] leaves free what stands in other heights, but never the bare arbors", () => {
    const stand = mayStand(workOut(of([disc("A", 0, 0, 10, 2), disc("B", 20, 0, 6, 5)])), "B");
    // Disc A1 against arbor B: 5 + 0.5; disc B1 against arbor A: 3 + 0.5.
    expect(areaOfLoops(stand.foul)).toBeCloseTo(Math.PI * 5.5 ** 2, 6);
  });

  it("[PLACE1] agrees with the examiner at random places among round things, plates, pillars and cases", () => {
    let seen = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const s = sourceOf(seed);
      const all = jumble(seed, 6);
      const still: Instrument = { ...all, arbors: all.arbors.map(({ rides: _, ...a }) => ({ ...a, parts: a.parts.filter((p) => !["pin", "pointer", "arm", "square"].includes(p.kind)) })) };
      const ids = new Set(still.arbors.flatMap((a) => a.parts.map((p) => p.id)));
      const instrument = { ...still, couplings: [], engagements: still.engagements.filter((e) => ids.has(e.driver) && ids.has(e.driven)) };
      const movement = workOut(instrument);
      const arbor = s.whole(0, instrument.arbors.length - 1), { id } = instrument.arbors[arbor]!;
      const ground = groundOf(movement, arbor);
      if (ground.group.size > 1) continue;
      for (let k = 0; k < 6; k++) {
        const x = s.between(-30, 30), y = s.between(-30, 30);
        const moved = { ...instrument, arbors: instrument.arbors.map((a) => (a.id === id ? { ...a, x, y } : a)) };
        const says = examined(moved, id), ours = severityAt(ground, x, y);
        expect({ seed, id, x, y, ours }).toEqual({ seed, id, x, y, ours: says });
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(250);
  });

  it("[PLACE2] is on the safe side where true outlines would be followed or an axis is carried round", () => {
    const rank = { free: 0, tight: 1, foul: 2 };
    for (let seed = 1; seed <= 40; seed++) {
      const s = sourceOf(seed), instrument = jumble(seed, 6), movement = workOut(instrument);
      const arbor = s.whole(0, instrument.arbors.length - 1);
      const ground = groundOf(movement, arbor), { id, x, y } = movement.arbors[ground.root]!;
      const own = new Set([...ground.group].flatMap((i) => [movement.arbors[i]!.id, ...movement.arbors[i]!.arbor.parts.map((p) => p.id)]));
      for (let k = 0; k < 3; k++) {
        const to = k === 0 ? { x, y } : { x: x + s.between(-9, 9), y: y + s.between(-9, 9) };
        const moved = replanted(movement, new Map([[id, to]]));
        if ([...ground.group].some((i) => Math.hypot(moved.arbors[i]!.x - movement.arbors[i]!.x - to.x + x, moved.arbors[i]!.y - movement.arbors[i]!.y - to.y + y) > 1e-9)) continue;
        const worst = allGapsOf(sceneOf(moved)).pairs.filter((p) => own.has(p.a.id) !== own.has(p.b.id)).reduce((w, p) => Math.max(w, rank[p.verdict.severity]), 0);
        expect(rank[severityAt(ground, to.x, to.y)]).toBeGreaterThanOrEqual(worst);
      }
    }
  });

  it("[PLACE3] keeps pivot holes in metal: the plate's outline less hole and margin, and its openings grown by them", () => {
    const plates: Plate[] = [0, 10].map((z, i) => ({ id: `p${i}`, z: z - 2, thickness: 2, outline: { circle: { diameter: 60 } }, openings: [{ x: 10, y: 0, diameter: 4 }] }));
    const arbor: Arbor = {
      id: "A", x: -5, y: 0, diameter: 3, foot: -1, head: 9, parts: [],
      pivots: { foot: { diameter: 1, length: 1, plate: "p0" }, head: { diameter: 2, length: 1, plate: "p1" } },
    };
    const stand = mayStand(workOut(of([arbor], plates)), "A");
    const field = Math.PI * stand.field.radius ** 2;
    expect(areaOfLoops(stand.foul)).toBeCloseTo(field - Math.PI * 29 ** 2 + Math.PI * 3 ** 2, 4);
    expect(areaOfLoops(stand.tight)).toBeCloseTo(Math.PI * (29 ** 2 - 28 ** 2) + Math.PI * (4 ** 2 - 3 ** 2), 4);
  });

  it("[PLACE3] rounds the corners of a polygon about what it keeps from, and keeps them sharp within", () => {
    const plate: Plate = { id: "p", z: 2, thickness: 1, outline: { rectangle: { width: 20, height: 10 } } };
    const stand = mayStand(workOut(of([{ id: "A", x: 30, y: 0, diameter: 4, foot: 0, head: 8, parts: [] }], [plate])), "A");
    expect(areaOfLoops(stand.foul)).toBeCloseTo(20 * 10 + 2 * 2 * 30 + Math.PI * 2 ** 2, 6);
    const own: Arbor = { id: "A", x: 0, y: 0, diameter: 1, foot: 0, head: 8, parts: [], pivots: { foot: { diameter: 2, length: 1, plate: "p" } } };
    const within = mayStand(workOut(of([own], [plate])), "A");
    expect(Math.PI * within.field.radius ** 2 - areaOfLoops(within.foul)).toBeCloseTo(18 * 8, 6);
  });

  it("[PLACE4] slides on its circle about one partner, in arcs whose ends are where circles meet", () => {
    const geared = (id: string, x: number, y: number, teeth: number): Arbor => ({
      id, x, y, diameter: 1, foot: 0, head: 8, parts: [{ id: `${id}1`, kind: "wheel", teeth, z: 2, thickness: 1 }],
    });
    const instrument = of([{ ...geared("A", 0, 0, 30), steady: true }, geared("B", 25, 0, 20), disc("C", 30, 20, 10)], [], { engagements: [{ driver: "A1", driven: "B1" }] });
    const { slide } = mayStand(workOut(instrument), "B");
    // B1: tip radius 11; C1: 5: foul within 16 of C, tight within 16.5.
    const end = (radius: number, side: number) => {
      const d = Math.hypot(30, 20), along = (d * d + 25 * 25 - radius * radius) / (2 * d);
      const deg = ((Math.atan2(20, 30) + side * Math.acos(along / 25)) * 180) / Math.PI;
      return deg < 0 ? deg + 360 : deg;
    };
    expect(slide).toMatchObject({ x: 0, y: 0, radius: 25, about: "A" });
    const foul = slide!.arcs.filter((a) => a.severity === "foul"), tight = slide!.arcs.filter((a) => a.severity === "tight");
    expect(foul).toHaveLength(1);
    expect(tight).toHaveLength(2);
    expect(foul[0]!.from % 360).toBeCloseTo(end(16, -1), 6);
    expect(foul[0]!.to % 360).toBeCloseTo(end(16, 1), 6);
    expect(slide!.arcs.reduce((sum, a) => sum + a.to - a.from, 0)).toBeCloseTo(360, 9);
  });

  it("[PLACE4] has no arc where two that are steady hold it, and says what is steady itself", () => {
    const wheel = (id: string, x: number, steady: boolean): Arbor => ({ id, x, y: 0, steady, diameter: 1, foot: 0, head: 8, parts: [{ id: `${id}1`, kind: "wheel", teeth: 20, z: 2, thickness: 1 }] });
    const m = workOut(of([wheel("A", 0, true), wheel("B", 20, false), wheel("C", 40, true)], [], { engagements: [{ driver: "A1", driven: "B1" }, { driver: "B1", driven: "C1" }] }));
    expect(mayStand(m, "B").slide).toBeNull();
    expect(mayStand(m, "A").holds).toMatch(/steady/);
  });
});

describe("the smallest gap of the calliper", () => {
  it("[PLACE5] names the pair that is left with least in plan at the worst", () => {
    const gap = smallestGap(workOut(of([disc("A", 0, 0, 10), disc("B", 20, 0, 6), disc("C", 0, 9, 6)])));
    expect(gap).toMatchObject({ between: ["A1", "C1"], severity: "free", wanted: 0.5 });
    expect(gap?.worst).toBeCloseTo(1, 9);
    // A1 reaches to 5, C1 down to 6: the place is in the middle of the air between them.
    expect([gap?.at.x, gap?.at.y]).toEqual([0, 5.5]);
  });

  it("[PLACE5] leaves out what is clear in height, and there is none where nothing shares a height", () => {
    expect(smallestGap(workOut(of([{ ...disc("A", 0, 0, 10), head: 3 }, { ...disc("B", 2, 0, 6, 6), foot: 5 }])))).toBeNull();
  });

  it("[PLACE5] is the least of all gaps that plan decides, as the examiner judges them", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const movement = workOut(jumble(seed, 7));
      const uneven = unevenOf(movement);
      const inPlan = allGapsOf(sceneOf(movement)).pairs.map((p) => ({ verdict: judgeMoving(movement, uneven, p.a, p.b) }))
        .filter((p) => p.verdict.way === "plan" && p.verdict.height.worst < movement.practice.faceGap - 1e-9);
      const least = smallestGap(movement);
      const worst = inPlan.reduce((w, p) => Math.min(w, p.verdict.plan.worst), Infinity);
      if (least !== null) expect(least.worst).toBeLessThanOrEqual(worst + 1e-9);
    }
  });
});
