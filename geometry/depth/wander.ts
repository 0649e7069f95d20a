// Wander: how far a pointer strays from its even motion because wheels run out. Each toothed part on the way, its centre e
// from its axis, moves the pitch point of its engagement along the pitch line by e·sin of its own turning: e/r at the
// driven, referred to the pointer through the later ratio, with its own period and phase. Parts of one period add as
// arrows, so that the phases in which they are put together settle how much of them is left. Degrees out, mm in.
// Source: the lever rule of centring error, in every text on gauging; the slope of the flanks (1/cos of the pressure angle) is left out.
import { runoutOf } from "../bodies/thing.ts";
import type { ToothedPart } from "../instrument.ts";
import type { Movement, WorkedEngagement } from "../movement.ts";
import { toDeg } from "../numeric/angle.ts";
import { isZero, signOf, toNumber, writeRatio, ZERO, type Ratio } from "../numeric/ratio.ts";
import { type Depth, depthsOf } from "./depth.ts";
import { responsesOf } from "./lost-motion.ts";
import { workingRadiusMm } from "./pair.ts";

export interface Waver {
  readonly part: string;
  /** At the pointer, to either side. */
  readonly degrees: number;
  /** Turns of the input for one turn of the part against what carries it, exact. */
  readonly period: string;
  readonly days: number;
  /** Where its high tooth should point, from +x anticlockwise with the input at 0, so that wander is least; null: it has no peer of its period, and no phase changes its share. */
  readonly best: number | null;
}

export interface Wander {
  /** Greatest first. */
  readonly wavers: readonly Waver[];
  /** To either side: put together as it may come, and at the best phases. */
  readonly most: number;
  readonly least: number;
}

/** Wander of a display's pointer against its dial; null where it is not driven. */
export function wanderOf(movement: Movement, display: number, depths: readonly Depth[] = depthsOf(movement)): Wander | null {
  const { rate, arbor, against } = movement.displays[display];
  if (rate === null) return null;
  const arrows = new Map<string, Arrow>();
  for (const { engagement, turns } of responsesOf(movement, arbor, against)) {
    const e = movement.engagements[engagement], { pair } = depths[engagement];
    const radiusMm = workingRadiusMm(pair, pair.distanceMm);
    if (radiusMm > 0) for (const side of ["driver", "driven"] as const) addArrow(arrows, movement, e, side, turns / radiusMm);
  }
  const groups = new Map<string, Arrow[]>();
  for (const arrow of arrows.values()) if (lengthOf(arrow) > 0) groups.set(writeRatio(arrow.rate.abs()), [...groups.get(writeRatio(arrow.rate.abs())) ?? [], arrow]);
  let most = 0, least = 0;
  const wavers: Waver[] = [];
  for (const group of groups.values()) {
    const lengths = group.map(lengthOf), at = closing(lengths);
    most += lengths.reduce((sum, l) => sum + l, 0);
    least += Math.max(0, 2 * Math.max(...lengths) - lengths.reduce((sum, l) => sum + l, 0));
    group.forEach((arrow, i) => wavers.push(waverOf(movement, arrow, group.length > 1 ? at[i] - at[0] : null)));
  }
  return { wavers: wavers.sort((a, b) => b.degrees - a.degrees), most: toDeg(most), least: toDeg(least) };
}

/** What a part adds at the pointer: radians, as an arrow that turns with the part; x + iy times its high tooth's direction. */
interface Arrow { readonly part: string; readonly rate: Ratio; readonly clockwise: boolean; readonly x: number; readonly y: number }

/** A part in gear on two sides of the way has one arrow, of both. */
function addArrow(arrows: Map<string, Arrow>, movement: Movement, e: WorkedEngagement, side: "driver" | "driven", perMm: number): void {
  const part = e[side], own = movement.arbors[side === "driver" ? e.driverArbor : e.drivenArbor];
  const carried = e.carrier === null ? ZERO : movement.arbors[e.carrier].rate ?? ZERO;
  const rate = (own.rate ?? ZERO).sub(carried);
  if (isZero(rate)) return;
  const inside = isAnnulus(e.driver) || isAnnulus(e.driven);
  // The driven gives way to its own centre and follows its driver's: dα = −e₂ sin(η₂ − p₂)/r, and −e₁ sin(η₁ − p₁)/r (inside an annulus +).
  const share = (side === "driver" && inside ? 1 : -1) * runoutOf(movement, part) * perMm, pitchRad = pitchDirection(movement, e, side, inside);
  const key = `${part.id} ${writeRatio(rate)}`, before = arrows.get(key);
  const clockwise = (movement.instrument.input.sense === "clockwise") === (signOf(rate) > 0);
  arrows.set(key, { part: part.id, rate, clockwise, x: (before?.x ?? 0) + share * Math.cos(pitchRad), y: (before?.y ?? 0) - share * Math.sin(pitchRad) });
}

/** From a part's centre towards the pitch point, input at 0: towards its mate, but away from it for a pinion inside an annulus. */
function pitchDirection(movement: Movement, e: WorkedEngagement, side: "driver" | "driven", inside: boolean): number {
  const [a, b] = side === "driver" ? [e.driverArbor, e.drivenArbor] : [e.drivenArbor, e.driverArbor];
  const from = movement.arbors[a], to = movement.arbors[b], away = inside && !isAnnulus(e[side]);
  return Math.atan2(away ? from.y - to.y : to.y - from.y, away ? from.x - to.x : to.x - from.x);
}

const lengthOf = ({ x, y }: Arrow): number => Math.hypot(x, y);

/**
 * Directions (rad) in which arrows of these lengths add up to as little as they can: all against the longest where it is
 * longer than the rest together; else the rest is parted in two so that the three close a triangle.
 */
function closing(lengths: readonly number[]): number[] {
  const order = lengths.map((_, i) => i).sort((a, b) => lengths[b] - lengths[a]);
  const [first, ...rest] = order, total = lengths.reduce((sum, l) => sum + l, 0), one = lengths[first];
  let two = 0, k = 0;
  while (k < rest.length && two + lengths[rest[k]] <= total / 2) two += lengths[rest[k++]];
  const three = total - one - two, at = lengths.map(() => 0);
  const inner = (a: number, b: number, c: number) => (a * b > 0 ? Math.acos(Math.max(-1, Math.min(1, (a * a + b * b - c * c) / (2 * a * b)))) : 0);
  rest.forEach((i, n) => { at[i] = Math.PI + (n < k ? inner(one, two, three) : -inner(one, three, two)); });
  return at;
}

/** `turnedRad`: from the direction of its group's first, whose high tooth points where the pointer reads true with the input at 0. */
function waverOf(movement: Movement, arrow: Arrow, turnedRad: number | null): Waver {
  const period = arrow.rate.abs().inverse(), own = Math.atan2(arrow.y, arrow.x);
  // A part that turns the other way runs through its arrow backwards: −conj stands for it.
  const best = turnedRad === null ? null : arrow.clockwise ? Math.PI - own - turnedRad : turnedRad - own;
  return {
    part: arrow.part, degrees: toDeg(lengthOf(arrow)), period: writeRatio(period), days: toNumber(period) * movement.instrument.input.days,
    best: best === null ? null : ((toDeg(best) % 360) + 360) % 360,
  };
}

const isAnnulus = (part: ToothedPart): boolean => part.kind !== "lantern" && part.internal === true;
