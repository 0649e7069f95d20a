// What "a tooth" of the crank is: one tooth of the wheel on the input arbor that drives the train.
import { type Movement, countOf } from "../../geometry/index.ts";

/** Teeth of the input arbor's first engaged part; 12 where none is, so that the crank still steps. */
export function engagedTeeth(movement: Movement): number {
  const at = movement.arborIndex.get(movement.instrument.input.arbor);
  for (const e of movement.engagements) {
    if (e.driverArbor === at) return countOf(e.driver);
    if (e.drivenArbor === at) return countOf(e.driven);
  }
  return 12;
}
