// Where every arbor stands in plan, input at 0. What the file says stands; then, again and again, whatever two circles
// settle, else one free choice on a single circle, else a first place for a cluster that hangs on nothing.
import type { Instrument } from "../instrument.ts";
import { TAU } from "../numeric/angle.ts";
import { AT_LIMIT_MM, SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { atAngle, circlesMet, type Place } from "./circles.ts";
import { missBy, reachesFrom, type Reach } from "./reach.ts";
import { closeRings } from "./rings.ts";
import { bodiesOf, middleOf, roomAt, type Bodies } from "./room.ts";
import type { Roots, Span } from "./roots.ts";

export type Planted = "file" | "solved" | "open";
export interface PlantedAt extends Place { readonly planted: Planted }

/** Free angles tried on a circle besides those where a chain is just stretched, and half way between them. */
const FREE_ANGLES = 48;
/** Circles of free places tried for a cluster that hangs on nothing. */
const FREE_RINGS = 6;

export function plantedAt(instrument: Instrument, roots: Roots, spans: readonly Span[]): PlantedAt[] {
  const planting = begin(instrument, roots, spans);
  if (planting.open.size > 0) plantOpen(planting);
  return instrument.arbors.map((_, i) => {
    const root = roots.rootOf[i];
    const { x, y } = planting.places[root] as Place;
    return { x: x + roots.dx[i], y: y + roots.dy[i], planted: statusOf(planting, i) };
  });
}

/** The state of one planting, owned and changed by this file alone. */
interface Planting {
  readonly instrument: Instrument;
  readonly roots: Roots;
  readonly spansOf: readonly (readonly Span[])[];
  readonly places: (Place | null)[];
  readonly status: Planted[];
  /** Roots still to be planted, in the order of the file, and those that stand. */
  readonly open: Set<number>;
  readonly standing: number[];
}

function begin(instrument: Instrument, roots: Roots, spans: readonly Span[]): Planting {
  const { arbors } = instrument;
  const spansOf: Span[][] = arbors.map(() => []);
  for (const span of spans) {
    spansOf[span.a].push(span);
    spansOf[span.b].push(span);
  }
  const isRoot = [...new Set(roots.rootOf)].sort((a, b) => a - b);
  const places = arbors.map((_, i) => (roots.rootOf[i] === i ? roots.given[i] : null));
  return {
    instrument, roots, spansOf, places, status: arbors.map(() => "file" as const),
    open: new Set(isRoot.filter((i) => places[i] === null)), standing: isRoot.filter((i) => places[i] !== null),
  };
}

/** Riders are planted as what they ride on; what stands in line with a planted carrier for want of a place is solved. */
function statusOf({ roots, status }: Planting, i: number): Planted {
  const own = status[roots.rootOf[i]];
  return roots.inLine[i] && own === "file" ? "solved" : own;
}

function plantOpen(planting: Planting): void {
  const bodies = bodiesOf(planting.instrument, planting.roots);
  const free = new Set(planting.open);
  while (planting.open.size > 0) {
    const { root, held } = nextToPlant(planting);
    if (held.length >= 2) put(planting, root, whereMet(planting, bodies, root, held), "solved");
    else if (held.length === 1) put(planting, root, onOneCircle(planting, bodies, root, held[0]), "open");
    else put(planting, root, anywhere(planting, bodies, root), "open");
  }
  closeRings(planting.places, free, planting.spansOf);
}

function put(planting: Planting, root: number, place: Place, status: Planted): void {
  planting.places[root] = place;
  planting.status[root] = status;
  planting.open.delete(root);
  planting.standing.push(root);
}

/** A circle that a root must stand on. */
interface Circle { readonly span: Span; readonly centre: Place; readonly radius: number }

function nextToPlant(planting: Planting): { root: number; held: Circle[] } {
  let best: { root: number; held: Circle[] } | null = null;
  for (const root of planting.open) {
    const held = circlesOf(planting, root);
    if (best === null || held.length > best.held.length) best = { root, held };
    if (best.held.length >= 2) break;
  }
  return best as { root: number; held: Circle[] };
}

/** Of several about one axis only the first counts. */
function circlesOf(planting: Planting, root: number): Circle[] {
  const circles: Circle[] = [];
  for (const span of planting.spansOf[root]) {
    const place = planting.places[span.a === root ? span.b : span.a];
    if (place === null) continue;
    const side = span.a === root ? -1 : 1;
    const centre = { x: place.x + side * span.shiftX, y: place.y + side * span.shiftY };
    if (circles.some((c) => Math.hypot(c.centre.x - centre.x, c.centre.y - centre.y) <= SAME_AXIS_MM)) continue;
    circles.push({ span, centre, radius: span.distance });
  }
  return circles;
}

/** Of the two points the one that suits the other circles, and then the one with more room. */
function whereMet(planting: Planting, bodies: Bodies, root: number, held: readonly Circle[]): Place {
  const [one, two, ...others] = held;
  const limits: Reach[] = others.map((c) => ({ centre: c.centre, least: c.radius, most: c.radius }));
  limits.push(...reachesFrom(root, one.span, planting.spansOf, planting.places).filter((r) => r.least !== r.most));
  return roomiest(planting, bodies, root, circlesMet(one.centre, one.radius, two.centre, two.radius), limits);
}

function onOneCircle(planting: Planting, bodies: Bodies, root: number, circle: Circle): Place {
  const { centre, radius, span } = circle;
  const limits = reachesFrom(root, span, planting.spansOf, planting.places);
  const even = Array.from({ length: FREE_ANGLES }, (_, i) => (i * TAU) / FREE_ANGLES);
  const stretched = limits.flatMap((l) => [l.least, l.most].flatMap((r) =>
    Math.hypot(l.centre.x - centre.x, l.centre.y - centre.y) <= SAME_AXIS_MM ? [] : circlesMet(centre, radius, l.centre, r)))
    .map((p) => Math.atan2(p.y - centre.y, p.x - centre.x)).sort((a, b) => a - b);
  const between = stretched.map((a, i) => (i === 0 ? (stretched[stretched.length - 1] + a + TAU) / 2 : (stretched[i - 1] + a) / 2));
  const places = [...even, ...between, ...stretched].map((rad) => atAngle(centre, radius, rad));
  return roomiest(planting, bodies, root, places, limits, { centre, radius });
}

function anywhere(planting: Planting, bodies: Bodies, root: number): Place {
  const middle = middleOf(planting.instrument.frame.plates[0]);
  if (planting.standing.length === 0) return middle;
  const far = planting.standing.reduce((most, r) => {
    const p = planting.places[r] as Place;
    return Math.max(most, Math.hypot(p.x - middle.x, p.y - middle.y) + bodies.reach[r]);
  }, 0) + bodies.reach[root];
  const places = [middle];
  for (let ring = 1; ring <= FREE_RINGS; ring++) {
    for (let i = 0; i < FREE_ANGLES; i++) places.push(atAngle(middle, (far * ring) / FREE_RINGS, (i * TAU) / FREE_ANGLES));
  }
  return roomiest(planting, bodies, root, places, []);
}

/** Among places that miss the limits least, the one with most room; the first of equals. */
function roomiest(planting: Planting, bodies: Bodies, root: number, places: readonly Place[], limits: readonly Reach[], within?: { centre: Place; radius: number }): Place {
  if (places.length === 1) return places[0];
  const near = within === undefined ? planting.standing : nearTo(planting, bodies, root, within);
  let best = places[0], bestMiss = Infinity, bestRoom = -Infinity;
  for (const place of places) {
    const miss = Math.max(0, missBy(limits, place) - AT_LIMIT_MM);
    if (miss > bestMiss) continue;
    const room = roomAt(planting.instrument, bodies, root, place, near, planting.places);
    if (miss === bestMiss && room <= bestRoom + AT_LIMIT_MM) continue;
    best = place;
    bestMiss = miss;
    bestRoom = room;
  }
  return best;
}

/** Those that could be the nearest to anything on a circle: all within its own width of it, or else simply all. */
function nearTo(planting: Planting, bodies: Bodies, root: number, { centre, radius }: { centre: Place; radius: number }): readonly number[] {
  const near = planting.standing.filter((other) => {
    const p = planting.places[other] as Place;
    return Math.hypot(p.x - centre.x, p.y - centre.y) < 3 * radius + bodies.reach[root] + bodies.reach[other];
  });
  return near.length > 1 ? near : planting.standing;
}
