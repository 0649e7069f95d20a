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
  const held = heldAtAll(flanks, distanceMm, phases), kept = held && keptOver(held);
  if (held === null || kept === null) return null;
  const { drive, holds } = held, { leadRad, waits } = kept;
  const mean = leadRad.reduce((sum, v) => sum + v, 0) / phases;
  const span = bearingSpan(held, kept);
  const centre = span === null ? 0 : centreCrossing(drive);
  return {
    phases, leadRad: leadRad.map((v) => v - mean),
    rate: Float64Array.from(holds, (hold, i) => (waits[i] ? 0 : (hold[0]?.touch.rate ?? 0) / drive.ratio)),
    freeArcRad: freeArcsOf(held),
    touches: holds.map((hold, i) => (waits[i] ? null : hold[0]?.touch ?? null)),
    begins: span && (span.from - centre) / drive.pitchRad, ends: span && (span.to - centre) / drive.pitchRad,
    ratio: ratioOf(held, kept, span),
    butting: entrySpareRad(drive) < 0,
  };
}

/** Least and most free arc of the driven over one pitch, radians; null where no tooth can reach another. */
export function freeArcsAt(flanks: Flanks, distanceMm: number, phases: number): { leastRad: number; mostRad: number } | null {
  const held = heldAtAll(flanks, distanceMm, phases);
  return held && leastAndMost(freeArcsOf(held));
}

/** Least free arc, radians, and contact ratio at a distance. */
export function arcAndRatioAt(flanks: Flanks, distanceMm: number, phases: number): { leastRad: number; ratio: number } | null {
  const held = heldAtAll(flanks, distanceMm, phases), kept = held && keptOver(held);
  return held && { leastRad: leastAndMost(freeArcsOf(held)).leastRad, ratio: kept ? ratioOf(held, kept, bearingSpan(held, kept)) : 0 };
}

/** How teeth take over from one another at a distance. */
export interface Handing {
  /** Of a pitch, how much some tooth bears: 1 where the driven never waits. */
  readonly share: number;
  readonly butting: boolean;
  /** Radians of the driven to spare at the tightest, until it waits or a tip meets a tip: it changes evenly with the distance, and is not under 0 where neither does. */
  readonly spareRad: number;
}

