// `unequal`: engaged parts whose modules, forms or pressure angles do not agree.
import { faceOverlapOf } from "../depth/face.ts";
import { disagreementOf, pairOf } from "../depth/pair.ts";
import type { Finding } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { pitchPoint } from "./engaged.ts";

export const unequalFindings = (movement: Movement): Finding[] => movement.engagements.map((_, i) => {
  const pair = pairOf(movement, i);
  const quarrel = disagreementOf(pair.driver.teeth, pair.driven.teeth);
  const [a, b] = [pair.driver.id, pair.driven.id];
  return {
    code: "unequal", severity: quarrel ? "foul" : "free", between: [a, b],
    at: { ...pitchPoint(movement, i, pair), z: faceOverlapOf(movement, i).z },
    says: quarrel ? `${a} cannot run with ${b}: ${quarrel}` : `${a} and ${b} are of one kind`,
    remedies: [],
  };
});
