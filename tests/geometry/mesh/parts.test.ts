import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part } from "../../../geometry/instrument.ts";
import type { Movement } from "../../../geometry/movement.ts";
import { pillarMesh, pillarProfile } from "../../../geometry/mesh/frame.ts";
import { handOutline } from "../../../geometry/mesh/hand.ts";
import { faultsOfMesh } from "../../../geometry/mesh/faults.ts";
import type { Mesh } from "../../../geometry/mesh/mesh.ts";
import { meshOf, meshTextOf, thingsOf } from "../../../geometry/mesh/things.ts";
import { volumeMmCu } from "../../../geometry/mesh/measures.ts";
import { signedAreaMmSq } from "../../../geometry/planar/outline.ts";
import { formOf, tipRadiusOf } from "../../../geometry/teeth/forms.ts";
import { stand } from "../depth/stand.ts";
import { harbour } from "./harbour.ts";

const part = (p: object): Part => ({ z: 2, thickness: 3, ...p }) as Part;
/** One part on an arbor of 4 mm that reaches from −5 to 20. */
const alone = (p: object, arbor: object = {}): Movement => stand({ arbors: [{ id: "A", x: 0, y: 0, diameter: 4, foot: -5, head: 20, parts: [part(p)], ...arbor }], engagements: [] });
const volume = (p: object, arbor: object = {}): number => {
  const mesh = meshOf(alone({ id: "part", ...p }, arbor), "part", { chordMm: 1e-4 });
  if (mesh === null) throw new Error("no mesh");
  expect(faultsOfMesh(mesh)).toEqual([]);
  return volumeMmCu(mesh);
};
/** Chords of 1e-4 mm take no more than this share of a solid a few mm across. */
const SHARE = 3e-4;
const near = (got: number, wanted: number): void => expect(Math.abs(got - wanted)).toBeLessThan(SHARE * wanted);

const radii = (mesh: Mesh): number => {
  let most = 0;
  for (let i = 0; i < mesh.positions.length; i += 3) most = Math.max(most, Math.hypot(mesh.positions[i] ?? 0, mesh.positions[i + 1] ?? 0));
  return most;
};
const reach = (mesh: Mesh): [number, number] => {
  const z = mesh.positions.filter((_, i) => i % 3 === 2);
  return [Math.min(...z), Math.max(...z)];
};

