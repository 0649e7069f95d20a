// Where one tooth of the driver touches the tooth of the driven that it pushes. The driver turns forward, carrying its
// flank towards growing y at the line of centres, and the driven's own forward is that same way. A tooth of the driver
// whose middle stands at u keeps the driven's tooth from falling back behind
//     lead(u) = greatest over the driver's flank of β(P) + h(ρ(P)),
// where (ρ, β) are polar about the driven's axis (β from the line of centres, forward) and h is half the driven tooth's
// angle at that radius. The greatest is either where the flanks are tangent, or at a corner of one of them. Lengths in mm.
import { risingRoot } from "../numeric/root.ts";
import { TANGENT_RAD } from "../numeric/tolerance.ts";
import { type Flank, nodeBefore, pointAtRadius } from "./flank.ts";

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

/** The places, to a chord, beside which the lead is greatest, and the greatest lead; −Infinity: nothing in reach. */
export interface Nearby { readonly places: readonly Near[]; readonly mostRad: number }

export function nearbyPlaces(m: Mating, u: number): Nearby {
  const { driver, driven, axisX, facing } = m;
  const c = Math.cos(u), s = Math.sin(u), least = driven.leastRadius, most = driven.greatestRadius, joints = driven.joints;
  const sweep: Sweep = { driven, facing, places: [], mostRad: -Infinity, node: -1, toward: 0, radius: 0, leadRad: 0, wasRising: false };
  let x0 = 0, y0 = 0, r0 = NaN, tx0 = 0, ty0 = 0;
  for (let i = 0; i < driver.x.length; i++) {
    // The leading side is the mirror of the stored one.
    const px = driver.x[i], py = -driver.y[i];
    const x1 = facing * (c * px - s * py - axisX), y1 = s * px + c * py, r1 = Math.sqrt(x1 * x1 + y1 * y1);
    const tx1 = c * driver.tangentX[i] - s * driver.tangentY[i], ty1 = s * driver.tangentX[i] + c * driver.tangentY[i];
    const isIn = r1 >= least && r1 <= most, wasIn = r0 >= least && r0 <= most;
    const across = (limit: number, node: number, toward: -1 | 1, interval: number) => {
      const t = (limit - r0) / (r1 - r0);
      take(sweep, node, toward, x0 + t * (x1 - x0), y0 + t * (y1 - y0), limit, tx0 + t * (tx1 - tx0), ty0 + t * (ty1 - ty0), interval);
    };
    if (i > 0 && isIn !== wasIn) {
      const limit = (isIn ? r0 : r1) > most ? most : least;
      across(limit, isIn ? i : i - 1, isIn ? -1 : 1, nodeBefore(driven, limit));
    } else if (isIn && wasIn) {
      const isUp = driven.side * (r1 - r0) > 0;
      for (let k = 0; k < joints.length; k++) {
        const joint = joints[isUp ? k : joints.length - 1 - k], limit = driven.radius[joint];
        if ((r0 - limit) * (r1 - limit) >= 0) continue;
        // Twice: as the piece that is left has it, and as the piece that is entered.
        across(limit, i - 1, 1, isUp ? joint - 1 : joint);
        across(limit, i, -1, isUp ? joint : joint - 1);
      }
    }
    if (isIn) take(sweep, i, 0, x1, y1, r1, tx1, ty1, nodeBefore(driven, r1));
    else close(sweep);
    x0 = x1; y0 = y1; r0 = r1; tx0 = tx1; ty0 = ty1;
  }
  close(sweep);
  return sweep;
}

/** What is kept while the driver's flank is gone along: the last sample (node −1: none), and what was found. Owned by one call. */
interface Sweep {
  readonly driven: Flank;
  readonly facing: 1 | -1;
  readonly places: Near[];
  mostRad: number;
  node: number;
  toward: -1 | 0 | 1;
  radius: number;
  leadRad: number;
  wasRising: boolean;
}

/**
 * One sample: a node, or where a limit of the driven is crossed beside it; x along the line of centres and y forward, from
 * the driven's axis. A place is beside each sample that rises and is followed by one that falls.
 */
