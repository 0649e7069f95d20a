// Cures in plan: an unsteady arbor, with all that rides on it, moved aside. In gear with others on one axis it slides on
// its arc about that axis, so that every distance stays; out of gear it goes straight; held by two axes or more it stays.
// An arbor that stands in line with another is left alone, since it would leave that axis.
import type { Thing } from "../bodies/thing.ts";
import { metalRound } from "../bodies/openings.ts";
import type { Place } from "../bodies/plate.ts";
import type { Scene } from "../clearance/gaps.ts";
import type { Movement, WorkedArbor } from "../movement.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { bringsFoul, isCured } from "./trial.ts";

export interface Slide {
  /** Index of the arbor that is moved. */
  readonly arbor: number;
  readonly by: Place;
  /** Whether it keeps its engagements. */
  readonly inGear: boolean;
  /** Arbors that must follow to stay in gear. */
  readonly followers: readonly { readonly arbor: number; readonly by: Place }[];
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
  readonly inGear: boolean;
  /** The move at so many mm along the path, either way. */
  readonly by: (along: number) => Place;
}

function alongPath(scene: Scene, path: Path, i: number, j: number): Slide | null {
  const works = (along: number) => cures(scene, [{ arbor: path.arbor, by: path.by(along) }], i, j);
  for (let before = 0, step = FIRST_MM; step <= FARTHEST_MM; before = step, step *= GROWTH)
    for (const way of [1, -1])
      if (works(way * step)) 
        return { arbor: path.arbor, by: path.by(way * leastThatWorks(works, way, before, step)), inGear: path.inGear, followers: [] };
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
  const arbor = rootOf(movement, thing.arbor), root = movement.arbors[arbor];
  const group = groupOf(movement, arbor);
  if (!mayMove(movement, arbor) || group.has(still.arbor) || hasPinOrSlot(movement, group)) return null;
  const partners = partnersOf(movement, root, group);
  if (partners === null) return null;
  const [axis] = partners;
  if (axis === undefined) return { arbor, inGear: false, by: straight(thing.axis.atRest, towards(still)) };
  return partners.every((p) => near(p, axis)) ? { arbor, inGear: true, by: round(root, axis) } : null;
}

/** What an arbor rides on in the end: itself, if it stands in the frame. */
export const rootOf = (movement: Movement, arbor: number): number => movement.arbors[arbor].chain.at(-1) ?? arbor;

/** Not steady, its hole not yet made, and alone on its axis. */
function mayMove(movement: Movement, root: number): boolean {
  const { arbor } = movement.arbors[root];
  if (arbor.steady === true || arbor.measured !== undefined) return false;
  return movement.arbors.every((other, i) => i === root || other.chain.length > 0 || !near(other, movement.arbors[root]));
}

/** An arbor and all that ride on it, as indices. */
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

/** Whether arbors put elsewhere, with all that ride on them, cure a pair, keep their holes in metal and bring no foul. */
export function cures(scene: Scene, moves: readonly { readonly arbor: number; readonly by: Place }[], i: number, j: number): boolean {
  const { movement, things, places } = scene;
  const moved = new Map<number, Thing>();
  for (const { arbor, by } of moves)
    for (const rider of groupOf(movement, arbor)) {
      if (breaksPlate(scene, rider, by)) return false;
      for (let k = places.arborStart[rider]; k < things.length && things[k].arbor === rider; k++) moved.set(k, movedThing(things[k], by));
    }
  return isCured(scene, moved, i, j) && !bringsFoul(scene, moved, moves.length > 1);
}

function movedThing(thing: Thing, by: Place): Thing {
  const { axis } = thing;
  const atRest = { x: axis.atRest.x + by.x, y: axis.atRest.y + by.y };
  return { ...thing, axis: { ...axis, x: axis.x + by.x, y: axis.y + by.y, atRest } };
}

/** Whether a pivot hole would break out of metal that it is now in. */
function breaksPlate({ movement, things, places }: Scene, index: number, by: Place): boolean {
  const { arbor, x, y, ownSideshake } = movement.arbors[index];
  for (const pivot of [arbor.pivots?.foot, arbor.pivots?.head]) {
    const at = pivot && places.plate.get(pivot.plate);
    if (pivot === undefined || at === undefined) continue;
    const { plate, openings } = things[at];
    const hole = (pivot.diameter + ownSideshake) / 2;
    if (plate !== null && metalRound({ plate, openings }, x + by.x, y + by.y, hole) <= 0 && metalRound({ plate, openings }, x, y, hole) > 0) return true;
  }
  return false;
}
