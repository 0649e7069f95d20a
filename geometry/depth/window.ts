// The distances at which a pair works, and at which it meets the maker's practice, with run-out and sideshake at their
// worst; from that how far a hole may stray. Everything is worked in the opening from the computed distance: farther for
// outside gears, nearer for an annulus. Lengths in mm.
import type { Practice } from "../instrument.ts";
import { leastOf, risingRoot, risingRootOfLeast } from "../numeric/root.ts";
import { WINDOW_MM } from "../numeric/tolerance.ts";
import { type Figures, figuresOf } from "./figures.ts";
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
  /** The opening, from one to another, at which the least free arc comes to so much. */
  const arcOpening = (wantedMm: number, from: number, to: number, tightest: number) => risingRootOfLeast({
    all: (o) => figures.arcs.all(at(o))?.map((arc) => arc - wantedMm) ?? [missing(pair, o)],
    one: (o, phase) => (figures.arcs.one(at(o), phase) ?? missing(pair, o)) - wantedMm,
  }, from, to, WINDOW_MM, tightest);
  const tipOpening = (wantedMm: number) => risingRoot((o) => tipToRootMm(pair, at(o)) - wantedMm, low, high, WINDOW_MM);

  const deepest = arcOpening(0, tipOpening(0), high, figures.tightest), closest = deepest.at + shake;
  const openest = openestOf(figures, at, deepest.at, high) - shake;
  if (!(closest < openest)) return NO_WINDOW;
  const works = ordered(at(closest), at(openest)), worksOnly = { ...NO_WINDOW, nearest: works[0], farthest: works[1] };
  const [least, most] = practice.backlash.map((modules) => figures.countedAsMm(modules));
  if (least === null || most === null) return worksOnly;
  const closestWanted = arcOpening(least, Math.max(closest, tipOpening(practice.tipClearance * m) + shake), high, deepest.which);
  if (closestWanted.at > openest) return worksOnly;
  const openestWanted = arcOpening(most, closestWanted.at, openest, closestWanted.which);
  if (openestWanted.at === closestWanted.at && (figures.backlashMm(at(closestWanted.at)) ?? Infinity) > most + WINDOW_MM) return worksOnly;
  const wanted = ordered(at(closestWanted.at), at(openestWanted.at));
  return { nearest: works[0], farthest: works[1], nearestWanted: wanted[0], farthestWanted: wanted[1] };
}

/** The greatest opening at which teeth still take over from one another, not under one at which they have room; −Infinity where not even there. */
function openestOf(figures: Figures, at: (opening: number) => number, deepest: number, high: number): number {
  const spares = figures.spares.all(at(deepest));
  if (spares === null || spares[leastOf(spares)] < 0) return -Infinity;
  // What is to spare rises as the pair is closed; a tip that butts is the first to ask for.
  return -risingRootOfLeast({
    all: (closing) => figures.spares.all(at(-closing)) ?? [-Infinity],
    one: (closing, phase) => figures.spares.one(at(-closing), phase) ?? -Infinity,
  }, -high, -deepest, WINDOW_MM, 0).at;
}

/** From where a pair stands to the nearer of the wanted limits, negative outside them; null where there are none. */
export const holeToleranceOf = ({ nearestWanted, farthestWanted }: Window, distanceMm: number): number | null =>
  nearestWanted === null || farthestWanted === null ? null : Math.min(distanceMm - nearestWanted, farthestWanted - distanceMm);

/** Where there is no backlash to speak of: none is left when too close, any amount when too far apart. */
const missing = (pair: Pair, opening: number): number => ((pair.annulus ? opening > 0 : opening > pair.moduleMm) ? Infinity : -Infinity);

const ordered = (a: number, b: number): readonly [number, number] => (a <= b ? [a, b] : [b, a]);
