import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { motionOf } from "../../../geometry/motion/motion.ts";
import { poseInto } from "../../../geometry/motion/pose.ts";
import { toothPhases } from "../../../geometry/motion/tooth-phases.ts";
import type { Instrument, Part } from "../../../geometry/instrument.ts";
import type { Movement } from "../../../geometry/movement.ts";
import { ratio, ZERO } from "../../../geometry/numeric/ratio.ts";
import { placed, type Outline } from "../../../geometry/planar/outline.ts";
import { formOf } from "../../../geometry/teeth/forms.ts";
import { workOut } from "../../../geometry/workout.ts";
import { lantern, pairStand, pinion, stand, wheel } from "../depth/stand.ts";

/** The drawn outlines of a part at a turn: one, or for a lantern one for each trundle. */
function outlinesAt(movement: Movement, partId: string, pose: Float64Array, phases: ReadonlyMap<string, number>): Outline[] {
  const teeth = movement.teeth.get(partId), at = movement.partIndex.get(partId);
  if (teeth === undefined || at === undefined) throw new Error(`no teeth on ${partId}`);
  const i = 3 * at.arbor, angle = (pose[i + 2] ?? 0) + (phases.get(partId) ?? 0);
  if (teeth.form !== "lantern") return [placed(formOf(teeth).outline(teeth, 0.005), angle, pose[i] ?? 0, pose[i + 1] ?? 0)];
  const pitch = (teeth.module * teeth.count) / 2, r = teeth.trundleDiameter / 2;
  const trundle = Float64Array.from({ length: 120 }, (_, k) => (k % 2 ? r * Math.sin((Math.PI * (k - 1)) / 60) : pitch + r * Math.cos((Math.PI * k) / 60)));
  return Array.from({ length: teeth.count }, (_, k) => placed(trundle, angle + (2 * Math.PI * k) / teeth.count, pose[i] ?? 0, pose[i + 1] ?? 0));
}

/** Whether two closed outlines cross: every edge of one against every edge of the other, where boxes touch. */
function cross(a: Outline, b: Outline): boolean {
  for (let i = 0, j = a.length - 2; i < a.length; j = i, i += 2)
    for (let k = 0, l = b.length - 2; k < b.length; l = k, k += 2) {
      const [ax, ay, bx, by, cx, cy, dx, dy] = [a[j]!, a[j + 1]!, a[i]!, a[i + 1]!, b[l]!, b[l + 1]!, b[k]!, b[k + 1]!];
      if (Math.max(ax, bx) < Math.min(cx, dx) || Math.max(cx, dx) < Math.min(ax, bx)) continue;
      if (Math.max(ay, by) < Math.min(cy, dy) || Math.max(cy, dy) < Math.min(ay, by)) continue;
      const side = (px: number, py: number, qx: number, qy: number, rx: number, ry: number) => (qx - px) * (ry - py) - (qy - py) * (rx - px);
      if (side(ax, ay, bx, by, cx, cy) * side(ax, ay, bx, by, dx, dy) < 0 && side(cx, cy, dx, dy, ax, ay) * side(cx, cy, dx, dy, bx, by) < 0) return true;
    }
  return false;
}

/** Pairs whose drawn teeth overlap at any of the turns. */
function overlaps(movement: Movement, turns: readonly number[], phases = toothPhases(movement)): string[] {
  const pose = new Float64Array(3 * movement.arbors.length), motion = motionOf(movement), found: string[] = [];
  for (const t of turns) {
    poseInto(pose, motion, t);
    for (const e of movement.engagements) {
      const one = outlinesAt(movement, e.driver.id, pose, phases), other = outlinesAt(movement, e.driven.id, pose, phases);
      if (one.some((a) => other.some((b) => cross(a, b)))) found.push(`${e.id} at ${t}`);
    }
  }
  return found;
}

