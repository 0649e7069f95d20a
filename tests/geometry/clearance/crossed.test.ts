// Crossed wheels, squares, cotters and cut-away plates followed by their true outlines. The outside witness is the
// manifold-3d library: solids cut out of the very meshes that are drawn, turned to the reported turn and intersected.
import Module from "manifold-3d";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gapsOf as gapsOfScene, sceneOf } from "../../../geometry/clearance/gaps.ts";
import { spinOf } from "../../../geometry/clearance/spin.ts";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Finding } from "../../../geometry/finding.ts";
import type { Arbor, Frame, Instrument, Part } from "../../../geometry/instrument.ts";
import { meshOf } from "../../../geometry/mesh/things.ts";
import { poseAt } from "../../../geometry/motion/pose.ts";
import { toothPhases } from "../../../geometry/motion/tooth-phases.ts";
import { unevenOf } from "../../../geometry/motion/uneven.ts";
import { workOut } from "../../../geometry/workout.ts";

const arbor = (id: string, x: number, parts: Part[], more: Partial<Arbor> = {}): Arbor => ({ id, x, y: 0, diameter: 2, foot: 0, head: 30, parts, ...more });
const wheel = (id: string, teeth: number, z: number): Part => ({ id, kind: "wheel", teeth, z, thickness: 1 });
const crossed = (id: string, teeth: number, z: number, angle?: number): Part =>
  ({ id, kind: "wheel", teeth, z, thickness: 2, crossings: { arms: 4, rim: 2, arm: 3, hub: 8, ...(angle === undefined ? {} : { angle }) } });

function instrumentOf(arbors: Arbor[], engagements: Instrument["engagements"], frame: Partial<Frame> = {}): Instrument {
  return {
    endshake: 1, name: "arms that come round", arbors, engagements, input: { arbor: "A", days: 1, sense: "clockwise" },
    frame: { plates: [], pillars: [], ...frame }, practice: { sideshake: 0, runout: 0, planGap: 0.5, wobble: 0, endshake: 0.1 },
  };
}
const gapsOf = (instrument: Instrument, ...between: string[]): Finding[] => examine(workOut(instrument)).findings
  .filter((f) => f.code === "gap" && between.every((id) => f.between.includes(id)));

/** A slow wheel B of 120 teeth, driven by 12, its arms at an angle; a pillar stands up through its crossings. */
const slow = (angle?: number) => instrumentOf([arbor("A", 0, [{ id: "a", kind: "pinion", leaves: 12, z: 10, thickness: 2 }]), arbor("B", 66, [crossed("b", 120, 10, angle)])],
  [{ driver: "a", driven: "b" }], { pillars: [{ id: "P", x: 66 + 30, y: 0, diameter: 4, from: 0, to: 30 }] });

