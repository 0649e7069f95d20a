// Small files for the tests of reading, loosely typed so that they can be spoilt.

// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type Loose = any;

/** A wheel and a pinion between two plates, every field right. */
export const smallest = (): Loose => ({
  endshake: 1,
  name: "Sluice counter",
  frame: {
    plates: [
      { id: "back", z: -2, thickness: 2, outline: { circle: { diameter: 80 } } },
      { id: "front", z: 20, thickness: 2, outline: { polygon: [[-40, -40], [40, -40], [40, 40], [-40, 40]] } },
    ],
    pillars: [{ id: "P1", x: 30, y: 0, diameter: 6, from: 0, to: 20 }],
  },
  arbors: [
    { id: "A", x: 0, y: 0, diameter: 3, foot: -2, head: 22, parts: [
      { id: "A1", kind: "wheel", teeth: 60, z: 5, thickness: 1.5 },
      { id: "A2", kind: "pointer", length: 30, tail: 8, width: 3, angle: 90, z: 26, thickness: 0.8 },
    ] },
    { id: "B", diameter: 3, foot: -2, head: 22, parts: [{ id: "B1", kind: "pinion", leaves: 12, z: 4, thickness: 4 }] },
  ],
  engagements: [{ driver: "A1", driven: "B1" }],
  input: { arbor: "A", days: 1, sense: "clockwise" },
});

/** A file with every kind of part, coupling and list in it. */
export const fullest = (): Loose => ({
  ...smallest(),
  notes: "Everything once.",
  practice: { planGap: 0.8, backlash: [0.04, 0.2] },
  gearing: { form: "involute", module: 0.5, pressureAngle: 20, thinning: 0.06 },
  frame: { ...smallest().frame, case: { insideDiameter: 120, floor: -10, rim: 40, wall: 2 } },
  arbors: [...smallest().arbors,
    { id: "C", name: "pipe", diameter: 5, bore: 3.04, foot: 6, head: 24, rides: { on: "A", radius: 0, angle: 0 }, endshake: 0.2, sideshake: 0.04, parts: [
      { id: "C1", kind: "wheel", teeth: 72, dedendum: 1.4, internal: true, outsideDiameter: 90, z: 8, thickness: 2, join: { by: "soft solder", order: 2, solidus: 183, liquidus: 190 } },
      { id: "C2", kind: "collet", diameter: 9, z: 10, thickness: 3, material: "brass", measured: { thickness: 3.01 } },
    ] },
    { id: "D", steady: true, x: 20, y: 20, measured: { x: 20.01, y: 20 }, diameter: 3, foot: -2, head: 22,
      pivots: { foot: { diameter: 1, length: 2, plate: "back" }, head: { diameter: 1, length: 2, plate: "front" } }, parts: [
        { id: "D1", kind: "lantern", trundles: 8, trundleDiameter: 1, shroudDiameter: 12, z: 4, thickness: 6 },
        { id: "D2", kind: "disc", diameter: 14, windows: [{ radius: 4, angle: 0, diameter: 3 }], z: 11, thickness: 0.8 },
        { id: "D3", kind: "pin", radius: 5, angle: 10, diameter: 1, z: 12, thickness: 3 },
        { id: "D4", kind: "ratchet", teeth: 24, diameter: 12, depth: 1, z: 15, thickness: 1 },
      ] },
    { id: "E", fixed: true, x: 22, y: 20, diameter: 3, foot: 12, head: 22, parts: [
      { id: "E1", kind: "slot", diameter: 16, radius: 5, angle: 0, length: 6, width: 1.1, z: 13, thickness: 1 },
      { id: "E2", kind: "arm", length: 12, width: 3, angle: 45, z: 15, thickness: 1 },
      { id: "E3", kind: "square", across: 2.5, taper: 1, slot: { width: 0.6, height: 1 }, angle: 45, z: 17, thickness: 4 },
    ] }],
  engagements: [{ driver: "A1", driven: "B1" }, { id: "ring", driver: "C1", driven: "B1", ease: 0.02 }],
  couplings: [
    { kind: "pin and slot", driver: "D3", driven: "E1" },
    { kind: "click", ratchet: "D4", on: "E", passes: "clockwise", pawl: "E2" },
    { kind: "friction", between: ["A", "C"] },
  ],
  displays: [{ id: "moon", name: "Age of the Moon", arbor: "C", days: 29.53, sense: "clockwise", divisions: 59, against: "A", shows: "age of the Moon", epoch: "2026-01-01T00:00:00Z" }],
  dials: [{ id: "face", name: "Main dial", x: 0, y: 0, rings: [
    { display: "moon", name: "age of the Moon", insideDiameter: 30, outsideDiameter: 40, divisions: 29.5, parts: 2, every: 2, numerals: "arabic", zero: 90, sense: "clockwise" },
    { insideDiameter: 42, outsideDiameter: 50, carrier: "A", labels: ["ebb", "flood"], marks: [{ at: 12.5, label: "bar" }] },
    { insideDiameter: 52, outsideDiameter: 60, follows: "calendar by the Sun" },
  ], apertures: [{ radius: 12, angle: 90, width: 40, height: 6 }] }],
  cutters: [{ form: "involute", module: 0.5, pressureAngle: 20, from: 12, to: 13 }],
  division: { ratio: 40, circles: [[15, 16], [21, 23]], gears: [24, 28] },
  dayBook: [{ at: "2026-01-13T12:00:00.000Z", says: "B moved" }],
});

/** Every value of a file that holds no other, with the keys and the path to it. */
export function leavesOf(value: Loose, keys: (string | number)[] = [], path = ""): { keys: (string | number)[]; path: string }[] {
  if (typeof value !== "object" || value === null) return [{ keys, path }];
  return Object.entries(value).flatMap(([key, inner]) => Array.isArray(value)
    ? leavesOf(inner, [...keys, Number(key)], `${path}[${key}]`)
    : leavesOf(inner, [...keys, key], path === "" ? key : `${path}.${key}`));
}

export function put(file: Loose, keys: readonly (string | number)[], value: unknown): void {
  const at = keys.slice(0, -1).reduce((inner, key) => inner[key], file);
  const last = keys[keys.length - 1] as string;
  if (value === undefined) delete at[last];
  else at[last] = value;
}
