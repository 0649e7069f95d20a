// Applies a cure that the examiner offers: an arbor moved in plan, with those that follow it, or a part moved in height.
import { type Instrument, type Movement, type Remedy, applied } from "../../geometry/index.ts";
import { type Command, keptMm } from "./command.ts";
import { judged } from "./edit.ts";
import { cannotMove } from "./planting.ts";

/** `movement` is the instrument worked out, since the file may have left the arbor's place open. */
export const applyCure: Command<{ readonly movement: Movement; readonly remedy: Remedy }> = {
  name: "Apply a cure",
  run(instrument, { movement, remedy }) {
    const { move, by } = remedy;
    if ("z" in by) {
      if (!instrument.arbors.some((a) => a.parts.some((p) => p.id === move))) return { refused: `There is no part called ${move}.` };
      return judged(kept(instrument, applied(movement, remedy)), `${move} ${by.z < 0 ? "lowered" : "raised"}`);
    }
    const fault = [move, ...(remedy.with ?? []).map((f) => f.move)].map((id) => cannotMove(instrument, id)).find((held) => held !== null);
    return fault ? { refused: fault } : judged(kept(instrument, applied(movement, remedy)), `${move} moved`);
  },
};

/** What a cure worked out, as finely as lengths are kept; what it did not touch is shared. */
const kept = (before: Instrument, after: Instrument): Instrument => ({
  ...after,
  arbors: after.arbors.map((a, i) => {
    const was = before.arbors[i];
    const parts = a.parts.map((p, k) => (p.z === was?.parts[k]?.z ? p : { ...p, z: keptMm(p.z) }));
    const moved = a.x !== was?.x || a.y !== was?.y;
    if (moved && a.x !== undefined && a.y !== undefined) return { ...a, x: keptMm(a.x), y: keptMm(a.y), parts };
    return was && parts.every((p, k) => p === was.parts[k]) ? was : { ...a, parts };
  }),
});
