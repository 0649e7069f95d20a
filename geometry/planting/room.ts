// How much room there is at a place: the least clear air in plan to everything already planted that stands in the same
// height, to pillars and case, and from its pivots to the edges of their plates. A measure for choosing, not a finding:
// radii are pitch radii and a module, and plates count as their outlines' bounds for round and square ones.
import { countOf, gearingOf, isToothed, type Arbor, type Instrument, type Part, type Plate } from "../instrument.ts";
import type { Place } from "./circles.ts";
import type { Roots } from "./roots.ts";

/** A round thing that a root brings with it: radius about the root's own axis (mm), and its reach in z. */
interface Disc { readonly radius: number; readonly from: number; readonly to: number; readonly part: string | null }

export interface Bodies {
  /** By root; empty for arbors that are none. */
  readonly discs: readonly (readonly Disc[])[];
  /** By root: the greatest radius of all. */
  readonly reach: readonly number[];
  /** Pairs of engaged parts, "a b" both ways: they may touch. */
  readonly engaged: ReadonlySet<string>;
}

export function bodiesOf(instrument: Instrument, roots: Roots): Bodies {
  const discs: Disc[][] = instrument.arbors.map(() => []);
  const module = gearingOf(instrument).module;
  instrument.arbors.forEach((arbor, i) => {
    const aside = Math.hypot(roots.dx[i], roots.dy[i]);
    const own = discs[roots.rootOf[i]];
    own.push({ radius: aside + arbor.diameter / 2, from: arbor.foot, to: arbor.head, part: null });
    for (const part of arbor.parts) {
      own.push({ radius: aside + sizeOf(part, module), from: part.z, to: part.z + part.thickness, part: part.id });
    }
  });
  const engaged = new Set(instrument.engagements.flatMap((e) => [`${e.driver} ${e.driven}`, `${e.driven} ${e.driver}`]));
  return { discs, reach: discs.map((d) => d.reduce((most, { radius }) => Math.max(most, radius), 0)), engaged };
}

/** mm; below 0 where something overlaps. `others` are the roots to keep clear of. */
export function roomAt(instrument: Instrument, bodies: Bodies, root: number, at: Place, others: readonly number[], places: readonly (Place | null)[]): number {
  let least = Infinity;
  for (const other of others) {
    const place = places[other];
    if (place === null) continue;
    const apart = Math.hypot(at.x - place.x, at.y - place.y);
    if (apart - bodies.reach[root] - bodies.reach[other] >= least) continue;
    for (const one of bodies.discs[root]) for (const two of bodies.discs[other]) {
      if (one.from >= two.to || two.from >= one.to) continue;
      if (one.part !== null && two.part !== null && bodies.engaged.has(`${one.part} ${two.part}`)) continue;
      least = Math.min(least, apart - one.radius - two.radius);
    }
  }
  const { pillars, case: drum } = instrument.frame;
  for (const disc of bodies.discs[root]) {
    for (const p of pillars) {
      if (disc.from < p.to && p.from < disc.to) least = Math.min(least, Math.hypot(at.x - p.x, at.y - p.y) - disc.radius - p.diameter / 2);
    }
    if (drum !== undefined && disc.from < drum.rim) least = Math.min(least, drum.insideDiameter / 2 - Math.hypot(at.x, at.y) - disc.radius);
  }
  return Math.min(least, metalAround(instrument, instrument.arbors[root], at));
}

/** The middle of a plate's outline. */
export function middleOf(plate: Plate | undefined): Place {
  const outline = plate?.outline;
  if (outline === undefined) return { x: 0, y: 0 };
  if ("polygon" in outline) {
    const xs = outline.polygon.map(([x]) => x), ys = outline.polygon.map(([, y]) => y);
    return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
  }
  const { x = 0, y = 0 } = "circle" in outline ? outline.circle : outline.rectangle;
  return { x, y };
}

/** mm from the axis to the nearest edge of the plates its pivots run in; below 0 outside. */
function metalAround(instrument: Instrument, arbor: Arbor, at: Place): number {
  let least = Infinity;
  for (const pivot of [arbor.pivots?.foot, arbor.pivots?.head]) {
    const plate = pivot && instrument.frame.plates.find((p) => p.id === pivot.plate);
    if (plate === undefined || pivot === undefined) continue;
    least = Math.min(least, insideBy(plate, at) - pivot.diameter / 2);
    for (const o of plate.openings ?? []) least = Math.min(least, Math.hypot(at.x - o.x, at.y - o.y) - o.diameter / 2 - pivot.diameter / 2);
  }
  return least;
}

function insideBy(plate: Plate, at: Place): number {
  const { outline } = plate;
  if ("polygon" in outline) return insidePolygon(outline.polygon, at);
  const middle = middleOf(plate);
  if ("circle" in outline) return outline.circle.diameter / 2 - Math.hypot(at.x - middle.x, at.y - middle.y);
  return Math.min(outline.rectangle.width / 2 - Math.abs(at.x - middle.x), outline.rectangle.height / 2 - Math.abs(at.y - middle.y));
}

function insidePolygon(points: readonly (readonly [number, number])[], at: Place): number {
  let least = Infinity, inside = false;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const [ax, ay] = points[j], [bx, by] = points[i];
    const lx = bx - ax, ly = by - ay, length2 = lx * lx + ly * ly;
    const t = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - ax) * lx + (at.y - ay) * ly) / length2));
    least = Math.min(least, Math.hypot(at.x - ax - t * lx, at.y - ay - t * ly));
    if (ay > at.y !== by > at.y && at.x < ax + ((at.y - ay) * lx) / ly) inside = !inside;
  }
  return inside ? least : -least;
}

/** mm, the greatest radius a part reaches about its arbor's axis. */
function sizeOf(part: Part, module: number): number {
  if (isToothed(part)) {
    const pitch = ((part.module ?? module) * countOf(part)) / 2;
    if (part.kind !== "lantern" && part.internal) return Math.max(pitch, (part.outsideDiameter ?? 0) / 2);
    return pitch + (part.module ?? module);
  }
  switch (part.kind) {
    case "pointer": return Math.hypot(Math.max(part.length, part.tail), part.width / 2);
    case "arm": return Math.hypot(part.length, part.width / 2);
    case "pin": return part.radius + part.diameter / 2;
    case "square": return part.across / Math.SQRT2;
    default: return part.diameter / 2;
  }
}
