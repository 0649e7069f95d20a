// What the movement shows at a step of putting together: what is not in yet is hidden, what goes in hangs over its place.
import type { Movement, PuttingTogether, Step } from "../../../geometry/index.ts";
import type { Hung } from "../../state/playing.ts";

/** mm more than clear, so that air is seen under it. */
const AIR_MM = 8;

export const hungIn = (movement: Movement, { steps }: PuttingTogether): Hung[] => steps.map((step, at) => hungAt(movement, steps, step, at));

function hungAt({ displays, instrument }: Movement, steps: readonly Step[], step: Step, at: number): Hung {
  const later = steps.slice(at + 1).flatMap((s) => s.ids);
  const upper = instrument.frame.plates.filter((p) => later.includes(p.id));
  // What rises from a plate that is not on yet, and the chapter rings, would hang in the air.
  const pillars = instrument.frame.pillars.filter((p) => upper.some((plate) => Math.abs(p.from - plate.z - plate.thickness) < AIR_MM / 16));
  const rings = at < steps.length - 1 ? displays.map((d) => d.id) : [];
  return {
    hidden: new Set([...later, ...pillars.map((p) => p.id), ...rings, ...(instrument.frame.case ? ["case"] : [])]),
    ids: step.ids, by: step.lift + Math.sign(step.lift || 1) * AIR_MM,
  };
}
