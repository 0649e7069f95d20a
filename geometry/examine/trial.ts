// A trial: some things of a scene put elsewhere, and the question whether that cures a pair and brings no new foul. Only
// what the moved things can feel is examined again; all else stands as it stood.
import type { Thing } from "../bodies/thing.ts";
import { boxesMeet, grownBox } from "../clearance/box.ts";
import { isExempt, type Scene } from "../clearance/gaps.ts";
import { judge } from "../clearance/pair.ts";

/** Moved things by their place in the scene's list. */
export type Moved = ReadonlyMap<number, Thing>;

/** Whether two things, either of them moved, are free of one another. */
export function isCured({ movement, things }: Scene, moved: Moved, i: number, j: number): boolean {
  return judge(movement, moved.get(i) ?? things[i], moved.get(j) ?? things[j]).severity === "free";
}

/** Whether something that was moved fouls what it did not foul before. */
export function bringsFoul(scene: Scene, moved: Moved): boolean {
  for (const [i, thing] of moved) {
    const box = grownBox(scene.movement, thing);
    for (let j = 0; j < scene.things.length; j++)
      if (!moved.has(j) && boxesMeet(box, scene.boxes[j]) && isNewFoul(scene, i, thing, j)) return true;
  }
  return false;
}

function isNewFoul(scene: Scene, i: number, thing: Thing, j: number): boolean {
  const { movement, things } = scene, other = things[j];
  if (other.body === thing.body || isExempt(scene, i, j)) return false;
  return judge(movement, thing, other).severity === "foul" && judge(movement, things[i], other).severity !== "foul";
}
