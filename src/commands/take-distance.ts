// Takes what the depthing tool gave, as it was tried. What then quarrels, the examiner says.
import type { Movement } from "../../geometry/index.ts";
import type { Command } from "./command.ts";
import { atDistance } from "./distance.ts";
import { plantArbor } from "./planting.ts";

export const takeDistance: Command<{ readonly movement: Movement; readonly engagement: string; readonly mm: number }> = {
  name: "Take the distance",
  run(instrument, { movement, engagement, mm }) {
    const set = atDistance(instrument, movement, engagement, mm);
    if ("refused" in set) return set;
    const moved = plantArbor.run(instrument, { arbor: set.arbor, ...set.place });
    return "refused" in moved ? moved : { ...moved, says: `${engagement} set to ${mm.toFixed(3)}` };
  },
};
