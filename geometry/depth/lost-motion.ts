// How far a pointer hangs back when the input is reversed: the play of every engagement on the way, carried to the
// pointer. What one turn of play at an engagement turns the pointer is the solution of the transposed equations of the
// train, solved exactly; one solution serves all engagements of a display. Degrees out, mm in.
import { countOf, type Coupling, type ToothedPart } from "../instrument.ts";
import type { Movement, WorkedArbor } from "../movement.ts";
import { toDeg } from "../numeric/angle.ts";
import { ONE, type Ratio, toNumber, ZERO } from "../numeric/ratio.ts";
import { rowOf } from "../train/meshes.ts";
import { begin, FROM_INPUT, give, type Row, settle, tracedFrom, type Work } from "../train/solve.ts";
import { type Depth, depthsOf } from "./depth.ts";
import { workingRadiusMm } from "./pair.ts";

/** Degrees at a display's pointer, against its dial; null where it is not driven or a backlash on the way has no figure. */
export function lostMotionOf(movement: Movement, display: number, depths: readonly Depth[] = depthsOf(movement), ways = waysOf(movement)): number | null {
  const { rate, arbor, against } = movement.displays[display];
  return rate === null ? null : playBetween(movement, arbor, against, depths, ways);
}

/** Degrees by which an arbor can turn against another (or the frame) with the input held; null where a backlash on the way has no figure. */
export function playBetween(movement: Movement, arbor: number, against: number | null, depths: readonly Depth[], ways = waysOf(movement)): number | null {
  let sumDeg = 0;
  for (const { engagement, turns } of responsesOf(movement, arbor, against, ways)) {
    const depth = depths[engagement], { pair } = depth;
    if (depth.backlash === null && !depth.baseCirclesOverlap) return null;
    const radiusMm = workingRadiusMm(pair, pair.distanceMm);
    if (radiusMm > 0) sumDeg += toDeg(Math.max(0, depth.backlash ?? 0) / radiusMm) * Math.abs(turns);
  }
  return Number.isFinite(sumDeg) ? sumDeg : null;
}

/** The equations of a train, and what gave each arbor its rate: what all of its pointers share. */
export interface Ways { readonly rows: readonly Row[]; readonly because: Work["because"] }

export function waysOf(movement: Movement): Ways {
  const rows = rowsOf(movement);
  return { rows, because: solved(movement, rows).because };
}

/** By engagement on the way: signed turns of an arbor against another for one turn of the driven against its carrier, the input held. */
export function responsesOf(movement: Movement, arbor: number, against: number | null, ways = waysOf(movement)): { engagement: number; turns: number }[] {
  const { rows } = ways, shares = plainShares(ways, arbor, against) ?? solvedShares(ways, arbor, against);
  return [...shares].sort(([a], [b]) => a - b).flatMap(([r, share]) => {
    const { engagement } = rows[r];
    if (engagement < 0 || share === 0) return [];
    const { driver, driven } = movement.engagements[engagement];
    return [{ engagement, turns: share * countOf(driven) * (isAnnulus(driver) || isAnnulus(driven) ? -1 : 1) }];
  });
}

/** By row, how much of it adds up to the turn of the pointer less that of its dial. */
type Shares = ReadonlyMap<number, number>;

/** Where each arbor hangs on one other alone, a product along the way; null where it does not. */
function plainShares(ways: Ways, arbor: number, against: number | null): Shares | null {
  const own = sharesAlong(ways, arbor), dial = against === null ? NONE : sharesAlong(ways, against);
  if (own === null || dial === null) return null;
  const shares = new Map(own);
  for (const [r, share] of dial) {
    const before = shares.get(r) ?? 0, less = before - share;
    // What both pass through moves both alike, to rounding.
    shares.set(r, Math.abs(less) <= ALIKE * Math.abs(share) ? 0 : less);
  }
  return shares;
}

const NONE: Shares = new Map();
/** Of a product of ratios along two thousand engagements, what rounding may leave. */
const ALIKE = 1e-12;

function sharesAlong({ rows, because }: Ways, arbor: number): Shares | null {
  const shares = new Map<number, number>();
  let v = arbor, wanted = 1;
  while (because[v].length > 0) {
    if (because[v].length > 1) return null;
    const [r] = because[v], { vars, coefs } = rows[r];
    let next = -1, coef = 0, own = 0;
    for (let i = 0; i < vars.length; i++) {
      if (vars[i] === v) own = coefs[i];
      else if (because[vars[i]].length > 0) {
        if (next >= 0) return null;
        next = vars[i];
        coef = coefs[i];
      }
    }
    shares.set(r, wanted / own);
    if (next < 0) break;
    wanted *= -coef / own;
    v = next;
  }
  return shares;
}