const TURNS = [0, 0.003, 0.011, 0.017, 0.31, 7.773];
const geared = (movement: Movement, rates: readonly [string, number, number][]): Movement => ({
  ...movement, arbors: movement.arbors.map((a) => {
    const given = rates.find(([id]) => id === a.id);
    return given === undefined ? a : { ...a, rate: given[1] === 0 ? ZERO : ratio(given[1], given[2]) };
  }),
});

describe("teeth as drawn", () => {
  const pairs: readonly (readonly [string, Part, Part])[] = [
    ["involute", wheel("w", 40), pinion("p", 12, { shift: 0.3 })],
    ["involute of even and odd counts", wheel("w", 33), wheel("p", 27)],
    ["cycloidal", wheel("w", 60, { form: "cycloidal" }), pinion("p", 8, { form: "cycloidal" })],
    ["straight", wheel("w", 30, { form: "straight", thinning: 0.3 }), wheel("p", 24, { form: "straight", thinning: 0.3 })],
    ["lantern", wheel("w", 48, { form: "cycloidal" }), lantern("p", 8, 1.2)],
  ];
  for (const [name, driver, driven] of pairs)
    it(`[MOTION7] stand in mesh without overlap at every turn: ${name}`, () => {
      const bare = pairStand(driver, driven);
      const count = (x: Part) => (x.kind === "wheel" ? x.teeth : x.kind === "pinion" ? x.leaves : x.kind === "lantern" ? x.trundles : 1);
      const movement = geared(bare, [["B", -count(driver), count(driven)]]);
      expect(overlaps(movement, TURNS)).toEqual([]);
    });

  it("[MOTION7] overlap where a part is turned half a tooth, so that the check itself can fail", () => {
    const movement = geared(pairStand(wheel("w", 40), wheel("p", 30)), [["B", -40, 30]]);
    const spoiled = new Map(toothPhases(movement));
    spoiled.set("p", (spoiled.get("p") ?? 0) + Math.PI / 30);
    expect(overlaps(movement, [0], spoiled)).toHaveLength(1);
  });

  it("[MOTION7] an annulus is met on the side away from its centre", () => {
    const movement = geared(pairStand(pinion("p", 18), wheel("w", 60, { internal: true, outsideDiameter: 66 })), [["B", 18, 60]]);
    expect(overlaps(movement, TURNS)).toEqual([]);
  });

  /** A sun of 24, three planets of 18, an annulus of 60: (24 + 60) / 3 is whole, so that equal thirds go together. */
  const planets = (angles: readonly number[]): Movement => {
    const at = (deg: number) => ({ x: 21 * Math.cos((deg * Math.PI) / 180), y: 21 * Math.sin((deg * Math.PI) / 180) });
    const bare = stand({
      arbors: [
        { id: "carrier", x: 0, y: 0, parts: [] }, { id: "sun", x: 0, y: 0, fixed: true, parts: [wheel("s", 24)] },
        ...angles.map((deg, k) => ({ id: `planet${k}`, ...at(deg), parts: [wheel(`p${k}`, 18)] })),
        { id: "ring", x: 0, y: 0, parts: [wheel("a", 60, { internal: true, outsideDiameter: 68 })] },
      ],
      engagements: angles.flatMap((_, k) => [{ driver: "s", driven: `p${k}` }, { driver: `p${k}`, driven: "a" }]),
      carriers: Object.fromEntries(angles.map((_, k) => [`planet${k}`, "carrier"])), carrier: "carrier",
    });
    return geared(bare, [["sun", 0, 1], ...angles.map((_, k): [string, number, number] => [`planet${k}`, 42, 18]), ["ring", 84, 60]]);
  };
  it("[MOTION7] three planets between a fixed sun and an annulus stay in mesh all the way round", () => {
    expect(overlaps(planets([0, 120, 240]), [0, 0.1, 0.37, 5.21])).toEqual([]);
  });
  for (const name of ["estuary-dial", "going-train", "small-tellurian"])
    it(`[MOTION7] stand in mesh in the whole of an example: ${name}`, () => {
      const file = resolve(import.meta.dirname, `../../../public/instruments/${name}.instrument.json`);
      expect(overlaps(workOut(JSON.parse(readFileSync(file, "utf8")) as Instrument), [0, 3.377])).toEqual([]);
    });

  it("[MOTION5] [MOTION7] stay in mesh behind a pin and slot that is carried round", () => {
    // A lunar inequality for the tide: a fixed sun, a pin on the planet, its slot 1.1 aside on the same carrier, and a
    // wheel of the slot's arbor that drives a pipe in the middle.
    const lengths = { diameter: 3, foot: 0, head: 40 };
    const instrument: Instrument = {
      endshake: 1, name: "inequality of the tide", frame: { plates: [], pillars: [] }, input: { arbor: "C", days: 1, sense: "clockwise" },
      arbors: [
        { id: "C", x: 5, y: -3, ...lengths, parts: [] },
        { id: "sun", x: 5, y: -3, ...lengths, fixed: true, parts: [wheel("sun1", 50)] },
        { id: "P", ...lengths, rides: { on: "C", radius: 35, angle: 30 }, parts: [wheel("P1", 20), { id: "p", kind: "pin", z: 5, thickness: 3, radius: 8, angle: 70, diameter: 1 }] },
        { id: "S", ...lengths, rides: { on: "C", radius: 36.1, angle: 30 }, parts: [wheel("S1", 40), { id: "s", kind: "slot", z: 6, thickness: 1, diameter: 24, radius: 8, angle: 70, length: 5, width: 1.1 }] },
        { id: "T", ...lengths, rides: { on: "C", radius: 0, angle: 0 }, bore: 3.1, diameter: 6, parts: [wheel("T1", 32)] },
      ],
      engagements: [{ driver: "sun1", driven: "P1" }, { driver: "S1", driven: "T1", ease: 0.1 }],
      couplings: [{ kind: "pin and slot", driver: "p", driven: "s" }],
    };
    const movement = workOut(instrument);
    expect(movement.binds).toEqual([]);
    expect(overlaps(movement, [0, 0.07, 0.19, 0.34, 0.52, 0.81, 1000.43])).toEqual([]);
    // Were the unevenness left out, the pipe would stand elsewhere: the check is not idle.
    const pipeAt = (m: Movement, t: number): number => { const out = new Float64Array(15); poseInto(out, motionOf(m), t); return out[14] ?? NaN; };
    const even = { ...movement, instrument: { ...instrument, couplings: [] } };
    expect(Math.max(...[0.07, 0.19, 0.34].map((t) => Math.abs(pipeAt(movement, t) - pipeAt(even, t))))).toBeGreaterThan(0.1);
  });

  it("[MOTION8] what a ring is out by is shared among its engagements: a quarter pitch over is nowhere worse than half of that", () => {
    const movement = planets([0, 120, 243]);
    const phases = toothPhases(movement);
    const misses = movement.engagements.map((e) => {
      const [d, n] = [e.driverArbor, e.drivenArbor].map((i) => movement.arbors[i]);
      const inside = e.driven.kind === "wheel" && e.driven.internal === true;
      const ahead = Math.atan2((n?.y ?? 0) - (d?.y ?? 0), (n?.x ?? 0) - (d?.x ?? 0));
      const meets = inside ? ahead + Math.PI : ahead;
      const u = ((meets - (phases.get(e.driver.id) ?? 0)) * (e.driver.kind === "wheel" ? e.driver.teeth : 0)) / (2 * Math.PI);
      const v = (((inside ? meets : meets + Math.PI) - (phases.get(e.driven.id) ?? 0)) * (e.driven.kind === "wheel" ? e.driven.teeth : 0)) / (2 * Math.PI);
      const past = inside ? u - v - 0.5 : u + v - 0.5;
      return Math.abs(past - Math.round(past));
    });
    // 3° of 84 teeth is 0.7 pitch: 0.3 short of the next.
    const out = 0.3;
    expect(Math.max(...misses)).toBeLessThan(out / 2);
    expect(Math.max(...misses)).toBeGreaterThan(out / 8);
  });
});
