// A whole pair in contact at one distance, from the true outlines: the driven's place for every place of the driver over
// one pitch. Every tooth in reach holds the driven from falling back; the one that holds it farthest forward bears. What
// the driven has once reached it keeps until a tooth takes it farther: a driven left behind waits. Lengths in mm.
import { lastHolding } from "../numeric/root.ts";
import { centreCrossing, type Drive, driveOf, type Flanks, type Handover, handoverOf, type Hold, heldAt } from "./holding.ts";
import { aheadOver, arcsAmong, stepRadOf } from "./phases.ts";
import type { Touch } from "./touch.ts";

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

/** The pair at a distance; null where no tooth can reach another. */
export function contactAt(flanks: Flanks, distanceMm: number, phases: number): Contact | null {
  const drive = driveOf(flanks, distanceMm), held = drive && heldOver(drive, phases), kept = held && keptOver(drive, held.ahead);
  if (drive === null || held === null || kept === null) return null;
  const { holds, ahead } = held, { leadRad, waits } = kept;
  const handover = handoverOf(drive), mean = leadRad.reduce((sum, v) => sum + v, 0) / phases;
  const span = bearingSpan(drive, held, kept);
  const centre = span === null ? 0 : centreCrossing(drive);
  const bearing = holds.map((hold, i) => (waits[i] ? null : hold[0]?.touch ?? null));
  return {
    phases, leadRad: leadRad.map((v) => v - mean),
    rate: leadRad.map((_, i) => (bearing[i]?.rate ?? 0) / drive.ratio),
    freeArcRad: arcsAmong(drive, ahead),
    touches: bearing,
    begins: span && (span.from - centre) / drive.pitchRad, ends: span && (span.to - centre) / drive.pitchRad,
    ratio: ratioOf(drive, kept, handover, span),
    butting: handover.entryRad < 0,
  };
}

/** Pitches over which one tooth bears, 0 where none can reach another. */
export function contactRatioAt(flanks: Flanks, distanceMm: number, phases: number): number {
  const drive = driveOf(flanks, distanceMm), held = drive && heldOver(drive, phases), kept = held && keptOver(drive, held.ahead);
  return drive && held && kept ? ratioOf(drive, kept, handoverOf(drive), bearingSpan(drive, held, kept)) : 0;
}

/** How teeth take over from one another at a distance. */
export interface Handing {
  /** Of a pitch, how much some tooth bears: 1 where the driven never waits. */
  readonly share: number;
  readonly butting: boolean;
}

export function handingAt(flanks: Flanks, distanceMm: number, phases: number): Handing | null {
  const drive = driveOf(flanks, distanceMm), kept = drive && keptOver(drive, aheadOver(drive, phases));
  if (drive === null || kept === null) return null;
  const handover = handoverOf(drive);
  return { share: shareBearing(drive, kept, handover), butting: handover.entryRad < 0 };
}

/** What holds the driven, phase by phase over one pitch, the foremost first; and how far ahead the foremost does. */
interface Held { readonly holds: readonly (readonly Hold[])[]; readonly ahead: Float64Array }

/** Where the driven truly stands, and where nothing moves it. */
interface Kept { readonly leadRad: Float64Array; readonly waits: readonly boolean[] }

function heldOver(drive: Drive, phases: number): Held {
  const ahead = new Float64Array(phases), holds: Hold[][] = [];
  for (let i = 0; i < phases; i++) {
    const hold = heldAt(drive, (i / phases) * drive.pitchRad);
    holds.push(hold);
    ahead[i] = hold.length > 0 ? hold[0].aheadRad : -Infinity;
  }
  return { holds, ahead };
}

/** The foremost tooth's place, or the place it was brought to before, whichever is ahead; null where no tooth holds it at all. */
function keptOver(drive: Drive, ahead: Float64Array): Kept | null {
  const phases = ahead.length, stepRad = stepRadOf(drive, phases), leadRad = ahead.slice(), waits: boolean[] = [];
  if (!ahead.some((v) => v > -Infinity)) return null;
  for (let i = 0; i < 2 * phases; i++)
    leadRad[i % phases] = Math.max(leadRad[i % phases], leadRad[(i + phases - 1) % phases] - stepRad);
  for (let i = 0; i < phases; i++) waits.push(ahead[i] < leadRad[i] - drive.bearingRad);
  return { leadRad, waits };
}

/** From where to where one tooth bears, by its own place. */
function bearingSpan(drive: Drive, { holds }: Held, { leadRad, waits }: Kept): { from: number; to: number } | null {
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
function ratioOf(drive: Drive, kept: Kept, handover: Handover, span: { from: number; to: number } | null): number {
  if (span === null) return 0;
  const share = shareBearing(drive, kept, handover);
  return share < 1 ? share : Math.max(1, (span.to - span.from) / drive.pitchRad);
}

/** Of the phases, how many bear; and if it waits between two of them, by how much the hand-over fails. */
function shareBearing({ pitchRad, ratio }: Drive, { waits }: Kept, { exitRad, reachRad }: Handover): number {
  const short = Math.min(0, reachRad, exitRad === -Infinity ? 0 : exitRad) / (pitchRad * ratio);
  return Math.min(waits.filter((w) => !w).length / waits.length, Math.max(0, 1 + short));
}

function bears(drive: Drive, u: number): boolean {
  const holds = heldAt(drive, u), own = holds.find((h) => Math.abs(h.u - u) < drive.pitchRad / 2);
  return own !== undefined && own.aheadRad >= holds[0].aheadRad - drive.bearingRad;
}
