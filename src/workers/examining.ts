// What the examining worker does: an instrument in, its sheet out. Plain data both ways, so it can be called anywhere.
import { type Instrument, type Movement, type Sheet, examine, workOut } from "../../geometry/index.ts";

export interface Examining {
  readonly instrument: Instrument;
  /** List what is free too. */
  readonly all: boolean;
}

export const examineWhole = ({ instrument, all }: Examining): Sheet => examine(workOut(instrument), { all });

/** Likewise from a movement that has been worked out already; what is free is only counted. */
export const examineWorked = (movement: Movement): Sheet => examine(movement, { all: false });
