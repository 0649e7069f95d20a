// The round bound of a movement, dials and lifting included, and the least view of it. Lengths in mm.
import type { Movement } from "../geometry/index.ts";
import { ringsOf } from "./dials/rings.ts";
import type { Bound } from "./eye/view.ts";
import type { Lifts } from "./solids/lift.ts";

/** About the middle of the frame, else of the arbors; `lifted` from 0 to 1. */
export function boundOf(movement: Movement, lifts: Lifts, lifted: number): Bound {
  const { plates, pillars, case: housing } = movement.instrument.frame;
  let lowX = Infinity, highX = -Infinity, lowY = Infinity, highY = -Infinity, lowMm = Infinity, highMm = -Infinity;
  const round = (x: number, y: number, r: number) => {
    [lowX, highX] = [Math.min(lowX, x - r), Math.max(highX, x + r)];
    [lowY, highY] = [Math.min(lowY, y - r), Math.max(highY, y + r)];
  };
  const tall = (low: number, high: number) => { [lowMm, highMm] = [Math.min(lowMm, low), Math.max(highMm, high)]; };
  for (const plate of plates) {
    const up = lifted * (lifts.plates.get(plate.id) ?? 0);
    tall(plate.z, plate.z + plate.thickness + up);
    if ("circle" in plate.outline) round(plate.outline.circle.x ?? 0, plate.outline.circle.y ?? 0, plate.outline.circle.diameter / 2);
    else if ("rectangle" in plate.outline) {
      const { x = 0, y = 0, width, height } = plate.outline.rectangle;
      for (const s of [-0.5, 0.5]) round(x + s * width, y + s * height, 0);
    } else for (const [x, y] of plate.outline.polygon) round(x, y, 0);
  }
  for (const p of pillars) { round(p.x, p.y, p.diameter / 2); tall(p.from, p.to); }
  if (housing) { round(0, 0, housing.insideDiameter / 2 + housing.wall); tall(housing.floor - housing.wall, housing.rim); }
  movement.arbors.forEach(({ x, y, arbor }, i) => {
    round(x, y, reachOf(movement, i));
    const up = lifted * (lifts.arbors[i] ?? 0);
    tall(arbor.foot + up, arbor.head + up);
  });
  for (const ring of ringsOf(movement)) round(ring.x, ring.y, ring.outerMm);
  if (lowX > highX) return { x: 0, y: 0, radiusMm: 20, lowMm: 0, highMm: 20 };
  const radiusMm = Math.max(2, (highX - lowX) / 2, (highY - lowY) / 2);
  return { x: (lowX + highX) / 2, y: (lowY + highY) / 2, radiusMm, lowMm, highMm };
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
