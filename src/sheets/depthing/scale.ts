// The window of an engaged pair as a scale: what stretches of distance are deep, right, shallow, and where the pair lets
// go; and round numbers for its ticks and for the plots.
import type { Window } from "../../../geometry/index.ts";

export type ZoneName = "binds" | "deep" | "right" | "shallow" | "lets go";
export interface Zone {
  readonly name: ZoneName;
  /** mm */
  readonly from: number;
  readonly to: number;
}

/** The zones in rising distance, between these ends; none without a window. An annulus is deep farther out. */
export function zonesOf({ nearest, farthest, nearestWanted, farthestWanted }: Window, isAnnulus: boolean, [from, to]: readonly [number, number]): readonly Zone[] {
  if (nearest === null || farthest === null) return [];
  const names: readonly ZoneName[] = isAnnulus ? ["lets go", "shallow", "right", "deep", "binds"] : ["binds", "deep", "right", "shallow", "lets go"];
  // Where nothing is right, deep and shallow meet in the middle of what works.
  const middle = (nearest + farthest) / 2;
  const limits = [from, nearest, nearestWanted ?? middle, farthestWanted ?? middle, farthest, to];
  return names.map((name, i) => ({ name, from: Math.max(from, limits[i] ?? from), to: Math.min(to, limits[i + 1] ?? to) })).filter((z) => z.to - z.from > 1e-9);
}

/** What the scale has room for: the whole window with some of what lies beyond, and wherever the pair stands. */
export function rangeOf({ nearest, farthest }: Window, marks: readonly number[]): readonly [number, number] {
  const ends = [nearest, farthest].filter((mm) => mm !== null);
  const all = [...ends, ...marks], low = Math.min(...all), high = Math.max(...all);
  const spare = Math.max(0.12 * (high - low), 0.02);
  return [low - spare, high + spare];
}

/** The zone in which a distance lies. */
export const zoneAt = (zones: readonly Zone[], mm: number): ZoneName | null => zones.find((z) => mm >= z.from && mm <= z.to)?.name ?? null;

/** Round numbers from one to another, about so many of them, and how many decimals they want. */
export function ticksOf(from: number, to: number, about: number): { readonly at: readonly number[]; readonly step: number; readonly decimals: number } {
  const rough = Math.max((to - from) / about, 1e-9), power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((n) => n * power >= rough * 0.999) ?? 10);
  const first = Math.ceil(from / step - 1e-9), last = Math.floor(to / step + 1e-9);
  const at = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
  return { at, step, decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) };
}
