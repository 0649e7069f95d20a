// Which holes can be drawn in a piece of metal. One that would break its edge or run into another is a finding of
// the examiner, not a shape, and is left out of the drawing. Lengths in mm.
import { circleOutline, reversed, type Outline } from "../planar/outline.ts";

export interface RoundHole { readonly x: number; readonly y: number; readonly radius: number }

/** Those that stand wholly inside the edge and clear of the ones before them, widest first, as clockwise outlines. */
export function clearHoles(edge: Outline, holes: readonly RoundHole[], chordMm: number): readonly Outline[] {
  const kept: RoundHole[] = [];
  for (const h of [...holes].sort((a, b) => b.radius - a.radius))
    if (h.radius > 0 && depthInside(edge, h.x, h.y) > h.radius + chordMm
      && kept.every((k) => Math.hypot(k.x - h.x, k.y - h.y) > k.radius + h.radius + chordMm)) kept.push(h);
  return kept.map((h) => reversed(circleOutline(h.radius, chordMm, h.x, h.y)));
}

/** mm from a point to the edge, negative outside it. */
export function depthInside(edge: Outline, x: number, y: number): number {
  let least = Infinity, inside = false;
  for (let i = 0, j = edge.length - 2; i < edge.length; j = i, i += 2) {
    const ax = edge[j], ay = edge[j + 1], bx = edge[i], by = edge[i + 1];
    const dx = bx - ax, dy = by - ay;
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(ax + t * dx - x, ay + t * dy - y));
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside ? least : -least;
}

/** The bore of a part on its arbor, alone in a list: none where the arbor would leave no metal within the edge. */
export const boreOutline = (edge: Outline, boreMm: number, chordMm: number): readonly Outline[] =>
  boreMm > 0 && boreMm < depthInside(edge, 0, 0) - 2 * chordMm ? [reversed(circleOutline(boreMm, chordMm))] : [];
