// Cures in height: a part raised or lowered on its own arbor until it stands clear, where it keeps its engagements, its
// place among the arbor's other parts and between the plates, and the arbor's length.
import { thicknessOf, type Thing } from "../bodies/thing.ts";
import type { Scene } from "../clearance/gaps.ts";
import { liftToClear } from "../clearance/pair.ts";
import { faceOverlapOf } from "../depth/face.ts";
import type { Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { TOUCH_MM } from "../numeric/tolerance.ts";
import { MAY_SHARE_HEIGHT } from "./stack.ts";
import { bringsFoul, isCured } from "./trial.ts";

export interface Lift {
  readonly part: Part;
  readonly by: number;
}

/** Moves are given in hundredths of a millimetre, rounded outward. */
const STEPS_PER_MM = 100;

/** The least rise and the least fall of either thing, as far as it is a part, that cure the pair and bring no new foul. */
export function liftsFor(scene: Scene, i: number, j: number): Lift[] {
  return [[i, j], [j, i]].flatMap(([moving, still]) => {
    const thing = scene.things[moving];
    if (thing.part < 0 || isInSlot(scene.movement, thing.id)) return [];
    const { rise, sink } = liftToClear(scene.movement, thing, scene.things[still]);
    return [outward(rise), -outward(sink)]
      .filter((by) => by !== 0 && works(scene, moving, by, i, j))
      .map((by) => ({ part: partOf(scene.movement, thing), by }));
  });
}

const outward = (mm: number): number => Math.ceil(mm * STEPS_PER_MM - TOUCH_MM) / STEPS_PER_MM;

const partOf = (movement: Movement, thing: Thing): Part => movement.arbors[thing.arbor].arbor.parts[thing.part];

const isInSlot = (movement: Movement, id: string): boolean => (movement.instrument.couplings ?? [])
  .some((c) => c.kind === "pin and slot" && (c.driver === id || c.driven === id));

function works(scene: Scene, moving: number, by: number, i: number, j: number): boolean {
  const thing = scene.things[moving];
  const moved = lifted(scene.movement, thing, by);
  if (!keepsItsPlace(moved, thing, by)) return false;
  const lift = new Map([[moving, { ...thing, cylinders: thing.cylinders.map((c) => ({ ...c, z0: c.z0 + by, z1: c.z1 + by })) }]]);
  return isCured(scene, lift, i, j) && !bringsFoul(scene, lift);
}

/** The movement with one part higher: nothing turns or stands otherwise for it. */
function lifted(movement: Movement, { arbor, part, id }: Thing, by: number): Movement {
  const arbors = movement.arbors.map((a, index) => index !== arbor ? a
    : { ...a, arbor: { ...a.arbor, parts: a.arbor.parts.map((p, k) => (k === part ? { ...p, z: p.z + by } : p)) } });
  const engagements = movement.engagements.map((e) => ({
    ...e,
    driver: e.driver.id === id ? { ...e.driver, z: e.driver.z + by } : e.driver,
    driven: e.driven.id === id ? { ...e.driven, z: e.driven.z + by } : e.driven,
  }));
  return { ...movement, arbors, engagements };
}

function keepsItsPlace(moved: Movement, thing: Thing, by: number): boolean {
  const { arbor } = moved.arbors[thing.arbor];
  const part = arbor.parts[thing.part], top = part.z + thicknessOf(part);
  const foot = arbor.foot + (arbor.pivots?.foot?.length ?? 0), head = arbor.head - (arbor.pivots?.head?.length ?? 0);
  if (part.z < foot || top > head) return false;
  const [low, high] = [Math.min(part.z, part.z - by), Math.max(top, top - by)];
  if (moved.instrument.frame.plates.some((p) => p.z > low && p.z + p.thickness < high)) return false;
  if (!arbor.parts.every((other) => other === part || mayStand(part, other))) return false;
  return moved.engagements.every((e, i) => (e.driver.id !== part.id && e.driven.id !== part.id)
    || faceOverlapOf(moved, i).worst >= moved.practice.faceOverlap * (moved.teeth.get(part.id)?.module ?? 1));
}

function mayStand(part: Part, other: Part): boolean {
  if (MAY_SHARE_HEIGHT.includes(part.kind) || MAY_SHARE_HEIGHT.includes(other.kind)) return true;
  return part.z >= other.z + thicknessOf(other) || other.z >= part.z + thicknessOf(part);
}
