// A movement with one of everything that can be drawn: the striking gear of a harbour's tide bell, invented.
import type { Part } from "../../../geometry/instrument.ts";
import type { Movement } from "../../../geometry/movement.ts";
import { stand, type Given } from "../depth/stand.ts";

const part = (p: object): Part => p as Part;

const ARBORS: readonly Given[] = [
  { id: "A", x: 0, y: 0, diameter: 4, foot: -2, head: 40, pivots: { foot: { diameter: 1.6, length: 2.2, plate: "back" }, head: { diameter: 1.2, length: 3, plate: "front" } }, parts: [
    part({ id: "A1", kind: "wheel", z: 3, thickness: 2, teeth: 60, module: 0.8, crossings: { arms: 5, rim: 2.5, arm: 2.2, hub: 4 } }),
    part({ id: "A2", kind: "pinion", z: 8, thickness: 5, leaves: 8, module: 0.8, form: "cycloidal" }),
    part({ id: "A3", kind: "collet", z: 5, thickness: 3, diameter: 8 }),
    part({ id: "A4", kind: "pin", z: 14, thickness: 6, radius: 6, angle: 40, diameter: 1.5 }),
    part({ id: "A5", kind: "arm", z: 14, thickness: 2, length: 12, width: 6, angle: 40 }),
    part({ id: "A6", kind: "square", z: 33, thickness: 5, across: 3, taper: 1.5, slot: { width: 1, height: 2 } }),
    part({ id: "A7", kind: "square", z: 22, thickness: 4, across: 2.8, taper: 0 }),
  ] },
  { id: "B", x: 30, y: 5, diameter: 3, foot: 0, head: 30, parts: [
    part({ id: "B1", kind: "wheel", z: 1, thickness: 3, teeth: 96, module: 0.5, form: "cycloidal" }),
    part({ id: "B2", kind: "lantern", z: 6, thickness: 8, trundles: 10, trundleDiameter: 1, module: 0.9, shroudDiameter: 12 }),
    part({ id: "B3", kind: "lantern", z: 16, thickness: 6, trundles: 8, trundleDiameter: 1, module: 0.9 }),
    part({ id: "B4", kind: "wheel", z: 24, thickness: 2, teeth: 72, module: 1, internal: true, outsideDiameter: 82 }),
  ] },
  { id: "C", x: 0, y: 0, diameter: 6, foot: 20, head: 38, bore: 4.04, rides: { on: "A", radius: 0, angle: 0 }, parts: [
    part({ id: "C1", kind: "pointer", z: 36, thickness: 1, length: 40, tail: 12, width: 9, angle: 90 }),
    part({ id: "C2", kind: "pointer", z: 34, thickness: 1, length: 22, tail: 0, width: 5, angle: -30 }),
    part({ id: "C3", kind: "disc", z: 30, thickness: 1, diameter: 50, windows: [{ radius: 15, angle: 0, diameter: 8 }, { radius: 15, angle: 120, diameter: 8 }, { radius: 25, angle: 60, diameter: 4 }] }),
    part({ id: "C4", kind: "slot", z: 27, thickness: 2, diameter: 30, radius: 9, angle: 20, length: 8, width: 1.6 }),
    part({ id: "C5", kind: "ratchet", z: 24, thickness: 2, teeth: 24, diameter: 20, depth: 1.5 }),
    part({ id: "C6", kind: "square", z: 21, thickness: 3, across: 7, taper: 2 }),
    part({ id: "C7", kind: "wheel", z: 20, thickness: 1, teeth: 40, form: "straight" }),
  ] },
  { id: "D", x: 12, y: 0, diameter: 2, foot: 10, head: 16, rides: { on: "A", radius: 12, angle: 0 }, parts: [] },
];

export function harbour(): Movement {
  const bare = stand({ arbors: ARBORS, engagements: [], carriers: { D: "A" } });
  return {
    ...bare,
    instrument: {
      ...bare.instrument,
      frame: {
        plates: [
          { id: "back", z: -3, thickness: 3, outline: { circle: { diameter: 140 } }, openings: [{ x: 40, y: 0, diameter: 20 }, { x: 69, y: 0, diameter: 8 }] },
          { id: "front", z: 38, thickness: 3, outline: { rectangle: { width: 120, height: 90, x: 4 } }, openings: [{ x: 30, y: 5, diameter: 6 }] },
          { id: "cock", z: 44, thickness: 2, outline: { polygon: [[-10, -10], [-10, 10], [20, 10], [25, 0], [20, -10]] } },
        ],
        pillars: [{ id: "P1", x: 50, y: 30, diameter: 9, from: 0, to: 38 }],
        case: { insideDiameter: 150, floor: -10, rim: 50, wall: 2 },
      },
    },
  };
}
