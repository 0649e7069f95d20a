// When turning things stand to one another in a wanted way. Each phase runs evenly, φ(t) = start + rate·t (turns, modulo
// 1), at an exact rate; a box asks each phase to stand in an interval. The first time is found by the Euclidean
// algorithm on the rates, so a meeting that comes once in a million turns costs no more than one that comes at once.
// Source: least k with l ≤ a·k mod m ≤ r, a textbook reduction by Euclid's algorithm.
import { lowestTerms, ratio, toNumber, type Ratio } from "../numeric/ratio.ts";
import { PHASE_PAD_TURNS } from "../numeric/tolerance.ts";
import { LIMBS, limbsInto, phaseOf } from "./phase.ts";

export interface Phase {
  /** Turns for one turn of the input; signed, never 0. */
  readonly rate: Ratio;
  /** Turns at input 0. */
  readonly start: number;
}

/** One interval a phase, in turns: from `low` up by `width` (1 or more: anywhere). */
export interface PhaseBox { readonly low: readonly number[]; readonly width: readonly number[] }

/** Turns of the input after which all phases stand as before: the least common multiple of their periods. */
export function cycleOf(phases: readonly Phase[]): Ratio {
  let cycle = ratio(1);
  phases.forEach(({ rate }, i) => {
    const period = rate.abs().inverse();
    cycle = i === 0 ? period : ratio(lcm(cycle.n, period.n), gcd(cycle.d, period.d));
  });
  return cycle;
}

export type Recurrence = ReturnType<typeof recurrenceOf>;

/** When every phase enters a box, when the first leaves it again, and from when it is worth asking for another stretch. */
export type Stretch = readonly [enters: number, leaves: number, next: number];

/**
 * Prepares phases for many questions. `enter(box, from)` is the first stretch of input turns, not before `from`, in
 * which every phase stands in the box (widened by a hair, so that nothing is missed); null: never; and
 * "unknown" where three or more phases were tried `MOST_TRIES` times without an answer.
 */
export function recurrenceOf(phases: readonly Phase[]) {
  const rates = phases.map((p) => toNumber(p.rate)), stands = phases.map(evenly);
  const lead = fastest(rates);
  const others = phases.map((_, i) => i).filter((i) => i !== lead);
  const steps = others.map((i) => stepOf(phases[i].rate, phases[lead].rate, i));
  const cycle = cycleOf(phases);
  const visitsInCycle = cycle.mul(phases[lead].rate).abs().n;
  return {
    cycle,
    enter(box: PhaseBox, from: number): Stretch | null | "unknown" {
      const span = Math.min(1, box.width[lead] + 2 * PHASE_PAD_TURNS);
      const rate = rates[lead];
      // The visit k of the leading phase to its interval begins at t = first + k / |rate|.
      const edge = rate > 0 ? box.low[lead] - PHASE_PAD_TURNS : box.low[lead] + box.width[lead] + PHASE_PAD_TURNS;
      const first = fraction(rate > 0 ? edge - phases[lead].start : phases[lead].start - edge) / Math.abs(rate);
      const stay = span / Math.abs(rate);
      let visit = Math.max(-1, Math.ceil((from - first - stay) * Math.abs(rate)));
      const last = visit + (visitsInCycle < 9e15 ? Number(visitsInCycle) : 9e15) + 1;
      for (let tries = 0; tries < MOST_TRIES; tries++) {
        const next = steps.length === 0 ? visit : nextVisit(steps[0], box, phases, rates, first, stay, visit, Math.abs(rate));
        if (next === null || next > last) return null;
        const stretch = stretchAt(first + next / Math.abs(rate), stay, from, box, stands, rates, Math.abs(rate));
        if (stretch) return stretch;
        visit = next + 1;
      }
      return "unknown";
    },
  };
}

const MOST_TRIES = 20_000;

/**
 * How another phase steps from one visit of the leading phase to the next: exactly p/q of a turn, taken as fractions of
 * small and of long terms. Each differs by less than `out` of a turn over all the visits that its terms tell apart.
 */
interface Step {
  readonly phase: number;
  readonly exact: Ratio;
  readonly limbs: Float64Array;
  readonly small: { readonly p: number; readonly q: number; readonly out: number };
  readonly long: { readonly p: bigint; readonly q: bigint };
}

