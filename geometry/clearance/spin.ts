// Two things in motion as a gap over a few phases that run evenly, ready to be followed. What turns alike is taken
// together, and only turning against one another counts: two pointers on one axis have one phase between them.
import type { Axis } from "../bodies/axis.ts";
import { flatOf, flatReach, isRound, wholeReach } from "../bodies/flat.ts";
import { pawlOf } from "../bodies/pawl.ts";
import type { Cylinder, Thing } from "../bodies/thing.ts";
import type { Movement } from "../movement.ts";
import { evenly, type Phase } from "../motion/recurrence.ts";
import { deviationRad, type Uneven } from "../motion/uneven.ts";
import { TAU } from "../numeric/angle.ts";
import { isZero, ratio, toNumber, ZERO, type Ratio } from "../numeric/ratio.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { apart, meetingPlace, type Convex, type Flat, type Stand } from "../planar/apart.ts";
import { leastWhile, type Body, type Turned } from "./bound.ts";
import type { Followed } from "./follow.ts";

/** Phases in whole multiples of one, up to this many, are followed as one. */
const FEW_TURNS = 200;
/** The same where else there would be three or more: boxes in so many directions cost more than a long way. */
const FEW_TURNS_OF_MANY = 2000;

export interface Spin extends Followed {
  /** Where in the frame the two come nearest, after so many turns of the input. */
  place(turns: number): { x: number; y: number };
}

/** The two as a function of phases; null where the swept solids already tell all, or something has no rate. */
export function spinOf(movement: Movement, uneven: readonly Uneven[], a: Thing, ca: Cylinder, b: Thing, cb: Cylinder): Spin | null {
  const flatA = flatOf(movement, a, ca), flatB = flatOf(movement, b, cb);
  const turnA = isRound(flatA) ? null : turningOf(movement, uneven, turnsWith(movement, a)), turnB = isRound(flatB) ? null : turningOf(movement, uneven, turnsWith(movement, b));
  const roundAndStill = (thing: Thing, turn: unknown) => (turn === null || thing.plate !== null) && thing.axis.swings.length === 0;
  if (roundAndStill(a, turnA) && roundAndStill(b, turnB)) return null;
  if (turnA === "no rate" || turnB === "no rate") return null;
  const allA = swingsOf(movement, uneven, a), allB = swingsOf(movement, uneven, b);
  if (allA === null || allB === null) return null;
  const swingsA = notAmong(allB, allA), swingsB = notAmong(allA, allB);
  const still = Math.hypot(a.axis.x - b.axis.x, a.axis.y - b.axis.y) > SAME_AXIS_MM;
  const turnings = [turnA, turnB, ...swingsA.map((s) => s.turning), ...swingsB.map((s) => s.turning)].filter((t) => t !== null);
  const sign = movement.instrument.input.sense === "clockwise" ? -1 : 1;
  const motion: Motion = { a, b, flatA, flatB, turnA, turnB, swingsA, swingsB, turnings, sign };
  const { seen, reference } = calmest(motion, still ? [ZERO] : turnings.map((t) => t.rate));
  const inFrame = isZero(reference) && swingsA.length === allA.length ? seen
    : seenFrom({ ...motion, swingsA: allA, swingsB: allB, turnings: [...turnings, ...allA.map((s) => s.turning)] }, ZERO);
  return seen.slopes.every(Number.isFinite) ? {
    phases: seen.phases, slopes: seen.slopes, ...(seen.least ? { least: seen.least } : {}),
    gap: (turns) => apart(flatA, seen.standA(turns), flatB, seen.standB(turns)),
    place: (turns) => {
      const at = inFrame.phases.map((p) => evenly(p)(turns));
      return meetingPlace(flatA, inFrame.standA(at), flatB, inFrame.standB(at));
    },
  } : null;
}

