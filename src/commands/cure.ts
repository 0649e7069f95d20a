// Applies a cure that the examiner offers: an arbor moved in plan, or a part moved in height.
import type { Movement, Remedy } from "../../geometry/index.ts";
import type { Command } from "./command.ts";
import { raisePart } from "./heights.ts";
import { plantArbor } from "./planting.ts";

/** `movement` is the instrument worked out, since the file may have left the arbor's place open. */
export const applyCure: Command<{ readonly movement: Movement; readonly remedy: Remedy }> = {
  name: "Apply a cure",
  run(instrument, { movement, remedy: { move, by } }) {
    if ("z" in by) {
      const part = instrument.arbors.flatMap((a) => a.parts).find((p) => p.id === move);
      return part ? raisePart.run(instrument, { part: move, z: part.z + by.z }) : { refused: `There is no part called ${move}.` };
    }
    const stands = movement.arbors.find((a) => a.id === move);
    if (!stands) return { refused: `There is no arbor called ${move}.` };
    const outcome = plantArbor.run(instrument, { arbor: move, x: stands.x + by.x, y: stands.y + by.y });
    return "refused" in outcome ? outcome : { ...outcome, says: `${move} moved` };
  },
};