function take(sweep: Sweep, node: number, toward: -1 | 0 | 1, x: number, y: number, radius: number, tx: number, ty: number, i: number): void {
  const { driven, facing } = sweep;
  const span = driven.radius[i + 1] - driven.radius[i], t = span === 0 ? 0 : (radius - driven.radius[i]) / span;
  const out = driven.normalOut[i] + t * (driven.normalOut[i + 1] - driven.normalOut[i]);
  const forward = driven.normalForward[i] + t * (driven.normalForward[i + 1] - driven.normalForward[i]);
  const leadRad = Math.atan2(y, x) + driven.half[i] + t * (driven.half[i + 1] - driven.half[i]);
  const isRising = facing * tx * (out * x - forward * y) + ty * (out * y + forward * x) < 0;
  if (!isRising && (sweep.node < 0 || sweep.wasRising)) {
    // Sought from the one that is not a plain node, so that the joint bounds the search.
    if (sweep.node < 0 || toward !== 0) sweep.places.push({ node, toward, untilRadius: radius, leadRad: Math.max(leadRad, sweep.node < 0 ? -Infinity : sweep.leadRad) });
    else sweep.places.push({ node: sweep.node, toward: sweep.toward, untilRadius: sweep.radius, leadRad: Math.max(leadRad, sweep.leadRad) });
  }
  sweep.node = node;
  sweep.toward = toward;
  sweep.radius = radius;
  sweep.leadRad = leadRad;
  sweep.wasRising = isRising;
  if (leadRad > sweep.mostRad) sweep.mostRad = leadRad;
}

/** The driver's flank leaves the driven's reach, or ends. */
function close(sweep: Sweep): void {
  const { node, toward, radius, leadRad } = sweep;
  if (node >= 0 && sweep.wasRising) sweep.places.push({ node, toward, untilRadius: radius, leadRad });
  sweep.node = -1;
}

/** Where a driver's tooth at u holds the driven; null where nothing is in reach. */
export const touchAt = (m: Mating, u: number): Touch | null => touchAmong(m, u, nearbyPlaces(m, u));

/** The foremost touch of those that chords leave in question. */
export function touchAmong(m: Mating, u: number, { places, mostRad }: Nearby): Touch | null {
  let best: Touch | null = null;
  for (const place of places) {
    if (place.leadRad < mostRad - m.choosingRad) continue;
    const touch = touchNear(m, u, place);
    if (best === null || touch.leadRad > best.leadRad) best = touch;
  }
  return best;
}

/** The exact touch at a place, climbing to where the lead is greatest. */
function touchNear(m: Mating, u: number, { node, toward, untilRadius }: Near): Touch {
  const { pieceOf, param } = m.driver;
  let from = tryAt(m, u, pieceOf[node], param[node]);
  if (toward !== 0) {
    const trial = crossing(m, u, from, param[node + toward], untilRadius);
    const isFoot = untilRadius === (m.driven.side === 1 ? m.driven.leastRadius : m.driven.greatestRadius);
    if (trial.rising * toward >= 0) return touchOf(m, trial, isFoot ? "flanks" : "driven's corner");
    if (from.rising * toward > 0) return touchOf(m, between(m, u, from, trial), "flanks");
  }
  const step = from.rising > 0 ? 1 : -1;
  for (let next = node + step; next >= 0 && next < param.length; next += step) {
    if (pieceOf[next] !== from.piece) {
      // Two pieces meet here; where both fall away from the joint, the joint itself touches.
      from = tryAt(m, u, pieceOf[next], param[next]);
      if (from.rising * step <= 0) return touchOf(m, from, "driver's corner");
      continue;
    }
    const trial = tryAt(m, u, from.piece, param[next]);
    const beyond = trial.radiusMm > m.driven.greatestRadius ? m.driven.greatestRadius : trial.radiusMm < m.driven.leastRadius ? m.driven.leastRadius : 0;
    const reached = beyond === 0 ? trial : crossing(m, u, from, param[next], beyond);
    if (reached.rising * step < 0) return touchOf(m, between(m, u, from, reached), "flanks");
    if (beyond !== 0) return touchOf(m, reached, (beyond === m.driven.greatestRadius) === (m.driven.side === 1) ? "driven's corner" : "flanks");
    from = trial;
  }
  return touchOf(m, from, "driver's corner");
}

