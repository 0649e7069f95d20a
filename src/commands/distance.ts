// A distance for an engaged pair: the one of the two that may move goes where it holds, and where the one that it keeps to
// another arbor holds too; where there is no such place it slides along the line of centres.
import { circlesCross, type Instrument, type Movement } from "../../geometry/index.ts";
import { isLengthMm, type Refused } from "./command.ts";
import { cannotMove, type Place } from "./planting.ts";

/** Which arbor of an engaged pair would stand where. */
export interface AtDistance { readonly arbor: string; readonly place: Place }

/** `movement` is the instrument worked out, for where the two stand now. */
export function atDistance(instrument: Instrument, movement: Movement, id: string, mm: number): AtDistance | Refused {
  const slid = slidTo(instrument, movement, id, mm);
  return "refused" in slid ? slid : { ...slid, place: keepingOther(movement, id, slid, mm) ?? slid.place };
}

/** Along the line of centres. */
function slidTo(instrument: Instrument, movement: Movement, id: string, mm: number): AtDistance | Refused {
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

/**
 * Where both this distance and the one to the other arbor that it is in gear with hold, the nearer of the two places; null
 * where no other arbor or more than one holds it, and where the two circles do not meet.
 */
function keepingOther({ arbors, arborIndex, engagements }: Movement, id: string, { arbor }: AtDistance, mm: number): Place | null {
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
