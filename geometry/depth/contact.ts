// A whole pair in contact at one distance, from the true outlines: the driven's place for every place of the driver over
// one pitch. Every tooth in reach holds the driven from falling back; the one that holds it farthest forward bears. What
// the driven has once reached it keeps until a tooth takes it farther: a driven left behind waits. Lengths in mm.
import { TAU } from "../numeric/angle.ts";
import { lastHolding } from "../numeric/root.ts";
import { BEARING_MODULES, CHOOSING_MODULES } from "../numeric/tolerance.ts";
import { profileOf } from "../teeth/forms.ts";
import { type Flank, flankOf } from "./flank.ts";
import { type Pair, workingRadiusMm } from "./pair.ts";
import { type Mating, nearbyPlaces, type Nearby, type Touch, touchAmong, touchAt } from "./touch.ts";

/** The flanks of a pair, whatever its distance. */
export interface Flanks {
  readonly pair: Pair;
  readonly driver: Flank;
  readonly driven: Flank;
}

export interface Contact {
  /** Steps over one pitch of the driver; phase i is the driver turned by i/phases of its pitch. */
  readonly phases: number;
  /** By phase, radians: the driven's place less that of a constant rate, its mean taken off. */
  readonly leadRad: Float64Array;
  /** By phase: the driven's rate over its mean; 0 where it waits. */
  readonly rate: Float64Array;
  /** By phase, radians: how far the driven can be turned back before its other flanks hold it. */
  readonly freeArcRad: Float64Array;
  /** By phase: the touch that bears, in axes with the driver's at the origin and the driven's on +x (on −x: an annulus that
   *  is driven); null where nothing bears. */
  readonly touches: readonly (Touch | null)[];
  /** Pitches of the driver, before (negative) and after a tooth's touch crosses the line of centres. */
  readonly begins: number | null;
  readonly ends: number | null;
  /** Pitches over which one tooth bears, alone or with others. */
  readonly ratio: number;
  /** A tip comes in against a tip or the top of a leaf instead of into its space. */
  readonly butting: boolean;
}

export const flanksOf = (pair: Pair): Flanks => ({
  pair, driver: flankOf(profileOf(pair.driver.teeth), pair.driver.teeth.internal),
  driven: flankOf(profileOf(pair.driven.teeth), pair.driven.teeth.internal),
});

/** The pair at a distance; null where no tooth can reach another. */
export function contactAt(flanks: Flanks, distanceMm: number, phases: number): Contact | null {
  const drive = driveOf(flanks, distanceMm);
  if (drive === null) return null;
  const holds = holdsOver(drive, phases);
  const kept = keptOver(drive, holds);
  if (kept === null) return null;
  const { leadRad, waits } = kept;
  const mean = leadRad.reduce((sum, v) => sum + v, 0) / phases;
  const waiting = waits.some((w) => w);
  const span = bearingSpan(drive, holds, leadRad, waiting);
  return {
    phases, leadRad: leadRad.map((v) => v - mean),
    rate: Float64Array.from(holds, (hold, i) => (waits[i] ? 0 : (hold[0]?.touch.rate ?? 0) / drive.ratio)),
    freeArcRad: freeArcs(drive, holds),
    touches: holds.map((hold, i) => (waits[i] ? null : hold[0]?.touch ?? null)),
    begins: span && span.begins, ends: span && span.ends,
    // Where the driven never waits some tooth bears at every phase; the edges of the span are found from within.
    ratio: !span ? 0 : waiting ? waits.filter((w) => !w).length / phases : Math.max(1, span.ends - span.begins),
    butting: buttsOnEntering(drive),
  };
}

/** Least and most free arc of the driven over one pitch, radians; null where no tooth can reach another. */
export function freeArcsAt(flanks: Flanks, distanceMm: number, phases: number): { leastRad: number; mostRad: number } | null {
  const drive = driveOf(flanks, distanceMm);
  if (drive === null) return null;
  const arcs = freeArcs(drive, holdsOver(drive, phases));
  return { leastRad: arcs.reduce((a, b) => Math.min(a, b)), mostRad: arcs.reduce((a, b) => Math.max(a, b)) };
}

