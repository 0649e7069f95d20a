// The search for places: from the places as they stand and from many seeded beginnings, every group that may move is
// spread out, in gear; whatever seems better is worked out and examined like any instrument, and only what the examiner
// finds no worse is kept. Lengths in mm. The same seed gives the same search.
import { boxOf } from "../bodies/plate.ts";
import type { SmallestGap } from "../clearance/smallest.ts";
import { smallestGap } from "../clearance/smallest.ts";
import { examine } from "../examine/sheet.ts";
import type { Sheet } from "../finding.ts";
import type { Instrument } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { TAU } from "../numeric/angle.ts";
import { seededBy } from "../numeric/seeded.ts";
import { AT_LIMIT_MM, DISTANCE_MM } from "../numeric/tolerance.ts";
import { atAngle, circlesMet, type Place } from "../planting/circles.ts";
import { withPlaces } from "../planting/places.ts";
import type { Points } from "../planting/relax.ts";
import { workOut } from "../workout.ts";
import { crowdOf, spareOf, wallSpare, type Crowd } from "./crowd.ts";
import { isBetter, looseEnds, spread, tightest, type Standing } from "./spread.ts";

export interface HowToPlant {
  readonly seed?: number;
  /** How many beginnings are tried. */
  readonly tries?: number;
}

/** The best so far: never worse than the instrument given. */
export interface Planted {
  /** Every arbor that may move has its place written in. */
  readonly instrument: Instrument;
  readonly counts: Sheet["counts"];
  readonly smallest: SmallestGap | null;
  /** mm that the least of all pairs that can be moved has over what is wanted; null where nothing can be. */
  readonly spare: number | null;
  /** The two that still want something of one another, if any do. */
  readonly quarrel: Quarrel | null;
}

export interface Quarrel {
  readonly between: readonly [string, string];
  readonly says: string;
}

export interface PlantingStep {
  /** From 0 to 1. */
  readonly done: number;
  readonly best: Planted;
}

const TRIES = 40;
/** Of so many tries each, how many begin anew; the others begin from the best with some arbors put elsewhere. */
const ANEW_IN_THREE = 1;
/** How often the tightest pair is put elsewhere, and how many points with it. */
const AT_TIGHTEST = 0.7, MOST_DISTURBED = 6;
/** Places looked at for each arbor of a beginning. */
const LOOKS = 12;

/** Step by step, the last step done. Stopping between steps loses nothing: each step holds the best so far. */
export function* searchPlaces(instrument: Instrument, { seed = 1, tries = TRIES }: HowToPlant = {}): Generator<PlantingStep, Planted, void> {
  const movement = workOut(instrument);
  const crowd = crowdOf(movement), random = seededBy(seed);
  const asGiven = startOf(crowd);
  let standing: Standing = { ...looseEnds({ ...crowd, bars: [] }, asGiven), inGear: stands(crowd, asGiven) };
  let best = judged(movement, crowd, standing, instrument);
  if (crowd.groups.length === 0) return best.planted;
  for (let i = 0; i < tries; i++) {
    const start = i === 0 ? asGiven : i % 3 < ANEW_IN_THREE ? beginning(movement, crowd, random) : disturbed(movement, crowd, standing.points, random);
    const next = spread(crowd, start);
    if (isBetter(next, standing)) {
      const candidate = judged(movement, crowd, next, instrument);
      if (isNoWorse(candidate, best)) {
        best = candidate;
        standing = next;
      }
    }
    yield { done: (i + 1) / tries, best: best.planted };
  }
  return best.planted;
}

/** The whole search at once. */
export function findPlaces(instrument: Instrument, how: HowToPlant = {}): Planted {
  const search = searchPlaces(instrument, how);
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
}

interface Judged { readonly planted: Planted; readonly standing: Standing }

function judged(movement: Movement, crowd: Crowd, standing: Standing, instrument: Instrument): Judged {
  const planted = withPlaces(instrument, placesOf(movement, crowd, standing.points));
  const worked = workOut(planted);
  const { counts } = examine(worked);
  const spare = standing.spare === Infinity ? null : standing.spare;
  return { standing, planted: { instrument: planted, counts, smallest: smallestGap(worked), spare, quarrel: quarrelOf(crowd, standing) } };
}

