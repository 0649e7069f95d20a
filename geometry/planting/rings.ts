// Closed rings of wheels that one free choice after another did not close: all the free roots of such a cluster are
// brought to their distances together, from where they stand and from some other beginnings. What cannot close stays.
import { TAU } from "../numeric/angle.ts";
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";
import { atAngle, type Place } from "./circles.ts";
import { measure, restore, trussOf, type Bar, type Points } from "./relax.ts";
import type { Span } from "./roots.ts";

/** Other beginnings tried for a ring that will not close from the first. */
const BEGINNINGS = 12;
/** Clusters larger than this are left as they are: no ring of wheels has so many, and time stays bounded. */
const MOST_ROOTS = 64;

/** Moves free roots, in place, so that their spans come true where they can. */
export function closeRings(places: (Place | null)[], free: ReadonlySet<number>, spansOf: readonly (readonly Span[])[]): void {
  const seen = new Set<number>();
  for (const start of free) {
    if (seen.has(start)) continue;
    const cluster = [start];
    seen.add(start);
    for (const root of cluster) for (const span of spansOf[root]) {
      const next = span.a === root ? span.b : span.a;
      if (!free.has(next) || seen.has(next)) continue;
      seen.add(next);
      cluster.push(next);
    }
    if (cluster.length > 1 && cluster.length <= MOST_ROOTS) closeCluster(places, cluster, spansOf);
  }
}

function closeCluster(places: (Place | null)[], cluster: readonly number[], spansOf: readonly (readonly Span[])[]): void {
  const bars = barsOf(cluster, spansOf, places);
  const start = pointsOf(cluster, places);
  const truss = trussOf(bars, new Float64Array(cluster.length).fill(1));
  if (measure(truss, start) <= AT_LIMIT_MM) return;
  for (let beginning = 0; beginning <= BEGINNINGS; beginning++) {
    const points = beginning === 0 ? start.slice() : shaken(start, bars, beginning);
    if (!restore(truss, points)) continue;
    cluster.forEach((root, i) => { places[root] = { x: points[2 * i], y: points[2 * i + 1] }; });
    return;
  }
}

/** The spans of a cluster as bars between its points; what stands outside it is a point that stands. */
export function barsOf(cluster: readonly number[], spansOf: readonly (readonly Span[])[], places: readonly (Place | null)[]): Bar[] {
  const index = new Map(cluster.map((root, i) => [root, i]));
  const bars: Bar[] = [], used = new Set<Span>();
  for (const root of cluster) for (const span of spansOf[root]) {
    if (used.has(span)) continue;
    used.add(span);
    const a = index.get(span.a) ?? -1, b = index.get(span.b) ?? -1;
    const standsA = a < 0 ? places[span.a] : null, standsB = b < 0 ? places[span.b] : null;
    bars.push({
      a, b, distance: span.distance,
      shiftX: span.shiftX + (standsA?.x ?? 0) - (standsB?.x ?? 0), shiftY: span.shiftY + (standsA?.y ?? 0) - (standsB?.y ?? 0),
    });
  }
  return bars;
}

export function pointsOf(cluster: readonly number[], places: readonly (Place | null)[]): Points {
  const points = new Float64Array(2 * cluster.length);
  cluster.forEach((root, i) => {
    const place = places[root];
    points[2 * i] = place?.x ?? 0;
    points[2 * i + 1] = place?.y ?? 0;
  });
  return points;
}

/** Every point moved by about a wheel's width, each another way: the golden angle never repeats itself. */
function shaken(start: Points, bars: readonly Bar[], beginning: number): Points {
  const wide = bars.reduce((most, bar) => Math.max(most, bar.distance), 0);
  const points = start.slice();
  for (let i = 0; 2 * i < points.length; i++) {
    const turn = TAU * (((i + 1) * beginning * 0.6180339887) % 1);
    const moved = atAngle({ x: points[2 * i], y: points[2 * i + 1] }, wide, turn);
    points[2 * i] = moved.x;
    points[2 * i + 1] = moved.y;
  }
  return points;
}
