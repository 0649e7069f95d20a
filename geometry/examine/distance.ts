// `distance`: a pair that stands more than the tolerance from its computed distance.
import { faceOverlapOf } from "../depth/face.ts";
import { pairOf } from "../depth/pair.ts";
import type { Finding } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { AT_LIMIT_MM, DISTANCE_MM } from "../numeric/tolerance.ts";
import { mm, moveToDistance, pitchPoint } from "./engaged.ts";

/** Pairs without a computed distance are not judged here: `depth` speaks of them. */
export const distanceFindings = (movement: Movement): Finding[] => movement.engagements.flatMap((e, i) => {
  const pair = pairOf(movement, i);
  if (pair.computedMm === null) return [];
  const offMm = pair.distanceMm - pair.computedMm;
  const isOff = Math.abs(offMm) > DISTANCE_MM + AT_LIMIT_MM;
  const [a, b] = [pair.driver.id, pair.driven.id];
  const finding: Finding = {
    code: "distance", severity: isOff ? "tight" : "free", between: [a, b],
    at: { ...pitchPoint(movement, i, pair), z: faceOverlapOf(movement, i).z },
    says: isOff
      ? `${a} and ${b} stand ${mm(Math.abs(offMm))} ${offMm > 0 ? "farther" : "nearer"} than their computed ${e.computed?.toFixed(3)} mm`
      : `${a} and ${b} stand at their computed distance`,
    remedies: isOff ? moveToDistance(movement, i, pair.computedMm) : [],
  };
  return [finding];
});
