// The tops of clock leaves, and arcs in their place on wheels: an arc on either side, from the flank's end on the pitch
// circle to the tooth's middle line at the full addendum.
import { rolledAt, rollToPolar, type Rolled } from "./addendum.ts";
import { pitchRadius } from "./distance.ts";
import { arcPoint, type Piece } from "./profile.ts";
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
  if (!within(Infinity)) return conjugateTop(conjugate, halfRad);
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
  return {
    name: "tip", from: Math.atan2(y0 - cy, x0 - cx), to: Math.atan2(-cy, apexMm - cx),
    at: (u) => arcPoint(cx, cy, radius, u, 1),
  };
}

/** In how many places the arc is held against the conjugate form: between them it may pass it by 2e-5 of a module. */
const PLACES = 100;
/** A radius of so many chords is as good as a straight line (its rise is 1/8000 of the chord), and keeps its figures. */
const STRAIGHT = 1000;

function conjugateTop(conjugate: Rolled, halfRad: number): Piece {
  return {
    name: "tip", from: 0, to: rollToPolar(conjugate, halfRad),
    at: (roll) => {
      const { radius, polarRad, normalRad } = rolledAt(conjugate, roll);
      const polar = polarRad - halfRad, normal = normalRad - halfRad;
      return { x: radius * Math.cos(polar), y: radius * Math.sin(polar), nx: -Math.cos(normal), ny: -Math.sin(normal) };
    },
  };
}

function staysWithin(arc: Piece, { pitch, generating }: Rolled, halfRad: number): boolean {
  const centre = pitch + generating;
  for (let i = 1; i <= PLACES; i++) {
    // Closer together towards the pitch circle, where the two part slowly.
    const p = arc.at(arc.from + (i / PLACES) ** 2 * (arc.to - arc.from));
    const radius = Math.hypot(p.x, p.y);
    // The roll at which the epicycloid comes to this radius: the law of cosines about the pitch circle's centre.
    const cos = (centre * centre + generating * generating - radius * radius) / (2 * centre * generating);
    const roll = Math.acos(Math.max(-1, Math.min(1, cos)));
    if (Math.atan2(p.y, p.x) < rolledAt({ pitch, generating, back: 0 }, roll).polarRad - halfRad) return false;
  }
  return true;
}
