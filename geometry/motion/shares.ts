// How far every arbor turns for one radian by which a slot leads its pin, or a pin its slot: the train solved once more, with input and
// fixed arbors held and the lead alone turning. Exact until it is handed out.
import { countOf, type Coupling, type ToothedPart } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { ONE, toNumber, ZERO, type Ratio } from "../numeric/ratio.ts";
import { begin, give, settle, type Row, type Work } from "../train/solve.ts";
import { sameAxis } from "./axes.ts";
import type { PinSlot } from "./pin-slot.ts";

/** By arbor. `pairs` has the pin and slot of each coupling in the order of the file, null for other couplings. */
export function sharesOf(movement: Movement, pairs: readonly (PinSlot | null)[], source: number): readonly number[] {
  const work = begin(movement.arbors.length, rowsOf(movement));
  movement.arbors.forEach((a, i) => {
    if (a.arbor.fixed === true || a.rate === null || a.id === movement.instrument.input.arbor) give(work, i, ZERO, 0);
  });
  settle(work);
  for (let more = true; more;) {
    more = false;
    (movement.instrument.couplings ?? []).forEach((c, i) => {
      const pair = pairs[i];
      const given = pair !== null ? givenBySlot(work, pair, i === source) : givenByTie(work, movement, c);
      if (given === null || work.rate[given.to] !== null) return;
      give(work, given.to, given.share, 0);
      settle(work);
      more = true;
    });
  }
  return work.rate.map((share) => toNumber(share ?? ZERO));
}

interface Given { readonly to: number; readonly share: Ratio }

/** The driven follows its driver, or where a pin only swings it what both stand on, and besides leads by its own. */
function givenBySlot(work: Work, pair: PinSlot, leads: boolean): Given | null {
  const by = pair.round ? pair.driver : pair.frame;
  const share = by < 0 ? ZERO : work.rate[by];
  return share === null ? null : { to: pair.driven, share: leads ? share.add(ONE) : share };
}

/** Friction and clicks: turn together. */
function givenByTie(work: Work, movement: Movement, c: Coupling): Given | null {
  if (c.kind === "pin and slot") return null;
  const [a, b] = c.kind === "friction" ? c.between.map((id) => movement.arborIndex.get(id)) : clicked(movement, c.ratchet, c.on);
  if (a === undefined || b === undefined) return null;
  const shareA = work.rate[a], shareB = work.rate[b];
  if (shareA !== null && shareB === null) return { to: b, share: shareA };
  return shareB !== null && shareA === null ? { to: a, share: shareB } : null;
}

/** The ratchet's arbor and what its click holds: a stud carried round the ratchet's axis holds for its carrier. */
function clicked(movement: Movement, ratchetId: string, onId: string): readonly (number | undefined)[] {
  const ratchet = movement.partIndex.get(ratchetId)?.arbor, on = movement.arborIndex.get(onId);
  if (ratchet === undefined || on === undefined) return [];
  const home = movement.arbors[on].carrier;
  return [ratchet, home !== null && !sameAxis(movement, on, ratchet) && sameAxis(movement, home, ratchet) ? home : on];
}

/** Engagements of arbors that turn, as equations among turnings against their carrier. */
function rowsOf(movement: Movement): readonly Row[] {
  return movement.engagements.flatMap((e, engagement): Row[] => {
    if (movement.arbors[e.driverArbor].rate === null || movement.arbors[e.drivenArbor].rate === null) return [];
    const d = countOf(e.driver), n = isInternal(e.driver) || isInternal(e.driven) ? -countOf(e.driven) : countOf(e.driven);
    const terms = new Map([[e.driverArbor, d]]);
    const add = (i: number, c: number) => terms.set(i, (terms.get(i) ?? 0) + c);
    add(e.drivenArbor, n);
    if (e.carrier !== null) add(e.carrier, -d - n);
    const vars = [...terms.keys()].filter((i) => terms.get(i) !== 0);
    return [{ vars, coefs: vars.map((i) => terms.get(i) ?? 0), engagement }];
  });
}

const isInternal = (part: ToothedPart): boolean => part.kind !== "lantern" && part.internal === true;
