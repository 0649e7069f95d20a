// Two figures of a pair that tell whether it works, for every phase of a pitch and for one alone: the free arc, and what
// is to spare until teeth fail to take over. Each changes evenly with the distance at every phase, so that where the
// least of them comes to a limit can be sought at the phase that is least.
import { aheadAt, type Drive, driveOf, handoverOf, type Flanks } from "./holding.ts";

/** At a distance (mm); null where no tooth can reach another. */
export interface ByPhase {
  all(distanceMm: number): Float64Array | null;
  one(distanceMm: number, phase: number): number | null;
}

/** Radians: how far the driven can be turned back before its other flanks hold it. */
export function freeArcsOf(flanks: Flanks, phases: number): ByPhase {
  return {
    all: (distanceMm) => withDrive(flanks, distanceMm, (drive) => arcsAmong(drive, aheadOver(drive, phases))),
    one: (distanceMm, i) => withDrive(flanks, distanceMm, (drive) => arcBetween(drive, aheadOfPhase(drive, phases, i), aheadOfPhase(drive, phases, (phases - i) % phases))),
  };
}

/** Radians of the driven to spare until a tip butts, until it waits as a tooth goes out, until none is in reach, and until it waits at any phase: not under 0 where teeth take over. */
export function sparesOf(flanks: Flanks, phases: number): ByPhase {
  return {
    all: (distanceMm) => withDrive(flanks, distanceMm, (drive) => sparesAmong(drive, aheadOver(drive, phases))),
    one: (distanceMm, i) => withDrive(flanks, distanceMm, (drive) => (i < HANDOVER ? handoverAmong(drive)[i] : spareOfPhase(drive, phases, i - HANDOVER))),
  };
}

/** By phase, how far ahead of a constant rate the driven is held. */
export const aheadOver = (drive: Drive, phases: number): Float64Array => {
  const ahead = new Float64Array(phases);
  for (let i = 0; i < phases; i++) ahead[i] = aheadOfPhase(drive, phases, i);
  return ahead;
};

/** Teeth are alike on both sides, so the other flanks touch as these do with the driver turned the other way. */
export const arcsAmong = (drive: Drive, ahead: Float64Array): Float64Array =>
  ahead.map((own, i) => arcBetween(drive, own, ahead[(ahead.length - i) % ahead.length]));

/** Of the spares, those of the hand-over come first. */
const HANDOVER = 3;

const handoverAmong = (drive: Drive): readonly number[] => {
  const { entryRad, exitRad, reachRad } = handoverOf(drive);
  return [entryRad, held(exitRad, reachRad), reachRad];
};

/** Where no tooth holds at all, since none is in reach, that tells by how much. */
const held = (spareRad: number, reachRad: number): number => (spareRad === -Infinity && reachRad < 0 ? reachRad : spareRad);

function sparesAmong(drive: Drive, ahead: Float64Array): Float64Array {
  const phases = ahead.length, spares = new Float64Array(HANDOVER + phases);
  spares.set(handoverAmong(drive));
  for (let i = 0; i < phases; i++) spares[HANDOVER + i] = held(spareBetween(drive, phases, ahead[i], ahead[(i + phases - 1) % phases]), spares[2]);
  return spares;
}

/** Of the driven's place less that of a constant rate, what a phase's step forward adds where it waits. */
export const stepRadOf = ({ pitchRad, ratio }: Drive, phases: number): number => (pitchRad * ratio) / phases;

const withDrive = <T>(flanks: Flanks, distanceMm: number, of: (drive: Drive) => T): T | null => {
  const drive = driveOf(flanks, distanceMm);
  return drive && of(drive);
};

const aheadOfPhase = (drive: Drive, phases: number, i: number): number => aheadAt(drive, (i / phases) * drive.pitchRad);

const arcBetween = ({ pitchRad, ratio }: Drive, ahead: number, back: number): number =>
  (ahead > -Infinity && back > -Infinity ? pitchRad * ratio - ahead - back : pitchRad * ratio);

const spareOfPhase = (drive: Drive, phases: number, i: number): number =>
  spareBetween(drive, phases, aheadOfPhase(drive, phases, i), aheadOfPhase(drive, phases, (i + phases - 1) % phases));

/** How much farther a phase holds the driven than the one before has left it. */
const spareBetween = (drive: Drive, phases: number, own: number, before: number): number =>
  (own === -Infinity ? own : own - before + stepRadOf(drive, phases) + drive.bearingRad);
