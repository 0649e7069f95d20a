// Which teeth hold the driven at one distance, and how far forward, with the driver turned by any angle. Lengths in mm.
import { TAU } from "../numeric/angle.ts";
import { BEARING_MODULES, CHOOSING_MODULES } from "../numeric/tolerance.ts";
import { risingRoot } from "../numeric/root.ts";
import { profileOf } from "../teeth/forms.ts";
import { type Flank, flankOf } from "./flank.ts";
import { type Pair, workingRadiusMm } from "./pair.ts";
import { leadAmong, type Mating, nearbyPlaces, type Nearby, sweepOf, type Touch, touchAmong, touchAt } from "./touch.ts";

/** The flanks of a pair, whatever its distance. */
export interface Flanks {
  readonly pair: Pair;
  readonly driver: Flank;
  readonly driven: Flank;
}

export const flanksOf = (pair: Pair): Flanks => ({
  pair, driver: flankOf(profileOf(pair.driver.teeth), pair.driver.teeth.internal),
  driven: flankOf(profileOf(pair.driven.teeth), pair.driven.teeth.internal),
});

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

/** Null where no tooth can reach another. */
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

/** A tooth of the driver at u, and how far ahead of a constant rate it holds the driven. */
export interface Hold { readonly u: number; readonly aheadRad: number; readonly touch: Touch }

/** The teeth that may bear with the driver turned so far, the foremost first. Teeth that plainly do not are left out. */
export function heldAt(drive: Drive, turnRad: number): Hold[] {
  const holds: Hold[] = [];
  for (const { u, nearby } of mayHold(drive, turnRad, NaN)) {
    const touch = touchAmong(drive.mating, u, nearby);
    if (touch !== null) holds.push({ u, aheadRad: touch.leadRad - u * drive.ratio, touch });
  }
  return holds.sort((a, b) => b.aheadRad - a.aheadRad);
}

/** How far ahead of a constant rate the foremost tooth holds the driven, leaving out tooth `without`; −Infinity where none does. */
export function aheadAt(drive: Drive, turnRad: number, without = NaN): number {
  let most = -Infinity;
  for (const { u, nearby } of mayHold(drive, turnRad, without)) most = Math.max(most, leadAmong(drive.mating, u, nearby) - u * drive.ratio);
  return most;
}

interface MayHold { readonly u: number; readonly nearby: Nearby }

function mayHold(drive: Drive, turnRad: number, without: number): MayHold[] {
  const { mating, pitchRad, first, last, ratio } = drive;
  const near: MayHold[] = [], sweep = sweepOf(mating);
  let most = -Infinity;
  for (let k = Math.ceil((first - turnRad) / pitchRad); turnRad + k * pitchRad <= last; k++) {
    if (k === without) continue;
    const u = turnRad + k * pitchRad, nearby = nearbyPlaces(mating, u, sweep);
    if (nearby.places.length === 0) continue;
    near.push({ u, nearby });
    most = Math.max(most, nearby.mostRad - u * ratio);
  }
  return near.filter(({ u, nearby }) => nearby.mostRad - u * ratio >= most - mating.choosingRad);
}

/** How teeth take over from one another, in radians of the driven to spare: each falls evenly as the distance opens. */
export interface Handover {
  /** A tooth coming into reach by its leading corner finds the driven's tooth so far ahead of it, as the others hold it; under 0 it butts. Infinity: none does. */
  readonly entryRad: number;
  /** As a tooth's leading corner goes out of reach the others hold the driven so much farther forward; under 0 it waits. −Infinity: none does. */
  readonly exitRad: number;
  /** A tooth comes into reach so long before the one ahead of it goes out. */
  readonly reachRad: number;
}

export function handoverOf(drive: Drive): Handover {
  const { tipReachRad, pitchRad, ratio, bearingRad } = drive, half = drive.mating.driver.half, tipRad = half[half.length - 1];
  const entry = aheadAt(drive, -tipReachRad - tipRad, 0) + bearingRad - cornerAheadRad(drive, -tipReachRad);
  const exit = aheadAt(drive, tipReachRad - tipRad, 0) + bearingRad - cornerAheadRad(drive, tipReachRad);
  return { entryRad: entry === -Infinity ? Infinity : entry, exitRad: exit, reachRad: (2 * tipReachRad - pitchRad) * ratio };
}

/** How far ahead of a constant rate a tooth holds the driven, leading corner on corner, when its own stands so far round on the tip circle. */
function cornerAheadRad({ mating: { driver, driven, axisX, facing }, ratio }: Drive, atRad: number): number {
  const last = driver.half.length - 1, tip = driver.radius[last];
  const x = facing * (tip * Math.cos(atRad) - axisX), y = tip * Math.sin(atRad);
  return Math.atan2(y, x) + driven.half[driven.half.length - 1] - (atRad - driver.half[last]) * ratio;
}

/** Where the driver's tooth stands as its touch, or the middle of a trundle, crosses the line of centres. */
export const centreCrossing = (drive: Drive): number =>
  risingRoot((u) => pastCentres(drive, u), drive.first, drive.last, CROSSING_PITCHES * drive.pitchRad);

/** Far under what can be seen, far over rounding. */
const CROSSING_PITCHES = 1e-10;

/** A trundle comes to the line of centres with its middle, since that is where the pitch circles carry it; a tooth with its touch. */
function pastCentres({ mating, trundles }: Drive, u: number): number {
  if (trundles === "driver") return u;
  const touch = touchAt(mating, u);
  return touch === null ? (u < 0 ? -Infinity : Infinity) : trundles === "driven" ? touch.leadRad : touch.y;
}
