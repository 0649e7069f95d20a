import Module from "manifold-3d";
import { describe, expect, it } from "vitest";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Finding } from "../../../geometry/finding.ts";
import type { Arbor, Instrument, Part } from "../../../geometry/instrument.ts";
import { poseAt } from "../../../geometry/motion/pose.ts";
import { workOut } from "../../../geometry/workout.ts";

const wheel = (id: string, teeth: number, z: number): Part => ({ id, kind: "wheel", teeth, z, thickness: 1 });
const pin = (id: string, radius: number, angle: number, z: number): Part => ({ id, kind: "pin", radius, angle, diameter: 2, z, thickness: 4 });
const arm = (id: string, length: number, angle: number, z: number): Part => ({ id, kind: "arm", length, width: 4, angle, z, thickness: 2 });
const arbor = (id: string, x: number, parts: Part[], more: Partial<Arbor> = {}): Arbor => ({ id, x, y: 0, diameter: 2, foot: 0, head: 30, parts, ...more });

function instrumentOf(arbors: Arbor[], engagements: Instrument["engagements"], more: Partial<Instrument> = {}): Instrument {
  return {
    endshake: 1, name: "once in many turns", arbors, engagements, input: { arbor: "A", days: 1, sense: "clockwise" },
    frame: { plates: [], pillars: [] }, practice: { sideshake: 0.02, runout: 0.01, planGap: 1, wobble: 0, endshake: 0.1 }, ...more,
  };
}
const gapsOf = (instrument: Instrument, ...between: string[]): Finding[] => examine(workOut(instrument)).findings
  .filter((f) => f.code === "gap" && between.every((id) => f.between.includes(id)));

/** Arbor A with a pin and arbor B with an arm, 40 : 61, 50.5 mm apart. */
const pinAndArm = (angle: number, length = 26) => instrumentOf(
  [arbor("A", 0, [wheel("a", 40, 2), pin("p", 24, 0, 15)]), arbor("B", 50.5, [wheel("b", 61, 2), arm("m", length, angle, 16)])],
  [{ driver: "a", driven: "b" }]);

