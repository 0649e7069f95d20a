// The pawl of a click: an arm that swings about its arbor, sprung into the teeth of a ratchet. It bears end on, so its tip
// stands on that side of the line to the ratchet where the way that is held drives the tooth towards the pawl's own axis.
// Lengths in mm, angles as drawn with the input at 0.
import { TAU, toRad, wrapSignedRad } from "../numeric/angle.ts";
import type { Arm, Ratchet } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { FOLLOWED_CHORD_MM } from "../numeric/tolerance.ts";
import { bar, hullOf, type Convex } from "../planar/apart.ts";
import { shakeOf, sharedShake } from "./shakes.ts";
import { runoutOf } from "./thing.ts";

export interface Pawl {
  readonly pawl: Arm;
  readonly pawlArbor: number;
  readonly ratchet: Ratchet;
  readonly ratchetArbor: number;
  /** +1: it holds the ratchet against turning anticlockwise; −1: clockwise. */
  readonly holds: 1 | -1;
  /** Between the two axes. */
  readonly apartMm: number;
  /** From its own axis to the corner that bears. */
  readonly reachMm: number;
  readonly tipMm: number;
  readonly rootMm: number;
  /** Direction from its axis to the ratchet's. */
  readonly towardsRad: number;
}

/** All clicks whose pawl is drawn. */
export const pawlsOf = (movement: Movement): Pawl[] => (movement.instrument.couplings ?? []).flatMap((c) => {
  if (c.kind !== "click" || c.pawl === undefined) return [];
  const at = movement.partIndex.get(c.pawl), of = movement.partIndex.get(c.ratchet);
  const pawl = at && movement.arbors[at.arbor].arbor.parts[at.part], ratchet = of && movement.arbors[of.arbor].arbor.parts[of.part];
  if (at === undefined || of === undefined || pawl?.kind !== "arm" || ratchet?.kind !== "ratchet") return [];
  const here = movement.arbors[at.arbor], there = movement.arbors[of.arbor], tipMm = (ratchet.measured?.tipDiameter ?? ratchet.diameter) / 2;
  return [{
    pawl, pawlArbor: at.arbor, ratchet, ratchetArbor: of.arbor, holds: c.passes === "clockwise" ? 1 as const : -1 as const,
    apartMm: Math.hypot(there.x - here.x, there.y - here.y), reachMm: Math.hypot(pawl.length, pawl.width / 2), tipMm,
    rootMm: Math.max(0, tipMm - ratchet.depth), towardsRad: Math.atan2(there.y - here.y, there.x - here.x),
  }];
});

/** A part as a pawl; null where it is none. */
export const pawlOf = (movement: Movement, partId: string): Pawl | null => pawlsOf(movement).find((p) => p.pawl.id === partId) ?? null;

/** What run-out of the ratchet and the shake of both in their holes can put between tip and pawl, to either side. */
export const lostAtPawl = (movement: Movement, { ratchet, ratchetArbor, pawlArbor }: Pawl): number =>
  runoutOf(movement, ratchet) + shakeOf(movement, ratchetArbor).side + shakeOf(movement, pawlArbor).side - 2 * sharedShake(movement, ratchetArbor, pawlArbor).side;

/** Whether the arm is drawn on the side on which it can hold. */
export const drawnToHold = ({ pawl, towardsRad, holds }: Pawl): boolean => holds * Math.sin(toRad(pawl.angle) - towardsRad) >= 0;

/** Least distance from the ratchet's axis to which its bearing corner can drop: to the root, or until its side lies on the next tooth. Null: it never comes under the tips. */
export function restsAt(p: Pawl): number | null {
  const { apartMm: d, reachMm, tipMm } = p;
  if (Math.abs(d - reachMm) >= tipMm || d + reachMm <= tipMm) return null;
  let low = Math.max(p.rootMm, Math.abs(d - reachMm)), high = tipMm;
  if (clearsTeeth(p, low)) return low;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (clearsTeeth(p, middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** To a millionth of a tooth. */
const HALVINGS = 40;

/** With its corner so far from the ratchet's axis, in the foot of a face there: whether its side stands clear of the tips of the next teeth. */
function clearsTeeth(p: Pawl, cornerMm: number): boolean {
  const { apartMm: d, reachMm, tipMm, holds, ratchet } = p;
  // Seen from the ratchet's axis with the pawl's on +x; the corner stands clockwise of it where anticlockwise is held.
  const corner = -holds * Math.acos(clamped((d * d + cornerMm * cornerMm - reachMm * reachMm) / (2 * d * cornerMm)));
  const cx = cornerMm * Math.cos(corner), cy = cornerMm * Math.sin(corner);
  const lean = Math.atan2(-cy, d - cx) + holds * Math.atan2(p.pawl.width / 2, p.pawl.length);
  for (let k = 1; k < ratchet.teeth / 2; k++) {
    const rad = corner + (holds * TAU * k) / ratchet.teeth, x = tipMm * Math.cos(rad) - cx, y = tipMm * Math.sin(rad) - cy;
    const along = x * Math.cos(lean) + y * Math.sin(lean), aside = y * Math.cos(lean) - x * Math.sin(lean);
    // Inward is the side of the ratchet's axis.
    if (along > 0 && along < p.pawl.length && -holds * aside > 0) return false;
  }
  return true;
}

/** Whether the pressure of a tooth draws it in: its axis stands outside the line square to the tooth's face at the tip. */
export const isDrawnIn = ({ apartMm, reachMm, tipMm }: Pawl): boolean => apartMm ** 2 > reachMm ** 2 + tipMm ** 2;

/** All that the arm sweeps between the root of the teeth and a place over their tips. */
export function swungOutline(p: Pawl, overTipMm: number): Convex {
  const { pawl, towardsRad, holds, apartMm: d, reachMm } = p;
  const at = (cornerMm: number) => towardsRad + holds * (Math.acos(clamped((d * d + reachMm * reachMm - cornerMm * cornerMm) / (2 * d * reachMm))) + Math.atan2(pawl.width / 2, pawl.length));
  const from = at(p.rootMm), span = wrapSignedRad(at(p.tipMm + overTipMm) - from);
  const steps = Math.max(1, Math.ceil(Math.abs(span) / (2 * Math.acos(1 - FOLLOWED_CHORD_MM / Math.max(reachMm, 2 * FOLLOWED_CHORD_MM)))));
  return { corners: hullOf(Array.from({ length: steps + 1 }, (_, i) => bar(0, pawl.length, pawl.width, from + (span * i) / steps).corners)), radius: 0 };
}

const clamped = (cos: number): number => Math.max(-1, Math.min(1, cos));
