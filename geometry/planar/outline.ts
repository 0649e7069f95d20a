// A closed outline in the plane: a polygon whose chords lie within a stated error of the true curve.
import { FINEST_CHORD_MM } from "../numeric/tolerance.ts";

/** Interleaved x, y in mm; 2n numbers; anticlockwise for metal outside edges, clockwise for holes; not repeated at the end. */
export type Outline = Float64Array;

/** A flat region: one outside edge, and the holes in it. */
export interface Region {
  readonly outside: Outline;
  readonly holes: readonly Outline[];
}

/** mm², positive for an anticlockwise outline. */
export function signedAreaMmSq(outline: Outline): number {
  let twice = 0;
  for (let i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2)
    twice += outline[j] * outline[i + 1] - outline[i] * outline[j + 1];
  return twice / 2;
}

/** Corners of a circle such that no chord lies farther than chordMm from it (at least 12). */
export function circleOutline(radiusMm: number, chordMm: number, x = 0, y = 0): Outline {
  const n = circleSteps(radiusMm, chordMm);
  const out = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const a = (2 * Math.PI * i) / n;
    out[2 * i] = x + radiusMm * Math.cos(a);
    out[2 * i + 1] = y + radiusMm * Math.sin(a);
  }
  return out;
}

/** How many chords a circle wants for a chord error (no finer than FINEST_CHORD_MM); sagitta = r(1 − cos(π/n)). */
export function circleSteps(radiusMm: number, chordMm: number): number {
  const sagittaMm = Math.max(chordMm, FINEST_CHORD_MM);
  if (radiusMm <= sagittaMm) return 12;
  return Math.max(12, Math.ceil(Math.PI / Math.acos(1 - sagittaMm / radiusMm)));
}

/** The same outline the other way round. */
export function reversed(outline: Outline): Outline {
  const out = new Float64Array(outline.length);
  for (let i = 0, j = outline.length - 2; j >= 0; i += 2, j -= 2) {
    out[i] = outline[j];
    out[i + 1] = outline[j + 1];
  }
  return out;
}

/** Turned by angleRad anticlockwise, then moved. */
export function placed(outline: Outline, angleRad: number, x: number, y: number): Outline {
  const c = Math.cos(angleRad), s = Math.sin(angleRad);
  const out = new Float64Array(outline.length);
  for (let i = 0; i < outline.length; i += 2) {
    out[i] = c * outline[i] - s * outline[i + 1] + x;
    out[i + 1] = s * outline[i] + c * outline[i + 1] + y;
  }
  return out;
}
