// A trial: some things of a scene put elsewhere, and the question whether that cures a pair and brings no new foul. Only
// what the moved things can feel is examined again; all else stands as it stood.
import type { Thing, ThingKind } from "../bodies/thing.ts";
import { boxesMeet, grownBox } from "../clearance/box.ts";
import { isExempt, type Scene } from "../clearance/gaps.ts";
import { judge } from "../clearance/pair.ts";

/** Moved things by their place in the scene's list. */
export type Moved = ReadonlyMap<number, Thing>;

/** Whether two things, either of them moved, are free of one another. */
export function isCured({ movement, things }: Scene, moved: Moved, i: number, j: number): boolean {
  return judge(movement, moved.get(i) ?? things[i], moved.get(j) ?? things[j]).severity === "free";
}

/** Whether something that was moved fouls what it did not foul before; moved things one another too, if they moved apart. */
export function bringsFoul(scene: Scene, moved: Moved, apart = false): boolean {
  for (const [i, thing] of moved) {
    const box = grownBox(scene.movement, thing);
    for (let j = 0; j < scene.things.length; j++) {
      const other = moved.get(j);
      if (other === undefined ? boxesMeet(box, scene.boxes[j]) && isNewFoul(scene, i, thing, j, scene.things[j])
        : apart && i < j && isNewFoul(scene, i, thing, j, other)) return true;
    }
  }
  return false;
}

function isNewFoul(scene: Scene, i: number, thing: Thing, j: number, other: Thing): boolean {
  const { movement, things } = scene;
  if (other.body === thing.body || isExempt(scene, i, j)) return false;
  if (judge(movement, thing, other).severity !== "foul") return false;
  return isFollowed(thing) || isFollowed(other) || judge(movement, things[i], things[j]).severity !== "foul";
}

const FOLLOWED: readonly ThingKind[] = ["pointer", "arm", "pin", "slot", "disc", "square"];

/** Whether a swept foul may have been none in truth: then it must not stand after a move either, since it was not followed. */
const isFollowed = (thing: Thing): boolean => FOLLOWED.includes(thing.kind) || thing.axis.swings.length > 0;
