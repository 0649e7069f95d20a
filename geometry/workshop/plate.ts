// The hole table of a plate, cock or bridge: every hole by x and y from the instrument's own datum (0, 0), its diameter,
// what it is for, and how far it may stray; and the distances between centres for those who plant by a depthing tool. mm.
import type { PlateOutline } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { holeToleranceOf, type Window } from "../depth/window.ts";
import { massG } from "./metal.ts";

export interface PlateFigures {
  readonly id: string;
  readonly name: string | null;
  readonly z: number;
  readonly thickness: number;
  readonly outline: PlateOutline;
  readonly holes: readonly HoleFigures[];
  readonly centres: readonly CentreDistance[];
  readonly material: string;
  readonly massG: number | null;
}

export interface HoleFigures {
  /** Its number on the plate, from 1. */
  readonly number: number;
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  readonly what: "pivot" | "post" | "pillar" | "opening";
  /** Arbor or pillar; of an opening the arbors that come through it. */
  readonly of: string;
  /** How far from its place it may stand; null where no engagement says so. Negative: it stands outside the practice as drawn. */
  readonly within: number | null;
}

export interface CentreDistance {
  readonly a: number;
  readonly b: number;
  readonly engagement: string;
  readonly distance: number;
  /** Limits from it that meet the practice, or null. */
  readonly lower: number | null;
  readonly upper: number | null;
}

/** Of a pillar's diameter: the hole for the screw that holds it (common practice). */
const SCREW = 0.4;
/** mm: openings, and holes for screws, are not placed closer than this. */
const EASY_MM = 0.1;

export function plateFigures(movement: Movement, plateId: string, windows: readonly Window[]): PlateFigures | null {
  const plate = movement.instrument.frame.plates.find((p) => p.id === plateId);
  if (!plate) return null;
  const top = plate.z + plate.thickness, straying = strayingOf(movement, windows);
  const through = (from: number, to: number): boolean => from < top - 1e-9 && to > plate.z + 1e-9;
  const arbors = movement.arbors.flatMap((a, i): Omit<HoleFigures, "number">[] => {
    const { foot, head } = a.arbor.pivots ?? {}, here = { x: a.x, y: a.y, of: a.id, within: straying[i] };
    const pivot = foot?.plate === plateId ? foot : head?.plate === plateId ? head : null;
    if (pivot) return [{ ...here, diameter: pivot.diameter + a.ownSideshake, what: "pivot" }];
    const stands = a.onFrame && (through(a.arbor.foot, a.arbor.head) || a.arbor.foot === top || a.arbor.head === plate.z);
    return stands ? [{ ...here, diameter: a.arbor.diameter, what: "post" }] : [];
  });
  const pillars = movement.instrument.frame.pillars.filter((p) => p.from === top || p.to === plate.z || through(p.from, p.to)).map((p): Omit<HoleFigures, "number"> =>
    ({ x: p.x, y: p.y, diameter: through(p.from, p.to) ? p.diameter : Math.round(10 * SCREW * p.diameter) / 10, what: "pillar", of: p.id, within: EASY_MM }));
  const openings = (plate.openings ?? []).map((o): Omit<HoleFigures, "number"> =>
    ({ x: o.x, y: o.y, diameter: o.diameter, what: "opening", of: comingThrough(movement, o, plate.z, top), within: EASY_MM }));
  const holes = [...arbors, ...pillars, ...openings].map((h, i) => ({ number: i + 1, ...h }));
  return {
    id: plate.id, name: plate.name ?? null, z: plate.z, thickness: plate.thickness, outline: plate.outline, holes, centres: centresOf(movement, holes, windows),
    material: "brass", massG: massG((areaOf(plate.outline) - holes.reduce((sum, h) => sum + (Math.PI / 4) * h.diameter ** 2, 0)) * plate.thickness, "brass"),
  };
}

/** Of both holes of a pair each may stray by half of what the pair allows; of several pairs the closest counts. */
function strayingOf(movement: Movement, windows: readonly Window[]): (number | null)[] {
  const least: (number | null)[] = movement.arbors.map(() => null);
  movement.engagements.forEach((e, i) => {
    const tolerance = holeToleranceOf(windows[i], e.distance);
    if (tolerance === null) return;
    // A pipe or stud stands where what it rides on stands.
    for (const side of [e.driverArbor, e.drivenArbor]) for (const at of [side, ...movement.arbors[side].chain])
      least[at] = Math.min(least[at] ?? Infinity, tolerance / 2);
  });
  return least;
}

function centresOf(movement: Movement, holes: readonly HoleFigures[], windows: readonly Window[]): CentreDistance[] {
  const holeOf = (arbor: number): HoleFigures | undefined => [arbor, ...movement.arbors[arbor].chain]
    .map((at) => holes.find((h) => h.of === movement.arbors[at].id && h.what !== "opening")).find((h) => h !== undefined);
  return movement.engagements.flatMap((e, i) => {
    const a = holeOf(e.driverArbor), b = holeOf(e.drivenArbor);
    if (!a || !b || a === b || e.carrier !== null) return [];
    const { nearestWanted, farthestWanted } = windows[i];
    return [{
      a: a.number, b: b.number, engagement: e.id, distance: e.distance,
      lower: nearestWanted === null ? null : nearestWanted - e.distance, upper: farthestWanted === null ? null : farthestWanted - e.distance,
    }];
  });
}

function comingThrough(movement: Movement, opening: { readonly x: number; readonly y: number; readonly diameter: number }, z: number, top: number): string {
  return movement.arbors.filter(({ arbor, x, y }) => arbor.foot < top && arbor.head > z && Math.hypot(x - opening.x, y - opening.y) < opening.diameter / 2)
    .map((a) => a.id).join(" ");
}

/** mm². */
export function areaOf(outline: PlateOutline): number {
  if ("circle" in outline) return (Math.PI / 4) * outline.circle.diameter ** 2;
  if ("rectangle" in outline) return outline.rectangle.width * outline.rectangle.height;
  const corners = outline.polygon;
  return Math.abs(corners.reduce((sum, [x, y], i) => {
    const [nx, ny] = corners[(i + 1) % corners.length];
    return sum + x * ny - nx * y;
  }, 0)) / 2;
}

/** Least box round an outline. */
export function boxOf(outline: PlateOutline): { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number } {
  if ("polygon" in outline) {
    const xs = outline.polygon.map(([x]) => x), ys = outline.polygon.map(([, y]) => y);
    return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
  }
  const [width, height, at] = "circle" in outline ? [outline.circle.diameter, outline.circle.diameter, outline.circle] : [outline.rectangle.width, outline.rectangle.height, outline.rectangle];
  const { x = 0, y = 0 } = at;
  return { left: x - width / 2, right: x + width / 2, bottom: y - height / 2, top: y + height / 2 };
}
