// Regions bounded by circles and straight lines, exactly: all the curves that may bound them are cut where they cross one
// another, and a piece is kept where one side of it lies in the region and the other does not. Lengths in mm. No circle
// is ever drawn as chords; ends of arcs are the closed forms of circle and line met.
import { TAU, wrapRad } from "../numeric/angle.ts";
import { BESIDE_MM, JOINED_MM, SAME_AXIS_MM } from "../numeric/tolerance.ts";

export interface Circle { readonly x: number; readonly y: number; readonly radius: number }
export interface Segment { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number }

/** What may bound a region. */
export interface Bounds {
  readonly circles: readonly Circle[];
  readonly segments: readonly Segment[];
}

/** A piece of a boundary, the region on its left: an arc of at most half a turn, or (radius 0) a straight line. */
export interface Piece extends Segment {
  /** mm; above 0 where it runs anticlockwise about its centre, below 0 clockwise, 0 straight. */
  readonly radius: number;
}
/** Pieces end to end, closed. */
export type Loop = readonly Piece[];

/** The boundary of a region as closed loops: anticlockwise round what is in it, clockwise round holes in it. */
export function regionOf(bounds: Bounds, inside: (x: number, y: number) => boolean): Loop[] {
  const pieces: Piece[] = [];
  for (const piece of cutPieces(bounds)) {
    const { x, y, nx, ny } = middleOf(piece);
    const left = inside(x + BESIDE_MM * nx, y + BESIDE_MM * ny), right = inside(x - BESIDE_MM * nx, y - BESIDE_MM * ny);
    if (left !== right) pieces.push(left ? piece : backwards(piece));
  }
  return chained(pieces);
}

/** Directions from a circle's centre (rad, rising from 0) at which other curves cross it. */
export function crossingsOn(circle: Circle, bounds: Bounds): number[] {
  const angles: number[] = [];
  const note = (p: Point) => angles.push(wrapRad(Math.atan2(p.y - circle.y, p.x - circle.x)));
  for (const other of bounds.circles) circlesCross(circle, other).forEach(note);
  for (const line of bounds.segments) lineCrosses(line, circle).forEach(({ at }) => note(at));
  return angles.sort((a, b) => a - b);
}

/** The loops as the text of an SVG path (x and y as they are: the drawing turns y over). */
export const pathText = (loops: readonly Loop[]): string => loops.map((loop) => loop.map((p, i) => {
  const start = i === 0 ? `M${p.x0} ${p.y0}` : "";
  const r = Math.abs(p.radius);
  return r === 0 ? `${start}L${p.x1} ${p.y1}` : `${start}A${r} ${r} 0 0 ${p.radius > 0 ? 1 : 0} ${p.x1} ${p.y1}`;
}).join("") + "Z").join("");

/** mm², of what lies in the loops; below 0 where they bound all but that. */
export function areaOfLoops(loops: readonly Loop[]): number {
  let twice = 0;
  for (const loop of loops) for (const { x0, y0, x1, y1, radius } of loop) {
    twice += x0 * y1 - x1 * y0;
    if (radius === 0) continue;
    const half = Math.asin(Math.min(1, Math.hypot(x1 - x0, y1 - y0) / (2 * Math.abs(radius))));
    twice += Math.sign(radius) * radius * radius * (2 * half - Math.sin(2 * half));
  }
  return twice / 2;
}

interface Point { readonly x: number; readonly y: number }
interface Cut { readonly at: Point; readonly along: number }

function cutPieces({ circles, segments }: Bounds): Piece[] {
  const round: Cut[][] = circles.map((c) => [0, 1, 2].map((third) => cutAt(c, (third * TAU) / 3)));
  const straight: Cut[][] = segments.map((s) => endsOf(s).map((at, along) => ({ at, along })));
  const noteRound = (i: number, at: Point) => round[i].push({ at, along: wrapRad(Math.atan2(at.y - circles[i].y, at.x - circles[i].x)) });
  circles.forEach((a, i) => {
    for (let j = i + 1; j < circles.length; j++) for (const at of circlesCross(a, circles[j])) { noteRound(i, at); noteRound(j, at); }
    segments.forEach((s, k) => {
      for (const cut of lineCrosses(s, a)) { noteRound(i, cut.at); straight[k].push(cut); }
      // A line that runs into a circle ends on it without crossing it.
      for (const end of endsOf(s)) if (Math.abs(Math.hypot(end.x - a.x, end.y - a.y) - a.radius) <= SAME_AXIS_MM) noteRound(i, end);
    });
  });
  segments.forEach((a, i) => {
    for (let j = i + 1; j < segments.length; j++) {
      const met = linesCross(a, segments[j]);
      if (met === null) continue;
      straight[i].push({ at: met.at, along: met.alongA });
      straight[j].push({ at: met.at, along: met.alongB });
    }
  });
  return [...circles.flatMap((c, i) => piecesOf(round[i], c.radius, true)), ...straight.flatMap((cuts) => piecesOf(cuts, 0, false))];
}

