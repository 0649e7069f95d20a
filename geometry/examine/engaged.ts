// What the findings about engaged pairs have in common: where a pair meets, how a length is written, and which arbor of
// it could be moved without disturbing another pair.
import { type Pair, workingRadiusMm } from "../depth/pair.ts";
import type { Remedy } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { AT_LIMIT_MM, SAME_AXIS_MM } from "../numeric/tolerance.ts";

/** A length as a maker reads it: thousandths below a tenth, hundredths above, without idle noughts. */
export function mm(lengthMm: number): string {
  const figures = Math.abs(lengthMm) < 0.1 ? 3 : 2;
  return `${Number(lengthMm.toFixed(figures)).toString().replace("-", "−")} mm`;
}

/** Under a limit, rounding aside. */
export const under = (value: number, limit: number): boolean => value < limit - AT_LIMIT_MM;
/** Not above a limit, rounding aside. */
export const notAbove = (value: number, limit: number): boolean => value <= limit + AT_LIMIT_MM;

/** The pitch point of an engaged pair, mm; both axes in one place: that place. */
export function pitchPoint(movement: Movement, index: number, pair: Pair): { x: number; y: number } {
  const e = movement.engagements[index];
  const from = movement.arbors[e.drivenArbor], to = movement.arbors[e.driverArbor];
  const distanceMm = Math.hypot(to.x - from.x, to.y - from.y);
  if (distanceMm === 0) return { x: from.x, y: from.y };
  // From the driven's axis along the line of centres: towards the driver, but beyond its own side where it runs inside a driving annulus.
  const share = (workingRadiusMm(pair, 1) * (pair.annulus === "driver" ? -1 : 1));
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}

/** Moving one of a pair's arbors along the line of centres to a distance, where that disturbs no other pair. */
export function moveToDistance(movement: Movement, index: number, distanceMm: number): Remedy[] {
  const e = movement.engagements[index];
  const standsMm = e.distance;
  // On one axis there is no line of centres to move along.
  if (standsMm <= SAME_AXIS_MM || !e.steadyDistance) return [];
  const arbors = [[e.drivenArbor, e.driverArbor], [e.driverArbor, e.drivenArbor]] as const;
  return arbors.filter(([moved]) => isFreeToMove(movement, index, moved)).slice(0, 1).map(([moved, still]) => {
    const a = movement.arbors[moved], b = movement.arbors[still];
    const share = (distanceMm - standsMm) / standsMm;
    const by = { x: share * (a.x - b.x), y: share * (a.y - b.y) };
    return { says: `Move arbor ${a.id} ${mm(Math.abs(distanceMm - standsMm))} ${distanceMm > standsMm ? "away from" : "towards"} ${b.id}`, move: a.id, by };
  });
}

function isFreeToMove(movement: Movement, index: number, arbor: number): boolean {
  const { arbor: a, planted } = movement.arbors[arbor];
  if (a.steady || a.fixed || a.rides || a.measured || planted !== "file") return false;
  const carried = movement.arbors.flatMap((other, i) => (i === arbor || other.chain.includes(arbor) ? [i] : []));
  return movement.engagements.every((e, i) => i === index || !(carried.includes(e.driverArbor) || carried.includes(e.drivenArbor)));
}
