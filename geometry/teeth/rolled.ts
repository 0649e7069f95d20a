// Epicycloids, and their curves set back: what a point or a pin of one circle traces that rolls on another. They are the
// sides of clock teeth above the pitch circle.
import type { Piece } from "./profile.ts";

/** An epicycloid on the circle of radius `pitch`, rolled by one of radius `generating`, set back square to itself by `back`. */
export interface Rolled {
  readonly pitch: number;
  readonly generating: number;
  readonly back: number;
}

/** The curve's point when the generating circle has rolled by `roll` (0 to π) since its cusp on +x: radius, polar angle
 *  (unwrapped) and the direction of its normal, which runs through the pitch point on into the metal. */
export function rolledAt({ pitch, generating, back }: Rolled, roll: number): { radius: number; polarRad: number; normalRad: number } {
  // In axes turned with the generating circle's centre, which has gone round by `turned`.
  const turned = (roll * generating) / pitch, sin = Math.sin(roll / 2), cos = Math.cos(roll / 2);
  const x = pitch + 2 * generating * sin * sin - back * sin;
  const y = (back - 2 * generating * sin) * cos;
  return { radius: Math.sqrt(x * x + y * y), polarRad: turned + Math.atan2(y, x), normalRad: turned + roll / 2 + Math.PI / 2 };
}

/** The roll, up to π, at which the curve comes to a polar angle; π where it never does. */
export function rollToPolar(curve: Rolled, polarRad: number): number {
  let low = 0, high = Math.PI;
  if (rolledAt(curve, high).polarRad <= polarRad) return high;
  for (let i = 0; i < 60; i++) {
    const mid = (low + high) / 2;
    if (rolledAt(curve, mid).polarRad < polarRad) low = mid;
    else high = mid;
  }
  return high;
}

/** The roll at which the curve, past the place where it turns, comes to a radius: a quadratic in sin(roll / 2). */
export function rollToRadius({ pitch, generating, back }: Rolled, radius: number): number {
  const a = 4 * generating * (pitch + generating), half = back * (pitch + 2 * generating);
  const sin = (half + Math.sqrt(Math.max(0, half * half - a * (pitch * pitch + back * back - radius * radius)))) / a;
  return 2 * Math.asin(Math.min(1, sin));
}

/** A rolled curve as the lower side of a tooth, from a roll to where it meets the tooth's middle; its cusp at cuspRad. */
export function rolledPiece(curve: Rolled, from: number, cuspRad: number): Piece {
  return {
    name: "tip", from, to: Math.max(from, rollToPolar(curve, -cuspRad)),
    at: (roll) => {
      const { radius, polarRad, normalRad } = rolledAt(curve, roll);
      const polar = polarRad + cuspRad, normal = normalRad + cuspRad;
      return { x: radius * Math.cos(polar), y: radius * Math.sin(polar), nx: -Math.cos(normal), ny: -Math.sin(normal) };
    },
    atRadius: (radius) => rollToRadius(curve, radius),
  };
}