/** In any train, by the transposed equations, exactly. */
function solvedShares({ rows, because }: Ways, arbor: number, against: number | null): Shares {
  const given = (v: number) => because[v].length === 0;
  const ends = [arbor, ...(against === null ? [] : [against])].filter((v) => !given(v));
  const traced = tracedFrom({ rows, because }, ends.flatMap((v) => because[v])).sort((a, b) => a - b);
  const shares = sharesOf(traced.map((r) => rows[r]), (v) => !given(v), arbor, against);
  return new Map(traced.map((r, k) => [r, toNumber(shares[k])]));
}

/** How much of each row adds up to the turn of the pointer less that of its dial: the transposed equations. */
function sharesOf(rows: readonly Row[], isUnknown: (v: number) => boolean, arbor: number, against: number | null): Ratio[] {
  const one = rows.length;
  const columns = new Map<number, { vars: number[]; coefs: number[] }>();
  rows.forEach((row, k) => row.vars.forEach((v, i) => {
    if (!isUnknown(v)) return;
    const column = columns.get(v) ?? { vars: [], coefs: [] };
    column.vars.push(k);
    column.coefs.push(row.coefs[i]);
    columns.set(v, column);
  }));
  const transposed = [...columns].map(([v, { vars, coefs }]): Row => {
    const wanted = Number(v === arbor) - Number(v === against);
    return wanted === 0 ? { vars, coefs, engagement: 0 } : { vars: [...vars, one], coefs: [...coefs, -wanted], engagement: 0 };
  });
  const work = begin(one + 1, transposed);
  give(work, one, ONE, FROM_INPUT);
  settle(work);
  // Rows that the others already imply have no share of their own.
  for (let k = one - 1; k >= 0; k--) {
    if (work.rate[k] !== null) continue;
    give(work, k, ZERO, 0);
    settle(work);
  }
  return work.rate.slice(0, one).map((share) => share ?? ZERO);
}

function solved(movement: Movement, rows: readonly Row[]): Work {
  const work = begin(movement.arbors.length, rows);
  movement.arbors.forEach(({ arbor }, v) => { if (arbor.fixed) give(work, v, ZERO, 0); });
  const input = movement.arborIndex.get(movement.instrument.input.arbor) ?? -1;
  if (input >= 0 && work.rate[input] === null) give(work, input, ONE, FROM_INPUT);
  settle(work);
  return work;
}

/** The equations of everything that turns or stands as it should; couplings as they are kept on the mean. */
function rowsOf(movement: Movement): Row[] {
  const sound = (v: number) => movement.arbors[v].rate !== null && !movement.arbors[v].bound;
  const meshes = movement.engagements.flatMap((e, engagement): Row[] => {
    if (!e.steadyDistance || ![e.driverArbor, e.drivenArbor].every(sound) || (e.carrier !== null && !sound(e.carrier))) return [];
    const inside = isAnnulus(e.driver) || isAnnulus(e.driven);
    const teethB = inside ? countOf(e.driven) : -countOf(e.driven);
    return [rowOf({ engagement, a: e.driverArbor, b: e.drivenArbor, teethA: countOf(e.driver), teethB, carrier: e.carrier, turning: [] }, e.carrier)];
  });
  const couplings = (movement.instrument.couplings ?? []).flatMap((c): Row[] => {
    const [a, b] = coupled(movement, c);
    return sound(a) && sound(b) && sameRate(movement.arbors[a], movement.arbors[b]) ? [{ vars: [a, b], coefs: [1, -1], engagement: -1 }] : [];
  });
  return [...meshes, ...couplings];
}

function coupled(movement: Movement, coupling: Coupling): [number, number] {
  const arbor = (id: string) => movement.arborIndex.get(id) ?? 0, part = (id: string) => movement.partIndex.get(id)?.arbor ?? 0;
  switch (coupling.kind) {
    case "friction": return [arbor(coupling.between[0]), arbor(coupling.between[1])];
    case "click": return [part(coupling.ratchet), arbor(coupling.on)];
    case "pin and slot": return [part(coupling.driver), part(coupling.driven)];
  }
}

const sameRate = (a: WorkedArbor, b: WorkedArbor): boolean => a.rate !== null && b.rate !== null && a.rate.equals(b.rate);
const isAnnulus = (part: ToothedPart): boolean => part.kind !== "lantern" && part.internal === true;
