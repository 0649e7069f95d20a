// Cures in plan: an unsteady arbor, with all that rides on it, moved aside. In gear with others on one axis it slides on
// its arc about that axis, so that every distance stays; out of gear it goes straight; held by two axes or more it stays.
import type { Thing } from "../bodies/thing.ts";
import { metalRound, type Place } from "../bodies/plate.ts";
import type { Scene } from "../clearance/gaps.ts";
import type { Movement, WorkedArbor } from "../movement.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { bringsFoul, isCured, type Moved } from "./trial.ts";

export interface Slide {
  /** Index of the arbor that is moved. */
  readonly arbor: number;
  readonly by: Place;
  /** Whether it keeps its engagements by going round an axis. */
  readonly inGear: boolean;
}

/** mm along the path: where a cure is first looked for, how the steps grow, and how far it is sought. */
const FIRST_MM = 0.05, GROWTH = 1.4, FARTHEST_MM = 20;
/** How often the stretch in which the cure begins is halved: 20 mm to a tenth of the finest step that a maker drills to. */
const HALVINGS = 14;

/** The least move of either thing's arbor that cures the pair at i and j and brings no new foul. */
export function slidesFor(scene: Scene, i: number, j: number): Slide[] {
  return [[i, j], [j, i]].flatMap(([moving, still]) => {
    const path = pathOf(scene, scene.things[moving], scene.things[still]);
    const slide = path === null ? null : alongPath(scene, path, i, j);
    return slide === null ? [] : [slide];
  });
}

interface Path {
  readonly arbor: number;
  /** The arbor and all that ride on it, as indices. */
  readonly group: ReadonlySet<number>;
  readonly inGear: boolean;
  /** The move at so many mm along the path, either way. */
  readonly by: (along: number) => Place;
}

function alongPath(scene: Scene, path: Path, i: number, j: number): Slide | null {
  const works = (along: number) => {
    const moved = movedThings(scene, path, path.by(along));
    return isCured(scene, moved, i, j) && !breaksPlate(scene.movement, path, path.by(along)) && !bringsFoul(scene, moved);
  };
  for (let before = 0, step = FIRST_MM; step <= FARTHEST_MM; before = step, step *= GROWTH)
    for (const way of [1, -1])
      if (works(way * step)) return { arbor: path.arbor, by: path.by(way * leastThatWorks(works, way, before, step)), inGear: path.inGear };
  return null;
}

function leastThatWorks(works: (along: number) => boolean, way: number, fails: number, does: number): number {
  let low = fails, high = does;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    if (works(way * middle)) high = middle;
    else low = middle;
  }
  return high;
}

function pathOf(scene: Scene, thing: Thing, still: Thing): Path | null {
  const { movement } = scene;
  if (thing.arbor < 0) return null;
  const chain = movement.arbors[thing.arbor].chain;
  const arbor = chain.length === 0 ? thing.arbor : chain[chain.length - 1];
  const root = movement.arbors[arbor];
  if (root.arbor.steady === true || root.arbor.measured !== undefined) return null;
  const group = groupOf(movement, arbor);
  if (group.has(still.arbor) || hasPinOrSlot(movement, group)) return null;
  const partners = partnersOf(movement, root, group);
  if (partners === null) return null;
  const [axis] = partners;
  if (axis === undefined) return { arbor, group, inGear: false, by: straight(thing.axis.atRest, towards(still)) };
  return partners.every((p) => near(p, axis)) ? { arbor, group, inGear: true, by: round(root, axis) } : null;
}

const groupOf = (movement: Movement, root: number): Set<number> =>
  new Set(movement.arbors.flatMap((a, i) => (i === root || a.chain.includes(root) ? [i] : [])));

/** A pin and its slot hold two axes at their distance. */
const hasPinOrSlot = (movement: Movement, group: ReadonlySet<number>): boolean =>
  (movement.instrument.couplings ?? []).some((c) => c.kind === "pin and slot"
    && [c.driver, c.driven].some((id) => group.has(movement.partIndex.get(id)?.arbor ?? -1)));

/** Where the axes stand that the group is in gear with; null where one of the two ends is carried on a radius. */
function partnersOf(movement: Movement, root: WorkedArbor, group: ReadonlySet<number>): Place[] | null {
  const axes: Place[] = [];
  for (const { driverArbor, drivenArbor } of movement.engagements) {
    if (group.has(driverArbor) === group.has(drivenArbor)) continue;
    const [inside, outside] = group.has(driverArbor) ? [driverArbor, drivenArbor] : [drivenArbor, driverArbor];
    const partner = movement.arbors[outside];
    if (!near(movement.arbors[inside], root) || partner.carrier !== null) return null;
    axes.push(partner);
  }
  return axes;
}

const near = (a: Place, b: Place): boolean => Math.hypot(a.x - b.x, a.y - b.y) <= SAME_AXIS_MM;

/** The place that a straight path runs towards and away from: an axis, or the opening or middle of a plate. */
function towards(still: Thing): Place {
  return still.plate?.openings?.[0] ?? still.axis.atRest;
}

function straight(from: Place, to: Place): Path["by"] {
  const dx = from.x - to.x, dy = from.y - to.y, away = Math.hypot(dx, dy);
  const [ux, uy] = away === 0 ? [1, 0] : [dx / away, dy / away];
  return (along) => ({ x: ux * along, y: uy * along });
}

function round(at: Place, axis: Place): Path["by"] {
  const dx = at.x - axis.x, dy = at.y - axis.y, radius = Math.hypot(dx, dy);
  return (along) => {
    const c = Math.cos(along / radius) - 1, s = Math.sin(along / radius);
    return { x: c * dx - s * dy, y: s * dx + c * dy };
  };
}

function movedThings({ things, places }: Scene, { group }: Path, by: Place): Moved {
  const moved = new Map<number, Thing>();
  for (const arbor of group)
    for (let i = places.arborStart[arbor]; i < things.length && things[i].arbor === arbor; i++) moved.set(i, movedThing(things[i], by));
  return moved;
}

function movedThing(thing: Thing, by: Place): Thing {
  const { axis } = thing;
  const atRest = { x: axis.atRest.x + by.x, y: axis.atRest.y + by.y };
  return { ...thing, axis: { ...axis, x: axis.x + by.x, y: axis.y + by.y, atRest } };
}

/** Whether a pivot hole of the group would break out of metal that it is now in. */
function breaksPlate(movement: Movement, { group }: Path, by: Place): boolean {
  for (const index of group) {
    const { arbor, x, y, ownSideshake } = movement.arbors[index];
    for (const pivot of [arbor.pivots?.foot, arbor.pivots?.head]) {
      const plate = pivot && movement.instrument.frame.plates.find((p) => p.id === pivot.plate);
      if (pivot === undefined || plate === undefined) continue;
      const hole = (pivot.diameter + ownSideshake) / 2;
      if (metalRound(plate, x + by.x, y + by.y, hole) <= 0 && metalRound(plate, x, y, hole) > 0) return true;
    }
  }
  return false;
}
