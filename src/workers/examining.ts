// What the examining worker does: an instrument in, its sheet out. Plain data both ways, so it can be called anywhere.
import { type Instrument, type Movement, type Sheet, examine, workOut } from "../../geometry/index.ts";

export interface Examining {
  readonly instrument: Instrument;
  /** List what is free too. */
  readonly all: boolean;
}

export interface Examined {
  readonly sheet: Sheet;
  /** How long the examination itself took, for whoever decides where the next is done. */
  readonly tookMs: number;
}

export function examineWhole({ instrument, all }: Examining): Examined {
  const movement = workOut(instrument);
  const start = performance.now();
  const sheet = examine(movement, { all });
  return { sheet, tookMs: performance.now() - start };
}

/** Likewise from a movement that has been worked out already; what is free is only counted. */
export const examineWorked = (movement: Movement): Sheet => examine(movement, { all: false });
