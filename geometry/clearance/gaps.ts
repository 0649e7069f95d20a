// All gaps of a movement. First a search over boxes grown by all that a pair could lose or want: what does not meet
// there is free without more ado. The rest is judged pair by pair; the answer is that of judging every pair.
import Flatbush from "flatbush";
import { thingsOf, type Thing } from "../bodies/thing.ts";
import type { Movement } from "../movement.ts";
import { grownBox, type Box } from "./box.ts";
import { exemptPairs, pairKey, type Places } from "./exempt.ts";
import { judge, judgeUnlessOver, type Verdict } from "./pair.ts";

export interface JudgedPair {
  readonly a: Thing;
  readonly b: Thing;
  readonly verdict: Verdict;
}

/** The things of a movement, each with the box it may be felt in, and which pairs are not examined. */
export interface Scene {
  readonly movement: Movement;
  readonly things: readonly Thing[];
  readonly boxes: readonly Box[];
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
  return { movement, things, boxes: things.map((t) => grownBox(movement, t)), places, exempt: exemptPairs(movement, places) };
}

/** The gaps that foul or are tight, and how many pairs were examined. */
export function gapsOf(scene: Scene): Gaps {
  const pairs: JudgedPair[] = [];
  forEachNearPair(scene, (i, j) => {
    const a = scene.things[i], b = scene.things[j];
    if (isExempt(scene, i, j)) return;
    const verdict = judgeUnlessOver(scene.movement, a, b);
    if (verdict !== null && verdict.severity !== "free") pairs.push({ a, b, verdict });
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
  const before = new Map<number, number>();
  let pairs = 0;
  things.forEach(({ body }, i) => {
    const own = before.get(body) ?? 0;
    pairs += i - own;
    before.set(body, own + 1);
  });
  for (const key of exempt)
    if (things[Math.floor(key / places.count)].body !== things[key % places.count].body) pairs--;
  return pairs;
}

/** Calls back once for each two things of different bodies that may be less than free of one another. */
function forEachNearPair({ things, boxes }: Scene, found: (i: number, j: number) => void): void {
  if (things.length < 2) return;
  const index = new Flatbush(things.length);
  for (const box of boxes) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  boxes.forEach((box, i) => {
    const { body } = things[i];
    index.search(box.minX, box.minY, box.maxX, box.maxY, (j) => {
      const other = boxes[j];
      if (j > i && other.minZ <= box.maxZ && box.minZ <= other.maxZ && things[j].body !== body) found(i, j);
      return false;
    });
  });
}
