// Free arc round the full cycle of a pair, until the same two teeth meet again: run-out brings the axes nearer and
// farther as each part turns, and how the two are put together decides how that adds up. Lengths in mm.
import { TAU } from "../numeric/angle.ts";
import type { Figures } from "./figures.ts";
import type { Pair } from "./pair.ts";

export interface Cycle {
  /** Teeth that pass before the same two meet again: the least common multiple of both counts. */
  readonly teeth: number;
  /** Free arc at the driven's working pitch circle, along the cycle from the meeting of both high places, put together at its best;
   *  every tooth, or as many places spread evenly if there are more teeth than that. */
  readonly freeArcMm: Float64Array;
  readonly tightest: number;
  readonly slackest: number;
  /** Spaces that the driven is moved on from high place against high place: the assembly that spreads the free arcs least. */
  readonly best: number;
  /** Tightest and slackest of the assembly that spreads them most. */
  readonly worst: { readonly tightest: number; readonly slackest: number };
}

/** Places along a cycle at most, and assemblies tried at most. */
const MOST_PLACES = 2000, MOST_ASSEMBLIES = 400;

/** Null where the pair has no free arc at one of the distances that its run-outs bring. */
export function cycleOf(pair: Pair, figures: Figures, distanceMm: number): Cycle | null {
  const z1 = pair.driver.teeth.count, z2 = pair.driven.teeth.count;
  const e1 = pair.driver.runoutMm, e2 = pair.driven.runoutMm;
  const freeArc = freeArcBy(figures, distanceMm, e1 + e2);
  if (freeArc === null) return null;
  const common = commonDivisor(z1, z2), teeth = (z1 * z2) / common;
  const places = Math.min(teeth, MOST_PLACES);
  const nearerBy = (place: number, moved: number) => {
    const tooth = Math.round((place * teeth) / places);
    return e1 * Math.cos((TAU * tooth) / z1) + e2 * Math.cos((TAU * (tooth + moved)) / z2);
  };
  const spreads = Array.from({ length: Math.min(common, MOST_ASSEMBLIES) }, (_, moved) => spreadOf(places, (i) => nearerBy(i, moved)));
  const arcs = ([least, most]: readonly [number, number]) => {
    const a = freeArc(least), b = freeArc(most);
    return { tightest: Math.min(a, b), slackest: Math.max(a, b) };
  };
  const width = (nearer: readonly [number, number]) => arcs(nearer).slackest - arcs(nearer).tightest;
  const best = spreads.reduce((b, s, i) => (width(s) < width(spreads[b]) - width(spreads[b]) * SAME_SPREAD ? i : b), 0);
  const worst = spreads.reduce((w, s) => (width(s) > width(w) ? s : w));
  return {
    teeth, best, worst: arcs(worst), ...arcs(spreads[best]),
    freeArcMm: Float64Array.from({ length: places }, (_, i) => freeArc(nearerBy(i, best))),
  };
}

/** Assemblies whose spreads differ by less than this share are alike, and the first is named. */
const SAME_SPREAD = 1e-9;

/** The free arc by how much nearer the axes come: a parabola through the farthest, the middle and the nearest. */
function freeArcBy(figures: Figures, distanceMm: number, reachMm: number): ((nearer: number) => number) | null {
  const far = figures.backlashMm(distanceMm + reachMm), middle = figures.backlashMm(distanceMm), near = figures.backlashMm(distanceMm - reachMm);
  if (far === null || middle === null || near === null) return null;
  if (reachMm === 0) return () => middle;
  return (nearer) => {
    const t = nearer / reachMm;
    return middle + (t * (near - far)) / 2 + (t * t * (near + far - 2 * middle)) / 2;
  };
}

function spreadOf(places: number, at: (place: number) => number): readonly [number, number] {
  let least = Infinity, most = -Infinity;
  for (let i = 0; i < places; i++) {
    const v = at(i);
    if (v < least) least = v;
    if (v > most) most = v;
  }
  return [least, most];
}

function commonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}