/** The arbor it turns with; a pawl, sprung against its ratchet, stands as what carries its axis does. −1: the frame. */
const turnsWith = (movement: Movement, { arbor, id, kind }: Thing): number =>
  (kind === "arm" && pawlOf(movement, id) !== null ? movement.arbors[arbor].carrier ?? -1 : arbor);

interface Motion {
  readonly a: Thing; readonly b: Thing; readonly flatA: Flat; readonly flatB: Flat;
  readonly turnA: Turning | null; readonly turnB: Turning | null;
  readonly swingsA: readonly Swung[]; readonly swingsB: readonly Swung[];
  readonly turnings: readonly Turning[];
  readonly sign: 1 | -1;
}

/** Seen from where fewest phases are left, and of those from where they make the least way. Where both axes stand on the frame's own places, only from there. */
function calmest(motion: Motion, rates: readonly Ratio[]): { seen: ReturnType<typeof seenFrom>; reference: Ratio } {
  const distinct = rates.filter((r, i) => rates.findIndex((other) => other.equals(r)) === i);
  const views = (distinct.length === 0 ? [ZERO] : distinct).map((reference) => ({ seen: seenFrom(motion, reference), reference }));
  const way = ({ seen }: typeof views[number]) => seen.slopes.reduce((sum, slope, i) => sum + slope * toNumber(seen.phases[i].rate), 0);
  return views.reduce((best, view) => (view.seen.phases.length - best.seen.phases.length || way(view) - way(best)) < 0 ? view : best);
}

/** How the two stand, seen from what turns at the reference rate: phases, slopes, and stands for phases. */
function seenFrom(m: Motion, reference: Ratio) {
  const phases = phasesOf([...m.turnings.map((t) => t.rate.sub(reference)), ...m.turnings.flatMap((t) => t.leads.map((l) => l.rate))]);
  const arcOf = (t: Turning | null): Arc | null => t && {
    ...phases.at(t.rate.sub(reference)),
    leads: t.leads.map((l) => ({ ...phases.at(l.rate), uneven: l.uneven, share: l.share })),
  };
  const arcA = arcOf(m.turnA), arcB = arcOf(m.turnB);
  const armsOf = (swings: readonly Swung[]): ArmOf[] => swings.map((s) => ({ arc: arcOf(s.turning), x: s.x, y: s.y }));
  const armsA = armsOf(m.swingsA), armsB = armsOf(m.swingsB);
  const slopes = phases.list.map(() => 0);
  // Turning the one is turning the other about its axis: no more of either matters than the other comes near.
  const far = Math.hypot(m.a.axis.x - m.b.axis.x, m.a.axis.y - m.b.axis.y) + [...armsA, ...armsB].reduce((sum, arm) => sum + Math.hypot(arm.x, arm.y), 0);
  addSlopes(slopes, arcA, Math.min(flatReach(m.flatA), far + wholeReach(m.flatB)));
  addSlopes(slopes, arcB, Math.min(flatReach(m.flatB), far + wholeReach(m.flatA)));
  for (const arm of [...armsA, ...armsB]) addSlopes(slopes, arm.arc, Math.hypot(arm.x, arm.y));
  return {
    phases: phases.list, slopes, least: leastOf(m, arcA, arcB, armsA, armsB, phases.list.length),
    standA: (turns: readonly number[]) => standOf(m.a.axis, arcA, armsA, m.sign, turns),
    standB: (turns: readonly number[]) => standOf(m.b.axis, arcB, armsB, m.sign, turns),
  };
}

