// `run-off`: engaged faces that overlap too little at the worst of their shakes.
import { type FaceOverlap, faceOverlapOf } from "../depth/face.ts";
import { type Pair, pairOf } from "../depth/pair.ts";
import type { Finding, Remedy } from "../finding.ts";
import type { Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { mm, notAbove, pitchPoint, under } from "./engaged.ts";

export const runOffFindings = (movement: Movement): Finding[] => movement.engagements.map((_, i) => {
  const pair = pairOf(movement, i), overlap = faceOverlapOf(movement, i);
  const wanted = movement.practice.faceOverlap * pair.moduleMm;
  const severity = notAbove(overlap.worst, 0) ? "foul" : under(overlap.worst, wanted) ? "tight" : "free";
  const [a, b] = [pair.driver.id, pair.driven.id];
  return {
    code: "run-off", severity, between: [a, b], gap: overlap.drawn, worst: overlap.worst, wanted,
    at: { ...pitchPoint(movement, i, pair), z: overlap.z },
    says: severity === "foul" ? `${a} can run off ${b}: ${gone(overlap)}`
      : severity === "tight" ? `Only ${mm(overlap.worst)} of ${a} and ${b} overlap at the worst of their shakes, ${mm(wanted)} is wanted`
        : `${a} and ${b} overlap by ${mm(overlap.worst)} at the worst of their shakes`,
    remedies: severity === "free" ? [] : remediesOf(movement, i, pair, overlap, wanted),
  };
});

const gone = ({ worst }: FaceOverlap): string =>
  worst < 0 ? `at the worst of their shakes the faces pass by ${mm(-worst)}` : "at the worst of their shakes no face is left";

/** Moving the driven in height until its middle stands level with its mate's, where that leaves overlap enough. */
function remediesOf(movement: Movement, index: number, pair: Pair, overlap: FaceOverlap, wanted: number): Remedy[] {
  const { driver, driven } = movement.engagements[index];
  const by = middle(driver) - middle(driven);
  const gained = Math.min(thickness(driver), thickness(driven)) - overlap.drawn;
  if (by === 0 || under(overlap.worst + gained, wanted)) return [];
  const moved = movedInHeight(movement, index, by);
  if (under(faceOverlapOf(moved, index).worst, wanted)) return [];
  return [{ says: `${by > 0 ? "Raise" : "Lower"} ${pair.driven.id} by ${mm(Math.abs(by))}`, move: pair.driven.id, by: { z: by } }];
}

function movedInHeight(movement: Movement, index: number, byMm: number): Movement {
  const engagements = movement.engagements.map((e, i) =>
    i === index ? { ...e, driven: { ...e.driven, z: e.driven.z + byMm } } : e);
  return { ...movement, engagements };
}

const thickness = (part: Part): number => part.measured?.thickness ?? part.thickness;
const middle = (part: Part): number => part.z + thickness(part) / 2;
