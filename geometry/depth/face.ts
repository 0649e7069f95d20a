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

/** Overlap of an engaged pair's faces. */
export function faceOverlapOf(movement: Movement, index: number): FaceOverlap {
  const e = movement.engagements[index];
  return facesOverlap(movement, e.driverArbor, e.driver, e.drivenArbor, e.driven);
}

/** How far two parts of two arbors share height; what both arbors share by riding on the same arbor moves them together. */
export function facesOverlap(movement: Movement, firstArbor: number, first: Part, secondArbor: number, second: Part): FaceOverlap {
  const [ofFirst, ofSecond] = unsharedArbors(movement, firstArbor, secondArbor);
  const shake = (arbors: readonly number[], way: "up" | "down") =>
    arbors.reduce((sum, i) => sum + movement.arbors[i].ownShake[way], 0);
  const [low1, high1] = faceOf(first), [low2, high2] = faceOf(second);
  const overlap = (lift: number) => Math.min(high1 + lift, high2) - Math.max(low1 + lift, low2);
  // The overlap is concave in the lift of one face against the other, so the worst is at an end.
  const worst = Math.min(
    overlap(shake(ofFirst, "up") + shake(ofSecond, "down")),
    overlap(-shake(ofFirst, "down") - shake(ofSecond, "up")),
  );
  return { drawn: overlap(0), worst, z: (Math.min(high1, high2) + Math.max(low1, low2)) / 2 };
}

const faceOf = (part: Part): [number, number] => [part.z, part.z + (part.measured?.thickness ?? part.thickness)];