export function handingAt(flanks: Flanks, distanceMm: number, phases: number): Handing | null {
  const held = heldAtAll(flanks, distanceMm, phases), kept = held && keptOver(held);
  if (held === null || kept === null) return null;
  const { drive, holds } = held, stepRad = (drive.pitchRad * drive.ratio) / phases, entryRad = entrySpareRad(drive);
  const ahead = holds.map((hold) => hold[0]?.aheadRad ?? -Infinity);
  const gains = ahead.map((v, i) => (v === -Infinity ? v : v - ahead[(i + phases - 1) % phases] + stepRad + drive.bearingRad));
  return { share: kept.waits.filter((w) => !w).length / phases, butting: entryRad < 0, spareRad: gains.reduce((a, b) => Math.min(a, b), entryRad) };
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

/** What holds the driven, phase by phase over one pitch, the foremost first. */
interface Held { readonly drive: Drive; readonly holds: readonly (readonly Hold[])[] }

/** Where the driven truly stands, and where nothing moves it. */
interface Kept { readonly leadRad: Float64Array; readonly waits: readonly boolean[] }

function heldAtAll(flanks: Flanks, distanceMm: number, phases: number): Held | null {
  const drive = driveOf(flanks, distanceMm);
  return drive && { drive, holds: Array.from({ length: phases }, (_, i) => heldAt(drive, (i / phases) * drive.pitchRad)) };
}

/** The teeth that may bear with the driver turned by u, the foremost first. Teeth that plainly do not are left out, and tooth `without`. */
function heldAt(drive: Drive, turnRad: number, without = NaN): Hold[] {
  const { mating, pitchRad, first, last, ratio } = drive;
  const near: { u: number; nearby: Nearby; aheadRad: number }[] = [], holds: Hold[] = [];
  let most = -Infinity;
  for (let k = Math.ceil((first - turnRad) / pitchRad); turnRad + k * pitchRad <= last; k++) {
    if (k === without) continue;
    const u = turnRad + k * pitchRad, nearby = nearbyPlaces(mating, u), aheadRad = nearby.mostRad - u * ratio;
    if (nearby.places.length > 0) near.push({ u, nearby, aheadRad });
    most = Math.max(most, aheadRad);
  }
  for (const { u, nearby, aheadRad } of near) {
    const touch = aheadRad < most - mating.choosingRad ? null : touchAmong(mating, u, nearby);
    if (touch !== null) holds.push({ u, aheadRad: touch.leadRad - u * ratio, touch });
  }
  return holds.sort((a, b) => b.aheadRad - a.aheadRad);
}

/** Teeth are alike on both sides, so the other flanks touch as these do with the driver turned the other way. */
function freeArcsOf({ drive: { pitchRad, ratio }, holds }: Held): Float64Array {
  const drivenPitchRad = pitchRad * ratio, phases = holds.length;
  return Float64Array.from(holds, (hold, i) => {
    const back = holds[(phases - i) % phases];
    return hold.length && back.length ? drivenPitchRad - hold[0].aheadRad - back[0].aheadRad : drivenPitchRad;
  });
}

const leastAndMost = (arcs: Float64Array) => ({ leastRad: arcs.reduce((a, b) => Math.min(a, b)), mostRad: arcs.reduce((a, b) => Math.max(a, b)) });

/** The foremost tooth's place, or the place it was brought to before, whichever is ahead; null where no tooth holds it at all. */
function keptOver({ drive, holds }: Held): Kept | null {
  const phases = holds.length, stepRad = (drive.pitchRad * drive.ratio) / phases;
  const leadRad = Float64Array.from(holds, (hold) => hold[0]?.aheadRad ?? -Infinity);
  if (!leadRad.some((v) => v > -Infinity)) return null;
  for (let i = 0; i < 2 * phases; i++)
    leadRad[i % phases] = Math.max(leadRad[i % phases], leadRad[(i + phases - 1) % phases] - stepRad);
  return { leadRad, waits: holds.map((hold, i) => (hold[0]?.aheadRad ?? -Infinity) < leadRad[i] - drive.bearingRad) };
}

/** From where to where one tooth bears, by its own place. */
function bearingSpan({ drive, holds }: Held, { leadRad, waits }: Kept): { from: number; to: number } | null {
  let from = Infinity, to = -Infinity;
  holds.forEach((hold, i) => hold.forEach(({ u, aheadRad }) => {
    if (aheadRad < leadRad[i] - drive.bearingRad) return;
    from = Math.min(from, u);
    to = Math.max(to, u);
  }));
  if (from > to) return null;
  if (waits.includes(true)) return { from, to };
  const stepRad = drive.pitchRad / holds.length;
  return {
    from: lastHolding(from, from - stepRad, 16, (u) => bears(drive, u)),
    to: lastHolding(to, to + stepRad, 16, (u) => bears(drive, u)),
  };
}

/** Where the driven never waits some tooth bears at every phase; the edges of the span are found from within. */
function ratioOf({ drive }: Held, { waits }: Kept, span: { from: number; to: number } | null): number {
  if (span === null) return 0;
  return waits.includes(true) ? waits.filter((w) => !w).length / waits.length : Math.max(1, (span.to - span.from) / drive.pitchRad);
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

/** By how much a tooth coming into reach by its leading corner finds the driven's tooth ahead of it, as the teeth that bear hold it; under 0 it butts. */
function entrySpareRad(drive: Drive): number {
  const { mating: { driver, driven, axisX, facing }, tipReachRad, ratio, bearingRad } = drive;
  const last = driver.half.length - 1;
  const tip = Math.hypot(driver.x[last], driver.y[last]);
  const x = facing * (tip * Math.cos(tipReachRad) - axisX), y = -tip * Math.sin(tipReachRad);
  const u = -tipReachRad - driver.half[last];
  const ahead = Math.atan2(y, x) + driven.half[driven.half.length - 1] - u * ratio;
  const others = heldAt(drive, u, 0);
  return others.length > 0 ? others[0].aheadRad + bearingRad - ahead : Infinity;
}
