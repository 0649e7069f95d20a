// A dial as it is drawn: rings with every mark and every letter in its place, as plain data for paper, screen and scene.
// Lengths in mm; angles as parts of a turn, clockwise from the top, with the input at 0. Where the file says no dials, one is
// laid out for the displays of each axis, by the lengths of their pointers.
import type { Dial, DialRing } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { WHOLE_DIVISIONS } from "../numeric/tolerance.ts";
import { partOf } from "../sky/shown.ts";
import { laidOut } from "./layout.ts";
import type { MarkLaw, UnevenMark } from "./uneven.ts";

export interface Mark {
  readonly turn: number;
  /** 2: numbered; 1: a division; 0: a part of one. */
  readonly weight: 0 | 1 | 2;
}
export interface Letter { readonly turn: number; readonly text: string }

export interface FaceRing {
  /** Index of the display it is read by, or null. */
  readonly display: number | null;
  /** Index of the arbor that carries it round, or null: it stands. */
  readonly carrier: number | null;
  readonly name: string;
  readonly insideMm: number;
  readonly outsideMm: number;
  /** Where its 0 stands with the input at 0. */
  readonly zeroTurn: number;
  readonly clockwise: boolean;
  readonly marks: readonly Mark[];
  readonly letters: readonly Letter[];
}

/** As the file has it, with what it leaves out. */
export interface Face extends Required<Pick<Dial, "id" | "name" | "x" | "y" | "apertures">> {
  readonly radiusMm: number;
  /** From the inside out. */
  readonly rings: readonly FaceRing[];
}

/** Where the marks of a law stand; they take the ephemeris, which not every reader of a dial has at hand. */
export type Laws = (law: MarkLaw) => readonly UnevenMark[];

/** Every dial of a movement. */
export const facesBy = (movement: Movement, laws: Laws): Face[] => (movement.instrument.dials ?? laidOut(movement)).map((dial) => faceOf(movement, dial, laws));

/** At most so many letters stand on a ring. */
const MOST_LETTERS = 24;

/** How many divisions apart numerals stand, so that at most 24 do. */
export function everyFor(divisions: number): number {
  return [1, 2, 5, 10, 15, 20, 30, 50, 60, 100].find((s) => divisions / s <= MOST_LETTERS) ?? Math.ceil(divisions / 12);
}

/** As clocks write it: four strokes for four itself, else as usual. */
export function roman(n: number): string {
  if (n === 4) return "IIII";
  const ones = ["", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX"], tens = ["", "X", "XX", "XXX", "XL", "L", "LX", "LXX", "LXXX", "XC"];
  return n >= 100 ? String(n) : (tens[Math.floor(n / 10)] ?? "") + (ones[n % 10] ?? "");
}

function faceOf(movement: Movement, dial: Dial, laws: Laws): Face {
  const rings = dial.rings.map((ring) => ringOf(movement, ring, laws));
  const first = rings.find((r) => r.display !== null)?.display;
  const arbor = first === undefined || first === null ? undefined : movement.arbors[movement.displays[first].arbor];
  return {
    id: dial.id, name: dial.name ?? "Dial", x: dial.x ?? arbor?.x ?? 0, y: dial.y ?? arbor?.y ?? 0,
    radiusMm: rings.reduce((most, r) => Math.max(most, r.outsideMm), 0), rings, apertures: dial.apertures ?? [],
  };
}

function ringOf(movement: Movement, ring: DialRing, laws: Laws): FaceRing {
  const at = movement.displays.findIndex((d) => d.id === ring.display);
  const display = at < 0 ? null : at;
  const said = display === null ? undefined : movement.instrument.displays?.[display];
  const zeroTurn = partOf((90 - (ring.zero ?? 90)) / 360);
  const clockwise = (ring.sense ?? said?.sense) !== "anticlockwise";
  const carrier = ring.carrier === undefined ? (display === null ? null : movement.displays[display].against) : movement.arborIndex.get(ring.carrier) ?? null;
  const turn = (part: number) => partOf(zeroTurn + (clockwise ? part : -part));
  return {
    display, carrier, name: ring.name ?? said?.name ?? "", insideMm: ring.insideDiameter / 2, outsideMm: ring.outsideDiameter / 2,
    zeroTurn, clockwise, ...contentOf(ring, ring.divisions ?? said?.divisions ?? 360, turn, laws),
  };
}

function contentOf(ring: DialRing, divisions: number, turn: (part: number) => number, laws: Laws): Pick<FaceRing, "marks" | "letters"> {
  const uneven = unevenOf(ring, laws);
  if (uneven !== null) return {
    marks: uneven.map((m) => ({ turn: turn(m.at), weight: m.weight })),
    letters: uneven.flatMap((m) => (m.label === undefined ? [] : [{ turn: turn(m.at), text: m.label }])),
  };
  const every = ring.every ?? everyFor(divisions), parts = ring.parts ?? 1;
  const marks = Array.from({ length: Math.ceil(divisions * parts - WHOLE_DIVISIONS) }, (_, k): Mark => ({
    turn: turn(k / parts / divisions), weight: k % parts !== 0 ? 0 : isWhole(k / parts / every) ? 2 : 1,
  }));
  return { marks, letters: lettersOf(ring, divisions, every, turn) };
}

function lettersOf(ring: DialRing, divisions: number, every: number, turn: (part: number) => number): Letter[] {
  const { labels, numerals } = ring;
  if (labels !== undefined) return labels.map((text, i) => ({ turn: turn(i / labels.length), text }));
  if (numerals === "none") return [];
  const inRoman = (numerals ?? (divisions === 12 || divisions === 24 ? "roman" : "arabic")) === "roman";
  // The last numeral stands at the 0 mark where it comes out even, so 12 stands at the top and not 0.
  return Array.from({ length: Math.floor(divisions / every + WHOLE_DIVISIONS) }, (_, i) => {
    const at = (i + 1) * every;
    return { turn: turn(at / divisions), text: inRoman && isWhole(at) ? roman(at) : String(Number(at.toFixed(3))) };
  });
}

function unevenOf(ring: DialRing, laws: Laws): readonly UnevenMark[] | null {
  if (ring.marks !== undefined) return ring.marks.map(({ at, label }) => (label === undefined ? { at: at / 360, weight: 0 } : { at: at / 360, weight: 2, label }));
  return ring.follows === undefined ? null : laws(ring.follows);
}

const isWhole = (n: number): boolean => Math.abs(n - Math.round(n)) < WHOLE_DIVISIONS;
