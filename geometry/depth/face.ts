// How far two engaged faces overlap along z. Lengths in mm.
import type { Movement } from "../movement.ts";
import type { Part } from "../instrument.ts";
import { unsharedArbors } from "./pair.ts";

export interface FaceOverlap {
  /** As drawn; negative: so far apart. */
  readonly drawn: number;
  /** At the worst of both shakes. */
  readonly worst: number;
  /** Middle of the overlap as drawn, or of the gap. */
  readonly z: number;
}

/** Overlap of an engaged pair's faces; what both arbors share by riding on the same arbor moves them together. */
export function faceOverlapOf(movement: Movement, index: number): FaceOverlap {
  const e = movement.engagements[index];
  const [ofDriver, ofDriven] = unsharedArbors(movement, e.driverArbor, e.drivenArbor);
  const shake = (arbors: readonly number[], way: "up" | "down") =>
    arbors.reduce((sum, i) => sum + movement.arbors[i].ownShake[way], 0);
  const [low1, high1] = faceOf(e.driver), [low2, high2] = faceOf(e.driven);
  const overlap = (lift: number) => Math.min(high1 + lift, high2) - Math.max(low1 + lift, low2);
  // The overlap is concave in the lift of one face against the other, so the worst is at an end.
  const worst = Math.min(
    overlap(shake(ofDriver, "up") + shake(ofDriven, "down")),
    overlap(-shake(ofDriver, "down") - shake(ofDriven, "up")),
  );
  return { drawn: overlap(0), worst, z: (Math.min(high1, high2) + Math.max(low1, low2)) / 2 };
}

const faceOf = (part: Part): [number, number] => [part.z, part.z + (part.measured?.thickness ?? part.thickness)];