describe("true shapes in motion", () => {
  it("[MOVE1] an arm that passes a pillar only when it points there meets it at that turn, every turn", () => {
    const instrument = instrumentOf([arbor("A", 0, [arm("m", 26, 90, 10)])], [], { frame: { plates: [], pillars: [{ id: "P", x: 27, y: 0, diameter: 4, from: 0, to: 30 }] } });
    const [found] = gapsOf(instrument, "m", "P");
    expect(found?.severity).toBe("foul");
    expect(found?.way).toBe("plan");
    // A corner of the arm is nearest, √(26² + 2²) from its axis; half the arbor's sideshake is lost.
    const deepest = Math.hypot(26, 2) - 25;
    expect(Math.abs((found?.gap ?? 0) + deepest)).toBeLessThan(0.001);
    expect(Math.abs((found?.worst ?? 0) + deepest + 0.01)).toBeLessThan(0.001);
    expect(found?.when?.every).toBe("1");
    expect(found?.when?.turns ?? 0).toBeGreaterThan(0.2);
    expect(found?.when?.turns ?? 1).toBeLessThan(0.25);
    expect(Math.hypot((found?.at?.x ?? 0) - 25.6, found?.at?.y ?? 9)).toBeLessThan(2.6);
  });

  it("[MOVE2] what never comes nearer than wanted is free, however the swept solids stand", () => {
    // Equal wheels turn contrary; two arms side by side that always point the same way in the mirror never meet when one leads by half a turn.
    const arms = (angle: number) => instrumentOf(
      [arbor("A", 0, [wheel("a", 50, 2), arm("m", 30, 90, 10)]), arbor("B", 50, [wheel("b", 50, 2), arm("n", 30, angle, 10)])], [{ driver: "a", driven: "b" }]);
    expect(gapsOf(arms(90), "m", "n").map((f) => f.severity)).toEqual(["foul"]);
    expect(gapsOf(arms(-90), "m", "n")).toEqual([]);
  });

  it("[MOVE3] a meeting once in 61 turns: first turn, nearest and cycle agree with stepping", () => {
    for (const angle of [100, 140, 200]) {
      const instrument = pinAndArm(angle);
      const [found] = gapsOf(instrument, "p", "m");
      const stepped = steppedFirst(instrument, found?.severity === "foul" ? 0.02 : 1.02);
      expect(found?.when?.every).toBe("61");
      expect(found?.when?.turns ?? -1).toBeLessThanOrEqual(stepped.first + 1e-4);
      expect(stepped.first - (found?.when?.turns ?? -1)).toBeLessThan(0.01);
      expect(Math.abs((found?.gap ?? 9) - stepped.least)).toBeLessThan(0.05);
    }
  });

  it("[MOVE4] at the reported turn metal does meet, and a little before it does not: an outside witness", async () => {
    // Source of the witness: the solids of the manifold-3d library, intersected.
    const { Manifold, CrossSection } = await (async () => { const m = await Module(); m.setup(); return m; })();
    const instrument = pinAndArm(140);
    const [found] = gapsOf(instrument, "p", "m");
    const movement = workOut(instrument);
    const shared = (turns: number): number => {
      const pose = poseAt(movement, turns);
      const deg = (i: number) => ((pose[3 * i + 2] ?? 0) * 180) / Math.PI;
      const pinSolid = CrossSection.circle(1, 256).extrude(4).translate([24, 0, 15]).rotate([0, 0, deg(0)]);
      const armSolid = Manifold.cube([26, 4, 2]).translate([0, -2, 16]).rotate([0, 0, 140 + deg(1)]).translate([50.5, 0, 0]);
      return pinSolid.intersect(armSolid).volume();
    };
    expect(found?.severity).toBe("foul");
    expect(shared((found?.when?.turns ?? 0) + 0.004)).toBeGreaterThan(0);
    expect(shared((found?.when?.turns ?? 0) - 0.004)).toBe(0);
    expect(shared(found?.when?.nearest.turns ?? 0)).toBeGreaterThan(0);
  });

  it("[MOVE5] a carried knob that always stands too near is so at every turn, and has no when", () => {
    const knob = instrumentOf([arbor("A", 0, [arm("m", 20, 0, 3), { id: "low", kind: "collet", diameter: 39, z: 8, thickness: 2 }]),
      arbor("F", 0, [{ id: "ring", kind: "collet", diameter: 31, z: 20, thickness: 2 }], { foot: 31, head: 40 }),
      { id: "S", diameter: 2, foot: 0, head: 24, parts: [{ id: "knob", kind: "collet", diameter: 10, z: 20, thickness: 2 }], rides: { on: "A", radius: 20, angle: 90 } }], []);
    const [found] = gapsOf(knob, "knob", "ring");
    expect(found?.severity).toBe("foul");
    expect(Math.abs((found?.gap ?? 0) + 0.5)).toBeLessThan(0.001);
    expect(found?.when).toBeNull();
  });

  it("[MOVE6] a pair in height too is judged by its better way, and only the turns that matter in plan count", () => {
    const tight = instrumentOf([arbor("A", 0, [arm("m", 26, 90, 10)])], [], { frame: { plates: [], pillars: [{ id: "P", x: 27, y: 0, diameter: 4, from: 12.3, to: 30 }] } });
    const [found] = gapsOf(tight, "m", "P");
    expect(found?.severity).toBe("tight");
    expect(found?.way).toBe("height");
    expect(found?.when?.turns ?? 0).toBeGreaterThan(0.15);
  });

  it("[MOVE7] a pin within a window that turns with it is free, and one whose disc turns otherwise is not", () => {
    const discs = (driven: number) => instrumentOf(
      [arbor("A", 0, [wheel("a", 40, 2), { id: "d", kind: "disc", diameter: 40, z: 10, thickness: 2, windows: [{ radius: 12, angle: 0, diameter: 10 }] }]),
        arbor("M", 30, [wheel("m1", 20, 2), wheel("m2", 30, 5)]),
        { id: "E", diameter: 4, foot: 4, head: 28, parts: [wheel("e", driven, 5), pin("p", 12, 0, 9)], rides: { on: "A", radius: 0, angle: 0 } }],
      [{ driver: "a", driven: "m1" }, { driver: "m2", driven: "e" }]);
    expect(gapsOf(discs(60), "p", "d")).toEqual([]);
    expect(gapsOf(discs(59), "p", "d").map((f) => f.severity)).toEqual(["foul"]);
  });
});

/** Stepping the pin and the arm by hand: first turn at or under a gap, and the least gap, over one whole cycle of 61 turns. */
function steppedFirst(instrument: Instrument, mostMm: number): { first: number; least: number } {
  const armPart = instrument.arbors[1]?.parts[1];
  const [length, angle] = armPart?.kind === "arm" ? [armPart.length, (armPart.angle * Math.PI) / 180] : [0, 0];
  let first = Infinity, least = Infinity;
  for (let i = 0; i <= 61 * 2000; i++) {
    const t = i / 2000, a = -2 * Math.PI * t, b = angle + (2 * Math.PI * t * 40) / 61;
    const x = 24 * Math.cos(a) - 50.5, y = 24 * Math.sin(a);
    const u = x * Math.cos(b) + y * Math.sin(b), v = Math.abs(-x * Math.sin(b) + y * Math.cos(b));
    const du = Math.max(0, -u, u - length), dv = Math.max(0, v - 2);
    const gap = (du > 0 || dv > 0 ? Math.hypot(du, dv) : Math.max(-u, u - length, v - 2)) - 1;
    least = Math.min(least, gap);
    if (gap <= mostMm && first === Infinity) first = t;
  }
  return { first, least };
}
