// Half a tooth as a chain of smooth pieces. It is the single source of outlines and of contact work, so that what is
// drawn and what touches agree. Lengths in mm; the tooth's middle lies on +x.
import { TAU } from "../numeric/angle.ts";
import { SLIVER_MM } from "../numeric/tolerance.ts";

export interface ProfilePoint {
  readonly x: number;
  readonly y: number;
  /** Unit normal, out of the metal. */
  readonly nx: number;
  readonly ny: number;
}

/** root: the bottom of a space; fillet: what joins it to the flank; flank: below the pitch circle, or the whole side of
 *  an involute or straight tooth; tip: the rounded side of a clock tooth above the pitch circle; top: the land at the tip. */
export type PieceName = "root" | "fillet" | "flank" | "tip" | "top";

export interface Piece {
  readonly name: PieceName;
  /** The parameter runs from `from` to `to` (either may be the greater), towards the middle of the tooth. */
  readonly from: number;
  readonly to: number;
  at(u: number): ProfilePoint;
  /** The parameter at which the piece comes to a radius within its range, where a formula gives it. */
  readonly atRadius?: (radiusMm: number) => number;
}

export interface Profile {
  /** From the middle of the space before the tooth (y ≤ 0) to its middle on +x, end to end; the other half is its mirror
   *  in the x axis. A lantern: half a trundle alone, from its innermost point to its outermost. */
  readonly pieces: readonly Piece[];
  /** The profile reaches from the middle of the space, so that turned copies join. A lantern's does not. */
  readonly joined: boolean;
  /** mm: nearest and farthest from the axis that the profile truly comes. */
  readonly leastRadius: number;
  readonly greatestRadius: number;
}

/** 1: teeth stand outward, and the metal lies within; −1: an annulus, whose teeth stand inward. */
export type Side = 1 | -1;

/**
 * The profile of pieces that run from the middle of a space towards the tip, cut where they come to the tip's radius and
 * closed by a land there; pieces that meet the tooth's middle before that leave it pointed. Radii along them go one way.
 */
export function profileOfPieces(pieces: readonly Piece[], tipRadiusMm: number, side: Side): Profile {
  const kept: Piece[] = [];
  for (const piece of pieces) {
    if (isSliver(piece)) continue;
    if (side * (tipRadiusMm - radiusAt(piece, piece.to)) >= 0) {
      kept.push(piece);
      continue;
    }
    const cut = { ...piece, to: reaching(piece, tipRadiusMm, side) };
    if (!isSliver(cut)) kept.push(cut);
    break;
  }
  const first = pieces[0]!, last = kept.at(-1);
  const end = last === undefined ? first.at(first.from) : last.at(last.to);
  const polarRad = Math.atan2(end.y, end.x), endRadius = Math.hypot(end.x, end.y);
  if (-polarRad * endRadius > SLIVER_MM) kept.push(roundPiece("top", endRadius, polarRad, 0, side));
  const start = kept[0]!.at(kept[0]!.from), startRadius = Math.hypot(start.x, start.y);
  return {
    pieces: kept, joined: true,
    leastRadius: Math.min(startRadius, endRadius), greatestRadius: Math.max(startRadius, endRadius),
  };
}

/** An arc about the axis, from one polar angle to another (radians). */
export function roundPiece(name: PieceName, radiusMm: number, from: number, to: number, side: Side): Piece {
  return arcPiece(name, { x: 0, y: 0 }, radiusMm, from, to, side);
}

/** An arc about a centre, from one direction to another (radians), on one side of the line from the axis through the centre. */
export function arcPiece(name: PieceName, { x, y }: { readonly x: number; readonly y: number }, radiusMm: number, from: number, to: number, side: Side): Piece {
  const out = Math.hypot(x, y), outRad = Math.atan2(y, x), middle = (from + to) / 2 - outRad;
  const which = middle - TAU * Math.round(middle / TAU) < 0 ? -1 : 1;
  const direction = (cosine: number) => outRad + which * Math.acos(Math.max(-1, Math.min(1, cosine)));
  return {
    name, from, to, at: (u) => arcPoint(x, y, radiusMm, u, side),
    // The law of cosines about the axis.
    ...(out > 0 ? { atRadius: (r: number) => turnedTo(direction((r * r - out * out - radiusMm * radiusMm) / (2 * out * radiusMm)), middle + outRad) } : {}),
  };
}

/** A direction brought within half a turn of another. */
const turnedTo = (rad: number, near: number): number => rad + TAU * Math.round((near - rad) / TAU);

/** A point of a circle about (cx, cy) in direction u; side −1 where the metal lies outside it. */
export function arcPoint(cx: number, cy: number, radiusMm: number, u: number, side: Side): ProfilePoint {
  const c = Math.cos(u), s = Math.sin(u);
  return { x: cx + radiusMm * c, y: cy + radiusMm * s, nx: side * c, ny: side * s };
}

/** A straight piece between two places; the parameter is the share of the way. */
export function straightPiece(name: PieceName, x0: number, y0: number, x1: number, y1: number, side: Side): Piece {
  const dx = x1 - x0, dy = y1 - y0, length = Math.hypot(dx, dy) || 1;
  const nx = (side * dy) / length, ny = (-side * dx) / length;
  const square = length * length, along = (x0 * dx + y0 * dy) / square, start = x0 * x0 + y0 * y0, outward = along > -1 / 2 ? 1 : -1;
  return {
    name, from: 0, to: 1, at: (u) => ({ x: x0 + u * dx, y: y0 + u * dy, nx, ny }),
    atRadius: (r) => outward * Math.sqrt(Math.max(0, along * along + (r * r - start) / square)) - along,
  };
}

/** A piece from the axis outward at one polar angle, as clock flanks are. */
export function radialPiece(fromRadiusMm: number, toRadiusMm: number, polarRad: number): Piece {
  const c = Math.cos(polarRad), s = Math.sin(polarRad);
  return straightPiece("flank", fromRadiusMm * c, fromRadiusMm * s, toRadiusMm * c, toRadiusMm * s, 1);
}

function isSliver(piece: Piece): boolean {
  const a = piece.at(piece.from), b = piece.at(piece.to);
  return Math.hypot(b.x - a.x, b.y - a.y) < SLIVER_MM;
}

function radiusAt(piece: Piece, u: number): number {
  const p = piece.at(u);
  return Math.hypot(p.x, p.y);
}

/** The parameter at which a piece comes to a radius; its start where it lies beyond that already. */
function reaching(piece: Piece, radiusMm: number, side: Side): number {
  let before = piece.from, after = piece.to;
  for (let i = 0; i < 60; i++) {
    const mid = (before + after) / 2;
    if (side * (radiusMm - radiusAt(piece, mid)) > 0) before = mid;
    else after = mid;
  }
  return before;
}
