// A distance tried for an engaged pair: the one of the two that may move slides along the line of centres.
import type { Instrument, Movement } from "../../geometry/index.ts";
import { isLengthMm, type Refused } from "./command.ts";
import { cannotMove, type Place } from "./planting.ts";

/** Which arbor of an engaged pair would stand where. */
export interface Slid { readonly arbor: string; readonly place: Place }

/** `movement` is the instrument worked out, for where the two stand now. */
export function slidTo(instrument: Instrument, movement: Movement, id: string, mm: number): Slid | Refused {
  const pair = movement.engagements.find((e) => e.id === id);
  if (!pair) return { refused: `There is no engagement called ${id}.` };
  if (!isLengthMm(mm) || mm <= 0) return { refused: "A distance is a length above 0 and within 10,000 mm." };
  const driven = movement.arbors[pair.drivenArbor], driver = movement.arbors[pair.driverArbor];
  if (!driven || !driver) return { refused: `There is no engagement called ${id}.` };
  const now = Math.hypot(driven.x - driver.x, driven.y - driver.y);
  if (now === 0) return { refused: `${driven.id} and ${driver.id} stand on one axis: plant one of them elsewhere first.` };
  for (const [free, other] of [[driven, driver], [driver, driven]] as const) {
    // A pipe goes where the arbor goes that it rides on.
    const under = movement.arbors[free.chain.at(-1) ?? movement.arbors.indexOf(free)] ?? free;
    const isShared = under === other || other.chain.some((i) => movement.arbors[i] === under);
    if (isShared || under.arbor.steady || cannotMove(instrument, under.id) !== null) continue;
    const share = (mm - now) / now;
    return { arbor: under.id, place: { x: under.x + (free.x - other.x) * share, y: under.y + (free.y - other.y) * share } };
  }
  return { refused: "Neither of the two may move: set one free first." };
}