describe("volumes of parts by closed forms", () => {
  const bore = Math.PI * 4;
  it("[MESH2] collet, disc with windows, pin", () => {
    near(volume({ kind: "collet", diameter: 9 }), 3 * (Math.PI * 4.5 ** 2 - bore));
    near(volume({ kind: "disc", diameter: 30, windows: [{ radius: 9, angle: 10, diameter: 5 }, { radius: 9, angle: 190, diameter: 3 }] }),
      3 * Math.PI * (225 - 4 - 2.5 ** 2 - 1.5 ** 2));
    near(volume({ kind: "pin", radius: 7, angle: 33, diameter: 2 }), 3 * Math.PI);
  });
  it("[MESH2] slot disc: a round-ended slot from end to end", () => {
    near(volume({ kind: "slot", diameter: 30, radius: 9, angle: 77, length: 8, width: 2 }), 3 * (Math.PI * 225 - bore - (6 * 2 + Math.PI)));
  });
  it("[MESH2] [MESH7] arm: a bar from its axis, round about it", () => {
    near(volume({ kind: "arm", length: 20, width: 6, angle: 130 }), 3 * (20 * 6 + (Math.PI * 9) / 2 - bore));
    near(volume({ kind: "arm", length: 20, width: 3, angle: 130 }), 3 * (20 * 3 + (Math.PI * 1.5 ** 2) / 2));
  });
  it("[MESH2] ratchet: its outline is a triangle pair a tooth", () => {
    const n = 20, tip = 10, root = 8.5, rake = (0.06 * 2 * Math.PI) / n, pitch = (2 * Math.PI) / n;
    // Steep face from tip back under itself, then the slow rise to the next tip.
    const area = (n / 2) * (-tip * root * Math.sin(rake) + root * tip * Math.sin(pitch + rake));
    for (const passes of ["clockwise", "anticlockwise"] as const) {
      const movement = alone({ id: "part", kind: "ratchet", teeth: n, diameter: 20, depth: 1.5 });
      const instrument = { ...movement.instrument, couplings: [{ kind: "click" as const, ratchet: "part", on: "A", passes }] };
      const mesh = meshOf({ ...movement, instrument }, "part", { chordMm: 1e-4 });
      near(mesh === null ? 0 : volumeMmCu(mesh), 3 * (area - bore));
    }
  });
  it("[MESH2] square: a frustum, with its slot taken out", () => {
    const frustum = (a: number, b: number, h: number) => (h * (a * a + b * b + a * b)) / 3;
    const narrow = 6 - 2 * 3 * Math.tan((2 * Math.PI) / 180);
    near(volume({ kind: "square", z: 14, across: 6, taper: 2 }), frustum(6, narrow, 3));
    near(volume({ kind: "square", z: -3, across: 6, taper: 2 }), frustum(6, narrow, 3));
    const middle = (6 + narrow) / 2;
    near(volume({ kind: "square", z: 14, across: 6, taper: 2, slot: { width: 2, height: 1 } }), frustum(6, narrow, 3) - 2 * 1 * middle);
  });
  it("[MESH2] wheel, annulus: the area inside the outline, less the bore, or the ring outside it", () => {
    const wheel = alone({ id: "part", kind: "wheel", teeth: 48 }), teeth = wheel.teeth.get("part");
    if (teeth === undefined) throw new Error("no teeth");
    const area = signedAreaMmSq(formOf(teeth).outline(teeth, 1e-4));
    near(volume({ kind: "wheel", teeth: 48 }), 3 * (area - bore));
    const hole = { ...teeth, internal: true }, holeArea = signedAreaMmSq(formOf(hole).outline(hole, 1e-4));
    near(volume({ kind: "wheel", teeth: 48, internal: true, outsideDiameter: 60 }), 3 * (Math.PI * 900 - holeArea));
  });
  it("[MESH2] lantern: two shrouds and the trundles between them", () => {
    const shroud = 0.45;
    near(volume({ kind: "lantern", trundles: 8, trundleDiameter: 1.2, shroudDiameter: 11 }),
      2 * shroud * (Math.PI * 5.5 ** 2 - bore) + 8 * Math.PI * 0.6 ** 2 * (3 - 2 * shroud));
  });
  it("[MESH2] an arbor with pivots; a pipe; an arbor broken by a square", () => {
    const pivots = { foot: { diameter: 2, length: 3, plate: "x" }, head: { diameter: 1, length: 2, plate: "y" } };
    const solid = (movement: Movement) => { const m = meshOf(movement, "A", { chordMm: 1e-4 }); return m === null ? 0 : volumeMmCu(m); };
    near(solid(alone({ id: "p", kind: "collet", diameter: 6 }, { pivots })), Math.PI * (3 + 0.25 * 2 + 4 * 20));
    near(solid(alone({ id: "p", kind: "collet", diameter: 6 }, { bore: 3 })), Math.PI * 25 * (4 - 2.25));
    near(solid(alone({ id: "p", kind: "square", across: 3.5, taper: 0 })), Math.PI * 4 * (25 - 3));
  });
  it("[MESH2] [MESH7] a pillar has the volume of its profile and is nowhere wider than its diameter", () => {
    const pillar = { id: "P", x: 0, y: 0, diameter: 9, from: 1, to: 39 };
    const { points } = pillarProfile(pillar, 1e-4);
    // Pappus, cone by cone.
    let wanted = 0;
    for (let i = 1; i < points.length; i++) {
      const [r0, z0] = points[i - 1]!, [r1, z1] = points[i]!;
      wanted += (Math.PI * (z1 - z0) * (r0 * r0 + r0 * r1 + r1 * r1)) / 3;
    }
    near(volumeMmCu(pillarMesh(pillar, 1e-4)), wanted);
    expect(Math.max(...points.map((p) => p[0]))).toBe(4.5);
    expect(reach(pillarMesh(pillar, 0.01))).toEqual([1, 39]);
  });
});

