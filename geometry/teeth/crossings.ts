// A wheel crossed out: openings between straight arms, under the rim and outside the hub, their corners rounded as a saw
// and file leave them. The first arm lies on +x, in line with a tooth. Lengths in mm; `hub` is a diameter.
import type { Crossings } from "../instrument.ts";
import { SLIVER_MM } from "../numeric/tolerance.ts";
import { circleSteps, placed, reversed, type Outline } from "../planar/outline.ts";

/** One clockwise outline an opening; none where the figures leave no room (`crossingsFault` says why). */
export function crossingOutlines(crossings: Crossings, rootRadiusMm: number, chordMm: number): readonly Outline[] {
  const opening = openingOf(crossings, rootRadiusMm);
  if (typeof opening === "string") return [];
  const first = openingPoints(opening, chordMm);
  return Array.from({ length: crossings.arms }, (_, i) => placed(first, (2 * Math.PI * i) / crossings.arms, 0, 0));
}

/** Why these crossings cannot be cut in a wheel of this root radius, in words; null where they can. */
export function crossingsFault(crossings: Crossings, rootRadiusMm: number): string | null {
  const opening = openingOf(crossings, rootRadiusMm);
  return typeof opening === "string" ? opening : null;
}

/** Radii by which an opening is marked out: of its outer and inner edge, and of its corners; null where it cannot be cut. */
export function openingRadii(crossings: Crossings, rootRadiusMm: number): { readonly outer: number; readonly inner: number; readonly corner: number } | null {
  const opening = openingOf(crossings, rootRadiusMm);
  return typeof opening === "string" ? null : { outer: opening.outer, inner: opening.inner, corner: opening.corner };
}

interface Opening {
  /** Half the angle from arm to arm. */
  readonly halfRad: number;
  readonly outer: number;
  readonly inner: number;
  readonly corner: number;
  /** Distance of the corners' centres from the arm's middle line. */
  readonly aside: number;
  /** How far along the arm the corners' centres lie. */
  readonly outerAlong: number;
  readonly innerAlong: number;
  /** Else the arms run together before they reach the hub. */
  readonly meetsHub: boolean;
}

function openingOf({ arms, rim, arm, hub }: Crossings, rootRadiusMm: number): Opening | string {
  if (!(arms >= 2 && Number.isInteger(arms))) return `A crossed wheel wants two arms or more, not ${arms}`;
  if (!(rim > 0 && arm > 0 && hub > 0)) return "Rim, arm and hub of a crossed wheel each want some metal";
  const outer = rootRadiusMm - rim, inner = hub / 2;
  if (!(outer > inner)) return `A rim of ${rim} mm and a hub of ${hub} mm leave no opening under teeth whose roots are at ${rootRadiusMm.toFixed(2)} mm`;
  const sharp = withCorner(arms, arm / 2, outer, inner, 0);
  if (sharp === null) return `${arms} arms of ${arm} mm fill the wheel between hub and rim`;
  return roundest(arms, arm / 2, outer, inner) ?? sharp;
}

/** The largest corner up to half an arm's width that leaves the opening in one piece. */
function roundest(arms: number, halfArm: number, outer: number, inner: number): Opening | null {
  let fits = 0, tooLarge = halfArm;
  const widest = withCorner(arms, halfArm, outer, inner, halfArm);
  if (widest !== null) return widest;
  for (let i = 0; i < 40; i++) {
    const mid = (fits + tooLarge) / 2;
    if (withCorner(arms, halfArm, outer, inner, mid) === null) tooLarge = mid;
    else fits = mid;
  }
  return withCorner(arms, halfArm, outer, inner, fits);
}

/** The opening with corners of a radius, or null where they would run into one another. */
function withCorner(arms: number, halfArm: number, outer: number, inner: number, corner: number): Opening | null {
  const halfRad = Math.PI / arms, aside = halfArm + corner;
  if (!(aside < (outer - corner) * Math.sin(halfRad))) return null;
  const outerAlong = Math.sqrt((outer - corner) ** 2 - aside ** 2);
  // Where it does not, the corner lies between the two arms.
  const meetsHub = aside < (inner + corner) * Math.sin(halfRad);
  const innerAlong = meetsHub ? Math.sqrt((inner + corner) ** 2 - aside ** 2) : aside / Math.tan(halfRad);
  return outerAlong > innerAlong ? { halfRad, outer, inner, corner, aside, outerAlong, innerAlong, meetsHub } : null;
}

/** The opening after the first arm, clockwise: its lower half drawn, then its mirror in the middle line. */
function openingPoints(o: Opening, chordMm: number): Outline {
  const half: number[] = [];
  const innerRad = Math.atan2(o.aside, o.innerAlong), outerRad = Math.atan2(o.aside, o.outerAlong);
  if (o.meetsHub) arc(half, 0, 0, o.inner, o.halfRad, innerRad, chordMm);
  arc(half, o.innerAlong, o.aside, o.corner, innerRad + Math.PI, 1.5 * Math.PI, chordMm);
  arc(half, o.outerAlong, o.aside, o.corner, -Math.PI / 2, outerRad, chordMm);
  arc(half, 0, 0, o.outer, outerRad, o.halfRad, chordMm);
  const c = Math.cos(2 * o.halfRad), s = Math.sin(2 * o.halfRad);
  const points = [...half];
  for (let k = half.length - 2; k >= 0; k -= 2) points.push(c * half[k]! + s * half[k + 1]!, s * half[k]! - c * half[k + 1]!);
  return reversed(withoutRepeats(points));
}

/** Points of an arc, both ends included; a corner of no radius is one point. */
function arc(points: number[], cx: number, cy: number, radius: number, fromRad: number, toRad: number, chordMm: number): void {
  const n = Math.max(1, Math.ceil((circleSteps(radius, chordMm) * Math.abs(toRad - fromRad)) / (2 * Math.PI)));
  for (let k = 0; k <= n; k++) {
    const u = fromRad + (k / n) * (toRad - fromRad);
    points.push(cx + radius * Math.cos(u), cy + radius * Math.sin(u));
  }
}

/** Points that fall on the one before are left out: arcs that meet share an end, and a seam belongs to both halves. */
function withoutRepeats(points: readonly number[]): Outline {
  const kept: number[] = [];
  const falls = (x: number, y: number, k: number) => Math.hypot(x - kept[k]!, y - kept[k + 1]!) < SLIVER_MM;
  for (let k = 0; k < points.length; k += 2)
    if (kept.length === 0 || !falls(points[k]!, points[k + 1]!, kept.length - 2)) kept.push(points[k]!, points[k + 1]!);
  while (kept.length > 2 && falls(kept.at(-2)!, kept.at(-1)!, 0)) kept.length -= 2;
  return Float64Array.from(kept);
}
