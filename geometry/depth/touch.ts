// Where one tooth of the driver touches the tooth of the driven that it pushes. The driver turns forward, carrying its
// flank towards growing y at the line of centres, and the driven's own forward is that same way. A tooth of the driver
// whose middle stands at u keeps the driven's tooth from falling back behind
//     lead(u) = greatest over the driver's flank of β(P) + h(ρ(P)),
// where (ρ, β) are polar about the driven's axis (β from the line of centres, forward) and h is half the driven tooth's
// angle at that radius. The greatest is either where the flanks are tangent, or at a corner of one of them. Lengths in mm.
import { risingRoot } from "../numeric/root.ts";
import { LEAD_TANGENT_RAD, TANGENT_RAD } from "../numeric/tolerance.ts";
import type { ProfilePoint } from "../teeth/profile.ts";
import { type Flank, nodeBefore, nodeBeforeNear, pointAtRadius } from "./flank.ts";

/** Two flanks at a distance; the driver's axis is the origin. */
export interface Mating {
  readonly driver: Flank;
  readonly driven: Flank;
  /** x of the driven's axis. */
  readonly axisX: number;
  /** −1: the driven's axis lies beyond the contact, seen from the driver's (outside gears). 1: with an annulus. */
  readonly facing: 1 | -1;
  /** How far a lead by chords may be from the true one. */
  readonly choosingRad: number;
}

/** A touch: how far forward the driven's tooth must stand, and how metal meets metal there. */
export interface Touch {
  readonly leadRad: number;
  readonly x: number;
  readonly y: number;
  /** Unit normal out of the driver. */
  readonly nx: number;
  readonly ny: number;
  /** Turn of the driven for a small turn of the driver. */
  readonly rate: number;
  /** Sliding of the driver's flank over the driven's towards the driver's tip, mm for each radian of the driver. */
  readonly slidingMmPerRad: number;
  readonly how: "flanks" | "driver's corner" | "driven's corner";
}

/** Where to look for a touch: a node of the driver's flank, or the way from it to a neighbour as far as a radius of the driven. */
interface Near {
  readonly node: number;
  readonly toward: -1 | 0 | 1;
  /** mm; an end of the driven's flank, or a joint between two of its pieces. */
  readonly untilRadius: number;
  readonly leadRad: number;
}

/** The places, to a chord, beside which the lead is greatest, and the greatest of their leads; −Infinity: nothing in reach. */
export interface Nearby { readonly places: readonly Near[]; readonly mostRad: number }

/** All in the driver's own axes, where its flank lies still; so only the places found need be turned. A sweep serves one tooth after another. */
export function nearbyPlaces(m: Mating, u: number, sweep = sweepOf(m)): Nearby {
  const { driver, driven } = m, cosU = Math.cos(u), sinU = Math.sin(u), axisX = m.axisX * cosU, axisY = -m.axisX * sinU;
  const least = driven.leastRadius ** 2, most = driven.greatestRadius ** 2;
  begin(sweep, cosU, sinU, axisX, axisY);
  let square = NaN, wasIn = false, interval = 0;
  for (let i = 0; i < driver.x.length; i++) {
    const before = square;
    // The leading side is the mirror of the stored one.
    const x = driver.x[i] - axisX, y = -driver.y[i] - axisY;
    square = x * x + y * y;
    const isIn = square >= least && square <= most;
    if (i > 0 && isIn !== wasIn) {
      const limit = (isIn ? before : square) > most ? driven.greatestRadius : driven.leastRadius;
      takeAcross(sweep, i, limit, isIn, nodeBefore(driven, limit), before, square);
    } else if (isIn && wasIn) takeJoints(sweep, i, before, square);
    if (isIn) {
      interval = nodeBeforeNear(driven, square, interval);
      take(sweep, i, 0, 0, x, y, square, driver.tangentX[i], driver.tangentY[i], interval);
    } else if (wasIn) close(sweep);
    wasIn = isIn;
  }
  close(sweep);
  return { places: sweep.places, mostRad: sweep.mostRad };
}

/** What is kept while a flank of the driver is gone along: how it stands, the last sample (node −1: none), and what was found. */
export interface Sweep {
  readonly m: Mating;
  cosU: number;
  sinU: number;
  axisX: number;
  axisY: number;
  places: Near[];
  mostRad: number;
  node: number;
  toward: -1 | 0 | 1;
  untilRadius: number;
  x: number;
  y: number;
  halfRad: number;
  wasRising: boolean;
}

