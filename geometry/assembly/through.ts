// An arbor that reaches through a plate can be put there only if what is wider than its opening can be taken off on one side.
import { radiusOf, partThing, thicknessOf } from "../bodies/thing.ts";
import { axisOf } from "../bodies/axis.ts";
import type { Part, Plate } from "../instrument.ts";
import type { Movement } from "../movement.ts";

export interface Through {
  readonly plate: string;
  /** Radius of what the arbor reaches through, mm. */
  readonly openingRadius: number;
  /** Parts wider than the opening on either side of the plate. */
  readonly below: readonly Part[];
  readonly above: readonly Part[];
  /** Wider parts stand on both sides, and on neither can all of them be taken off. */
  readonly trapped: boolean;
}

/** Whether a part can be taken off its arbor again without harm. */
export const comesOff = (part: Part): boolean => part.join !== undefined && COMES_OFF.has(part.join.by);

const COMES_OFF = new Set(["screw", "pin", "square"]);

/** Every plate that an arbor reaches through. */
export function platesThrough(movement: Movement, index: number): Through[] {
  const { arbor } = movement.arbors[index];
  return movement.instrument.frame.plates
    .filter((p) => arbor.foot < p.z && arbor.head > p.z + p.thickness)
    .map((p) => throughPlate(movement, index, p));
}

function throughPlate(movement: Movement, index: number, plate: Plate): Through {
  const worked = movement.arbors[index];
  const openingRadius = openingOf(movement, index, plate);
  const axis = axisOf(movement, index);
  const wider = worked.arbor.parts.filter((_, k) => radiusOf(partThing(movement, index, k, axis)) > openingRadius);
  const below = wider.filter((p) => p.z + thicknessOf(p) <= plate.z + plate.thickness / 2);
  const above = wider.filter((p) => p.z >= plate.z + plate.thickness / 2);
  const fast = (parts: readonly Part[]): boolean => !parts.every(comesOff);
  return { plate: plate.id, openingRadius, below, above, trapped: fast(below) && fast(above) };
}

/** The opening its axis stands in, else its pivot hole, else a hole of its own size. */
function openingOf(movement: Movement, index: number, plate: Plate): number {
  const { arbor, x, y, ownSideshake } = movement.arbors[index];
  const openings = (plate.openings ?? []).filter((o) => Math.hypot(o.x - x, o.y - y) < o.diameter / 2);
  if (openings.length > 0) return Math.max(...openings.map((o) => o.diameter / 2));
  const pivot = [arbor.pivots?.foot, arbor.pivots?.head].find((p) => p?.plate === plate.id);
  return pivot ? (pivot.diameter + ownSideshake) / 2 : arbor.diameter / 2;
}
