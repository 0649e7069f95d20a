// The round bound of a movement, dials and lifting included, and the least view of it. Lengths in mm.
import type { Movement } from "../geometry/index.ts";
import { ringsOf } from "./dials/rings.ts";
import type { Bound } from "./eye/view.ts";
import type { Lifts } from "./solids/lift.ts";

/** About the middle of the frame, else of the arbors; `lifted` from 0 to 1. */
export function boundOf(movement: Movement, lifts: Lifts, lifted: number): Bound {
  const { plates, pillars, case: housing } = movement.instrument.frame;
  const rounds: (readonly [x: number, y: number, radius: number])[] = [];
  const round = (x: number, y: number, radius: number) => { rounds.push([x, y, radius]); };
  let lowMm = Infinity, highMm = -Infinity;
  const tall = (low: number, high: number) => { [lowMm, highMm] = [Math.min(lowMm, low), Math.max(highMm, high)]; };
  for (const plate of plates) {
    const up = lifted * (lifts.plates.get(plate.id) ?? 0);
    tall(plate.z, plate.z + plate.thickness + up);
    if ("circle" in plate.outline) round(plate.outline.circle.x ?? 0, plate.outline.circle.y ?? 0, plate.outline.circle.diameter / 2);
    else if ("rectangle" in plate.outline) {
      const { x = 0, y = 0, width, height } = plate.outline.rectangle;
      for (const [i, j] of [[-1, -1], [1, -1], [1, 1], [-1, 1]] as const) round(x + (i * width) / 2, y + (j * height) / 2, 0);
    } else for (const [x, y] of plate.outline.polygon) round(x, y, 0);
  }
  for (const p of pillars) { round(p.x, p.y, p.diameter / 2); tall(p.from, p.to); }
  if (housing) { round(0, 0, housing.insideDiameter / 2 + housing.wall); tall(housing.floor - housing.wall, housing.rim); }
  movement.arbors.forEach(({ x, y, arbor }, i) => {
    round(x, y, reachOf(movement, i));
    const up = lifted * (lifts.arbors[i] ?? 0);
    tall(arbor.foot + up, arbor.head + up);
  });
  for (const ring of ringsOf(movement)) round(ring.x, ring.y, ring.outsideMm);
  if (rounds.length === 0) return { x: 0, y: 0, radiusMm: 20, lowMm: 0, highMm: 20 };
  const middle = (axis: 0 | 1) => (Math.min(...rounds.map((c) => c[axis] - c[2])) + Math.max(...rounds.map((c) => c[axis] + c[2]))) / 2;
  const x = middle(0), y = middle(1);
  return { x, y, radiusMm: Math.max(2, ...rounds.map((c) => Math.hypot(c[0] - x, c[1] - y) + c[2])), lowMm, highMm };
}

/** How far the parts of an arbor reach from its axis, near enough to frame a picture. */
function reachOf(movement: Movement, index: number): number {
  const arbor = movement.arbors[index]?.arbor;
  return Math.max(arbor ? arbor.diameter / 2 : 0, ...(arbor?.parts ?? []).map((part) => {
    const teeth = movement.teeth.get(part.id);
    if (teeth) return (teeth.module * (teeth.count + 2)) / 2;
    if (part.kind === "pointer" || part.kind === "arm") return part.length;
    return "diameter" in part ? part.diameter / 2 + ("radius" in part ? part.radius : 0) : 0;
  }));
}