function stepOf(rate: Ratio, lead: Ratio, phase: number): Step {
  const r = rate.div(lead.abs());
  const exact = lowestTerms(((r.s < 0n ? -r.n : r.n) % r.d + r.d) % r.d, r.d), limbs = new Float64Array(LIMBS);
  limbsInto(limbs, 0, exact);
  const small = nearby(exact, SMALL);
  return { phase, exact, limbs, small: { p: Number(small.p), q: Number(small.q), out: small.out }, long: nearby(exact, LONG) };
}

/** Products of two whole numbers below this are exact doubles. */
const SMALL = 2n ** 26n;
/** More visits than are ever asked for, and what they are out by is far under the pad. */
const LONG = 2n ** 62n;

/** The last convergent with a denominator under a limit. Source: it is out by less than 1/(q·q′), q′ the denominator after it. */
function nearby({ n, d }: Ratio, limit: bigint): { p: bigint; q: bigint; out: number } {
  let [p0, q0, p1, q1] = [0n, 1n, 1n, 0n], [a, b] = [n, d];
  while (b !== 0n) {
    const whole = a / b, p2 = whole * p1 + p0, q2 = whole * q1 + q0;
    if (q2 >= limit) return { p: p1, q: q1, out: 1 / Number(q2) };
    [p0, q0, p1, q1] = [p1, q1, p2, q2];
    [a, b] = [b, a - whole * b];
  }
  return { p: p1, q: q1, out: 0 };
}

/** The first visit, not before `from`, during which the phase of `step` meets its interval, or all but. */
function nextVisit(step: Step, box: PhaseBox, phases: readonly Phase[], rates: readonly number[], first: number, stay: number, from: number, leadRate: number): number | null {
  const rate = rates[step.phase], { small, long } = step;
  const sweep = Math.abs(rate) * stay;
  const width = box.width[step.phase] + sweep + 4 * PHASE_PAD_TURNS;
  if (width + 2 * small.out >= 1) return from;
  const low = box.low[step.phase] - 2 * PHASE_PAD_TURNS - (rate > 0 ? sweep : 0);
  const stands = fraction(phases[step.phase].start + rate * first) + fractionOfProduct(step, from);
  const found = stepsUntil(small, fraction(low - small.out - stands), width + 2 * small.out)
    // What small terms do not tell apart, long ones do.
    ?? (small.out === 0 ? null : longStepsUntil(long, fraction(low - stands), width));
  if (found === null) return null;
  const visit = from + found;
  return Number.isSafeInteger(visit) && visit / leadRate < 1e15 ? visit : null;
}

const stepsUntil = ({ p, q }: Step["small"], low: number, width: number): number | null => (low + width >= 1 ? 0
  : firstInRange(p, q, Math.ceil(low * q - ROUNDING), Math.floor((low + width) * q + ROUNDING)));

function longStepsUntil({ p, q }: Step["long"], low: number, width: number): number | null {
  if (low + width >= 1) return 0;
  const found = firstInLongRange(p, q, scaled(low, q, false), scaled(low + width, q, true));
  return found === null ? null : Number(found);
}

/** The first part of a stay in which every phase is in its interval at once; null if there is none. */
function stretchAt(begins: number, stay: number, from: number, box: PhaseBox, stands: readonly Even[], rates: readonly number[], leadRate: number): Stretch | null {
  const ends = begins + stay;
  let enters = Math.max(begins, from);
  for (let settled = false; !settled; ) {
    settled = true;
    for (let i = 0; i < stands.length; i++) {
      const wait = waitFor(stands[i], rates[i], box.low[i], box.width[i], enters);
      if (wait === 0) continue;
      enters += wait;
      settled = false;
      if (enters > ends) return null;
    }
  }
  let leaves = ends, by = leadRate;
  for (let i = 0; i < stands.length; i++) {
    const out = enters + stayOf(stands[i], rates[i], box.low[i], box.width[i], enters);
    if (out < leaves) { leaves = out; by = rates[i]; }
  }
  return enters <= leaves ? [enters, leaves, leaves + (8 * padAt(by, leaves)) / Math.abs(by)] : null;
}

/** Turns of the input until a phase stands in its interval, a pad deep so that rounding cannot put it out again; 0 if it does. */
function waitFor(stands: Even, rate: number, low: number, width: number, t: number): number {
  const pad = padAt(rate, t), room = width + 4 * pad;
  if (room >= 1) return 0;
  const inside = fraction(stands(t) - low + 2 * pad);
  if (inside <= room) return 0;
  return (pad + (rate > 0 ? 1 - inside : inside - room)) / Math.abs(rate);
}