/** Two flanks at a distance, with what belongs to their counts and reach. */
export interface Drive {
  readonly mating: Mating;
  /** Turn of the driver from tooth to tooth, and of the driven for one turn of the driver. */
  readonly pitchRad: number;
  readonly ratio: number;
  /** A tooth of the driver has flank in reach of the driven's tip circle only from `first` to `last`. */
  readonly first: number;
  readonly last: number;
  readonly tipReachRad: number;
  readonly bearingRad: number;
  /** Which of the two is a lantern. */
  readonly trundles: "driver" | "driven" | null;
}

/** A tooth of the driver at u, and how far ahead of a constant rate it holds the driven. */
interface Hold { readonly u: number; readonly aheadRad: number; readonly touch: Touch }

export function driveOf({ pair, driver, driven }: Flanks, distanceMm: number): Drive | null {
  const tip1 = driver.side === 1 ? driver.greatestRadius : driver.leastRadius;
  const tip2 = driven.side === 1 ? driven.greatestRadius : driven.leastRadius;
  const sign = pair.annulus === "driven" ? -1 : 1;
  const cosine = (sign * (distanceMm ** 2 + tip1 ** 2 - tip2 ** 2)) / (2 * distanceMm * tip1);
  const radiusMm = workingRadiusMm(pair, distanceMm);
  if (!Number.isFinite(cosine) || sign * cosine >= 1 || !(distanceMm > 0) || radiusMm === 0 || driver.half.length === 0 || driven.half.length === 0) return null;
  const tipReachRad = Math.acos(Math.max(-1, sign * cosine));
  const pitchRad = TAU / pair.driver.teeth.count;
  return {
    mating: { driver, driven, axisX: sign * distanceMm, facing: pair.annulus ? 1 : -1, choosingRad: (CHOOSING_MODULES * pair.moduleMm) / radiusMm },
    pitchRad, ratio: pair.driver.teeth.count / pair.driven.teeth.count,
    first: -tipReachRad - driver.half.reduce((a, b) => Math.max(a, b), 0), last: tipReachRad, tipReachRad,
    bearingRad: (BEARING_MODULES * pair.moduleMm) / radiusMm,
    trundles: pair.driver.teeth.form === "lantern" ? "driver" : pair.driven.teeth.form === "lantern" ? "driven" : null,
  };
}

/** The teeth that may bear with the driver turned by u, the foremost first. Teeth that plainly do not are left out, and tooth `without`. */
function heldAt(drive: Drive, turnRad: number, without = NaN): Hold[] {
  const { mating, pitchRad, first, last, ratio } = drive;
  const near: { u: number; nearby: Nearby; aheadRad: number }[] = [];
  let most = -Infinity;
  for (let k = Math.ceil((first - turnRad) / pitchRad); turnRad + k * pitchRad <= last; k++) {
    if (k === without) continue;
    const u = turnRad + k * pitchRad, nearby = nearbyPlaces(mating, u), aheadRad = nearby.mostRad - u * ratio;
    if (nearby.places.length > 0) near.push({ u, nearby, aheadRad });
    most = Math.max(most, aheadRad);
  }
  return near.filter((n) => n.aheadRad >= most - mating.choosingRad).flatMap(({ u, nearby }): Hold[] => {
    const touch = touchAmong(mating, u, nearby);
    return touch === null ? [] : [{ u, aheadRad: touch.leadRad - u * ratio, touch }];
  }).sort((a, b) => b.aheadRad - a.aheadRad);
}

const holdsOver = (drive: Drive, phases: number): Hold[][] =>
  Array.from({ length: phases }, (_, i) => heldAt(drive, (i / phases) * drive.pitchRad));