/** The least gap of a box of phases, where both outlines are convex and whole and all turns evenly; null: not to be had so. */
function leastOf(m: Motion, arcA: Arc | null, arcB: Arc | null, armsA: readonly ArmOf[], armsB: readonly ArmOf[], phases: number): Followed["least"] | null {
  const simple = (flat: Flat) => flat.outside.length === 1 && flat.hollows.length === 0;
  const even = [arcA, arcB, ...armsA.map((a) => a.arc), ...armsB.map((a) => a.arc)].every((arc) => arc === null || arc.leads.length === 0);
  if (!simple(m.flatA) || !simple(m.flatB) || !even) return null;
  const timesOf = (arc: Arc | null) => Float64Array.from({ length: phases }, (_, j) => (arc?.phase === j ? m.sign * arc.times : 0));
  const bodyOf = (flat: Flat, arc: Arc | null): Body => ({ outline: flat.outside[0], reach: cornerReach(flat.outside[0]), cos: 1, sin: 0, times: timesOf(arc) });
  const a = bodyOf(m.flatA, arcA), b = bodyOf(m.flatB, arcB);
  const arms = [...armsA.map((arm) => ({ arm, way: -1 })), ...armsB.map((arm) => ({ arm, way: 1 }))];
  const links: Turned[] = arms.map(({ arm }) => ({ x: 0, y: 0, times: timesOf(arm.arc) }));
  const chain: Turned[] = [{ x: m.b.axis.x - m.a.axis.x, y: m.b.axis.y - m.a.axis.y, times: new Float64Array(phases) }, ...links];
  return (turns, halves) => {
    turnTo(a, angleOf(arcA, m.sign, turns));
    turnTo(b, angleOf(arcB, m.sign, turns));
    arms.forEach(({ arm, way }, i) => {
      const rad = angleOf(arm.arc, m.sign, turns), c = way * Math.cos(rad), s = way * Math.sin(rad);
      links[i].x = c * arm.x - s * arm.y;
      links[i].y = s * arm.x + c * arm.y;
    });
    return leastWhile(a, b, chain, halves);
  };
}

function turnTo(body: Body, rad: number): void {
  body.cos = Math.cos(rad);
  body.sin = Math.sin(rad);
}

function cornerReach({ corners }: Convex): number {
  let reach = 0;
  for (let k = 0; k < corners.length; k += 2) reach = Math.max(reach, Math.hypot(corners[k], corners[k + 1]));
  return reach;
}

/** A turning as whole multiples of phases. */
interface Arc extends Multiple { readonly leads: readonly (Multiple & { readonly uneven: Uneven; readonly share: number })[] }
interface Multiple { readonly phase: number; readonly times: number }
interface ArmOf { readonly arc: Arc | null; readonly x: number; readonly y: number }

function angleOf(arc: Arc | null, sign: number, turns: readonly number[]): number {
  if (arc === null) return 0;
  let rad = arc.phase < 0 ? 0 : sign * TAU * arc.times * turns[arc.phase];
  for (const l of arc.leads) rad += l.share * deviationRad(l.uneven, l.phase < 0 ? 0 : sign * TAU * l.times * turns[l.phase]);
  return rad;
}

function standOf(axis: Axis, arc: Arc | null, arms: readonly ArmOf[], sign: number, turns: readonly number[]): Stand {
  let { x, y } = axis;
  for (const arm of arms) {
    const rad = angleOf(arm.arc, sign, turns), c = Math.cos(rad), n = Math.sin(rad);
    x += c * arm.x - n * arm.y;
    y += n * arm.x + c * arm.y;
  }
  const rad = angleOf(arc, sign, turns);
  return { x, y, cos: Math.cos(rad), sin: Math.sin(rad) };
}

function addSlopes(slopes: number[], arc: Arc | null, reach: number): void {
  if (arc === null) return;
  const add = (m: Multiple, slope: number) => { if (m.phase >= 0) slopes[m.phase] += slope * Math.abs(m.times); };
  add(arc, TAU * reach);
  for (const l of arc.leads) add(l, TAU * reach * Math.abs(l.share) * steepest(l.uneven));
}

/** How an arbor turns: evenly at its rate, and ahead or behind by its share of each pin and slot. */
interface Turning {
  readonly rate: Ratio;
  readonly leads: readonly { readonly uneven: Uneven; readonly share: number; /** Of the driver against its frame. */ readonly rate: Ratio }[];
}
interface Swung { readonly carrier: number; readonly turning: Turning; readonly x: number; readonly y: number }

