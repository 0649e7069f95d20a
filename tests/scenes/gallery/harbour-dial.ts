// A tidal dial of an invented harbour, for pictures and tests of the movement view: centre arbor A, a slow train B C D
// to the pipe E, the Moon's pipe F by way of G, and a small dial on J.
import type { Arbor, Finding, Instrument } from "../../../geometry/index.ts";

const pivots = (foot = "back", head = "front") => ({
  foot: { diameter: 1.2, length: 1.8, plate: foot }, head: { diameter: 1.2, length: 1.8, plate: head },
});
const crossings = (arms: number) => ({ arms, rim: 2.4, arm: 2.2, hub: 7 });
const arbor = (id: string, x: number, y: number, parts: Arbor["parts"], more: Partial<Arbor> = {}): Arbor =>
  ({ id, x, y, diameter: 3, foot: -1.8, head: 33.8, pivots: pivots(), parts, ...more });

export const HARBOUR_DIAL: Instrument = {
  endshake: 1,
  name: "Harbour dial",
  gearing: { module: 0.6 },
  frame: {
    plates: [
      { id: "back", name: "Back plate", z: -2.5, thickness: 2.5, outline: { circle: { diameter: 116 } } },
      { id: "front", name: "Front plate", z: 32, thickness: 2.5, outline: { circle: { diameter: 116 } }, openings: [{ x: 0, y: 0, diameter: 13 }] },
    ],
    pillars: [45, 135, 225, 315].map((deg, i) => ({
      id: `P${i + 1}`, x: 48 * Math.cos((deg * Math.PI) / 180), y: 48 * Math.sin((deg * Math.PI) / 180), diameter: 9, from: 0, to: 32,
    })),
  },
  arbors: [
    arbor("A", 0, 0, [
      { id: "A1", kind: "pinion", leaves: 17, module: 0.8, z: 1.5, thickness: 4 },
      { id: "A2", kind: "pinion", leaves: 18, z: 6.5, thickness: 4 },
      { id: "A3", kind: "pointer", z: 48, thickness: 1, length: 50, tail: 14, width: 5, angle: 90 },
    ], { head: 51, pivots: { foot: { diameter: 1.2, length: 1.8, plate: "back" } } }),
    arbor("B", -22.3, 7.7, [
      { id: "B1", kind: "wheel", teeth: 42, module: 0.8, z: 2.5, thickness: 2, crossings: crossings(5) },
      { id: "B2", kind: "pinion", leaves: 19, module: 0.7, z: 6.5, thickness: 4 },
    ]),
    arbor("C", -5, 19.6, [
      { id: "C1", kind: "wheel", teeth: 41, module: 0.7, z: 7.5, thickness: 2, crossings: crossings(5) },
      { id: "C2", kind: "pinion", leaves: 20, z: 11, thickness: 4.5 },
    ]),
    arbor("D", 14.9, 14, [
      { id: "D1", kind: "wheel", teeth: 49, z: 12.2, thickness: 2, crossings: crossings(5) },
      { id: "D2", kind: "pinion", leaves: 23, z: 15.5, thickness: 4.5 },
    ]),
    arbor("E", 0, 0, [
      { id: "E1", kind: "wheel", teeth: 52, z: 17, thickness: 2, crossings: crossings(6) },
      { id: "E2", kind: "wheel", teeth: 48, z: 21.5, thickness: 2, crossings: crossings(5) },
      { id: "E3", kind: "pointer", z: 45.5, thickness: 1, length: 24, tail: 9, width: 4.5, angle: 150 },
    ], { diameter: 5, foot: 15.5, head: 47, rides: { on: "A", radius: 0, angle: 0 }, bore: 3.06 }),
    arbor("F", 0, 0, [
      { id: "F1", kind: "wheel", teeth: 36, z: 26, thickness: 2, crossings: crossings(4) },
      { id: "F2", kind: "pointer", z: 43, thickness: 1, length: 36, tail: 10, width: 4.5, angle: 200 },
    ], { diameter: 7, foot: 24.5, head: 44.5, rides: { on: "E", radius: 0, angle: 0 }, bore: 5.06 }),
    arbor("G", 21.52, 1.86, [
      { id: "G1", kind: "wheel", teeth: 24, z: 21.5, thickness: 2 },
      { id: "G2", kind: "wheel", teeth: 36, z: 26, thickness: 2, crossings: crossings(4) },
    ]),
    arbor("H", 10.1, -16, [
      { id: "H1", kind: "wheel", teeth: 45, z: 7.5, thickness: 2, crossings: crossings(4) },
      { id: "H2", kind: "pinion", leaves: 20, z: 11, thickness: 4.5 },
      { id: "H3", kind: "collet", diameter: 5, z: 5.4, thickness: 2 },
    ]),
    arbor("J", -12, -21.8, [
      { id: "J1", kind: "wheel", teeth: 56, z: 12.2, thickness: 2, crossings: crossings(6) },
      { id: "J2", kind: "collet", diameter: 6, z: 14.3, thickness: 3 },
      { id: "J3", kind: "pointer", z: 42, thickness: 0.8, length: 10, tail: 4, width: 2.4, angle: 60 },
    ], { head: 43.5, pivots: { foot: { diameter: 1.2, length: 1.8, plate: "back" } } }),
  ],
  engagements: [
    { driver: "A1", driven: "B1" }, { driver: "B2", driven: "C1" }, { driver: "C2", driven: "D1" }, { driver: "D2", driven: "E1" },
    { driver: "E2", driven: "G1" }, { driver: "G2", driven: "F1" }, { driver: "A2", driven: "H1" }, { driver: "H2", driven: "J1" },
  ],
  input: { arbor: "A", days: 1, sense: "clockwise" },
  displays: [
    { id: "hour", name: "Hour of the day", arbor: "A", days: 1, sense: "clockwise", divisions: 24 },
    { id: "moon", name: "Age of the Moon", arbor: "E", days: 29.530588853, sense: "clockwise", divisions: 30 },
    { id: "tide", name: "High water", arbor: "F", days: 14.765, divisions: 12 },
    { id: "week", name: "Day of the week", arbor: "J", days: 7, divisions: 7 },
  ],
};

export const FOUL: Finding = {
  code: "gap", severity: "foul", between: ["D1", "G"], way: "plan", gap: -0.42, worst: -0.46, wanted: 1,
  at: { x: 20.4, y: 2.9, z: 13.2 }, when: null, says: "Wheel D1 fouls arbor G by 0.42 mm", remedies: [],
};
