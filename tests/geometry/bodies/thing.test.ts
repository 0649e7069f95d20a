import { describe, expect, it } from "vitest";
import { radiusOf, thingsOf, type Cylinder, type Thing } from "../../../geometry/bodies/thing.ts";
import type { Instrument, Part } from "../../../geometry/instrument.ts";
import { arborOf, collet, handmade, instrumentOf } from "../../fixtures/handmade.ts";

const things = (given: Partial<Instrument>) => thingsOf(handmade(instrumentOf(given)));
const one = (list: readonly Thing[], id: string) => list.find((t) => t.id === id)!;
const part = (p: object): Cylinder =>
  one(things({ arbors: [arborOf("A", 0, 0, { parts: [{ id: "p", z: 3, thickness: 2, ...p } as Part] })] }), "p").cylinders[0]!;

describe("what a thing sweeps about its axis", () => {
  it("[BODY1] an arbor: half its diameter between the shoulders, half each pivot's beyond them, foot to head", () => {
    const pivots = { foot: { diameter: 1, length: 3, plate: "back" }, head: { diameter: 0.8, length: 2, plate: "front" } };
    const plates = ["back", "front"].map((id, i) => ({ id, z: i * 20 - 2, thickness: 2, outline: { circle: { diameter: 80 } } }));
    const [arbor] = things({ frame: { plates, pillars: [] }, arbors: [arborOf("A", 0, 0, { diameter: 4, pivots })] });
    expect(arbor!.cylinders).toEqual([
      { radius: 0.5, inner: 0, z0: 0, z1: 3 }, { radius: 2, inner: 0, z0: 3, z1: 18 }, { radius: 0.4, inner: 0, z0: 18, z1: 20 },
    ]);
  });

  it("[BODY1] an arbor without pivots is one cylinder, and one that is all pivot keeps no body between", () => {
    expect(things({ arbors: [arborOf("A", 0, 0)] })[0]!.cylinders).toEqual([{ radius: 1, inner: 0, z0: 0, z1: 20 }]);
    const pivots = { foot: { diameter: 1, length: 20, plate: "back" } };
    const plates = [{ id: "back", z: -2, thickness: 2, outline: { circle: { diameter: 80 } } }];
    expect(things({ frame: { plates, pillars: [] }, arbors: [arborOf("A", 0, 0, { pivots })] })[0]!.cylinders)
      .toEqual([{ radius: 0.5, inner: 0, z0: 0, z1: 20 }]);
  });

  it("[BODY2] toothed parts sweep their tip radius, an annulus from its tips to half its outside diameter", () => {
    expect(part({ kind: "wheel", teeth: 40, module: 0.5 }).radius).toBeCloseTo(0.5 * 21, 12);
    expect(part({ kind: "pinion", leaves: 10, module: 0.5, shift: 0.4, topping: 0.1 }).radius).toBeCloseTo(0.5 * (5 + 1 + 0.3), 12);
    const annulus = part({ kind: "wheel", teeth: 60, internal: true, outsideDiameter: 70, shift: 0.2, topping: 0.1 });
    expect(annulus.inner).toBeCloseTo(30 - 1 + 0.3, 12);
    expect(annulus.radius).toBe(35);
    expect(part({ kind: "pinion", leaves: 8, form: "cycloidal" }).radius).toBeCloseTo(4 + 0.855, 12);
    expect(part({ kind: "wheel", teeth: 60, form: "cycloidal" }).radius).toBeCloseTo(30 + 1.38, 12);
    expect(part({ kind: "wheel", teeth: 60, form: "straight" }).radius).toBeCloseTo(31, 12);
  });

  it("[BODY2] a lantern sweeps half its shrouds, else trundle circle and half a trundle", () => {
    expect(part({ kind: "lantern", trundles: 10, trundleDiameter: 1.2 }).radius).toBeCloseTo(5.6, 12);
    expect(part({ kind: "lantern", trundles: 10, trundleDiameter: 1.2, shroudDiameter: 14 }).radius).toBe(7);
  });

  it("[BODY3] collet, disc, slot and ratchet half their diameter; a pin as far as its outer side; a square its corners", () => {
    for (const kind of ["collet", "disc"]) expect(part({ kind, diameter: 9 }).radius).toBe(4.5);
    expect(part({ kind: "slot", diameter: 9, radius: 3, angle: 0, length: 2, width: 1 }).radius).toBe(4.5);
    expect(part({ kind: "ratchet", diameter: 9, teeth: 20, depth: 1 }).radius).toBe(4.5);
    expect(part({ kind: "pin", radius: 6, angle: 40, diameter: 1 }).radius).toBe(6.5);
    expect(part({ kind: "square", across: 4, taper: 1 }).radius).toBeCloseTo(2 * Math.SQRT2, 12);
  });

  it("[BODY3] a pointer its longer end's corners, an arm its own", () => {
    expect(part({ kind: "pointer", length: 12, tail: 4, width: 10, angle: 0 }).radius).toBe(13);
    expect(part({ kind: "pointer", length: 3, tail: 12, width: 10, angle: 0 }).radius).toBe(13);
    expect(part({ kind: "arm", length: 12, width: 10, angle: 0 }).radius).toBe(13);
  });

  it("[BODY4] a part in the hand is taken as measured: tip diameter, thickness, run-out and wobble", () => {
    const measured = { tipDiameter: 41, thickness: 2.5, runout: 0.1, wobble: 0.2 };
    const [, wheel] = things({ arbors: [arborOf("A", 0, 0, { parts: [{ id: "w", kind: "wheel", teeth: 40, z: 3, thickness: 2, measured }] })] });
    expect(wheel).toMatchObject({ runoutMm: 0.1, wobbleMm: 0.2, cylinders: [{ radius: 20.5, z0: 3, z1: 5.5 }] });
  });

  it("[BODY5] run-out belongs to wheels, pinions, lanterns and ratchets, wobble to every part but a pin", () => {
    const parts = [
      { id: "wheel", kind: "wheel", teeth: 40 }, { id: "pinion", kind: "pinion", leaves: 8 },
      { id: "lantern", kind: "lantern", trundles: 8, trundleDiameter: 1 }, { id: "ratchet", kind: "ratchet", teeth: 20, diameter: 9, depth: 1 },
      { id: "collet", kind: "collet", diameter: 5 }, { id: "pin", kind: "pin", radius: 4, angle: 0, diameter: 1 },
      { id: "pointer", kind: "pointer", length: 9, tail: 2, width: 1, angle: 0 },
    ].map((p) => ({ z: 1, thickness: 1, ...p }) as Part);
    const list = things({ arbors: [arborOf("A", 0, 0, { parts })], practice: { runout: 0.015, wobble: 0.05 } });
    expect(list.filter((t) => t.runoutMm === 0.015).map((t) => t.id)).toEqual(["wheel", "pinion", "lantern", "ratchet"]);
    expect(list.filter((t) => t.runoutMm !== 0 && t.runoutMm !== 0.015)).toEqual([]);
    expect(list.filter((t) => t.wobbleMm === 0).map((t) => t.id)).toEqual(["A", "pin"]);
  });

  it("[BODY6] an arbor with its parts is one body; plates, pillars, case and fixed arbors that do not ride are the frame", () => {
    const frame = {
      plates: [{ id: "back", z: -2, thickness: 2, outline: { circle: { diameter: 80 } } }],
      pillars: [{ id: "P1", x: 9, y: 9, diameter: 5, from: 0, to: 20 }],
      case: { insideDiameter: 100, floor: -10, rim: 30, wall: 2 },
    };
    const list = things({ frame, arbors: [
      arborOf("A", 0, 0, { parts: [collet("a", 1, 1, 5)] }), arborOf("post", 20, 0, { fixed: true, parts: [collet("b", 1, 1, 5)] }),
      arborOf("rider", 0, 0, { fixed: true, rides: { on: "A", radius: 0, angle: 0 } }),
    ] });
    expect(list.map((t) => [t.id, t.body])).toEqual([
      ["A", 0], ["a", 0], ["post", -1], ["b", -1], ["rider", 2], ["back", -1], ["P1", -1], ["case", -1],
    ]);
  });

  it("[BODY7] the case is a wall from floor to rim, and a bottom as thick as the wall", () => {
    const frame = { plates: [], pillars: [], case: { insideDiameter: 100, floor: -10, rim: 30, wall: 2 } };
    expect(one(things({ frame }), "case").cylinders).toEqual([
      { radius: 52, inner: 50, z0: -10, z1: 30 }, { radius: 52, inner: 0, z0: -12, z1: -10 },
    ]);
  });

  it("[BODY3] nothing sweeps less than it is: the radius of a thing is that of its widest cylinder", () => {
    const pivots = { head: { diameter: 6, length: 2, plate: "front" } };
    const plates = [{ id: "front", z: 18, thickness: 2, outline: { circle: { diameter: 80 } } }];
    expect(radiusOf(things({ frame: { plates, pillars: [] }, arbors: [arborOf("A", 0, 0, { pivots })] })[0]!)).toBeCloseTo(3, 12);
  });
});
