// A profile drawn as a closed outline: one tooth is computed, then turned. Every chord lies within the chord error of the
// true curve, with as few points as that allows.
import { FINEST_CHORD_MM } from "../numeric/tolerance.ts";
import type { Outline } from "../planar/outline.ts";
import type { Piece, Profile } from "./profile.ts";

/** Anticlockwise about the origin, the middle of one tooth on +x; for an annulus this is its hole. */
export function outlineOfProfile(profile: Profile, count: number, chordMm: number): Outline {
  const tooth = toothPoints(profile, count, Math.max(chordMm, FINEST_CHORD_MM));
  const out = new Float64Array(tooth.length * count);
  for (let i = 0, o = 0; i < count; i++) {
    const angleRad = (2 * Math.PI * i) / count, c = Math.cos(angleRad), s = Math.sin(angleRad);
    for (let k = 0; k < tooth.length; k += 2) {
      out[o++] = c * tooth[k]! - s * tooth[k + 1]!;
      out[o++] = s * tooth[k]! + c * tooth[k + 1]!;
    }
  }
  return out;
}

/** Points of one tooth and of the space before it, x and y in turn; the next tooth's first point is not repeated. */
function toothPoints(profile: Profile, count: number, chordMm: number): readonly number[] {
  const half: number[] = [];
  const take = (piece: Piece, u: number) => {
    const p = piece.at(u);
    half.push(p.x, p.y);
  };
  const spaceRad = -Math.PI / count;
  let startsOnSeam = true, endsOnSeam = true;
  profile.pieces.forEach((piece, i) => {
    if (piece.name === "root" && i === 0) {
      const n = seamSteps(piece, piece.from, piece.to, spaceRad, chordMm);
      startsOnSeam = n % 2 === 0;
      for (let k = n % 2; k < n; k += 2) take(piece, piece.from + (k / n) * (piece.to - piece.from));
    } else if (piece.name === "top") {
      const n = seamSteps(piece, piece.to, piece.from, 0, chordMm);
      endsOnSeam = n % 2 === 0;
      for (let k = n; k >= 0; k -= 2) take(piece, piece.to + (k / n) * (piece.from - piece.to));
    } else {
      for (const u of longestSteps(piece, chordMm)) take(piece, u);
      if (i === profile.pieces.length - 1) take(piece, piece.to);
    }
  });
  const from = endsOnSeam ? half.length - 4 : half.length - 2;
  for (let k = from; k >= (startsOnSeam ? 2 : 0); k -= 2) half.push(half[k]!, -half[k + 1]!);
  return half;
}

/**
 * How many equal chords an arc wants that reaches from a line of symmetry (direction axisRad, parameter `seam`) to `end`
 * and as far on the other side. Where the number is odd, one chord lies across the line.
 */
function seamSteps(piece: Piece, seam: number, end: number, axisRad: number, chordMm: number): number {
  const c = Math.cos(axisRad), s = Math.sin(axisRad);
  const along = (share: number) => {
    const p = piece.at(seam + share * (end - seam));
    return p.x * c + p.y * s;
  };
  const middle = along(0);
  // The error falls with the square of the number of steps; the guess from that is then met from below.
  let n = 1;
  for (let error = Math.abs(middle - along(1)); error > chordMm; error = Math.abs(middle - along(1 / n)))
    n = Math.max(n + 1, Math.floor(0.95 * n * Math.sqrt(error / chordMm)));
  return n;
}

/** The parameters at which a piece's chords begin, each chord as long as its error allows. */
function longestSteps(piece: Piece, chordMm: number): readonly number[] {
  const starts = [piece.from];
  for (let u = piece.from; ; starts.push(u)) {
    const share = longestShare(piece, u, SAMPLED_SHARE * chordMm);
    if (share === 1) return starts;
    u += share * (piece.to - u);
  }
}

/** The share of what is left of a piece from u on that one chord may take. */
function longestShare(piece: Piece, u: number, chordMm: number): number {
  const left = piece.to - u;
  if (chordErrorMm(piece, u, left) <= chordMm) return 1;
  let fits = 0, tooLong = 1;
  for (let i = 0; i < MOST_HALVINGS && (i < STEP_HALVINGS || fits === 0); i++) {
    const mid = (fits + tooLong) / 2;
    if (chordErrorMm(piece, u, mid * left) <= chordMm) fits = mid;
    else tooLong = mid;
  }
  return fits > 0 ? fits : tooLong;
}

/** A step is found to this many halvings, since a finer one would save no point; a first step that is very short takes more. */
const STEP_HALVINGS = 10;
const MOST_HALVINGS = 40;
/** Where a chord is farthest from its curve: half way on an even curve, two thirds away from a cusp. Between the two the
 *  greatest error is missed by a few hundredths of it. */
const SAMPLED_AT = [1 / 3, 1 / 2, 2 / 3];
const SAMPLED_SHARE = 0.95;

/** Greatest distance from the chord of one step to the curve between its ends. */
function chordErrorMm(piece: Piece, u: number, step: number): number {
  const a = piece.at(u), b = piece.at(u + step);
  const dx = b.x - a.x, dy = b.y - a.y, length = Math.hypot(dx, dy);
  let worst = 0;
  for (const q of SAMPLED_AT) {
    const p = piece.at(u + q * step);
    const off = length > 0 ? Math.abs((p.x - a.x) * dy - (p.y - a.y) * dx) / length : Math.hypot(p.x - a.x, p.y - a.y);
    worst = Math.max(worst, off);
  }
  return worst;
}
