// A flat figure cut into triangles without adding or losing a point of its edges. Lengths in mm.
import earcut, { refine } from "earcut";
import { FLAT_MM_SQ, JOINED_MM, REPEAT_RATIO } from "../numeric/tolerance.ts";
import { placed, type Outline, type Region } from "../planar/outline.ts";

export interface Flat {
  /** x, y, stride 2: the edges' points one loop after another, then points inside. */
  readonly points: Float64Array;
  /** Number of points of each loop: the outside first (anticlockwise), then the holes (clockwise). */
  readonly loops: readonly number[];
  /** Three points a triangle, anticlockwise. */
  readonly triangles: ArrayLike<number>;
}

/** Any region. Holes must lie inside and clear of one another. */
export function flatOf(region: Region): Flat {
  const edges = [region.outside, ...region.holes].map(cleaned);
  const points = concatenated(edges);
  const loops = edges.map((e) => e.length / 2);
  const starts: number[] = [];
  for (let i = 1, at = loops[0]; i < loops.length; at += loops[i], i++) starts.push(at);
  const wanted = 3 * (points.length / 2 + 2 * starts.length - 2);
  let triangles: number[] = [];
  // earcut leaves out a point that stands exactly in line with two others across a bridge to a hole; turned a
  // little, nothing stands exactly in line.
  for (const turnRad of [0, 0.7, 1.9, 2.6]) {
    triangles = earcut(turnRad === 0 ? points : placed(points, turnRad, 0, 0), starts);
    if (triangles.length === wanted) break;
  }
  // Points in line across a bridge can also give a triangle without area; turning its edges over mends that.
  if (hasFlatTriangle(points, triangles)) refine(triangles, points);
  return { points, loops, triangles };
}

/**
 * A toothed wheel: the ring between its teeth and a circle under their roots is cut for one tooth and repeated, which
 * is many times faster than cutting the whole; what lies inside that circle is cut as any region. Falls back to the
 * whole where the outline does not repeat or no circle fits between roots and holes.
 */
export function flatOfToothed(outline: Outline, count: number, holes: readonly Outline[]): Flat {
  const n = outline.length / 2, period = n / count;
  const rootMm = leastRadiusOfChords(outline);
  const holeMm = holes.reduce((most, h) => Math.max(most, greatestRadius(h)), 0);
  const circleMm = holeMm + 0.7 * (rootMm - holeMm);
  const perTooth = chordsPerTooth(count, holeMm / circleMm);
  if (!Number.isInteger(period) || holeMm > 0.95 * rootMm || perTooth > 8 || hasJoinedPoints(outline) || !repeats(outline, period, count))
    return flatOf({ outside: outline, holes });
  const start = lowestOf(outline, period);
  const tooth = toothSector(outline, start, period, circleMm, perTooth);
  const cut = earcut(tooth);
  if (cut.length !== 3 * (tooth.length / 2 - 2)) return flatOf({ outside: outline, holes });
  const circle = circleFrom(outline, start, circleMm, count * perTooth);
  const inner = flatOf({ outside: circle, holes });
  if (inner.loops[0] !== count * perTooth) return flatOf({ outside: outline, holes });
  return joinedRing(outline, { start, period, count, perTooth, cut }, inner);
}

function hasFlatTriangle(p: Float64Array, triangles: readonly number[]): boolean {
  for (let i = 0; i < triangles.length; i += 3) {
    const a = 2 * triangles[i], b = 2 * triangles[i + 1], c = 2 * triangles[i + 2];
    if ((p[b] - p[a]) * (p[c + 1] - p[a + 1]) - (p[b + 1] - p[a + 1]) * (p[c] - p[a]) < FLAT_MM_SQ) return true;
  }
  return false;
}

interface Ring { start: number; period: number; count: number; perTooth: number; cut: readonly number[] }

function joinedRing(outline: Outline, ring: Ring, inner: Flat): Flat {
  const { start, period, count, perTooth, cut } = ring;
  const n = outline.length / 2, m = inner.loops[0];
  const holePoints = inner.points.subarray(2 * m);
  const points = concatenated([outline, holePoints, inner.points.subarray(0, 2 * m)]);
  const circleAt = n + holePoints.length / 2;
  const triangles = new Uint32Array(cut.length * count + inner.triangles.length);
  let at = 0;
  for (let t = 0; t < count; t++)
    for (let i = 0; i < cut.length; i++) {
      const local = cut[i];
      triangles[at++] = local <= period
        ? (start + t * period + local) % n
        : circleAt + (t * perTooth + perTooth - (local - period - 1)) % m;
    }
  for (let i = 0; i < inner.triangles.length; i++) {
    const p = inner.triangles[i];
    triangles[at++] = p < m ? circleAt + p : n + p - m;
  }
  return { points, loops: [n, ...inner.loops.slice(1)], triangles };
}