/** One place of the driver's flank tried against the driven's. */
interface Trial {
  readonly piece: number;
  readonly param: number;
  readonly leadRad: number;
  /** From the driven's axis; where it lies beyond either end of the driven's flank, the rest is as at that end. */
  readonly radiusMm: number;
  /** Above 0 where the lead grows towards the driver's tip: the flank's tangent points into the driven. */
  readonly rising: number;
  readonly x: number;
  readonly y: number;
  readonly nx: number;
  readonly ny: number;
  /** The driven's normal there, out of the driven, in the plane of the drawing. */
  readonly ox: number;
  readonly oy: number;
}

function tryAt(m: Mating, u: number, piece: number, param: number): Trial {
  const p = m.driver.pieces[piece].at(param);
  const c = Math.cos(u), s = Math.sin(u);
  const x = c * p.x + s * p.y, y = s * p.x - c * p.y;
  const nx = c * p.nx + s * p.ny, ny = s * p.nx - c * p.ny;
  const rx = m.facing * (x - m.axisX), radius = Math.sqrt(rx * rx + y * y);
  const held = Math.min(m.driven.greatestRadius, Math.max(m.driven.leastRadius, radius));
  const q = pointAtRadius(m.driven, held);
  // The driven's normal in radial and forward parts, set at P: radial (facing·cos β, sin β), forward (−facing·sin β, cos β).
  const qr = (q.nx * q.x + q.ny * q.y) / held, qf = (q.ny * q.x - q.nx * q.y) / held;
  const cb = rx / radius, sb = y / radius;
  const ox = m.facing * (qr * cb - qf * sb), oy = qr * sb + qf * cb;
  // Towards the tip along the mirrored side.
  const tx = m.driver.side * ny, ty = -m.driver.side * nx;
  return { piece, param, radiusMm: radius, leadRad: Math.atan2(y, rx) - Math.atan2(q.y, q.x), rising: -(tx * ox + ty * oy), x, y, nx, ny, ox, oy };
}

/** The place, from one towards a parameter, at which the driven's radius comes to a limit: just short of it. */
function crossing(m: Mating, u: number, from: Trial, param: number, limitMm: number): Trial {
  const piece = m.driver.pieces[from.piece], c = Math.cos(u), s = Math.sin(u), side = from.radiusMm < limitMm ? 1 : -1;
  const way = param - from.param;
  const beyond = (share: number) => {
    const p = piece.at(from.param + share * way);
    return side * (Math.hypot(c * p.x + s * p.y - m.axisX, s * p.x - c * p.y) - limitMm);
  };
  return tryAt(m, u, from.piece, from.param + (risingRoot(beyond, 0, 1, SHORT_OF) - SHORT_OF) * way);
}

/** Of the way between two nodes: how far short of a joint or an end it is taken, so that the right piece is met there. */
const SHORT_OF = 1e-11;

/** Where the lead stops growing between two places of one piece: by secants, halving where one would lead outside. */
function between(m: Mating, u: number, from: Trial, to: Trial): Trial {
  let low = from.param, high = to.param, before = from, last = to;
  for (let i = 0; i < 50 && Math.abs(last.rising) > TANGENT_RAD; i++) {
    const secant = last.param - (last.rising * (last.param - before.param)) / (last.rising - before.rising);
    const isInside = (secant - low) * (secant - high) < 0 && i % 8 < 7;
    const param = isInside ? secant : (low + high) / 2;
    if (param === low || param === high) break;
    before = last;
    last = tryAt(m, u, from.piece, param);
    if (last.rising * from.rising > 0) low = param;
    else high = param;
  }
  return last;
}

function touchOf(m: Mating, t: Trial, how: Touch["how"]): Touch {
  // At a corner of the driver the driven's flank gives the normal; everywhere else the driver's.
  const nx = how === "driver's corner" ? -t.ox : t.nx, ny = how === "driver's corner" ? -t.oy : t.ny;
  const rx = t.x - m.axisX;
  const push = t.x * ny - t.y * nx, give = m.facing * (rx * ny - t.y * nx);
  const rate = give === 0 ? 0 : push / give;
  const vx = -t.y + m.facing * rate * t.y, vy = t.x - m.facing * rate * rx;
  const slidingMmPerRad = m.driver.side * (vx * ny - vy * nx);
  return { leadRad: t.leadRad, x: t.x, y: t.y, nx, ny, rate, slidingMmPerRad, how };
}
