// Where two things quarrel or come nearest: the place that is marked on the screen and on paper. Lengths in mm.
import { axisReach, type Axis } from "../bodies/axis.ts";
import { nearestOnEdge, type Place } from "../bodies/plate.ts";
import type { Cylinder, Thing } from "../bodies/thing.ts";
import type { Plate } from "../instrument.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";

/** In the middle of what the two share, or of the air between them; a carried axis stands where it comes nearest. */
export function placeOf(a: Thing, b: Thing, [ca, cb]: readonly [Cylinder, Cylinder]): { x: number; y: number; z: number } {
  const z = (Math.max(ca.z0, cb.z0) + Math.min(ca.z1, cb.z1)) / 2;
  const plan = a.plate !== null ? besidePlate(a.plate, b, cb) : b.plate !== null ? besidePlate(b.plate, a, ca) : between(a, ca, b, cb);
  return { ...plan, z };
}

function between(a: Thing, ca: Cylinder, b: Thing, cb: Cylinder): Place {
  const [from, to] = nearestPlaces(a.axis, b.axis);
  const distance = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = distance === 0 ? [1, 0] : [(to.x - from.x) / distance, (to.y - from.y) / distance];
  const along = alongLine(ca, cb, distance);
  return { x: from.x + ux * along, y: from.y + uy * along };
}

/** mm from a's axis towards b's. */
function alongLine(ca: Cylinder, cb: Cylinder, distance: number): number {
  if (ca.inner > distance) return (ca.inner + distance + cb.radius) / 2;
  if (cb.inner > distance) return distance - (cb.inner + distance + ca.radius) / 2;
  return (Math.max(-ca.radius, distance - cb.radius) + Math.min(ca.radius, distance + cb.radius)) / 2;
}

/** Where two axes stand when they are nearest: as drawn, if that is as near as they come. */
function nearestPlaces(a: Axis, b: Axis): [Place, Place] {
  const drawn = Math.hypot(a.atRest.x - b.atRest.x, a.atRest.y - b.atRest.y);
  if (drawn <= axisReach(a, b).least + SAME_AXIS_MM) return [a.atRest, b.atRest];
  const from = nearestTo(a, b);
  return [from, nearestTo(b, from)];
}

function nearestTo(axis: Axis, to: Place): Place {
  if (axis.swings.length === 0) return axis.atRest;
  const dx = to.x - axis.x, dy = to.y - axis.y, away = Math.hypot(dx, dy);
  const arm = axis.swings.reduce((sum, s) => sum + Math.hypot(s.x, s.y), 0);
  return away === 0 ? axis.atRest : { x: axis.x + (dx / away) * arm, y: axis.y + (dy / away) * arm };
}

function besidePlate(plate: Plate, thing: Thing, c: Cylinder): Place {
  const { x, y } = thing.axis.atRest;
  const edge = nearestOnEdge(plate.outline, x, y);
  return Math.hypot(edge.x - x, edge.y - y) < c.radius ? edge : { x, y };
}