describe("crossed wheels in motion", () => {
  it("[MOVE10] a pillar through the crossings of a slow wheel is clear until an arm comes round, at the turn that a sine gives", () => {
    // The wheel turns anticlockwise by 36° a turn of the input; the arm at −50° has its edge at 30 sin Δ − 1.5 from the pillar's axis.
    const [found] = gapsOf(slow(-50), "b", "P");
    expect(found?.severity).toBe("foul");
    const before = (Math.asin((1.5 + 2) / 30) * 180) / Math.PI;
    expect(Math.abs((found?.when?.turns ?? 0) - (50 - before) / 36)).toBeLessThan(1e-4);
    expect(found?.when?.every).toBe("10");
    expect(Math.abs((found?.when?.nearest.turns ?? 0) - 50 / 36)).toBeLessThan(1e-2);
    // Where the two middles meet, half the arm and half the pillar are the least shift to either side.
    expect(Math.abs((found?.when?.nearest.gap ?? 0) + 3.5)).toBeLessThan(0.001);
    expect(Math.hypot((found?.at?.x ?? 0) - 96, found?.at?.y ?? 9)).toBeLessThan(0.01);
  });

  it("[MOVE10] without an angle the wheel is solid at every turn, and the finding says what would settle it", () => {
    const [found] = gapsOf(slow(), "b", "P");
    expect(found?.severity).toBe("foul");
    expect(found?.when).toBeNull();
    expect(found?.says).toContain("give its crossings an angle");
    expect(gapsOf(slow(0), "b", "P")[0]?.says).not.toContain("give its crossings an angle");
  });

  it("[MOVE10] what turns with the wheel in its crossings is free, and what turns otherwise meets an arm", () => {
    const pins = (teeth: number) => instrumentOf([
      arbor("A", 0, [wheel("a", 40, 2), crossed("b", 100, 10, 0)]), arbor("M", 40, [wheel("m1", 40, 2), wheel("m2", 40, 5)]),
      { id: "E", diameter: 4, foot: 4, head: 28, bore: 2.1, parts: [wheel("e", teeth, 5), { id: "p", kind: "pin", radius: 25, angle: 45, diameter: 3, z: 6, thickness: 8 }], rides: { on: "A", radius: 0, angle: 0 } },
    ], [{ driver: "a", driven: "m1" }, { driver: "m2", driven: "e" }]);
    expect(gapsOf(pins(40), "p", "b")).toEqual([]);
    const [found] = gapsOf(pins(41), "p", "b");
    expect(found?.severity).toBe("foul");
    // Once round against one another in 41 turns, from 45° to the edge of an arm.
    expect(found?.when?.every).toBe("41");
    // The bore leaves 0.1, of which half is lost.
    const before = (Math.asin((1.5 + 1.5 + 0.05) / 25) * 180) / Math.PI;
    expect(Math.abs((found?.when?.turns ?? 0) - (41 * (45 - before)) / 360)).toBeLessThan(1e-3);
  });

  it("[MOVE10] [FOLLOW1] no gap changes faster than the slopes that the search trusts", () => {
    const instrument = instrumentOf([arbor("A", 0, [wheel("a", 50, 2), { id: "p", kind: "pin", radius: 20, angle: 0, diameter: 2, z: 9, thickness: 4 }, { id: "m", kind: "arm", length: 40, width: 3, angle: 70, z: 10, thickness: 1 }]),
      arbor("B", 76, [wheel("b", 101, 2), { id: "c", kind: "wheel", teeth: 120, z: 10, thickness: 2, crossings: { arms: 5, rim: 2, arm: 3, hub: 8, angle: 17 } }])], [{ driver: "a", driven: "b" }],
    { pillars: [{ id: "P", x: 50, y: 10, diameter: 4, from: 0, to: 30 }] });
    const movement = workOut(instrument), uneven = unevenOf(movement), scene = sceneOf(movement);
    const spins = gapsOfScene(scene).pairs.flatMap(({ a, b, verdict }) => spinOf(movement, uneven, a, verdict.cylinders[0], b, verdict.cylinders[1]) ?? []).filter((s) => s.phases.length > 0);
    expect(spins.length).toBeGreaterThan(2);
    fc.assert(fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 1e-6, max: 1e-3, noNaN: true }), (at, by) => {
      for (const spin of spins) {
        const there = spin.phases.map(() => at), on = there.map((v) => v + by);
        const most = spin.slopes.reduce((sum, slope) => sum + slope * by, 0);
        expect(Math.abs(spin.gap(on) - spin.gap(there))).toBeLessThanOrEqual(most + 1e-9);
      }
    }), { numRuns: 400, seed: 11 });
  });

  it("[MOVE10] the arms that are drawn are the arms that are followed: an outside witness", async () => {
    const manifold = await Module();
    manifold.setup();
    const { Manifold, Mesh } = manifold;
    const instrument = slow(-50), movement = workOut(instrument);
    const drawn = meshOf(movement, "b");
    if (drawn === null) throw new Error("a wheel has a mesh");
    const vertProperties = new Float32Array(3 * drawn.corners);
    drawn.weld.forEach((corner, v) => vertProperties.set(drawn.positions.subarray(3 * v, 3 * v + 3), 3 * corner));
    const solid = Manifold.ofMesh(new Mesh({ numProp: 3, vertProperties, triVerts: drawn.indices.map((v) => drawn.weld[v] ?? 0) }));
    const pillar = Manifold.cylinder(30, 2, 2, 400).translate([96, 0, 0]);
    const shared = (turns: number): number => {
      const rad = (toothPhases(movement).get("b") ?? 0) + (poseAt(movement, turns)[5] ?? 0);
      return solid.rotate([0, 0, (rad * 180) / Math.PI]).translate([66, 0, 0]).intersect(pillar).volume();
    };
    const at = gapsOf(instrument, "b", "P")[0]?.when?.turns ?? 0;
    expect(shared(at - 0.002)).toBe(0);
    expect(shared(at + 0.002)).toBeGreaterThan(0);
  });
});

