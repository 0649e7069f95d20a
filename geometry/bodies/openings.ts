// The openings of a plate, so kept that the one an axis stands in is soon found however many there are. Lengths in mm.
import Flatbush from "flatbush";
import type { Plate } from "../instrument.ts";
import { placeReach, type Axis } from "./axis.ts";
import { edgeDistance } from "./plate.ts";

/** A plate, and the boxes round its openings where they are many. */
export interface PlateInPlan {
  readonly plate: Plate;
  readonly openings: Flatbush | null;
}

const MANY = 8;

export const platesInPlan = (plates: readonly Plate[]): ReadonlyMap<string, PlateInPlan> =>
  new Map(plates.map((plate) => [plate.id, { plate, openings: indexOfOpenings(plate) }]));

/** Boxes round a plate's openings; null where they are too few to be worth it. */
export function indexOfOpenings(plate: Plate): Flatbush | null {
  const openings = plate.openings ?? [];
  if (openings.length <= MANY) return null;
  const index = new Flatbush(openings.length);
  for (const { x, y, diameter } of openings) {
    const r = diameter / 2;
    index.add(x - r, y - r, x + r, y + r);
  }
  index.finish();
  return index;
}

/** The most room that any opening leaves round an axis at the worst of its turn; negative outside all; −Infinity without openings. */
export function roomInOpenings(plate: Plate, index: Flatbush | null, axis: Axis): number {
  const openings = plate.openings ?? [];
  const room = (i: number) => openings[i].diameter / 2 - placeReach(axis, openings[i].x, openings[i].y).greatest;
  let most = -Infinity;
  if (index !== null) {
    // Only in an opening's own box can there be any room in it at all.
    for (const i of index.search(axis.x, axis.y, axis.x, axis.y)) most = Math.max(most, room(i));
    if (most >= 0) return most;
  }
  for (let i = 0; i < openings.length; i++) most = Math.max(most, room(i));
  return most;
}

/** Least metal between a round hole about a place and the edge of a plate or any of its openings; negative where it breaks out. */
export function metalRound({ plate, openings }: PlateInPlan, x: number, y: number, radius: number): number {
  const toEdge = -edgeDistance(plate.outline, x, y), reach = Math.max(0, toEdge);
  let metal = toEdge;
  const meet = (i: number) => {
    const o = (plate.openings ?? [])[i];
    metal = Math.min(metal, Math.hypot(o.x - x, o.y - y) - o.diameter / 2);
  };
  if (openings !== null) openings.search(x - reach, y - reach, x + reach, y + reach).forEach(meet);
  else (plate.openings ?? []).forEach((_, i) => meet(i));
  return metal - radius;
}
