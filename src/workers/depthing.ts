// What the depthing worker does: an instrument and one of its engagements in, all that depthing the pair tells out. Plain
// data both ways, so it can be called anywhere.
import { type Cycle, type Depthing, depthingOf, figuresOf, type Instrument, type Movement, pairOf, runningOf, workOut } from "../../geometry/index.ts";

export interface Asked {
  readonly instrument: Instrument;
  readonly engagement: string;
}

export interface Depthed {
  readonly depthing: Depthing;
  readonly cycle: Cycle | null;
  /** mm of backlash that the practice wants, least and most, as this pair's is counted; null where it is not. */
  readonly wanted: readonly [number, number] | null;
}

/** Null: there is no such engagement. */
export function depthed({ instrument, engagement }: Asked): Depthed | null {
  const movement = workOut(instrument), index = movement.engagements.findIndex((e) => e.id === engagement);
  if (index < 0) return null;
  return { depthing: depthingOf(movement, index), cycle: runningOf(movement, index).cycle, wanted: wantedOf(movement, index) };
}

/** The count of a pair's backlash differs from its backlash by what clock teeth have at their computed distance. */
function wantedOf(movement: Movement, index: number): readonly [number, number] | null {
  const pair = pairOf(movement, index), figures = figuresOf(pair), at = pair.computedMm ?? pair.distanceMm;
  const backlash = figures?.backlashMm(at) ?? null, counted = figures?.countedModules(at) ?? null;
  if (backlash === null || counted === null) return null;
  const [least, most] = movement.practice.backlash;
  return [backlash + (least - counted) * pair.moduleMm, backlash + (most - counted) * pair.moduleMm];
}