export const sweepOf = (m: Mating): Sweep =>
  ({ m, cosU: 1, sinU: 0, axisX: m.axisX, axisY: 0, places: [], mostRad: -Infinity, node: -1, toward: 0, untilRadius: 0, x: 0, y: 0, halfRad: 0, wasRising: false });

function begin(sweep: Sweep, cosU: number, sinU: number, axisX: number, axisY: number): void {
  sweep.cosU = cosU;
  sweep.sinU = sinU;
  sweep.axisX = axisX;
  sweep.axisY = axisY;
  sweep.places = [];
  sweep.mostRad = -Infinity;
  sweep.node = -1;
}

/** The joints of the driven's flank that are crossed between a node and the one before it, in the order in which they are met; squares of radii. */
function takeJoints(sweep: Sweep, i: number, before: number, after: number): void {
  const { radius, square, joints, side } = sweep.m.driven, isUp = side * (after - before) > 0;
  for (let k = 0; k < joints.length; k++) {
    const joint = joints[isUp ? k : joints.length - 1 - k];
    if ((before - square[joint]) * (after - square[joint]) >= 0) continue;
    // Twice: as the piece that is left has it, and as the piece that is entered.
    takeAcross(sweep, i, radius[joint], false, isUp ? joint - 1 : joint, before, after);
    takeAcross(sweep, i, radius[joint], true, isUp ? joint : joint - 1, before, after);
  }
}

/** The sample, between a node and the one before it (squares of their radii given), at a radius of the driven: seen from that node, or from the one before. */
function takeAcross(sweep: Sweep, i: number, limit: number, fromNode: boolean, interval: number, before: number, after: number): void {
  const { m: { driver }, axisX, axisY } = sweep, t = (limit * limit - before) / (after - before);
  const x = driver.x[i - 1] + t * (driver.x[i] - driver.x[i - 1]) - axisX, y = -driver.y[i - 1] - t * (driver.y[i] - driver.y[i - 1]) - axisY;
  const tx = driver.tangentX[i - 1] + t * (driver.tangentX[i] - driver.tangentX[i - 1]);
  const ty = driver.tangentY[i - 1] + t * (driver.tangentY[i] - driver.tangentY[i - 1]);
  take(sweep, fromNode ? i : i - 1, fromNode ? -1 : 1, limit, x, y, limit * limit, tx, ty, interval);
}

/**
 * One sample: a node, or where a limit of the driven is crossed beside it; x and y from the driven's axis, and the square
 * of its radius there. A place is beside each sample that rises and is followed by one that falls.
 */
function take(sweep: Sweep, node: number, toward: -1 | 0 | 1, untilRadius: number, x: number, y: number, square: number, tx: number, ty: number, i: number): void {
  const { driven, facing } = sweep.m;
  const t = (square - driven.square[i]) * driven.perSquare[i];
  const out = driven.normalOut[i] + t * (driven.normalOut[i + 1] - driven.normalOut[i]);
  const forward = driven.normalForward[i] + t * (driven.normalForward[i + 1] - driven.normalForward[i]);
  const isRising = out * (tx * x + ty * y) + facing * forward * (x * ty - y * tx) < 0, isFirst = sweep.node < 0;
  const halfRad = driven.half[i] + t * (driven.half[i + 1] - driven.half[i]);
  if (!isRising && (isFirst || sweep.wasRising)) {
    const leadRad = Math.max(leadAt(sweep, x, y) + halfRad, isFirst ? -Infinity : lastLead(sweep));
    // Sought from the one that is not a plain node, so that the joint bounds the search.
    if (isFirst || toward !== 0) found(sweep, { node, toward, untilRadius, leadRad });
    else found(sweep, { node: sweep.node, toward: sweep.toward, untilRadius: sweep.untilRadius, leadRad });
  }
  sweep.node = node;
  sweep.toward = toward;
  sweep.untilRadius = untilRadius;
  sweep.x = x;
  sweep.y = y;
  sweep.halfRad = halfRad;
  sweep.wasRising = isRising;
}

/** The driver's flank leaves the driven's reach, or ends. */
function close(sweep: Sweep): void {
  const { node, toward, untilRadius } = sweep;
  if (node >= 0 && sweep.wasRising) found(sweep, { node, toward, untilRadius, leadRad: lastLead(sweep) });
  sweep.node = -1;
}

const lastLead = (sweep: Sweep): number => leadAt(sweep, sweep.x, sweep.y) + sweep.halfRad;

/** Direction of a point about the driven's axis: from the line of centres, forward. */
const leadAt = ({ m, cosU, sinU }: Sweep, x: number, y: number): number => Math.atan2(sinU * x + cosU * y, m.facing * (cosU * x - sinU * y));

