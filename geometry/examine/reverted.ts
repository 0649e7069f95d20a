// `reverted`: pairs on the same two axes whose computed distances differ, so that no planting suits them all.
import { faceOverlapOf } from "../depth/face.ts";
import { pairOf } from "../depth/pair.ts";
import type { Finding } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { signOf } from "../numeric/ratio.ts";
import { AT_LIMIT_MM, DISTANCE_MM, SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { mm, pitchPoint } from "./engaged.ts";

export function revertedFindings(movement: Movement): Finding[] {
  const axis = axesOf(movement);
  const groups = new Map<string, number[]>();
  movement.engagements.forEach((e, i) => {
    if (e.computed === null) return;
    const [low, high] = [axis[e.driverArbor], axis[e.drivenArbor]].sort((a, b) => a - b);
    const key = `${low} ${high}`;
    groups.set(key, [...(groups.get(key) ?? []), i]);
  });
  return [...groups.values()].filter((group) => group.length > 1).map((group) => findingOf(movement, group));
}

function findingOf(movement: Movement, group: readonly number[]): Finding {
  const between = group.map((i) => movement.engagements[i].id);
  const computed = group.map((i) => movement.engagements[i].computed ?? 0);
  const least = Math.min(...computed), most = Math.max(...computed);
  const differs = most - least > DISTANCE_MM + AT_LIMIT_MM;
  const [first] = group;
  return {
    code: "reverted", severity: differs ? "foul" : "free", between,
    at: { ...pitchPoint(movement, first, pairOf(movement, first)), z: faceOverlapOf(movement, first).z },
    says: differs
      ? `${between.join(" and ")} share their two axes but want distances ${mm(most - least)} apart (${least.toFixed(3)} and ${most.toFixed(3)} mm)`
      : `${between.join(" and ")} share their two axes and agree`,
    remedies: [],
  };
}

/** For every arbor the least index of the arbors in line with it: in one place, and on the same carrier or the frame. */
function axesOf(movement: Movement): number[] {
  const carriers = movement.arbors.map((_, i) => turningCarrier(movement, i));
  const places = new Map<string, number[]>();
  const cell = (v: number) => Math.round(v / (4 * SAME_AXIS_MM));
  return movement.arbors.map((a, i) => {
    const near = [-1, 0, 1].flatMap((dx) => [-1, 0, 1].flatMap((dy) => places.get(`${cell(a.x) + dx} ${cell(a.y) + dy}`) ?? []));
    const same = near.filter((j) => carriers[j] === carriers[i]
      && Math.hypot(movement.arbors[j].x - a.x, movement.arbors[j].y - a.y) <= SAME_AXIS_MM);
    if (same.length > 0) return Math.min(...same);
    const key = `${cell(a.x)} ${cell(a.y)}`;
    places.set(key, [...(places.get(key) ?? []), i]);
    return i;
  });
}

/** The carrier that takes its axis round, passing over carriers that do not turn. */
function turningCarrier(movement: Movement, arbor: number): number | null {
  let carrier = movement.arbors[arbor].carrier;
  while (carrier !== null) {
    const rate = movement.arbors[carrier].rate;
    if (rate === null || signOf(rate) !== 0) return carrier;
    carrier = movement.arbors[carrier].carrier;
  }
  return null;
}
