// Takes a distance for an engaged pair: the one of the two that may move slides along the line of centres.
import type { Movement } from "../../geometry/index.ts";
import { type Command, isLengthMm } from "./command.ts";
import { cannotMove, plantArbor } from "./planting.ts";

/** `movement` is the instrument worked out, for where the two stand now. */
export const takeDistance: Command<{ readonly movement: Movement; readonly engagement: string; readonly mm: number }> = {
  name: "Take the distance",
  run(instrument, { movement, engagement: id, mm }) {
    const pair = movement.engagements.find((e) => e.id === id);
    if (!pair) return { refused: `There is no engagement called ${id}.` };
    if (!isLengthMm(mm) || mm <= 0) return { refused: "A distance is a length above 0 and within 10,000 mm." };
    const ends = [movement.arbors[pair.drivenArbor], movement.arbors[pair.driverArbor]] as const;
    const free = ends.find((a) => a && !a.arbor.steady && cannotMove(instrument, a.id) === null);
    const other = free === ends[0] ? ends[1] : ends[0];
    if (!free || !other) return { refused: "Neither of the two may move: set one free first." };
    const dx = free.x - other.x, dy = free.y - other.y, now = Math.hypot(dx, dy);
    if (now === 0) return { refused: `${free.id} and ${other.id} stand on one axis: plant one of them elsewhere first.` };
    const moved = plantArbor.run(instrument, { arbor: free.id, x: other.x + (dx / now) * mm, y: other.y + (dy / now) * mm });
    return "refused" in moved ? moved : { ...moved, says: `${id} set to ${mm.toFixed(3)}` };
  },
};
