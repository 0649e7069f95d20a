// The tops of clock leaves, and arcs in their place on wheels: an arc on either side, from the flank's end on the pitch
// circle to the tooth's middle line at the full addendum.
import { pitchRadius } from "./distance.ts";
import { arcPiece, type Piece } from "./profile.ts";
import { rolledAt, rolledPiece, rollToRadius, type Rolled } from "./rolled.ts";
import type { Teeth } from "./teeth.ts";

/** A pinion that engages nothing is shaped as for a wheel of so many times its leaves. */
const USUAL_RATIO = 8;

/**
 * The arc of the published radius, flattened as far as needed to stay within the form conjugate to the wheel's radial
 * flanks: the epicycloid rolled by half the wheel's pitch circle. Where even a straight line would leave that form, as
 * with few leaves in a small wheel, the top is that form itself.
 */
export function pinionTop(teeth: Teeth, halfRad: number, apexMm: number, radiusMm: number): Piece {
  const pitch = pitchRadius(teeth);
  const wheel = teeth.mateCount ?? USUAL_RATIO * teeth.count;
  const conjugate = { pitch, generating: (wheel * teeth.module) / 4, back: 0 };
  const within = (r: number) => staysWithin(topArc(pitch, halfRad, apexMm, r), conjugate, halfRad);
  if (within(radiusMm)) return topArc(pitch, halfRad, apexMm, radiusMm);
  if (!within(Infinity)) return rolledPiece(conjugate, 0, -halfRad);
  // By curvature, which runs evenly from the published arc's to a straight line's.
  let flat = 0, full = 1 / radiusMm;
  for (let i = 0; i < 24; i++) {
    const mid = (flat + full) / 2;
    if (within(1 / mid)) flat = mid;
    else full = mid;
  }
  return topArc(pitch, halfRad, apexMm, 1 / flat);
}

/** The arc of a radius (at least half the chord) from polar angle −halfRad on the pitch circle to apexMm on the middle line. */
export function topArc(pitch: number, halfRad: number, apexMm: number, radiusMm: number): Piece {
  const x0 = pitch * Math.cos(halfRad), y0 = -pitch * Math.sin(halfRad);
  const dx = apexMm - x0, dy = -y0, chord = Math.hypot(dx, dy);
  const radius = Math.min(Math.max(radiusMm, chord / 2), STRAIGHT * chord);
  const below = Math.sqrt(radius * radius - (chord * chord) / 4);
  const cx = (x0 + apexMm) / 2 - (dy / chord) * below, cy = y0 / 2 + (dx / chord) * below;
  return arcPiece("tip", { x: cx, y: cy }, radius, Math.atan2(y0 - cy, x0 - cx), Math.atan2(-cy, apexMm - cx), 1);
}

/** In how many places the arc is held against the conjugate form: between them it may pass it by 2e-5 of a module. */
const PLACES = 100;
/** A radius of so many chords is as good as a straight line (its rise is 1/8000 of the chord), and keeps its figures. */
const STRAIGHT = 1000;

function staysWithin(arc: Piece, conjugate: Rolled, halfRad: number): boolean {
  for (let i = 1; i <= PLACES; i++) {
    // Closer together towards the pitch circle, where the two part slowly.
    const p = arc.at(arc.from + (i / PLACES) ** 2 * (arc.to - arc.from));
    const roll = rollToRadius(conjugate, Math.hypot(p.x, p.y));
    if (Math.atan2(p.y, p.x) < rolledAt(conjugate, roll).polarRad - halfRad) return false;
  }
  return true;
}
