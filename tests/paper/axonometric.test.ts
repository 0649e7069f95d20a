// What lies nearer hides what lies farther, held against a ray sent from the eye through the paper.
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Instrument, puttingTogether, thingsOf, workOut } from "../../geometry/index.ts";
import { drawPrism, type Eye, extentOf, HEIGHT, nearestLast, onPaper, type Prism } from "../../src/paper/axonometric.ts";
import type { Entity } from "../../src/paper/drawing.ts";
import { newPage, type Page } from "../../src/paper/page.ts";
import { piecesOf } from "../../src/paper/sheets/apart.ts";

const ring = (r: number, n = 24, back = false) => Array.from({ length: n }, (_, i) => ((back ? -1 : 1) * 2 * Math.PI * i) / n).flatMap((a) => [r * Math.cos(a), r * Math.sin(a)]);
const EYE: Eye = { x: 100, y: 100, scale: 1 };
const page = (): Page => newPage("A4", { left: 0, right: 210, bottom: 0, top: 297 });

/** Inside a closed run of points, by the even-odd rule over all loops. */
function covers(loops: readonly (readonly number[])[], x: number, y: number): boolean {
  let inside = false;
  for (const l of loops) for (let i = 0, j = l.length - 2; i < l.length; j = i, i += 2)
    if (l[j + 1]! > y !== l[i + 1]! > y && x < l[j]! + ((y - l[j + 1]!) / (l[i + 1]! - l[j + 1]!)) * (l[i]! - l[j]!)) inside = !inside;
  return inside;
}

/** How far toward the eye a ray through a point of the paper meets a round prism first; null where it misses. */
function nearestOn(p: Prism, radius: number, u: number, v: number): number | null {
  // Two points of the ray, from the drawing's own map: at height 0 and at height 1.
  const at = (z: number): readonly [number, number] => {
    const [ox, oy] = onPaper(EYE, 0, 0, z), [ax, ay] = onPaper(EYE, 1, 0, z), [bx, by] = onPaper(EYE, 0, 1, z), m = [ax - ox, bx - ox, ay - oy, by - oy] as const, det = m[0] * m[3] - m[1] * m[2];
    return [(m[3] * (u - ox) - m[1] * (v - oy)) / det, (m[0] * (v - oy) - m[2] * (u - ox)) / det];
  };
  const [x0, y0] = at(0), [x1, y1] = at(1);
  for (let k = 400; k >= 0; k--) {
    const z = p.z0 + ((p.z1 - p.z0) * k) / 400;
    if (Math.hypot(x0 + z * (x1 - x0) - p.x, y0 + z * (y1 - y0) - p.y) < radius) return z;
  }
  return null;
}

