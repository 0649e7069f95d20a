// Places that a maker would choose by eye: on a centre line of the frame, mirrored or turned from another axis, in line
// with it, or a round figure. A hand that comes near one stands there. Lengths in mm.
import type { Movement } from "../../../geometry/index.ts";
import type { Place } from "../../commands/planting.ts";

export interface Snapped extends Place {
  /** Why it stands there, in a few words; null: nothing was near. */
  readonly says: string | null;
}

/** Half a millimetre is a figure that is easily marked out. */
const ROUND_MM = 0.5;

export function snapped(movement: Movement, arbor: string, to: Place, withinMm: number): Snapped {
  const others = [...movement.arbors.filter((a) => a.id !== arbor && a.arbor.rides === undefined), ...movement.instrument.frame.pillars];
  const places = others.flatMap((o) => symmetricOf(o));
  let best: Snapped | null = null, near = withinMm;
  for (const place of places) {
    const far = Math.hypot(place.x - to.x, place.y - to.y);
    if (far < near) { best = place; near = far; }
  }
  if (best) return best;
  const x = lineNear(to.x, others.map((o) => ({ at: o.x, id: o.id })), withinMm), y = lineNear(to.y, others.map((o) => ({ at: o.y, id: o.id })), withinMm);
  if (x === null && y === null) return { ...to, says: null };
  return { x: x?.at ?? to.x, y: y?.at ?? to.y, says: [x?.says, y?.says].filter(Boolean).join(", ") };
}

function symmetricOf({ id, x, y }: { readonly id: string; readonly x: number; readonly y: number }): Snapped[] {
  if (Math.hypot(x, y) < ROUND_MM) return [];
  const third = Math.sqrt(3) / 2;
  return [
    { x: -x, y: -y, says: `opposite ${id}` }, { x: -x, y, says: `${id} mirrored` }, { x, y: -y, says: `${id} mirrored` },
    { x: -y, y: x, says: `a quarter from ${id}` }, { x: y, y: -x, says: `a quarter from ${id}` },
    { x: -x / 2 - third * y, y: third * x - y / 2, says: `a third from ${id}` }, { x: -x / 2 + third * y, y: -third * x - y / 2, says: `a third from ${id}` },
  ];
}

function lineNear(at: number, lines: readonly { readonly at: number; readonly id: string }[], withinMm: number): { at: number; says: string } | null {
  if (Math.abs(at) < withinMm) return { at: 0, says: "on the centre line" };
  const line = lines.find((l) => Math.abs(l.at - at) < withinMm / 2);
  if (line) return { at: line.at, says: `in line with ${line.id}` };
  const round = Math.round(at / ROUND_MM) * ROUND_MM;
  return Math.abs(round - at) < withinMm / 4 ? { at: round, says: "" } : null;
}