/** Teeth are alike on both sides, so the other flanks touch as these do with the driver turned the other way. */
function freeArcs({ pitchRad, ratio }: Drive, holds: readonly Hold[][]): Float64Array {
  const drivenPitchRad = pitchRad * ratio, phases = holds.length;
  return Float64Array.from(holds, (hold, i) => {
    const back = holds[(phases - i) % phases];
    return hold.length && back.length ? drivenPitchRad - hold[0].aheadRad - back[0].aheadRad : drivenPitchRad;
  });
}

/** Where the driven truly stands: the foremost tooth's place, or the place it was brought to before, whichever is ahead. */
function keptOver(drive: Drive, holds: readonly Hold[][]): { leadRad: Float64Array; waits: boolean[] } | null {
  const phases = holds.length, stepRad = (drive.pitchRad * drive.ratio) / phases;
  const leadRad = Float64Array.from(holds, (hold) => hold[0]?.aheadRad ?? -Infinity);
  if (!leadRad.some((v) => v > -Infinity)) return null;
  for (let i = 0; i < 2 * phases; i++)
    leadRad[i % phases] = Math.max(leadRad[i % phases], leadRad[(i + phases - 1) % phases] - stepRad);
  return { leadRad, waits: holds.map((hold, i) => (hold[0]?.aheadRad ?? -Infinity) < leadRad[i] - drive.bearingRad) };
}

/** From where to where one tooth bears, in pitches from where its touch crosses the line of centres. */
function bearingSpan(drive: Drive, holds: readonly Hold[][], leadRad: Float64Array, waiting: boolean): { begins: number; ends: number } | null {
  const bearing = holds.flatMap((hold, i) => hold.filter((h) => h.aheadRad >= leadRad[i] - drive.bearingRad).map((h) => h.u));
  if (bearing.length === 0) return null;
  let begins = bearing.reduce((a, b) => Math.min(a, b)), ends = bearing.reduce((a, b) => Math.max(a, b));
  if (!waiting) {
    const stepRad = drive.pitchRad / holds.length;
    begins = lastHolding(begins, begins - stepRad, 16, (u) => bears(drive, u));
    ends = lastHolding(ends, ends + stepRad, 16, (u) => bears(drive, u));
  }
  const centre = centreCrossing(drive);
  return { begins: (begins - centre) / drive.pitchRad, ends: (ends - centre) / drive.pitchRad };
}

function bears(drive: Drive, u: number): boolean {
  const holds = heldAt(drive, u), own = holds.find((h) => Math.abs(h.u - u) < drive.pitchRad / 2);
  return own !== undefined && own.aheadRad >= holds[0].aheadRad - drive.bearingRad;
}

/** Where the driver's tooth stands as its touch, or the middle of a trundle, crosses the line of centres. */
export const centreCrossing = (drive: Drive): number => lastHolding(drive.first, drive.last, 26, (u) => isBeforeCentres(drive, u));

/** A trundle comes to the line of centres with its middle, since that is where the pitch circles carry it; a tooth with its touch. */
function isBeforeCentres({ mating, trundles }: Drive, u: number): boolean {
  if (trundles === "driver") return u < 0;
  const touch = touchAt(mating, u);
  return touch === null ? u < 0 : (trundles === "driven" ? touch.leadRad : touch.y) < 0;
}

/** A tooth coming into reach by its leading corner must find the driven's tooth ahead of it, as the teeth that bear hold it. */
function buttsOnEntering(drive: Drive): boolean {
  const { mating: { driver, driven, axisX, facing }, tipReachRad, ratio, bearingRad } = drive;
  const last = driver.half.length - 1;
  const tip = Math.hypot(driver.x[last], driver.y[last]);
  const x = facing * (tip * Math.cos(tipReachRad) - axisX), y = -tip * Math.sin(tipReachRad);
  const u = -tipReachRad - driver.half[last];
  const ahead = Math.atan2(y, x) + driven.half[driven.half.length - 1] - u * ratio;
  const others = heldAt(drive, u, 0);
  return others.length > 0 && ahead > others[0].aheadRad + bearingRad;
}
