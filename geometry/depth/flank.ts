// The side of a tooth as contact work wants it: its smooth pieces between root and tip, and a table of places along them
// by radius, close enough together to find the right interval; every figure is then taken from the pieces themselves.
import { ON_CIRCLE_RATIO } from "../numeric/tolerance.ts";
import type { Piece, Profile, ProfilePoint } from "../teeth/profile.ts";

/** A tooth's y ≤ 0 side, its middle on +x, about its own axis. Lengths in mm. */
export interface Flank {
  readonly pieces: readonly Piece[];
  /** −1: an annulus, whose radii fall from root to tip. */
  readonly side: 1 | -1;
  /** By node, from root to tip; where two pieces meet, each has its own node. */
  readonly pieceOf: Int32Array;
  readonly param: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly radius: Float64Array;
  /** Of the radius, mm²; and what of the way to the next node one mm² more is, 0 across a joint. */
  readonly square: Float64Array;
  readonly perSquare: Float64Array;
  /** Change of the parameter with the radius there. */
  readonly slope: Float64Array;
  /** Half the angle of the tooth there, radians. */
  readonly half: Float64Array;
  /** Along the mirrored side (y ≥ 0, which leads), towards the tip. */
  readonly tangentX: Float64Array;
  readonly tangentY: Float64Array;
  /** The unit normal out of the metal, outward from the axis and forward about it. */
  readonly normalOut: Float64Array;
  readonly normalForward: Float64Array;
  /** The first node of every piece but the first. */
  readonly joints: readonly number[];
  readonly leastRadius: number;
  readonly greatestRadius: number;
}

const NODES_PER_PIECE = 12;
/** Of a piece: the step by which its slope at a node is found; its error only makes a first guess worse. */
const SLOPE_STEP = 1e-4;

export function flankOf(profile: Profile, isAnnulus: boolean): Flank {
  const pieces = profile.pieces.filter((p) => p.name !== "root" && p.name !== "top");
  const count = pieces.length * NODES_PER_PIECE;
  const pieceOf = new Int32Array(count), param = new Float64Array(count), x = new Float64Array(count);
  const y = new Float64Array(count), radius = new Float64Array(count), slope = new Float64Array(count), half = new Float64Array(count);
  const side = isAnnulus ? -1 : 1, tangentX = new Float64Array(count), tangentY = new Float64Array(count);
  const normalOut = new Float64Array(count), normalForward = new Float64Array(count);
  let i = 0;
  pieces.forEach((piece, p) => {
    for (let k = 0; k < NODES_PER_PIECE; k++, i++) {
      const u = k === NODES_PER_PIECE - 1 ? piece.to : piece.from + (k / (NODES_PER_PIECE - 1)) * (piece.to - piece.from);
      const at = piece.at(u);
      pieceOf[i] = p;
      param[i] = u;
      x[i] = at.x;
      y[i] = at.y;
      radius[i] = Math.hypot(at.x, at.y);
      half[i] = -Math.atan2(at.y, at.x);
      slope[i] = slopeAt(piece, u);
      tangentX[i] = -side * at.ny;
      tangentY[i] = -side * at.nx;
      normalOut[i] = (at.nx * at.x + at.ny * at.y) / radius[i];
      normalForward[i] = (at.ny * at.x - at.nx * at.y) / radius[i];
    }
  });
  const square = radius.map((r) => r * r), perSquare = square.map((s, k) => (k + 1 < count && square[k + 1] !== s ? 1 / (square[k + 1] - s) : 0));
  const first = radius[0] ?? 0, last = radius[count - 1] ?? 0;
  return {
    pieces, side, pieceOf, param, x, y, radius, square, perSquare, slope, half, tangentX, tangentY, normalOut, normalForward, joints: pieces.slice(1).map((_, p) => (p + 1) * NODES_PER_PIECE),
    leastRadius: Math.min(first, last), greatestRadius: Math.max(first, last),
  };
}

/** The last node before a radius (counted from the root), so that it lies between that node and the next. */
export function nodeBefore({ radius, side }: Flank, radiusMm: number): number {
  let low = 0, high = radius.length - 1;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (side * (radiusMm - radius[mid]) >= 0) low = mid;
    else high = mid;
  }
  return low;
}

/** The same by the square of a radius, looked for from a node that is not far off. */
export function nodeBeforeNear({ square, side }: Flank, squareMm: number, from: number): number {
  let i = from;
  while (i < square.length - 2 && side * (squareMm - square[i + 1]) >= 0) i++;
  while (i > 0 && side * (squareMm - square[i]) < 0) i--;
  return i;
}