describe("prisms seen from above", () => {
  it("[PLAN9] stand at true scale: heights and what lies across are to be measured by one figure each", () => {
    const [x0, y0] = onPaper(EYE, 0, 0, 0), [x1, y1] = onPaper(EYE, 0, 0, 10);
    expect([x1 - x0, y1 - y0]).toEqual([0, expect.closeTo(10 * HEIGHT, 9)]);
    // A circle about the axis is as wide on the paper as it is (orthographic), and flattened by the sine of the eye's height.
    const e = extentOf({ x: 0, y: 0, z0: 0, z1: 0, loops: [ring(20, 720)] });
    expect(e.right - e.left).toBeCloseTo(40, 3);
    expect((e.top - e.bottom) / 40).toBeCloseTo(Math.sqrt(1 - HEIGHT ** 2), 4);
  });
  it("[PLAN9] are drawn nearest last: a point of the paper belongs to what a ray meets first", () => {
    const prism = fc.record({ x: fc.integer({ min: -30, max: 30 }), y: fc.integer({ min: -30, max: 30 }), z: fc.integer({ min: 0, max: 30 }), tall: fc.integer({ min: 2, max: 25 }), r: fc.integer({ min: 3, max: 14 }) });
    let looked = 0;
    fc.assert(fc.property(fc.array(prism, { minLength: 2, maxLength: 5 }), (wanted) => {
      // No two in one another: apart in plan or in height.
      const apart = wanted.filter((a, i) => wanted.slice(0, i).every((b) => Math.hypot(a.x - b.x, a.y - b.y) > a.r + b.r || a.z >= b.z + b.tall || b.z >= a.z + a.tall));
      const prisms = apart.map(({ x, y, z, tall, r }) => ({ x, y, z0: z, z1: z + tall, loops: [ring(r, 180)], r }));
      const drawn = nearestLast(prisms).map((p) => {
        const own = page();
        drawPrism(own, p, EYE);
        return { p, fills: own.entities.filter((e): e is Extract<Entity, { kind: "fill" }> => e.kind === "fill") };
      });
      for (let u = 60; u <= 140; u += 5) for (let v = 75; v <= 165; v += 5) {
        const seen = [...drawn].reverse().find((d) => d.fills.some((f) => covers(f.loops, u + 0.013, v + 0.017)))?.p;
        const hit = prisms.map((p) => ({ p, z: nearestOn(p, p.r, u + 0.013, v + 0.017) })).filter((h) => h.z !== null).sort((a, b) => b.z! - a.z!);
        // Not where two are met within a step of the ray, or an edge is grazed.
        if (hit.length === 0 || (hit[1] && hit[0]!.z! - hit[1].z! < 0.5) || prisms.some((p) => [0.97, 1.03].some((k) => (nearestOn(p, p.r * k, u + 0.013, v + 0.017) === null) !== (nearestOn(p, p.r, u + 0.013, v + 0.017) === null)))) continue;
        looked++;
        expect(seen).toBe(hit[0]!.p);
      }
    }), { seed: 11, numRuns: 12 });
    expect(looked).toBeGreaterThan(300);
  });
  it("[PLAN9] let what lies under them be seen through their holes, and not through their metal", () => {
    const own = page();
    drawPrism(own, { x: 0, y: 0, z0: 0, z1: 1, loops: [ring(20), ring(10, 24, true)] }, EYE);
    const top = own.entities.filter((e) => e.kind === "fill").at(-1) as Extract<Entity, { kind: "fill" }>, [x, y] = onPaper(EYE, 0, 0, 1), [mx, my] = onPaper(EYE, 15, 0, 1);
    expect([covers(top.loops, x, y), covers(top.loops, mx, my)]).toEqual([false, true]);
  });
});

describe("the movement drawn apart", () => {
  const movement = workOut(JSON.parse(readFileSync("public/instruments/estuary-dial.instrument.json", "utf8")) as Instrument), together = puttingTogether(movement), pieces = piecesOf(movement, together);

  it("[PLAN9] shows every plate, pillar and arbor, and every part that no other part covers, in the step in which it goes in", () => {
    const shown = new Set(pieces.map((p) => p.id));
    expect(thingsOf(movement).map((t) => t.id).filter((id) => !shown.has(id))).toEqual([]);
    for (const p of pieces) {
      const step = together.steps[p.step - 1], arbor = movement.arbors.find((a) => a.arbor.parts.some((q) => q.id === p.id))?.id;
      if (p.step === 0) expect([together.base, ...movement.instrument.frame.pillars.map((q) => q.id)]).toContain(p.id);
      else expect(step!.ids.some((id) => id === p.id || id === arbor)).toBe(true);
    }
  });
  it("[PLAN9] has wheels with all their teeth and their crossings as they are cut", () => {
    const wheel = movement.arbors.flatMap((a) => a.arbor.parts).find((p) => p.kind === "wheel" && p.crossings)!;
    if (wheel.kind !== "wheel" || !wheel.crossings) throw new Error("the dial has crossed wheels");
    const { loops } = pieces.find((p) => p.id === wheel.id)!, radii = Array.from({ length: loops[0]!.length / 2 }, (_, i) => Math.hypot(loops[0]![2 * i]!, loops[0]![2 * i + 1]!));
    const middle = (Math.max(...radii) + Math.min(...radii)) / 2, tips = radii.filter((r, i) => r > middle && radii[(i + 1) % radii.length]! <= middle);
    expect(tips.length).toBe(wheel.teeth);
    expect(loops.length).toBe(1 + wheel.crossings.arms);
  });
  it("[PLAN9] has no arbor or collet within the metal of a part that it carries", () => {
    for (const p of pieces.filter((q) => q.kind === "arbor" || q.kind === "collet"))
      for (const o of pieces.filter((q) => (q.kind === "wheel" || q.kind === "pinion") && q.step === p.step && q.x === p.x && q.y === p.y)) expect(Math.min(p.z1, o.z1) - Math.max(p.z0, o.z0)).toBeLessThan(1e-6);
  });
});