function found(sweep: Sweep, near: Near): void {
  sweep.places.push(near);
  if (near.leadRad > sweep.mostRad) sweep.mostRad = near.leadRad;
}

/** Where a driver's tooth at u holds the driven; null where nothing is in reach. */
export const touchAt = (m: Mating, u: number): Touch | null => touchAmong(m, u, nearbyPlaces(m, u));

/** The foremost touch of those that chords leave in question. */
export function touchAmong(m: Mating, u: number, nearby: Nearby): Touch | null {
  let best: Touch | null = null;
  const t = turned(m, u);
  for (const at of topsAmong(t, nearby, TANGENT_RAD)) {
    const touch = touchOf(t, at);
    if (best === null || touch.leadRad > best.leadRad) best = touch;
  }
  return best;
}

/** Its lead alone; −Infinity where nothing is in reach. Where the flanks are all but tangent the lead is all but the greatest, so that less will do. */
export function leadAmong(m: Mating, u: number, nearby: Nearby): number {
  let most = -Infinity;
  const t = turned(m, u);
  for (const at of topsAmong(t, nearby, LEAD_TANGENT_RAD)) most = Math.max(most, leadOf(t, at));
  return most;
}

/** With the driver's tooth turned to its place. */
interface Turned { readonly m: Mating; readonly c: number; readonly s: number }

const turned = (m: Mating, u: number): Turned => ({ m, c: Math.cos(u), s: Math.sin(u) });

const topsAmong = (t: Turned, { places, mostRad }: Nearby, tangentRad: number): Top[] =>
  places.filter((place) => place.leadRad >= mostRad - t.m.choosingRad).map((place) => topNear(t, place, tangentRad));

/** Where the lead is greatest, and how metal meets metal there. */
interface Top { readonly piece: number; readonly param: number; readonly how: Touch["how"] }

const top = ({ piece, param }: Trial, how: Touch["how"]): Top => ({ piece, param, how });

/** The exact place, climbing from one nearby. */
function topNear(t: Turned, { node, toward, untilRadius }: Near, tangentRad: number): Top {
  const { m } = t, { pieceOf, param } = m.driver;
  let from = tryAt(t, pieceOf[node], param[node]);
  if (toward !== 0) {
    const trial = crossing(t, from, param[node + toward], untilRadius);
    const isFoot = untilRadius === (m.driven.side === 1 ? m.driven.leastRadius : m.driven.greatestRadius);
    if (trial.rising * toward >= 0) return top(trial, isFoot ? "flanks" : "driven's corner");
    if (from.rising * toward > 0) return top(between(t, from, trial, tangentRad), "flanks");
  }
  const step = from.rising > 0 ? 1 : -1;
  for (let next = node + step; next >= 0 && next < param.length; next += step) {
    if (pieceOf[next] !== from.piece) {
      // Two pieces meet here; where both fall away from the joint, the joint itself touches.
      from = tryAt(t, pieceOf[next], param[next]);
      if (from.rising * step <= 0) return top(from, "driver's corner");
      continue;
    }
    const trial = tryAt(t, from.piece, param[next]);
    const beyond = trial.radiusMm > m.driven.greatestRadius ? m.driven.greatestRadius : trial.radiusMm < m.driven.leastRadius ? m.driven.leastRadius : 0;
    const reached = beyond === 0 ? trial : crossing(t, from, param[next], beyond);
    if (reached.rising * step < 0) return top(between(t, from, reached, tangentRad), "flanks");
    if (beyond !== 0) return top(reached, (beyond === m.driven.greatestRadius) === (m.driven.side === 1) ? "driven's corner" : "flanks");
    from = trial;
  }
  return top(from, "driver's corner");
}

/** One place of the driver's flank tried against the driven's. */
interface Trial {
  readonly piece: number;
  readonly param: number;
  /** From the driven's axis; where it lies beyond either end of the driven's flank, the rest is as at that end. */
  readonly radiusMm: number;
  /** Above 0 where the lead grows towards the driver's tip: the flank's tangent points into the driven. */
  readonly rising: number;
}

function tryAt({ m, c, s }: Turned, piece: number, param: number): Trial {
  const p = m.driver.pieces[piece].at(param);
  const y = s * p.x - c * p.y, rx = m.facing * (c * p.x + s * p.y - m.axisX), radiusMm = Math.sqrt(rx * rx + y * y);
  const held = Math.min(m.driven.greatestRadius, Math.max(m.driven.leastRadius, radiusMm));
  const q = pointAtRadius(m.driven, held), n = normalAt(m, q, held, rx / radiusMm, y / radiusMm);
  // Towards the tip along the mirrored side.
  const tx = m.driver.side * (s * p.nx - c * p.ny), ty = -m.driver.side * (c * p.nx + s * p.ny);
  return { piece, param, radiusMm, rising: -(tx * n.x + ty * n.y) };
}

