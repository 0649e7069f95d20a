// Takes what the depthing tool gave: the arbor that may move goes where this distance holds, and the one that it keeps to
// another arbor too, where there is such a place. What then quarrels, the examiner says.
import { circlesCross, type Movement } from "../../geometry/index.ts";
import type { Command } from "./command.ts";
import { slidTo, type Slid } from "./distance.ts";
import { type Place, plantArbor } from "./planting.ts";

export const takeDistance: Command<{ readonly movement: Movement; readonly engagement: string; readonly mm: number }> = {
  name: "Take the distance",
  run(instrument, { movement, engagement, mm }) {
    const slid = slidTo(instrument, movement, engagement, mm);
    if ("refused" in slid) return slid;
    const moved = plantArbor.run(instrument, { arbor: slid.arbor, ...keepingOther(movement, engagement, slid, mm) ?? slid.place });
    return "refused" in moved ? moved : { ...moved, says: `${engagement} set to ${mm.toFixed(3)}` };
  },
};

/**
 * Where both this distance and the one to the other arbor that it is in gear with hold, the nearer of the two places; null
 * where no other arbor or more than one holds it, and where the two circles do not meet.
 */
function keepingOther({ arbors, arborIndex, engagements }: Movement, id: string, { arbor }: Slid, mm: number): Place | null {
  const moved = arborIndex.get(arbor)!, at = arbors[moved]!;
  const onIt = (i: number) => arbors[i]!.x === at.x && arbors[i]!.y === at.y && (i === moved || arbors[i]!.chain.at(-1) === moved);
  const held = engagements.flatMap((e) => {
    const [own, other] = onIt(e.driverArbor) ? [e.driverArbor, e.drivenArbor] : [e.drivenArbor, e.driverArbor];
    return onIt(own) && !onIt(other) ? [{ id: e.id, x: arbors[other]!.x, y: arbors[other]!.y }] : [];
  });
  const pair = held.find((e) => e.id === id), others = held.filter((e) => e.id !== id), [third] = others;
  if (!pair || !third || others.some((e) => e.x !== third.x || e.y !== third.y)) return null;
  const far = (p: Place) => Math.hypot(p.x - at.x, p.y - at.y);
  const places = circlesCross({ x: pair.x, y: pair.y, radius: mm }, { x: third.x, y: third.y, radius: far(third) });
  return places.sort((a, b) => far(a) - far(b))[0] ?? null;
}
