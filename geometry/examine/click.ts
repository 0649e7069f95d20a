// A click whose pawl is drawn: that it comes under the tips of its ratchet, holds the one way and lets the other pass, and
// stays on the ratchet in height. The swing of its tip past everything else is among the gaps.
import { drawnToHold, isDrawnIn, lostAtPawl, pawlsOf, restsAt, type Pawl } from "../bodies/pawl.ts";
import { facesOverlap } from "../depth/face.ts";
import type { Finding, Severity } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { toRad } from "../numeric/angle.ts";
import { mm, notAbove, under } from "./engaged.ts";

export const clickFindings = (movement: Movement): Finding[] =>
  pawlsOf(movement).flatMap((p) => [inItsTeeth(movement, p), onItsFace(movement, p)]);

/** Of a tooth's depth, the least on which a pawl is wanted to bear (common practice). */
const BEARS_ON = 0.5;

function inItsTeeth(movement: Movement, p: Pawl): Finding {
  const { pawl, ratchet, tipMm } = p, rests = restsAt(p);
  const gap = rests === null ? missedBy(p) : tipMm - rests, worst = gap - lostAtPawl(movement, p), wanted = BEARS_ON * ratchet.depth;
  const wrongSide = !drawnToHold(p), pushedOut = !isDrawnIn(p);
  const severity: Severity = notAbove(worst, 0) || wrongSide ? "foul" : under(worst, wanted) || pushedOut ? "tight" : "free";
  return {
    code: "depth", severity, between: [pawl.id, ratchet.id], gap, worst, wanted, at: tipPlace(movement, p), remedies: [],
    says: notAbove(worst, 0) ? `Pawl ${pawl.id} does not reach under the tips of ${ratchet.id}${gap > 0 ? " at the worst" : ""}: it lets both ways pass`
      : wrongSide ? `Pawl ${pawl.id} points the way that is to pass ${ratchet.id}: turned over to the other side of ${movement.arbors[p.pawlArbor].id} it holds`
        : under(worst, wanted) ? `Pawl ${pawl.id} bears on only ${mm(worst)} of the teeth of ${ratchet.id} at the worst, ${mm(wanted)} is wanted`
          : pushedOut ? `The teeth of ${ratchet.id} push pawl ${pawl.id} out: its axis stands within the line square to a tooth's face, so only its spring holds it`
            : `Pawl ${pawl.id} holds ${ratchet.id} by ${mm(worst)} of its teeth at the worst, and is lifted where it passes`,
  };
}

/** Below 0: how much too short or too long it is to come to the tips. */
const missedBy = ({ apartMm, reachMm, tipMm }: Pawl): number => Math.min(tipMm - Math.abs(apartMm - reachMm), apartMm + reachMm - tipMm, 0);

function onItsFace(movement: Movement, { pawl, pawlArbor, ratchet, ratchetArbor }: Pawl): Finding {
  const { drawn, worst, z } = facesOverlap(movement, pawlArbor, pawl, ratchetArbor, ratchet), wanted = movement.practice.faceGap;
  const severity: Severity = notAbove(worst, 0) ? "foul" : under(worst, wanted) ? "tight" : "free";
  const { x, y } = movement.arbors[ratchetArbor];
  return {
    code: "run-off", severity, between: [pawl.id, ratchet.id], gap: drawn, worst, wanted, at: { x, y, z }, remedies: [],
    says: severity === "foul" ? `Pawl ${pawl.id} can run off ${ratchet.id} at the worst of their shakes`
      : severity === "tight" ? `Only ${mm(worst)} of pawl ${pawl.id} and ${ratchet.id} overlap at the worst of their shakes, ${mm(wanted)} is wanted`
        : `Pawl ${pawl.id} and ${ratchet.id} overlap by ${mm(worst)} at the worst of their shakes`,
  };
}

function tipPlace(movement: Movement, { pawl, pawlArbor, reachMm }: Pawl): NonNullable<Finding["at"]> {
  const { x, y } = movement.arbors[pawlArbor], rad = toRad(pawl.angle);
  return { x: x + reachMm * Math.cos(rad), y: y + reachMm * Math.sin(rad), z: pawl.z + pawl.thickness / 2 };
}
