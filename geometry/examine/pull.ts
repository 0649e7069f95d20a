// Cures in plan that draw others along: an arbor that is in gear all round is pulled aside in gear, as a hand would drag
// it, and its neighbours follow. Slower than a slide, so it is sought only where nothing simpler cures and time is given.
import type { Scene } from "../clearance/gaps.ts";
import { judge } from "../clearance/pair.ts";
import { dragArbor } from "../planting/drag.ts";
import { cures, rootOf, type Slide } from "./slide.ts";

/** How far the hand goes, in times of what is lacking. */
const REACHES = [1.05, 1.5, 2.2, 3.5];
/** Ways it goes, in quarters of a turn from straight away. */
const QUARTERS = [0, 0.5, -0.5, 1, -1];

/** The first pull of either thing's arbor that cures the pair at i and j and brings no new foul. */
export function pullFor(scene: Scene, i: number, j: number): Slide[] {
  const { movement, things } = scene;
  const { worst } = judge(movement, things[i], things[j]).plan;
  const lacking = movement.practice.planGap - worst;
  for (const reach of REACHES)
    for (const [moving, still] of [[i, j], [j, i]])
      for (const quarter of QUARTERS) {
        const pull = pulled(scene, moving, still, lacking * reach, quarter);
        if (pull !== null && cures(scene, [pull, ...pull.followers], i, j)) return [pull];
      }
  return [];
}

function pulled({ movement, things }: Scene, moving: number, still: number, farMm: number, quarter: number): Slide | null {
  if (things[moving].arbor < 0) return null;
  const arbor = rootOf(movement, things[moving].arbor), { id, x, y } = movement.arbors[arbor];
  const from = things[still].axis.atRest;
  const angleRad = Math.atan2(y - from.y, x - from.x) + (quarter * Math.PI) / 2;
  const { places } = dragArbor(movement, id, { x: x + farMm * Math.cos(angleRad), y: y + farMm * Math.sin(angleRad) }, "in gear");
  const moves = [...places].map(([name, to]) => {
    const index = movement.arborIndex.get(name) ?? arbor, at = movement.arbors[index];
    return { arbor: index, by: { x: to.x - at.x, y: to.y - at.y } };
  });
  const own = moves.find((m) => m.arbor === arbor);
  return own === undefined ? null : { ...own, inGear: true, followers: moves.filter((m) => m !== own) };
}
