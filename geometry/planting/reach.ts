// How near and how far a chain of wheels that are still to be planted can reach: what a free choice must leave possible.
import type { Place } from "./circles.ts";
import type { Span } from "./roots.ts";

/** The chosen place must stand between `least` and `most` (mm) from `centre`. */
export interface Reach {
  readonly centre: Place;
  readonly least: number;
  readonly most: number;
}

/** From a root through roots without a place to those that have one; `by` is the span it is already held by. */
export function reachesFrom(root: number, by: Span, spansOf: readonly (readonly Span[])[], places: readonly (Place | null)[]): Reach[] {
  const reaches: Reach[] = [];
  const seen = new Set([root]);
  const paths = [{ at: root, sum: 0, longest: 0 }];
  for (const { at, sum, longest } of paths) {
    for (const span of spansOf[at]) {
      if (span === by) continue;
      const next = span.a === at ? span.b : span.a;
      if (seen.has(next)) continue;
      const path = { at: next, sum: sum + span.distance, longest: Math.max(longest, span.distance) };
      const centre = places[next];
      if (centre === null) {
        seen.add(next);
        paths.push(path);
      } else reaches.push({ centre, least: Math.max(0, 2 * path.longest - path.sum), most: path.sum });
    }
  }
  return reaches;
}

/** mm by which a place misses what the chains can reach. */
export function missBy(reaches: readonly Reach[], at: Place): number {
  let miss = 0;
  for (const { centre, least, most } of reaches) {
    const apart = Math.hypot(at.x - centre.x, at.y - centre.y);
    miss = Math.max(miss, least - apart, apart - most);
  }
  return miss;
}