function piecesOf(cuts: Cut[], radius: number, closed: boolean): Piece[] {
  cuts.sort((a, b) => a.along - b.along);
  const pieces: Piece[] = [];
  for (let i = closed ? 0 : 1; i < cuts.length; i++) {
    const from = cuts[i === 0 ? cuts.length - 1 : i - 1].at, to = cuts[i].at;
    if (Math.hypot(to.x - from.x, to.y - from.y) > BESIDE_MM) pieces.push({ x0: from.x, y0: from.y, x1: to.x, y1: to.y, radius });
  }
  return pieces;
}

const endsOf = (s: Segment): [Point, Point] => [{ x: s.x0, y: s.y0 }, { x: s.x1, y: s.y1 }];

const cutAt = (c: Circle, along: number): Cut => ({ at: { x: c.x + c.radius * Math.cos(along), y: c.y + c.radius * Math.sin(along) }, along });

const backwards = ({ x0, y0, x1, y1, radius }: Piece): Piece => ({ x0: x1, y0: y1, x1: x0, y1: y0, radius: -radius });

/** The middle of a piece, and the way square to it on its left. */
function middleOf({ x0, y0, x1, y1, radius }: Piece): { x: number; y: number; nx: number; ny: number } {
  const dx = x1 - x0, dy = y1 - y0, chord = Math.hypot(dx, dy);
  const nx = -dy / chord, ny = dx / chord;
  const rise = radius === 0 ? 0 : radius - Math.sign(radius) * Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
  return { x: (x0 + x1) / 2 - rise * nx, y: (y0 + y1) / 2 - rise * ny, nx, ny };
}

/** Every piece is taken up once; each loop goes on with the piece that begins nearest to where the last one ended. */
function chained(pieces: readonly Piece[]): Loop[] {
  const left = new Set(pieces);
  const loops: Loop[] = [];
  for (const first of pieces) {
    if (!left.delete(first)) continue;
    const loop = [first];
    for (let last = first; ;) {
      let next: Piece | null = null, nearest = Math.hypot(first.x0 - last.x1, first.y0 - last.y1);
      if (nearest <= JOINED_MM) break;
      for (const p of left) {
        const gap = Math.hypot(p.x0 - last.x1, p.y0 - last.y1);
        if (gap < nearest) { nearest = gap; next = p; }
      }
      if (next === null) break;
      left.delete(next);
      loop.push(next);
      last = next;
    }
    loops.push(loop);
  }
  return loops;
}

/** Where two circles cross or touch, mm; nothing where they are apart or about one centre. */
export function circlesCross(a: Circle, b: Circle): Point[] {
  const dx = b.x - a.x, dy = b.y - a.y, apart = Math.hypot(dx, dy);
  const most = a.radius + b.radius, least = Math.abs(a.radius - b.radius);
  if (apart <= SAME_AXIS_MM || apart > most + BESIDE_MM || apart < least - BESIDE_MM) return [];
  const along = (apart * apart + (a.radius - b.radius) * (a.radius + b.radius)) / (2 * apart);
  const aside = Math.sqrt(Math.max(0, (a.radius - along) * (a.radius + along)));
  const ux = dx / apart, uy = dy / apart;
  return [1, -1].map((side) => ({ x: a.x + along * ux - side * aside * uy, y: a.y + along * uy + side * aside * ux }));
}

function lineCrosses(s: Segment, c: Circle): Cut[] {
  const dx = s.x1 - s.x0, dy = s.y1 - s.y0, length = Math.hypot(dx, dy);
  if (length === 0) return [];
  const ux = dx / length, uy = dy / length;
  const along = (c.x - s.x0) * ux + (c.y - s.y0) * uy, aside = (c.y - s.y0) * ux - (c.x - s.x0) * uy;
  if (Math.abs(aside) > c.radius + BESIDE_MM) return [];
  const half = Math.sqrt(Math.max(0, (c.radius - aside) * (c.radius + aside)));
  return [along - half, along + half].filter((t) => t >= 0 && t <= length)
    .map((t) => ({ at: { x: s.x0 + t * ux, y: s.y0 + t * uy }, along: t / length }));
}

function linesCross(a: Segment, b: Segment): { at: Point; alongA: number; alongB: number } | null {
  const ax = a.x1 - a.x0, ay = a.y1 - a.y0, bx = b.x1 - b.x0, by = b.y1 - b.y0;
  const cross = ax * by - ay * bx;
  if (cross === 0) return null;
  const alongA = ((b.x0 - a.x0) * by - (b.y0 - a.y0) * bx) / cross, alongB = ((b.x0 - a.x0) * ay - (b.y0 - a.y0) * ax) / cross;
  if (alongA < 0 || alongA > 1 || alongB < 0 || alongB > 1) return null;
  return { at: { x: a.x0 + alongA * ax, y: a.y0 + alongA * ay }, alongA, alongB };
}
