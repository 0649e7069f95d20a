// Which chapter rings a movement shows: one for each display that has a pointer, nested about one axis by the lengths of
// their pointers, lying just under the lowest of them. Drawn only: the examiner knows nothing of them. Lengths in mm.
import type { Movement, Part } from "../../geometry/index.ts";

type Pointer = Extract<Part, { kind: "pointer" }>;

export interface Ring {
  readonly id: string;
  /** Index of the arbor whose pointer it is read by. */
  readonly arbor: number;
  /** Index of the arbor that carries the ring round, or null: it stands on the frame. */
  readonly carrier: number | null;
  readonly x: number;
  readonly y: number;
  /** Lower face. */
  readonly z: number;
  readonly thickness: number;
  readonly innerMm: number;
  readonly outerMm: number;
  readonly divisions: number;
  readonly numerals: readonly Numeral[];
  readonly clockwise: boolean;
}
export interface Numeral {
  /** Division at which it stands; the last stands at the top. */
  readonly at: number;
  readonly text: string;
}

const THICKNESS_MM = 0.8;
const UNDER_POINTER_MM = 0.5;
const LABELS_AT_MOST = 24;

export function ringsOf(movement: Movement): Ring[] {
  const rings: Ring[] = [];
  for (const group of byAxis(pointed(movement))) {
    const under = Math.min(...group.map((p) => p.pointer.z)) - UNDER_POINTER_MM - THICKNESS_MM;
    const z = Math.max(under, plateUnder(movement, under + THICKNESS_MM)) + 0.03 * rings.length;
    let taken = 0;
    for (const { display, pointer, x, y } of group) {
      const innerMm = Math.max(0.97 * pointer.length, taken + 0.8);
      const outerMm = innerMm + Math.min(9, Math.max(2.2, 0.15 * innerMm));
      taken = outerMm;
      rings.push({
        id: display.id, arbor: display.arbor, carrier: display.against, x, y, z, thickness: THICKNESS_MM, innerMm, outerMm,
        divisions: display.divisions, numerals: numeralsFor(display.divisions), clockwise: display.sense !== "anticlockwise",
      });
    }
  }
  return movement.instrument.dials === undefined ? rings : rings.map((ring) => asSaid(movement, ring));
}

/** A ring as the file says it, where it says one for this display with its marks evenly from the top; its height is still under its pointer. */
function asSaid({ instrument, arborIndex }: Movement, ring: Ring): Ring {
  const said = instrument.dials?.flatMap((d) => d.rings).find((r) => r.display === ring.id);
  if (!said || said.follows !== undefined || said.marks !== undefined || (said.zero ?? 90) !== 90) return ring;
  const divisions = said.divisions ?? ring.divisions, { labels } = said;
  const numerals = labels ? labels.map((text, i) => ({ at: (divisions * (i === 0 ? labels.length : i)) / labels.length, text }))
    : said.numerals === "none" ? [] : numeralsFor(divisions);
  return {
    ...ring, divisions, numerals, innerMm: said.insideDiameter / 2, outerMm: said.outsideDiameter / 2,
    carrier: said.carrier === undefined ? ring.carrier : arborIndex.get(said.carrier) ?? null, clockwise: (said.sense ?? (ring.clockwise ? "clockwise" : "anticlockwise")) === "clockwise",
  };
}

/** Roman up to 24 where twelve or twenty-four are told; else every 2, 5, 10, 30 … so that at most 24 stand. */
export function numeralsFor(divisions: number): Numeral[] {
  if (divisions === 12 || divisions === 24)
    return Array.from({ length: divisions }, (_, i) => ({ at: i + 1, text: roman(i + 1) }));
  const step = [1, 2, 5, 10, 15, 20, 30, 50, 60, 100].find((s) => divisions / s <= LABELS_AT_MOST) ?? Math.ceil(divisions / 12);
  return Array.from({ length: Math.floor(divisions / step) }, (_, i) => ({ at: (i + 1) * step, text: String((i + 1) * step) }));
}

/** As clocks write it: four strokes for four. */
export function roman(n: number): string {
  const ones = ["", "I", "II", "III", "IIII", "V", "VI", "VII", "VIII", "IX"];
  return "X".repeat(Math.floor(n / 10)) + (ones[n % 10] ?? "");
}

interface Pointed { readonly display: Movement["displays"][number]; readonly pointer: Pointer; readonly x: number; readonly y: number }

function pointed(movement: Movement): Pointed[] {
  return movement.displays.flatMap((display) => {
    const worked = movement.arbors[display.arbor];
    const pointer = worked?.arbor.parts.find((p): p is Pointer => p.kind === "pointer");
    return worked && pointer && worked.carrier === null ? [{ display, pointer, x: worked.x, y: worked.y }] : [];
  });
}

/** Displays that share an axis, shortest pointer first. */
function byAxis(all: readonly Pointed[]): Pointed[][] {
  const groups: Pointed[][] = [];
  for (const one of all) {
    const group = groups.find(([first]) => first && Math.hypot(first.x - one.x, first.y - one.y) < 0.01);
    if (group) group.push(one);
    else groups.push([one]);
  }
  return groups.map((g) => g.sort((a, b) => a.pointer.length - b.pointer.length));
}

/** Top of the highest plate that would reach into a ring whose upper face is at z: the ring then lies on it. */
function plateUnder(movement: Movement, z: number): number {
  return Math.max(-Infinity, ...movement.instrument.frame.plates
    .filter((p) => p.z < z && p.z + p.thickness < z + UNDER_POINTER_MM + 0.01).map((p) => p.z + p.thickness));
}
