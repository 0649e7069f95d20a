// An instrument with every kind of part, and every field that a kind may have, at least once, so that each can be looked for on its sheet.
import type { Instrument } from "../../geometry/instrument.ts";

/** Everything that may be told of teeth. */
const TEETH = { module: 0.7, form: "involute", pressureAngle: 14.5, shift: 0.21, thinning: 0.08, topping: 0.11, dedendum: 1.3 } as const;

export const everyKind: Instrument = {
  endshake: 1, name: "Trial of every part", gearing: { module: 0.6 },
  frame: {
    plates: [{ id: "back", z: -2, thickness: 2, outline: { circle: { diameter: 120 } } }, { id: "front", z: 30, thickness: 2, outline: { rectangle: { width: 150, height: 100 } }, openings: [{ x: 0, y: 0, diameter: 12 }] }],
    pillars: [{ id: "P1p", x: 50, y: 0, diameter: 8, from: 0, to: 30 }], case: { insideDiameter: 130, floor: -10, rim: 40, wall: 2 },
  },
  arbors: [
    { id: "A", x: 0, y: 0, diameter: 3, foot: -2, head: 44, pivots: { foot: { diameter: 1.2, length: 2.1, plate: "back" } }, parts: [
      { id: "W1", kind: "wheel", teeth: 48, z: 3, thickness: 1.4, crossings: { arms: 5, rim: 1.8, arm: 2, hub: 10, angle: 23.7 }, join: { by: "silver solder", order: 1 } },
      { id: "K1", kind: "collet", diameter: 7, z: 2.2, thickness: 3, join: { by: "soft solder", order: 2 } }, { id: "N1", kind: "pin", radius: 6, angle: 30, diameter: 1.5, z: 4.4, thickness: 3 },
      { id: "S1", kind: "square", across: 2.2, taper: 1, z: 36, thickness: 8, slot: { width: 0.8, height: 1.2 }, angle: 41 }, { id: "H1", kind: "pointer", length: 25, tail: 8, width: 3, angle: 90, z: 33, thickness: 0.8 },
    ] },
    { id: "B", x: -20, y: 0, diameter: 3, foot: -2, head: 32, pivots: { foot: { diameter: 1.2, length: 2.1, plate: "back" }, head: { diameter: 1.2, length: 2.1, plate: "front" } }, parts: [
      { id: "P1", kind: "pinion", leaves: 12, shift: 0.3, z: 2, thickness: 4 }, { id: "L1", kind: "lantern", trundles: 10, trundleDiameter: 1, module: 1, shroudDiameter: 12, z: 8, thickness: 5 },
      { id: "G1", kind: "ratchet", teeth: 24, diameter: 16, depth: 1.2, z: 15, thickness: 2 }, { id: "P2", kind: "pinion", leaves: 14, ...TEETH, z: 23, thickness: 3 }, { id: "D1", kind: "disc", diameter: 20, windows: [{ radius: 6, angle: 45, diameter: 3 }], z: 20, thickness: 1 },
    ] },
    { id: "C", x: 0, y: 38, diameter: 3, foot: -2, head: 32, pivots: { foot: { diameter: 1.2, length: 2.1, plate: "back" }, head: { diameter: 1.2, length: 2.1, plate: "front" } }, parts: [
      { id: "T1", kind: "slot", diameter: 18, radius: 5, angle: 60, length: 6, width: 1.6, z: 6, thickness: 1 }, { id: "M1", kind: "arm", length: 22, width: 4, angle: 15, z: 12, thickness: 2 },
      { id: "W2", kind: "wheel", teeth: 33, ...TEETH, z: 23, thickness: 1.6 }, { id: "P3", kind: "pinion", leaves: 44, internal: true, outsideDiameter: 31.5, z: 27, thickness: 2.2 },
      { id: "R1", kind: "wheel", teeth: 100, internal: true, outsideDiameter: 66, z: 18, thickness: 2 },
    ] },
    { id: "Q", diameter: 5, foot: 20, head: 29, rides: { on: "A", radius: 0, angle: 0 }, parts: [] },
  ],
  engagements: [{ driver: "W1", driven: "P1" }], input: { arbor: "A", days: 1, sense: "clockwise" },
  displays: [{ id: "hand", name: "Hand", arbor: "A", days: 1, divisions: 60 }],
};