function turningOf(movement: Movement, uneven: readonly Uneven[], arbor: number): Turning | "no rate" {
  if (arbor < 0) return { rate: ZERO, leads: [] };
  const { rate } = movement.arbors[arbor];
  if (rate === null) return "no rate";
  const leads: Turning["leads"][number][] = [];
  for (const u of uneven) {
    const k = u.moved.indexOf(arbor);
    if (k < 0) continue;
    const driver = movement.arbors[u.driver].rate, frame = u.frame < 0 ? ZERO : movement.arbors[u.frame].rate;
    const nested = uneven.some((v) => v.moved.includes(u.driver) || (u.frame >= 0 && v.moved.includes(u.frame)));
    if (driver === null || frame === null || nested) return "no rate";
    leads.push({ uneven: u, share: u.share[k], rate: driver.sub(frame) });
  }
  return { rate, leads };
}

/** The swings of its axis with what turns each; null where a carrier has no rate. */
function swingsOf(movement: Movement, uneven: readonly Uneven[], thing: Thing): Swung[] | null {
  if (thing.arbor < 0) return [];
  const swings: Swung[] = [];
  let rider = movement.arbors[thing.arbor];
  for (const on of rider.chain) {
    const carrier = movement.arbors[on];
    if ((rider.arbor.rides?.radius ?? 0) > 0) {
      const turning = turningOf(movement, uneven, on);
      if (turning === "no rate") return null;
      if (!isZero(turning.rate)) swings.push({ carrier: on, turning, x: rider.x - carrier.x, y: rider.y - carrier.y });
    }
    rider = carrier;
  }
  return swings;
}

/** Those of the swings that the other does not share: what carries both alike changes nothing between them. */
const notAmong = (others: readonly Swung[], swings: readonly Swung[]): Swung[] =>
  swings.filter((s) => !others.some((o) => o.carrier === s.carrier && o.x === s.x && o.y === s.y));

/** Greatest radians of deviation for a radian of the driver. Source: the direction of a point on a circle from an eccentric place turns at most ρ/|ρ − e| as fast; asin(k sin x) no faster than k. */
function steepest(u: Uneven): number {
  const e = Math.hypot(u.dx, u.dy);
  if (u.slotDrives) return e / u.radiusMm;
  return (u.round ? e : u.radiusMm) / Math.abs(u.radiusMm - e);
}

interface Phases {
  readonly list: readonly Phase[];
  /** Which phase a rate follows, and how many times as fast; phase −1: it stands. */
  at(rate: Ratio): Multiple;
}

/** One phase for each rate that is not another's the same or contrary, or one for all where they are few turns apart. */
function phasesOf(rates: readonly Ratio[]): Phases {
  const distinct: Ratio[] = [];
  for (const r of rates) if (!isZero(r) && !distinct.some((d) => d.equals(r.abs()))) distinct.push(r.abs());
  const common = distinct.reduce<Ratio | null>((g, r) => (g === null ? r : commonMeasure(g, r)), null);
  const together = common !== null && distinct.every((r) => toNumber(r.div(common)) <= (distinct.length > 2 ? FEW_TURNS_OF_MANY : FEW_TURNS));
  const bases = together && common !== null ? [common] : distinct;
  return {
    list: bases.map((rate) => ({ rate, start: 0 })),
    at: (rate) => {
      if (isZero(rate)) return { phase: -1, times: 0 };
      const phase = bases.length === 1 ? 0 : bases.findIndex((d) => d.equals(rate.abs()));
      return { phase, times: toNumber(rate.div(bases[phase])) };
    },
  };
}

/** The greatest ratio of which both are whole multiples. */
function commonMeasure(a: Ratio, b: Ratio): Ratio {
  const gcd = (x: bigint, y: bigint): bigint => (y === 0n ? x : gcd(y, x % y));
  const d = (a.d / gcd(a.d, b.d)) * b.d;
  return ratio(gcd(a.n * (d / a.d), b.n * (d / b.d)), d);
}
