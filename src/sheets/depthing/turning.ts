// Where the driver's teeth stand against the line of centres, at any turns of the crank.
import { type EngagedPair, type Movement, motionOf, POSE_STRIDE, poseInto, toothPhases } from "../../../geometry/index.ts";

/** Pitches by which a tooth of the driver stands past the line of centres, growing as the crank is turned forward. */
export function pitchesBy(movement: Movement, index: number): (turns: number) => number {
  const engagement = movement.engagements[index];
  if (!engagement) return () => 0;
  const { driverArbor, drivenArbor, driver } = engagement;
  const motion = motionOf(movement), pose = new Float64Array(POSE_STRIDE * movement.arbors.length);
  const phaseRad = toothPhases(movement).get(driver.id) ?? 0, count = movement.teeth.get(driver.id)?.count ?? 1;
  const isRing = movement.teeth.get(engagement.driven.id)?.internal === true;
  const pitches = (turns: number) => {
    poseInto(pose, motion, turns);
    const at = (arbor: number, what: number) => pose[POSE_STRIDE * arbor + what] ?? 0;
    const ahead = Math.atan2(at(drivenArbor, 1) - at(driverArbor, 1), at(drivenArbor, 0) - at(driverArbor, 0)) + (isRing ? Math.PI : 0);
    return ((at(driverArbor, 2) + phaseRad - ahead) * count) / (2 * Math.PI);
  };
  // Whichever way it turns, it is drawn turning the same way: teeth are alike on both sides.
  const step = pitches(A_LITTLE) - pitches(0), sense = step - count * Math.round(step / count) < 0 ? -1 : 1;
  return (turns) => sense * pitches(turns);
}

/** Turns: so few that nothing goes half round, so many that they are told apart. */
const A_LITTLE = 1e-5;

/** Where everything lies along the line of centres, mm from the driver's axis, the meeting on the side of +x. */
export interface Across {
  readonly drivenAxis: number;
  /** Where the working pitch circles touch. */
  readonly pitchPoint: number;
  /** From a radius of the driven to its place beside the meeting. */
  readonly ofDriven: (radius: number) => number;
}

export function acrossOf({ annulus, distanceMm, driver, driven }: EngagedPair): Across {
  const z1 = driver.teeth.count, z2 = driven.teeth.count, drivenAxis = annulus === "driven" ? -distanceMm : distanceMm;
  const counts = annulus === "driven" ? z2 - z1 : annulus === "driver" ? z1 - z2 : z1 + z2;
  const facing = annulus === null ? -1 : 1;
  return {
    drivenAxis, ofDriven: (radius) => drivenAxis + facing * radius,
    pitchPoint: counts > 0 ? (distanceMm * z1) / counts : (z1 * driver.teeth.module) / 2,
  };
}

/** The two ends of the clearance from tip to root that is least, along the line of centres; null where there is no root. */
export function tipToRootEnds(pair: EngagedPair): readonly [number, number] | null {
  const { ofDriven } = acrossOf(pair), { driver, driven } = pair;
  const ends = [[driver.tipRadiusMm, ofDriven(driven.rootRadiusMm)], [driver.rootRadiusMm, ofDriven(driven.tipRadiusMm)]] as const;
  const clear = ([a, b]: readonly [number, number]) => (pair.annulus === "driver" ? a - b : b - a);
  const finite = ends.filter((e) => e.every(Number.isFinite)).sort((a, b) => clear(a) - clear(b));
  return finite[0] ?? null;
}