describe("squares, cotters and cut-away plates in motion", () => {
  it("[MOVE11] a square whose flats are told passes where its corners would not only while a flat faces", () => {
    const square = (angle?: number) => instrumentOf([arbor("A", 0, [{ id: "q", kind: "square", across: 6, taper: 0, z: 10, thickness: 5, ...(angle === undefined ? {} : { angle }) }])],
      [], { pillars: [{ id: "P", x: 5, y: 0, diameter: 2, from: 0, to: 30 }] });
    expect(gapsOf(square(), "q", "P")[0]?.when).toBeNull();
    const [found] = gapsOf(square(0), "q", "P");
    expect(found?.severity).toBe("foul");
    // A corner stands 3√2 out; the pillar's nearest is 4 from the axis: deepest when the corner faces it, an eighth of a turn on.
    expect(Math.abs((found?.gap ?? 0) - (4 - 3 * Math.SQRT2))).toBeLessThan(0.001);
    expect(Math.abs((found?.when?.nearest.turns ?? 0) - 0.125)).toBeLessThan(0.005);
    expect(found?.when?.every).toBe("1");
  });

  it("[MOVE11] a cotter through a square meets a neighbour's post by whichever end comes first", () => {
    // Drawn as a bar from end to end; the post stands where only its tail, 9 long, does not reach.
    const cotter = (x: number) => instrumentOf([arbor("A", 0, [{ id: "c", kind: "pointer", length: 12, tail: 9, width: 2, angle: 90, z: 10, thickness: 2 }])],
      [], { pillars: [{ id: "P", x, y: 0, diameter: 2, from: 0, to: 30 }] });
    const [near] = gapsOf(cotter(9.5), "c", "P"), [far] = gapsOf(cotter(12.5), "c", "P");
    expect(far?.severity).toBe("foul");
    // Clockwise, the tip comes to +x after a quarter of a turn, the tail after three.
    expect(far?.when?.turns ?? 9).toBeLessThan(0.25);
    expect(far?.when?.nearest.turns ?? 9).toBeLessThan(0.26);
    expect(near?.when?.turns ?? 9).toBeLessThan(0.25);
    const turned = gapsOf({ ...cotter(12.5), input: { arbor: "A", days: 1, sense: "anticlockwise" } }, "c", "P")[0];
    expect(turned?.when?.turns ?? 0).toBeGreaterThan(0.7);
  });

  it("[MOVE11] an arm that comes out over the cut-away of a plate is judged by the plate's own outline", () => {
    // An L of plate: the quarter towards +x, +y is cut away. The arm never leaves that quarter while it swings on a carried stud.
    const plate = { id: "cut", z: 10, thickness: 2, outline: { polygon: [[-40, -40], [40, -40], [40, -5], [-5, -5], [-5, 40], [-40, 40]] } } as const;
    const arms = (length: number) => instrumentOf([arbor("A", 30, [{ id: "m", kind: "arm", length, width: 2, angle: 0, z: 10, thickness: 2 }], { y: 30, diameter: 1 })], [], { plates: [plate] });
    // 35 to either edge of the cut-away; the arm's corner at its end is √(l² + 1) out.
    expect(gapsOf(arms(34), "m", "cut")).toEqual([]);
    const [found] = gapsOf(arms(36), "m", "cut");
    expect(found?.severity).toBe("foul");
    expect(Math.abs((found?.gap ?? 0) - (35 - Math.hypot(36, 1)))).toBeLessThan(0.001);
    // Clockwise from +x, first across the edge at y = −5 after a quarter of a turn less the arm's half angle.
    const cos = 35 / Math.hypot(36, 1), corner = Math.atan2(1, 36);
    expect(Math.abs((found?.when?.turns ?? 0) - (Math.PI / 2 - Math.acos(cos) - corner) / (2 * Math.PI))).toBeLessThan(1e-3);
  });

  it("[MOVE11] a pin through an opening of a plate is followed by the opening's own round", () => {
    const opened = (diameter: number) => instrumentOf([arbor("A", 0, [{ id: "p", kind: "pin", radius: 5, angle: 0, diameter: 2, z: 8, thickness: 6 }], { x: 2 })], [],
      { plates: [{ id: "front", z: 10, thickness: 2, outline: { circle: { diameter: 90 } }, openings: [{ x: 0, y: 0, diameter }] }] });
    // At the farthest the pin's outside stands 2 + 5 + 1 from the middle of the opening.
    expect(gapsOf(opened(17.2), "p", "front")).toEqual([]);
    const [found] = gapsOf(opened(15), "p", "front");
    expect(found?.severity).toBe("foul");
    expect(Math.abs((found?.gap ?? 0) + 0.5)).toBeLessThan(0.001);
  });
});
