// Limits and fits up to 30 mm, from the tables of ISO 286-2 and not from its formulas, whose rounding differs. In
// micrometres. Source: tolerance grades, H, h and m in public copies of the tables; g, f, e, d, k, n, p, s and all of
// 10 to 30 mm from memory, held against the formulas of ISO 286-1 in tests.

export type Hole = "H7" | "H8" | "H9";
export type Shaft = "g6" | "h6" | "f7" | "e8" | "d9" | "k6" | "m6" | "n6" | "p6" | "s6";

export interface Limits { readonly lower: number; readonly upper: number }
export interface Fit {
  readonly hole: Limits;
  readonly shaft: Limits;
  /** Clearance; negative where it interferes. */
  readonly least: number;
  readonly greatest: number;
}

export const FITS_SOURCE = "ISO 286-2, from public tables and from memory";

/** Ranges: over the one before, up to and including, mm. */
const UP_TO = [3, 6, 10, 18, 30] as const;
const GRADES = { 6: [6, 8, 9, 11, 13], 7: [10, 12, 15, 18, 21], 8: [14, 18, 22, 27, 33], 9: [25, 30, 36, 43, 52] } as const;
/** The limit that lies nearer to nothing: the upper of clearing shafts, the lower of the others. */
const NEARER = {
  g: [-2, -4, -5, -6, -7], h: [0, 0, 0, 0, 0], f: [-6, -10, -13, -16, -20], e: [-14, -20, -25, -32, -40], d: [-20, -30, -40, -50, -65],
  k: [0, 1, 1, 1, 2], m: [2, 4, 6, 7, 8], n: [4, 8, 10, 12, 15], p: [6, 12, 15, 18, 22], s: [14, 19, 23, 28, 35],
} as const;
const CLEARS = "ghfed";

/** Limits of a hole; null over 30 mm or not above 0. */
export function holeLimits(hole: Hole, diameterMm: number): Limits | null {
  const range = rangeOf(diameterMm);
  return range === null ? null : { lower: 0, upper: gradeOf(hole)[range] };
}

export function shaftLimits(shaft: Shaft, diameterMm: number): Limits | null {
  const range = rangeOf(diameterMm);
  if (range === null) return null;
  const letter = shaft[0] as keyof typeof NEARER, near = NEARER[letter][range], grade = gradeOf(shaft)[range];
  return CLEARS.includes(letter) ? { lower: near - grade, upper: near } : { lower: near, upper: near + grade };
}

export function fitOf(hole: Hole, shaft: Shaft, diameterMm: number): Fit | null {
  const h = holeLimits(hole, diameterMm), s = shaftLimits(shaft, diameterMm);
  return h && s && { hole: h, shaft: s, least: h.lower - s.upper, greatest: h.upper - s.lower };
}

const gradeOf = (symbol: string): readonly number[] => GRADES[Number(symbol.slice(1)) as keyof typeof GRADES];

function rangeOf(diameterMm: number): number | null {
  if (!(diameterMm > 0)) return null;
  const at = UP_TO.findIndex((top) => diameterMm <= top);
  return at < 0 ? null : at;
}
