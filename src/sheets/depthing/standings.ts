// A pair as the sheet draws it: at the distance as it stands, for every frame of a drag, and at its computed distance.
import { type Movement, type Standing, standingAt } from "../../../geometry/index.ts";

/** Looks over one pitch: fewer while the hand moves it. */
const PHASES = 120, PHASES_IN_HAND = 48;

export const asItStands = (movement: Movement, index: number, inHand: boolean): Standing =>
  standingAt(movement, index, movement.engagements[index]?.distance ?? 0, inHand ? PHASES_IN_HAND : PHASES);

/** Teeth stay the same while arbors are moved, and with them how a pair runs at its computed distance. */
const known = new WeakMap<Movement["teeth"], Map<number, Standing>>();

export function asComputed(movement: Movement, index: number): Standing | null {
  const computed = movement.engagements[index]?.computed ?? null;
  if (computed === null || !(computed > 0)) return null;
  const pairs = known.get(movement.teeth) ?? new Map<number, Standing>();
  known.set(movement.teeth, pairs);
  const standing = pairs.get(index) ?? standingAt(movement, index, computed, PHASES);
  pairs.set(index, standing);
  return standing;
}
