// One engaged pair at one distance, light enough to be worked out for every frame of a drag: how it is in contact, the
// path of one tooth's contact, and where the driven's teeth stand. Lengths in mm.
import type { Movement } from "../movement.ts";
import { TAU } from "../numeric/angle.ts";
import { DRAWN_APART_MODULES } from "../numeric/tolerance.ts";
import { type Contact, contactAt } from "./contact.ts";
import { centreCrossing, driveOf, type Flanks, flanksOf } from "./holding.ts";
import { type Pair, pairOf, tipToRootMm, workingRadiusMm } from "./pair.ts";
import { type Touch, touchAt } from "./touch.ts";

/** One place on the path of contact: how far the driver's tooth stands past the line of centres, in its pitches, and the touch there. */
export interface OnPath {
  readonly pitches: number;
  readonly touch: Touch;
  /** Metal meets metal here; else another tooth keeps these two a little apart. */
  readonly bears: boolean;
}

export interface Standing {
  /** At this distance. */
  readonly pair: Pair;
  /** Null where the pair cannot work at all, or no tooth reaches another. */
  readonly contact: Contact | null;
  /** Along the driven's working pitch circle, the least over one pitch. */
  readonly backlashMm: number | null;
  readonly tipToRootMm: number | null;
  /** The contact of one tooth from where it begins to where it ends, evenly stepped; empty where there is none. */
  readonly path: readonly OnPath[];
  /** With a tooth of the driver on the line of centres: how far past it a tooth of the driven stands at a constant rate, forward, radians. */
  readonly drivenRad: number;
}

/** What tells where the driven's teeth are. */
type Stands = Pick<Standing, "pair" | "contact" | "drivenRad">;

const PATH_STEPS = 24;

/** A pair of a movement at a distance, looked at so many times over one pitch. */
export function standingAt(movement: Movement, index: number, distanceMm: number, phases: number): Standing {
  const pair = { ...pairOf(movement, index), distanceMm };
  const flanks = pair.fault === null ? flanksOf(pair) : null;
  const contact = flanks && contactAt(flanks, distanceMm, phases);
  const tipToRoot = tipToRootMm(pair, distanceMm);
  const standing = { pair, contact, drivenRad: drivenRadOf(pair, contact) };
  return {
    ...standing,
    backlashMm: contact && contact.freeArcRad.reduce((a, b) => Math.min(a, b)) * workingRadiusMm(pair, distanceMm),
    tipToRootMm: pair.fault === null && Number.isFinite(tipToRoot) ? tipToRoot : null,
    path: flanks && contact ? pathOf(flanks, standing, contact) : [],
  };
}

/** How far past the line of centres a tooth of the driven stands when the driver's stands so many pitches past it, radians. */
export function drivenPlaceRad({ pair, contact, drivenRad }: Stands, pitches: number): number {
  const share = pitches - Math.floor(pitches), steady = drivenRad + share * (TAU / pair.driven.teeth.count);
  if (contact === null) return steady;
  const at = share * contact.phases, before = Math.floor(at) % contact.phases, after = (before + 1) % contact.phases;
  const lead = contact.leadRad[before] + (at - Math.floor(at)) * (contact.leadRad[after] - contact.leadRad[before]);
  return steady + lead;
}

function pathOf(flanks: Flanks, stands: Stands, { begins, ends }: Contact): OnPath[] {
  const { distanceMm, moduleMm, driven } = stands.pair, radiusMm = workingRadiusMm(stands.pair, distanceMm);
  const drivenPitchRad = TAU / driven.teeth.count, drive = driveOf(flanks, distanceMm);
  if (drive === null || begins === null || ends === null) return [];
  const centre = centreCrossing(drive);
  return Array.from({ length: PATH_STEPS + 1 }, (_, i) => begins + (i / PATH_STEPS) * (ends - begins)).flatMap((past): OnPath[] => {
    const u = centre + past * drive.pitchRad, touch = touchAt(drive.mating, u);
    if (touch === null) return [];
    const pitches = u / drive.pitchRad, off = (drivenPlaceRad(stands, pitches) - touch.leadRad) / drivenPitchRad;
    const apartMm = Math.abs(off - Math.round(off)) * drivenPitchRad * radiusMm;
    return [{ pitches, touch, bears: apartMm < DRAWN_APART_MODULES * moduleMm }];
  });
}

/** Any touch that bears tells it; without one a space of the driven stands for the tooth of the driver. */
function drivenRadOf(pair: Pair, contact: Contact | null): number {
  const pitchRad = TAU / pair.driven.teeth.count;
  const i = contact?.touches.findIndex((t) => t !== null) ?? -1, touch = contact?.touches[i];
  if (!contact || !touch) return pitchRad / 2;
  const rad = touch.leadRad - contact.leadRad[i] - (i / contact.phases) * pitchRad;
  return rad - Math.floor(rad / pitchRad) * pitchRad;
}