/** The point of the flank at a radius within its range, to rounding. */
export function pointAtRadius(flank: Flank, radiusMm: number): ProfilePoint {
  return byFormula(flank, radiusMm) ?? bySteps(flank, radiusMm);
}

/** Where the piece that comes to the radius has a formula for it that is not lost to rounding. */
function byFormula({ pieces, joints, radius, side }: Flank, radiusMm: number): ProfilePoint | null {
  let p = 0;
  while (p < joints.length && side * (radiusMm - radius[joints[p]]) >= 0) p++;
  const piece = pieces[p];
  if (piece.atRadius === undefined) return null;
  const u = piece.atRadius(radiusMm), least = Math.min(piece.from, piece.to), most = Math.max(piece.from, piece.to);
  const at = piece.at(u < least ? least : u > most ? most : u);
  return Math.abs(Math.sqrt(at.x * at.x + at.y * at.y) - radiusMm) <= ON_CIRCLE_RATIO * radiusMm ? at : null;
}

function bySteps(flank: Flank, radiusMm: number): ProfilePoint {
  let i = nodeBefore(flank, radiusMm);
  if (flank.pieceOf[i] !== flank.pieceOf[i + 1]) i += flank.radius[i + 1] === radiusMm && i + 2 < flank.radius.length ? 1 : -1;
  const piece = flank.pieces[flank.pieceOf[i]];
  const u0 = flank.param[i], u1 = flank.param[i + 1], r0 = flank.radius[i], r1 = flank.radius[i + 1];
  if (radiusMm === r0) return piece.at(u0);
  if (radiusMm === r1) return piece.at(u1);
  // The parameter as a cubic of the radius, then Newton's steps by the slope of that cubic.
  const span = r1 - r0, t = (radiusMm - r0) / span, m0 = flank.slope[i] * span, m1 = flank.slope[i + 1] * span;
  const rise = u1 - u0, c2 = 3 * rise - 2 * m0 - m1, c3 = m0 + m1 - 2 * rise;
  let u = u0 + t * (m0 + t * (c2 + t * c3));
  const slope = (m0 + t * (2 * c2 + 3 * t * c3)) / span;
  if (!((u - u0) * (u - u1) < 0)) return bracketed(piece, radiusMm, u0, u1, r0 - radiusMm, r1 - radiusMm);
  let last: ProfilePoint | null = null, before = Infinity;
  for (let step = 0; step < 8; step++) {
    const at = piece.at(u);
    const over = Math.sqrt(at.x * at.x + at.y * at.y) - radiusMm;
    if (Math.abs(over) <= ON_CIRCLE_RATIO * radiusMm) return at;
    if (Math.abs(over) > Math.abs(before) / 2) break;
    // The chord through the last two is off by about the product of their misses.
    if (last !== null && Math.abs(over * before) <= ON_CIRCLE_RATIO * radiusMm * Math.abs(span)) return onChord(last, at, before / (before - over));
    last = at;
    before = over;
    u -= over * slope;
  }
  return bracketed(piece, radiusMm, u0, u1, r0 - radiusMm, r1 - radiusMm);
}

const onChord = (a: ProfilePoint, b: ProfilePoint, t: number): ProfilePoint =>
  ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), nx: a.nx + t * (b.nx - a.nx), ny: a.ny + t * (b.ny - a.ny) });

/** False position between two ends, by the Illinois rule: an end that stays loses weight. Sure where the flank turns along its circle. */
function bracketed(piece: Piece, radiusMm: number, uFrom: number, uTo: number, from: number, to: number): ProfilePoint {
  let u0 = uFrom, u1 = uTo, e0 = from, e1 = to;
  let at = piece.at(u1);
  for (let step = 0; step < 60 && Math.abs(e1) > ON_CIRCLE_RATIO * radiusMm && e0 !== e1; step++) {
    const u = u1 - (e1 * (u1 - u0)) / (e1 - e0);
    at = piece.at(u);
    const e = Math.sqrt(at.x * at.x + at.y * at.y) - radiusMm;
    if (e * e1 < 0) { u0 = u1; e0 = e1; } else e0 /= 2;
    u1 = u;
    e1 = e;
  }
  return at;
}

/** By a small step to the inside of the piece. Where the radius stands still the cubic is not used: not finite. */
function slopeAt(piece: Piece, u: number): number {
  const step = SLOPE_STEP * (piece.to - piece.from) * (Math.abs(u - piece.from) < Math.abs(u - piece.to) ? 1 : -1);
  const r = (v: number) => {
    const p = piece.at(v);
    return Math.hypot(p.x, p.y);
  };
  const change = (4 * r(u + step) - 3 * r(u) - r(u + 2 * step)) / (2 * step);
  return 1 / change;
}