describe("what is drawn", () => {
  it("[MESH7] keeps within the solid that the thing sweeps, in plan and in height", () => {
    const movement = harbour();
    const swept = (p: Part): number => {
      switch (p.kind) {
        case "wheel": case "pinion": case "lantern": {
          const teeth = movement.teeth.get(p.id);
          if (teeth === undefined) return NaN;
          return p.kind !== "lantern" && p.internal === true ? (p.outsideDiameter ?? 0) / 2 : tipRadiusOf(p, teeth);
        }
        case "pointer": case "arm": return Math.hypot(Math.max(p.length, p.kind === "pointer" ? p.tail : 0), p.width / 2);
        case "pin": return p.radius + p.diameter / 2;
        case "square": return p.across / Math.SQRT2;
        default: return p.diameter / 2;
      }
    };
    for (const a of movement.arbors) for (const p of a.arbor.parts) {
      const mesh = meshOf(movement, p.id);
      if (mesh === null) throw new Error(`${p.id} has no mesh`);
      expect([p.id, radii(mesh) <= swept(p) + 1e-5]).toEqual([p.id, true]);
      const [low, high] = reach(mesh);
      expect([p.id, Math.abs(low - p.z) < 1e-5, Math.abs(high - p.z - p.thickness) < 1e-5]).toEqual([p.id, true, true]);
    }
  });
  it("[MESH7] a hand stays in its bar from tail to tip but for the round of its boss, and reaches both ends", () => {
    fc.assert(fc.property(fc.double({ min: 3, max: 90, noNaN: true }), fc.double({ min: 0, max: 30, noNaN: true }), fc.double({ min: 0.8, max: 12, noNaN: true }), (length, tail, width) => {
      const hand = handOutline(length, tail, width, 0.01);
      expect(signedAreaMmSq(hand)).toBeGreaterThan(0);
      const xs = hand.filter((_, i) => i % 2 === 0), ys = hand.filter((_, i) => i % 2 === 1);
      expect(Math.max(...ys)).toBeLessThanOrEqual(width / 2 + 1e-9);
      expect(Math.max(...xs)).toBeLessThanOrEqual(Math.max(length, width / 2) + 1e-9);
      expect(-Math.min(...xs)).toBeLessThanOrEqual(Math.max(tail, width / 2) + 1e-9);
      if (length > 0.75 * width) expect(Math.abs(Math.max(...xs) - length)).toBeLessThan(1e-9);
      if (tail > 1.1 * width) expect(Math.abs(Math.min(...xs) + tail)).toBeLessThan(1e-9);
    }), { seed: 5, numRuns: 300 });
  });
  it("[MESH1] every kind stays closed at odd sizes (seed 9)", () => {
    const size = fc.double({ min: 0.05, max: 60, noNaN: true }), angle = fc.double({ min: -400, max: 400, noNaN: true }), count = fc.integer({ min: 3, max: 60 });
    const kinds = fc.oneof(
      fc.record({ kind: fc.constant("collet"), diameter: size }),
      fc.record({ kind: fc.constant("pointer"), length: size, tail: size, width: size, angle }),
      fc.record({ kind: fc.constant("arm"), length: size, width: size, angle }),
      fc.record({ kind: fc.constant("disc"), diameter: size, windows: fc.array(fc.record({ radius: size, angle, diameter: size }), { maxLength: 6 }) }),
      fc.record({ kind: fc.constant("slot"), diameter: size, radius: size, angle, length: size, width: size }),
      fc.record({ kind: fc.constant("ratchet"), teeth: count, diameter: size, depth: size }),
      fc.record({ kind: fc.constant("square"), across: size, taper: fc.double({ min: 0, max: 80, noNaN: true }), slot: fc.record({ width: size, height: size }) }),
      fc.record({ kind: fc.constant("wheel"), teeth: count, module: fc.double({ min: 0.2, max: 3, noNaN: true }), form: fc.constantFrom("involute", "cycloidal", "straight"),
        internal: fc.boolean(), outsideDiameter: size, crossings: fc.record({ arms: fc.integer({ min: 2, max: 8 }), rim: size, arm: size, hub: size }) }),
      fc.record({ kind: fc.constant("pinion"), leaves: fc.integer({ min: 3, max: 20 }), module: fc.double({ min: 0.2, max: 3, noNaN: true }), form: fc.constantFrom("involute", "cycloidal", "straight") }),
      fc.record({ kind: fc.constant("lantern"), trundles: count, trundleDiameter: fc.double({ min: 0.1, max: 3, noNaN: true }), shroudDiameter: size }),
    );
    fc.assert(fc.property(kinds, size, fc.double({ min: 0.2, max: 20, noNaN: true }), fc.boolean(), (p, thickness, diameter, pipe) => {
      const movement = alone({ id: "part", z: 0, ...p, thickness }, { diameter, ...(pipe ? { bore: diameter / 2 } : {}) });
      const mesh = meshOf(movement, "part", { chordMm: 0.02 });
      expect(mesh === null ? ["no mesh"] : faultsOfMesh(mesh)).toEqual([]);
    }), { seed: 9, numRuns: 600 });
  });
  it("[MESH8] two things of one text have one mesh; another bore, another count or another sense of a ratchet gives another text", () => {
    const movement = alone({ id: "part", kind: "wheel", teeth: 48 });
    const text = meshTextOf(movement, "part");
    expect(meshTextOf(alone({ id: "part", kind: "wheel", teeth: 48, name: "tide", material: "brass" }), "part")).toBe(text);
    expect(meshTextOf(alone({ id: "part", kind: "wheel", teeth: 49 }), "part")).not.toBe(text);
    expect(meshTextOf(alone({ id: "part", kind: "wheel", teeth: 48 }, { diameter: 5 }), "part")).not.toBe(text);
    const whole = harbour();
    const texts = new Map<string, Mesh | null>();
    for (const { id } of thingsOf(whole)) {
      const t = meshTextOf(whole, id), known = texts.get(t), mesh = meshOf(whole, id);
      if (known !== undefined) expect(mesh).toEqual(known);
      texts.set(t, mesh);
    }
    expect(texts.size).toBe(thingsOf(whole).length);
  });
});