/** One tooth from root to root, closed along the circle under it. */
function toothSector(outline: Outline, start: number, period: number, circleMm: number, chords: number): Float64Array {
  const n = outline.length / 2;
  const out = new Float64Array(2 * (period + 1 + chords + 1));
  for (let i = 0; i <= period; i++) {
    const p = 2 * ((start + i) % n);
    out[2 * i] = outline[p];
    out[2 * i + 1] = outline[p + 1];
  }
  const fromRad = Math.atan2(out[1], out[0]), stepRad = (2 * Math.PI * period) / n / chords;
  for (let j = 0; j <= chords; j++) {
    const a = fromRad + (chords - j) * stepRad, o = 2 * (period + 1 + j);
    out[o] = circleMm * Math.cos(a);
    out[o + 1] = circleMm * Math.sin(a);
  }
  return out;
}

function circleFrom(outline: Outline, start: number, radiusMm: number, steps: number): Outline {
  const fromRad = Math.atan2(outline[2 * start + 1], outline[2 * start]);
  const out = new Float64Array(2 * steps);
  for (let i = 0; i < steps; i++) {
    const a = fromRad + (2 * Math.PI * i) / steps;
    out[2 * i] = radiusMm * Math.cos(a);
    out[2 * i + 1] = radiusMm * Math.sin(a);
  }
  return out;
}

/** So many chords a tooth that the polygon under the roots stays outside every hole (ratio: hole's reach over its radius). */
function chordsPerTooth(count: number, ratio: number): number {
  for (let k = 1; k <= 8; k++) if (Math.cos(Math.PI / (count * k)) > ratio + 0.2 * (1 - ratio)) return k;
  return 9;
}

function repeats(outline: Outline, period: number, count: number): boolean {
  const c = Math.cos((2 * Math.PI) / count), s = Math.sin((2 * Math.PI) / count);
  const nearMm = greatestRadius(outline.subarray(0, 2 * period)) * REPEAT_RATIO;
  for (let i = 0, j = 2 * period; j < outline.length; i += 2, j += 2) {
    const x = c * outline[i] - s * outline[i + 1], y = s * outline[i] + c * outline[i + 1];
    if (Math.abs(x - outline[j]) > nearMm || Math.abs(y - outline[j + 1]) > nearMm) return false;
  }
  return true;
}

function lowestOf(outline: Outline, period: number): number {
  let best = 0, leastSq = Infinity;
  for (let i = 0; i < period; i++) {
    const sq = outline[2 * i] * outline[2 * i] + outline[2 * i + 1] * outline[2 * i + 1];
    if (sq < leastSq) { leastSq = sq; best = i; }
  }
  return best;
}

function leastRadiusOfChords(outline: Outline): number {
  let leastSq = Infinity;
  let ax = outline[outline.length - 2], ay = outline[outline.length - 1];
  for (let i = 0; i < outline.length; i += 2) {
    const bx = outline[i], by = outline[i + 1], dx = bx - ax, dy = by - ay;
    const t = Math.min(1, Math.max(0, -(ax * dx + ay * dy) / (dx * dx + dy * dy || 1)));
    const x = ax + t * dx, y = ay + t * dy;
    leastSq = Math.min(leastSq, x * x + y * y);
    ax = bx; ay = by;
  }
  return Math.sqrt(leastSq);
}

function greatestRadius(outline: Outline): number {
  let mostSq = 0;
  for (let i = 0; i < outline.length; i += 2) mostSq = Math.max(mostSq, outline[i] * outline[i] + outline[i + 1] * outline[i + 1]);
  return Math.sqrt(mostSq);
}

/**
 * Points in line with both neighbours (a spike's tip too) say nothing and would be dropped from the caps; points that
 * single precision cannot tell from the one before would make triangles without area.
 */
function cleaned(outline: Outline): Outline {
  let kept = outline;
  for (;;) {
    const next = kept.slice();
    let size = 0;
    for (let b = 0; b < kept.length; b += 2) {
      const a = b === 0 ? kept.length - 2 : b - 2, c = b + 2 === kept.length ? 0 : b + 2;
      // Against the last point kept, so that of two doubled points one stays.
      const ux = kept[b] - (size > 0 ? next[size - 2] : kept[a]), uy = kept[b + 1] - (size > 0 ? next[size - 1] : kept[a + 1]);
      const turn = ux * (kept[c + 1] - kept[b + 1]) - uy * (kept[c] - kept[b]);
      if (Math.abs(turn) < FLAT_MM_SQ || ux * ux + uy * uy < JOINED_MM * JOINED_MM) continue;
      next[size++] = kept[b];
      next[size++] = kept[b + 1];
    }
    if (size === kept.length || size < 6) return kept;
    kept = next.slice(0, size);
  }
}

function hasJoinedPoints(outline: Outline): boolean {
  let ax = outline[outline.length - 2], ay = outline[outline.length - 1];
  for (let i = 0; i < outline.length; i += 2) {
    const dx = outline[i] - ax, dy = outline[i + 1] - ay;
    if (dx * dx + dy * dy < JOINED_MM * JOINED_MM) return true;
    ax = outline[i]; ay = outline[i + 1];
  }
  return false;
}

function concatenated(parts: readonly Float64Array[]): Float64Array {
  if (parts.length === 1) return parts[0];
  const out = new Float64Array(parts.reduce((total, p) => total + p.length, 0));
  let at = 0;
  for (const p of parts) { out.set(p, at); at += p.length; }
  return out;
}