function stayOf(stands: Even, rate: number, low: number, width: number, t: number): number {
  const pad = padAt(rate, t), room = width + 4 * pad;
  if (room >= 1) return Infinity;
  const inside = fraction(stands(t) - low + 2 * pad);
  return Math.max(0, rate > 0 ? room - inside : inside) / Math.abs(rate);
}

/** After very many turns a double tells them less finely than the pad is wide; so much is then added. */
const padAt = (rate: number, t: number): number => PHASE_PAD_TURNS + Math.abs(rate * t) * 2 ** -50;

/** Turns in [0, 1) at which a phase stands after so many turns of the input. */
export type Even = (turns: number) => number;

/** A phase ready to be asked often; whole turns are taken off exactly. */
export function evenly({ rate, start }: Phase): Even {
  const double = toNumber(rate), limbs = new Float64Array(LIMBS);
  limbsInto(limbs, 0, rate);
  return (turns) => {
    const phase = double * turns;
    if (Math.abs(phase) < EXACT_PHASE) return fraction(start + phase);
    return Math.abs(turns) < EXACT_TURNS ? fraction(start + phaseOf(limbs, 0, double, turns)) : farOn(rate, start, double, turns);
  };
}

/** Turns of a phase up to which a plain product is true to 1e-11. */
const EXACT_PHASE = 2 ** 14;

/** Whole turns up to which a phase's limbs are exact. */
const EXACT_TURNS = 2 ** 33;

function farOn({ n, d, s }: Ratio, start: number, rate: number, turns: number): number {
  const whole = Math.floor(turns);
  return fraction(start + quotient((((s < 0n ? -n : n) * BigInt(whole)) % d + d) % d, d) + rate * (turns - whole));
}

/** Least k ≥ 0 with low ≤ step·k mod size ≤ high; null: never. 0 ≤ low ≤ high < size, products of size and itself exact. */
export function firstInRange(step: number, size: number, low: number, high: number): number | null {
  if (low > high) return null;
  if (low <= 0) return 0;
  const a = step % size;
  if (a === 0) return null;
  const k = Math.ceil(low / a);
  if (a * k <= high) return k;
  const wraps = firstInRange(size % a, a, (a - (high % a)) % a, (a - (low % a)) % a);
  return wraps === null ? null : Math.ceil((low + size * wraps) / a);
}

/** The same for long terms. */
function firstInLongRange(step: bigint, size: bigint, low: bigint, high: bigint): bigint | null {
  if (low > high) return null;
  if (low <= 0n) return 0n;
  const a = step % size;
  if (a === 0n) return null;
  const k = (low + a - 1n) / a;
  if (a * k <= high) return k;
  const wraps = firstInLongRange(size % a, a, mod(-high, a), mod(-low, a));
  return wraps === null ? null : (low + size * wraps + a - 1n) / a;
}

/** ⌈x·q⌉ or ⌊x·q⌋ for 0 ≤ x < 1, rounded so that the range is no narrower. */
function scaled(x: number, q: bigint, up: boolean): bigint {
  const product = BigInt(Math.round(x * 2 ** 53)) * q;
  return up ? product >> 53n : (product + (1n << 53n) - 1n) >> 53n;
}

/** Whole parts of a range may be met a rounding early: widened by this, nothing is missed. */
const ROUNDING = 1e-6;

const fractionOfProduct = ({ exact, limbs }: Step, k: number): number => (Math.abs(k) < EXACT_TURNS
  ? phaseOf(limbs, 0, 0, k) : quotient(mod(exact.n * BigInt(k), exact.d), exact.d));

/** The nearest double, or all but; without bringing the two to lowest terms, which is dear. */
function quotient(n: bigint, d: bigint): number {
  const double = Number(n) / Number(d);
  return Number.isFinite(double) ? double : toNumber(ratio(n, d));
}

/** While the fastest phase visits its interval once, no other makes a whole turn. */
function fastest(rates: readonly number[]): number {
  let at = 0;
  rates.forEach((r, i) => { if (Math.abs(r) > Math.abs(rates[at])) at = i; });
  return at;
}

const mod = (v: bigint, m: bigint): bigint => ((v % m) + m) % m;
const fraction = (turns: number): number => turns - Math.floor(turns);
const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? a : gcd(b, a % b));
const lcm = (a: bigint, b: bigint): bigint => (a / gcd(a, b)) * b;
