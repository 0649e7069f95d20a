// All gaps of a movement. First a search over boxes grown by all that a pair could lose or want: what does not meet
// there is free without more ado. The rest is judged pair by pair; the answer is that of judging every pair.
import Flatbush from "flatbush";
import { ownReach } from "../bodies/axis.ts";
import { boxOf } from "../bodies/plate.ts";
import { radiusOf, thingsOf, type Thing } from "../bodies/thing.ts";
import type { Movement } from "../movement.ts";
import { BROAD_SLACK_MM } from "../numeric/tolerance.ts";
import { exemptPairs, pairKey, type Places } from "./exempt.ts";
import { isClearInHeight, judge, type Verdict } from "./pair.ts";

export interface JudgedPair {
  readonly a: Thing;
  readonly b: Thing;
  readonly verdict: Verdict;
}

/** The things of a movement, where they stand in the list, and which pairs are not examined. */
export interface Scene {
  readonly movement: Movement;
  readonly things: readonly Thing[];
  readonly places: Places;
  readonly exempt: ReadonlySet<number>;
}

export interface Gaps {
  /** Pairs that foul or are tight; all of them where they were asked for. */
  readonly pairs: readonly JudgedPair[];
  /** How many pairs were examined, by box or by judgement. */
  readonly examined: number;
}

export function sceneOf(movement: Movement): Scene {
  const things = thingsOf(movement);
  const arborStart: number[] = [];
  const plate = new Map<string, number>();
  things.forEach((t, i) => {
    if (t.kind === "arbor") arborStart.push(i);
    if (t.plate !== null) plate.set(t.id, i);
  });
  const places = { arborStart, plate, count: things.length };
  return { movement, things, places, exempt: exemptPairs(movement, places) };
}

/** The gaps that foul or are tight, and how many pairs were examined. */
export function gapsOf(scene: Scene): Gaps {
  const pairs: JudgedPair[] = [];
  forEachNearPair(scene, (i, j) => {
    const a = scene.things[i], b = scene.things[j];
    if (isExempt(scene, i, j) || isClearInHeight(scene.movement, a, b)) return;
    const verdict = judge(scene.movement, a, b);
    if (verdict.severity !== "free") pairs.push({ a, b, verdict });
  });
  return { pairs, examined: countExamined(scene) };
}

/** Every examined pair with its figures, none left out by a box. */
export function allGapsOf(scene: Scene): Gaps {
  const pairs: JudgedPair[] = [];
  const { things, movement } = scene;
  for (let i = 0; i < things.length; i++)
    for (let j = i + 1; j < things.length; j++)
      if (things[i].body !== things[j].body && !isExempt(scene, i, j))
        pairs.push({ a: things[i], b: things[j], verdict: judge(movement, things[i], things[j]) });
  return { pairs, examined: pairs.length };
}

export const isExempt = (scene: Scene, i: number, j: number): boolean =>
  scene.exempt.has(pairKey(scene.places.count, i, j));

function countExamined({ things, places, exempt }: Scene): number {
  const sizes = new Map<number, number>();
  for (const t of things) sizes.set(t.body, (sizes.get(t.body) ?? 0) + 1);
  let pairs = (places.count * (places.count - 1)) / 2;
  for (const size of sizes.values()) pairs -= (size * (size - 1)) / 2;
  for (const key of exempt)
    if (things[Math.floor(key / places.count)].body !== things[key % places.count].body) pairs--;
  return pairs;
}

/** Calls back once for each two things of different bodies that may be less than free of one another. */
function forEachNearPair({ movement, things }: Scene, found: (i: number, j: number) => void): void {
  const n = things.length;
  if (n < 2) return;
  const index = new Flatbush(n);
  const low = new Float64Array(n), high = new Float64Array(n);
  const boxes = things.map((t, i) => {
    const box = grownBox(movement, t);
    index.add(box.minX, box.minY, box.maxX, box.maxY);
    low[i] = box.minZ;
    high[i] = box.maxZ;
    return box;
  });
  index.finish();
  boxes.forEach((box, i) => {
    const { body } = things[i];
    index.search(box.minX, box.minY, box.maxX, box.maxY, (j) => {
      if (j > i && low[j] <= high[i] && low[i] <= high[j] && things[j].body !== body) found(i, j);
      return false;
    });
  });
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly minZ: number;
  readonly maxZ: number;
}

/**
 * All that a thing sweeps, grown by its own share of what a pair can lose at the worst and by half of what is wanted: two
 * that do not meet so are free. A freedom drawn below nothing is taken as nothing, since it may cancel out of a pair.
 */
export function grownBox(movement: Movement, thing: Thing): Box {
  const { planGap, faceGap } = movement.practice;
  const free = freedomOf(movement, thing.arbor);
  const round = thing.runoutMm + free.side + Math.max(0, planGap) / 2 + BROAD_SLACK_MM;
  const tall = thing.wobbleMm + Math.max(0, faceGap) / 2 + BROAD_SLACK_MM;
  let z0 = Infinity, z1 = -Infinity;
  for (const c of thing.cylinders) {
    z0 = Math.min(z0, c.z0, c.z1);
    z1 = Math.max(z1, c.z0, c.z1);
  }
  const reach = radiusOf(thing) + ownReach(thing.axis).greatest;
  const plan = thing.plate !== null ? boxOf(thing.plate.outline)
    : { minX: thing.axis.x - reach, minY: thing.axis.y - reach, maxX: thing.axis.x + reach, maxY: thing.axis.y + reach };
  return {
    minX: plan.minX - round, minY: plan.minY - round, maxX: plan.maxX + round, maxY: plan.maxY + round,
    minZ: z0 - free.down - tall, maxZ: z1 + free.up + tall,
  };
}

function freedomOf(movement: Movement, arbor: number): { up: number; down: number; side: number } {
  const free = { up: 0, down: 0, side: 0 };
  if (arbor < 0) return free;
  const { chain } = movement.arbors[arbor];
  for (let i = -1; i < chain.length; i++) {
    const { ownShake, ownSideshake } = movement.arbors[i < 0 ? arbor : chain[i]];
    free.up += Math.max(0, ownShake.up);
    free.down += Math.max(0, ownShake.down);
    free.side += Math.max(0, ownSideshake) / 2;
  }
  return free;
}