/** Fewer fouls; or as many, and in gear where it was not; or no more that is tight, and no less to spare. */
function isNoWorse(next: Judged, than: Judged): boolean {
  const a = next.planted.counts, b = than.planted.counts;
  if (a.foul !== b.foul) return a.foul < b.foul;
  if (next.standing.inGear !== than.standing.inGear) return next.standing.inGear;
  return a.tight <= b.tight && next.standing.spare >= than.standing.spare - AT_LIMIT_MM;
}

function quarrelOf(crowd: Crowd, { points, inGear }: Standing): Quarrel | null {
  if (!inGear || !stands(crowd, points)) return outOfGear(crowd, points);
  const least = tightest(crowd, points, true);
  if (least === null || least.spare >= -AT_LIMIT_MM) return null;
  const [a, b] = least.between, left = least.wanted + least.spare;
  const says = left <= 0 ? `${a} and ${b} quarrel: at best they share ${mm(-left)}` : `${a} and ${b} come too near: at best ${mm(left)} is left at the worst, ${mm(least.wanted)} is wanted`;
  return { between: least.between, says };
}

function outOfGear(crowd: Crowd, points: Points): Quarrel | null {
  const { points: nearest } = looseEnds(crowd, points);
  let worst = -1, most = 0;
  crowd.bars.forEach((bar, i) => {
    const off = Math.abs(missOf(bar, nearest));
    if (off > most) { most = off; worst = i; }
  });
  if (worst < 0) return null;
  const [a, b] = crowd.barsBetween[worst];
  return { between: [a, b], says: `Arbors ${a} and ${b} cannot come to their distance: it is out by ${mm(most)} at best` };
}

const mm = (lengthMm: number): string => `${Number(lengthMm.toFixed(2))} mm`;

const missOf = ({ a, b, distance, shiftX, shiftY }: Crowd["bars"][number], p: Points): number => Math.hypot(
  (a < 0 ? 0 : p[2 * a]) + shiftX - (b < 0 ? 0 : p[2 * b]), (a < 0 ? 0 : p[2 * a + 1]) + shiftY - (b < 0 ? 0 : p[2 * b + 1])) - distance;

const stands = (crowd: Crowd, points: Points): boolean => crowd.bars.every((bar) => Math.abs(missOf(bar, points)) <= DISTANCE_MM);

const startOf = ({ plan, groups }: Crowd): Points => new Float64Array(groups.flatMap((g) => [plan.centres[g].x, plan.centres[g].y]));

function placesOf(movement: Movement, { plan, groups }: Crowd, points: Points): Map<string, Place> {
  const places = new Map<string, Place>();
  groups.forEach((group, i) => {
    const dx = points[2 * i] - plan.centres[group].x, dy = points[2 * i + 1] - plan.centres[group].y;
    for (const root of plan.roots[group]) {
      const { id, x, y } = movement.arbors[root];
      places.set(id, { x: x + dx, y: y + dy });
    }
  });
  return places;
}

/** Everything planted afresh. */
const beginning = (movement: Movement, crowd: Crowd, random: () => number): Points =>
  replanted(crowd, startOf(crowd), new Set(crowd.groups.keys()), fieldOf(movement), random);

/** Some points of a standing put elsewhere: those that hang together round one of them, often round the tightest pair. */
function disturbed(movement: Movement, crowd: Crowd, from: Points, random: () => number): Points {
  const count = crowd.groups.length, tight = tightest(crowd, from, false);
  const first = tight !== null && random() < AT_TIGHTEST ? tight.point : Math.floor(random() * count);
  const open = new Set([first]), most = 1 + Math.floor(random() * MOST_DISTURBED);
  for (const at of open) for (const { a, b } of crowd.bars) {
    const next = a === at ? b : b === at ? a : -1;
    if (next >= 0 && open.size < most) open.add(next);
  }
  return replanted(crowd, from.slice(), open, random() < 0.5 ? fieldOf(movement) : fieldOfPoints(from), random);
}