/** The driven's normal at its point q, set in a direction from its axis: radial (facing·cos β, sin β), forward (−facing·sin β, cos β). */
function normalAt(m: Mating, q: ProfilePoint, radiusMm: number, cosine: number, sine: number): { x: number; y: number } {
  const radial = (q.nx * q.x + q.ny * q.y) / radiusMm, forward = (q.ny * q.x - q.nx * q.y) / radiusMm;
  return { x: m.facing * (radial * cosine - forward * sine), y: radial * sine + forward * cosine };
}

/** The place, from one towards a parameter, at which the driven's radius comes to a limit: just short of it. */
function crossing(t: Turned, from: Trial, param: number, limitMm: number): Trial {
  const { m, c, s } = t, piece = m.driver.pieces[from.piece], side = from.radiusMm < limitMm ? 1 : -1;
  const way = param - from.param;
  const beyond = (share: number) => {
    const p = piece.at(from.param + share * way);
    return side * (Math.hypot(c * p.x + s * p.y - m.axisX, s * p.x - c * p.y) - limitMm);
  };
  return tryAt(t, from.piece, from.param + (risingRoot(beyond, 0, 1, SHORT_OF) - SHORT_OF) * way);
}

/** Of the way between two nodes: how far short of a joint or an end it is taken, so that the right piece is met there. */
const SHORT_OF = 1e-11;

/** Where the lead stops growing between two places of one piece: by secants, halving where one would lead outside. */
function between(t: Turned, from: Trial, to: Trial, tangentRad: number): Trial {
  let low = from.param, high = to.param, before = from, last = to;
  for (let i = 0; i < 50 && Math.abs(last.rising) > tangentRad; i++) {
    const secant = last.param - (last.rising * (last.param - before.param)) / (last.rising - before.rising);
    const isInside = (secant - low) * (secant - high) < 0 && i % 8 < 7;
    const param = isInside ? secant : (low + high) / 2;
    if (param === low || param === high) break;
    // A secant misses by about the product of the last two misses.
    if (isInside && Math.abs(last.rising * before.rising) < tangentRad * SURE_RAD) return { ...last, param };
    before = last;
    last = tryAt(t, from.piece, param);
    if (last.rising * from.rising > 0) low = param;
    else high = param;
  }
  return last;
}

/** Radians: how much less than a tangency the product of two misses must be, so that a strongly bent lead still comes to it. */
const SURE_RAD = 1e-3;

function touchOf(t: Turned, at: Top): Touch {
  const { m, c, s } = t, { p, x, y, rx, radius, held, q } = meetingOf(t, at);
  let nx = c * p.nx + s * p.ny, ny = s * p.nx - c * p.ny;
  if (at.how === "driver's corner") {
    // There the driven's flank gives the normal; everywhere else the driver's.
    const out = normalAt(m, q, held, (m.facing * rx) / radius, y / radius);
    nx = -out.x;
    ny = -out.y;
  }
  const push = x * ny - y * nx, give = m.facing * (rx * ny - y * nx);
  const rate = give === 0 ? 0 : push / give;
  const vx = -y + m.facing * rate * y, vy = x - m.facing * rate * rx;
  const slidingMmPerRad = m.driver.side * (vx * ny - vy * nx);
  return { leadRad: leadFrom(m, rx, y, q), x, y, nx, ny, rate, slidingMmPerRad, how: at.how };
}

function leadOf(t: Turned, at: Top): number {
  const { rx, y, q } = meetingOf(t, at);
  return leadFrom(t.m, rx, y, q);
}

const leadFrom = (m: Mating, rx: number, y: number, q: ProfilePoint): number => Math.atan2(y, m.facing * rx) - Math.atan2(q.y, q.x);

/** The driver's point p at (x, y), (rx, y) from the driven's axis; and the driven's point q there, or at the end of its flank. */
function meetingOf({ m, c, s }: Turned, { piece, param }: Top) {
  const p = m.driver.pieces[piece].at(param);
  const x = c * p.x + s * p.y, y = s * p.x - c * p.y, rx = x - m.axisX, radius = Math.sqrt(rx * rx + y * y);
  const held = Math.min(m.driven.greatestRadius, Math.max(m.driven.leastRadius, radius)), q = pointAtRadius(m.driven, held);
  return { p, x, y, rx, radius, held, q };
}
