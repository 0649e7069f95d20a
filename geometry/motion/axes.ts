// Which axes are one, and on which arbor two axes both stand still. −1 stands for the frame.
import type { Movement } from "../movement.ts";
import { isZero } from "../numeric/ratio.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";

/** Two arbors that stand in line and are carried by the same arbor, or by none. */
export function sameAxis(movement: Movement, i: number, j: number): boolean {
  const a = movement.arbors[i], b = movement.arbors[j];
  return a.carrier === b.carrier && Math.hypot(a.x - b.x, a.y - b.y) <= SAME_AXIS_MM;
}

/** The arbor on which both axes stand still, −1 the frame; null where their distance changes. */
export function stillFrame(movement: Movement, a: number, b: number): number | null {
  const candidates = [movement.arbors[a].carrier ?? -1, movement.arbors[b].carrier ?? -1];
  const shared = candidates.find((c) => standsStill(movement, a, c) && standsStill(movement, b, c));
  return shared ?? (carriedRound(movement, a) || carriedRound(movement, b) ? null : -1);
}

/** Carried by it, or on its very axis. */
const standsStill = (movement: Movement, i: number, on: number): boolean =>
  (movement.arbors[i].carrier ?? -1) === on || (on >= 0 && sameAxis(movement, i, on));

/** A carrier that does not turn carries nothing round. */
function carriedRound(movement: Movement, i: number): boolean {
  const c = movement.arbors[i].carrier;
  if (c === null) return false;
  const { rate } = movement.arbors[c];
  return (rate !== null && !isZero(rate)) || carriedRound(movement, c);
}
