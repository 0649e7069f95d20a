// The distances at which a pair works, and at which it meets the maker's practice, with run-out and sideshake at their
// worst; from that how far a hole may stray. Everything is worked in the opening from the computed distance: farther for
// outside gears, nearer for an annulus. Lengths in mm.
import type { Practice } from "../instrument.ts";
import { risingRoot } from "../numeric/root.ts";
import { WINDOW_MM } from "../numeric/tolerance.ts";
import { figuresOf } from "./figures.ts";
import { deeperBy, type Pair, shakeOf, tipToRootMm } from "./pair.ts";

export interface Window {
  /** Distances between which the pair works at the worst; null where no distance does. */
  readonly nearest: number | null;
  readonly farthest: number | null;
  /** Likewise, and meeting the practice for backlash as it stands and for tip to root at the deepest. */
  readonly nearestWanted: number | null;
  readonly farthestWanted: number | null;
}

const NO_WINDOW: Window = { nearest: null, farthest: null, nearestWanted: null, farthestWanted: null };

/** Looked for from so many modules closer than the computed distance to so many farther. */
const CLOSEST_MODULES = -2, OPENEST_MODULES = 4;

export function windowOf(pair: Pair, practice: Practice, figures = figuresOf(pair)): Window {
  if (figures === null || pair.computedMm === null) return NO_WINDOW;
  const m = pair.moduleMm, computed = pair.computedMm, shake = shakeOf(pair);
  const at = (opening: number) => deeperBy(pair, -opening, computed);
  const low = Math.max(CLOSEST_MODULES * m, pair.annulus ? -Infinity : -computed), high = Math.min(OPENEST_MODULES * m, pair.annulus ? computed : Infinity);
  const tip = (opening: number) => tipToRootMm(pair, at(opening));
  const root = (f: (opening: number) => number, from = low, to = high) => risingRoot(f, from, to, WINDOW_MM);
  const backlash = (opening: number) => figures.backlashMm(at(opening)) ?? missing(pair, opening);
  const counted = (opening: number) => figures.countedModules(at(opening)) ?? missing(pair, opening);
  const unmet = (opening: number) => -figures.meeting(at(opening)).spare;

  const deepest = root(backlash, root(tip)), closest = deepest + shake;
  if (unmet(deepest) > 0) return NO_WINDOW;
  const openest = root(unmet, deepest) - shake;
  if (!(closest < openest)) return NO_WINDOW;
  const works = ordered(at(closest), at(openest));
  const [least, most] = practice.backlash;
  const closestWanted = root((o) => counted(o) - least, Math.max(closest, root((o) => tip(o) - practice.tipClearance * m) + shake));
  if (closestWanted > openest || counted(closestWanted) > most + WINDOW_MM / m) return { ...NO_WINDOW, nearest: works[0], farthest: works[1] };
  const wanted = ordered(at(closestWanted), at(root((o) => counted(o) - most, closestWanted, openest)));
  return { nearest: works[0], farthest: works[1], nearestWanted: wanted[0], farthestWanted: wanted[1] };
}

/** From where a pair stands to the nearer of the wanted limits, negative outside them; null where there are none. */
export const holeToleranceOf = ({ nearestWanted, farthestWanted }: Window, distanceMm: number): number | null =>
  nearestWanted === null || farthestWanted === null ? null : Math.min(distanceMm - nearestWanted, farthestWanted - distanceMm);

/** Where there is no backlash to speak of: none is left when too close, any amount when too far apart. */
const missing = (pair: Pair, opening: number): number => ((pair.annulus ? opening > 0 : opening > pair.moduleMm) ? Infinity : -Infinity);

const ordered = (a: number, b: number): readonly [number, number] => (a <= b ? [a, b] : [b, a]);
