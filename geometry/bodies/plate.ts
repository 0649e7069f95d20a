// A plate in plan: how far a place, or an axis carried round, is from the edge of its outline. Lengths in mm; positive
// outside the outline, negative inside.
import type { PlateOutline } from "../instrument.ts";
import { leastOver } from "../numeric/least.ts";
import { ownReach, placeReach, type Axis } from "./axis.ts";

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** How many places round a carrier's turn are looked at before the least among them is brought to its true value. */
const PLACES_ROUND = 180;
const RADII = 16;

/** Corners of a straight-edged outline, in order; null for a round one. */
export function cornersOf(outline: PlateOutline): readonly (readonly [number, number])[] | null {
  if ("polygon" in outline) return outline.polygon;
  if ("circle" in outline) return null;
  const { width, height, x = 0, y = 0 } = outline.rectangle;
  const w = width / 2, h = height / 2;
  return [[x - w, y - h], [x + w, y - h], [x + w, y + h], [x - w, y + h]];
}

/** Distance of a place from the edge of an outline; negative inside. */
export function edgeDistance(outline: PlateOutline, x: number, y: number): number {
  if ("circle" in outline) {
    const { diameter, x: cx = 0, y: cy = 0 } = outline.circle;
    return Math.hypot(x - cx, y - cy) - diameter / 2;
  }
  const corners = cornersOf(outline) ?? [];
  const nearest = nearestOnEdges(corners, x, y);
  const distance = Math.hypot(x - nearest.x, y - nearest.y);
  return isInside(corners, x, y) ? -distance : distance;
}

/** The place on the edge of an outline that is nearest to a given one. */
export function nearestOnEdge(outline: PlateOutline, x: number, y: number): Place {
  if (!("circle" in outline)) return nearestOnEdges(cornersOf(outline) ?? [], x, y);
  const { diameter, x: cx = 0, y: cy = 0 } = outline.circle;
  const away = Math.hypot(x - cx, y - cy);
  const k = diameter / 2 / (away || 1);
  return away === 0 ? { x: cx + diameter / 2, y: cy } : { x: cx + (x - cx) * k, y: cy + (y - cy) * k };
}

/** Least distance of an axis from the edge of an outline, at the worst turn of what carries it. */
export function leastEdgeDistance(outline: PlateOutline, axis: Axis): number {
  if (axis.swings.length === 0) return edgeDistance(outline, axis.x, axis.y);
  if ("circle" in outline) {
    const { diameter, x = 0, y = 0 } = outline.circle;
    return placeReach(axis, x, y).least - diameter / 2;
  }
  const { least, greatest } = ownReach(axis);
  const atCentre = edgeDistance(outline, axis.x, axis.y);
  if (atCentre >= greatest) return atCentre - greatest;
  const onCircle = (radius: number) => leastOver(
    (a) => edgeDistance(outline, axis.x + radius * Math.cos(a), axis.y + radius * Math.sin(a)), 0, 2 * Math.PI, PLACES_ROUND);
  return least === greatest ? onCircle(greatest) : leastOver(onCircle, least, greatest, RADII);
}

/** Greatest distance of any point of an outline from an axis, at any turn. */
export function farthestOfOutline(outline: PlateOutline, axis: Axis): number {
  if ("circle" in outline) {
    const { diameter, x = 0, y = 0 } = outline.circle;
    return placeReach(axis, x, y).greatest + diameter / 2;
  }
  let farthest = 0;
  for (const [x, y] of cornersOf(outline) ?? []) farthest = Math.max(farthest, placeReach(axis, x, y).greatest);
  return farthest;
}

/** Least box round an outline. */
export function boxOf(outline: PlateOutline): { minX: number; minY: number; maxX: number; maxY: number } {
  if ("circle" in outline) {
    const { diameter, x = 0, y = 0 } = outline.circle;
    const r = diameter / 2;
    return { minX: x - r, minY: y - r, maxX: x + r, maxY: y + r };
  }
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const [x, y] of cornersOf(outline) ?? []) {
    box.minX = Math.min(box.minX, x); box.maxX = Math.max(box.maxX, x);
    box.minY = Math.min(box.minY, y); box.maxY = Math.max(box.maxY, y);
  }
  return box;
}

function nearestOnEdges(corners: readonly (readonly [number, number])[], x: number, y: number): Place {
  let best: Place = { x, y }, bestSq = Infinity;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i, i++) {
    const [ax, ay] = corners[j], [bx, by] = corners[i];
    const ex = bx - ax, ey = by - ay;
    const lengthSq = ex * ex + ey * ey;
    const t = lengthSq === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / lengthSq));
    const px = ax + t * ex, py = ay + t * ey;
    const sq = (x - px) ** 2 + (y - py) ** 2;
    if (sq < bestSq) { bestSq = sq; best = { x: px, y: py }; }
  }
  return best;
}

/** Even–odd: whether a ray to +x crosses the edges an odd number of times. */
function isInside(corners: readonly (readonly [number, number])[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i, i++) {
    const [ax, ay] = corners[j], [bx, by] = corners[i];
    if ((ay > y) !== (by > y) && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}