/** Points planted one after another: what hangs on most of those that stand comes next, at the best of a few places. */
function replanted(crowd: Crowd, points: Points, open: Set<number>, field: Field, random: () => number): Points {
  while (open.size > 0) {
    let next = -1, most = -1;
    for (const i of open) {
      const held = circlesOf(crowd, points, i, open).length + random() / 2;
      if (held > most) { most = held; next = i; }
    }
    open.delete(next);
    putAtBest(crowd, points, next, open, field, random);
  }
  return points;
}

interface Field { readonly x: number; readonly y: number; readonly wide: number; readonly high: number }

function putAtBest(crowd: Crowd, points: Points, i: number, open: ReadonlySet<number>, field: Field, random: () => number): void {
  const circles = circlesOf(crowd, points, i, open);
  const looks = circles.length >= 2 ? circlesMet(circles[0], circles[0].radius, circles[1], circles[1].radius)
    : Array.from({ length: LOOKS }, () => (circles.length === 1 ? atAngle(circles[0], circles[0].radius, random() * TAU)
      : { x: field.x + (random() - 0.5) * field.wide, y: field.y + (random() - 0.5) * field.high }));
  let best = looks[0], most = -Infinity;
  for (const at of looks) {
    const spare = spareAt(crowd, points, i, at, open) * (circles.length >= 2 ? random() : 1);
    if (spare > most) { most = spare; best = at; }
  }
  points[2 * i] = best.x;
  points[2 * i + 1] = best.y;
}

/** The circles about standing axes on which a point has to be. */
function circlesOf({ bars }: Crowd, points: Points, i: number, open: ReadonlySet<number>): (Place & { radius: number })[] {
  return bars.flatMap(({ a, b, distance, shiftX, shiftY }) => {
    if ((a !== i && b !== i) || a === b) return [];
    const other = a === i ? b : a, side = a === i ? -1 : 1;
    if (other >= 0 && open.has(other)) return [];
    const at = other < 0 ? { x: 0, y: 0 } : { x: points[2 * other], y: points[2 * other + 1] };
    return [{ x: at.x + side * shiftX, y: at.y + side * shiftY, radius: distance }];
  });
}

function spareAt({ rubs, walls }: Crowd, points: Points, i: number, at: Place, open: ReadonlySet<number>): number {
  let least = Infinity;
  for (const r of rubs) {
    if (r.a !== i && r.b !== i) continue;
    const other = r.a === i ? r.b : r.a, side = r.a === i ? 1 : -1;
    if (other >= 0 && open.has(other)) continue;
    const x = at.x + side * r.shiftX - (other < 0 ? 0 : points[2 * other]), y = at.y + side * r.shiftY - (other < 0 ? 0 : points[2 * other + 1]);
    least = Math.min(least, spareOf(r, Math.hypot(x, y)));
  }
  for (const w of walls) if (w.a === i) least = Math.min(least, wallSpare(w, at.x, at.y).spare);
  return least;
}

/** Where free arbors may begin: over the first plate, else within the case, else about the axis of the case. */
function fieldOf(movement: Movement): Field {
  const { plates: [plate], case: drum } = movement.instrument.frame;
  if (plate !== undefined) {
    const box = boxOf(plate.outline);
    return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, wide: box.maxX - box.minX, high: box.maxY - box.minY };
  }
  if (drum !== undefined) return { x: 0, y: 0, wide: drum.insideDiameter, high: drum.insideDiameter };
  return fieldOfPoints(new Float64Array(movement.arbors.flatMap((a) => [a.x, a.y])));
}

function fieldOfPoints(points: Points): Field {
  let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
  for (let k = 0; k < points.length; k += 2) {
    minX = Math.min(minX, points[k]); maxX = Math.max(maxX, points[k]);
    minY = Math.min(minY, points[k + 1]); maxY = Math.max(maxY, points[k + 1]);
  }
  const margin = Math.max(maxX - minX, maxY - minY, 1) / 2;
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2, wide: maxX - minX + margin, high: maxY - minY + margin };
}
