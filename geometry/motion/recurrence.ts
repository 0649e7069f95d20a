// When turning things stand to one another in a wanted way. Each phase runs evenly, φ(t) = start + rate·t (turns, modulo
// 1), at an exact rate; a box asks each phase to stand in an interval. The first time is found by the Euclidean
// algorithm on the rates, so a meeting that comes once in a million turns costs no more than one that comes at once.
// Source: least k with l ≤ a·k mod m ≤ r, a textbook reduction by Euclid's algorithm.
import { ratio, toNumber, type Ratio } from "../numeric/ratio.ts";
import { PHASE_PAD_TURNS } from "../numeric/tolerance.ts";

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

/**
 * Prepares phases for many questions. `enter(box, from)` is the first stretch of input turns, not before `from`, in
 * which every phase stands in the box (widened by a hair, so that nothing is missed): `[enters, leaves]`; null: never; and
 * "unknown" where three or more phases were tried `MOST_TRIES` times without an answer.
 */
export function recurrenceOf(phases: readonly Phase[]) {
  const rates = phases.map((p) => toNumber(p.rate));
  const lead = fastest(rates);
  const others = phases.map((_, i) => i).filter((i) => i !== lead);
  const steps = others.map((i) => stepOf(phases[i].rate, phases[lead].rate, i));
  const cycle = cycleOf(phases);
  const visitsInCycle = cycle.mul(phases[lead].rate).abs().n;
  return {
    cycle,
    enter(box: PhaseBox, from: number): [number, number] | null | "unknown" {
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
        const stretch = stretchAt(first + next / Math.abs(rate), stay, from, box, phases, rates);
        if (stretch) return stretch;
        visit = next + 1;
      }
      return "unknown";
    },
  };
}

const MOST_TRIES = 20_000;

/** How another phase steps from one visit of the leading phase to the next, as p/q of a turn. */
interface Step { readonly phase: number; readonly p: bigint; readonly q: bigint; /** The same as doubles where products of them are exact, else 0. */ readonly smallP: number; readonly smallQ: number }

function stepOf(rate: Ratio, lead: Ratio, phase: number): Step {
  const r = rate.div(lead.abs());
  const p = ((r.s < 0n ? -r.n : r.n) % r.d + r.d) % r.d;
  const small = r.d < EXACT_FACTOR;
  return { phase, p, q: r.d, smallP: small ? Number(p) : 0, smallQ: small ? Number(r.d) : 0 };
}

/** Products of two whole numbers below this are exact doubles. */
const EXACT_FACTOR = 2n ** 26n;

/** The first visit, not before `from`, during which the phase of `step` meets its interval. */
function nextVisit(step: Step, box: PhaseBox, phases: readonly Phase[], rates: readonly number[], first: number, stay: number, from: number, leadRate: number): number | null {
  const rate = rates[step.phase];
  const sweep = Math.abs(rate) * stay;
  const width = box.width[step.phase] + sweep + 4 * PHASE_PAD_TURNS;
  if (width >= 1) return from;
  const low = box.low[step.phase] - 2 * PHASE_PAD_TURNS - (rate > 0 ? sweep : 0);
  const along = fractionOfProduct(step, from);
  const stands = fraction(phases[step.phase].start + rate * first) + along;
  const l = fraction(low - stands);
  const found = l + width >= 1 ? 0 : step.smallQ > 0
    ? firstInRangeSmall(step.smallP, step.smallQ, Math.ceil(l * step.smallQ - ROUNDING), Math.floor((l + width) * step.smallQ + ROUNDING))
    : numberOf(firstInRange(step.p, step.q, scaledUp(l, step.q), scaledDown(l + width, step.q)));
  if (found === null) return null;
  const visit = from + found;
  return Number.isSafeInteger(visit) && visit / leadRate < 1e15 ? visit : null;
}

/** The first part of a stay in which every phase is in its interval at once; null if there is none. */
function stretchAt(begins: number, stay: number, from: number, box: PhaseBox, phases: readonly Phase[], rates: readonly number[]): [number, number] | null {
  const ends = begins + stay;
  let enters = Math.max(begins, from);
  for (let settled = false; !settled; ) {
    settled = true;
    for (let i = 0; i < phases.length; i++) {
      const wait = waitFor(phases[i], rates[i], box.low[i], box.width[i], enters);
      if (wait === 0) continue;
      enters += wait;
      settled = false;
      if (enters > ends) return null;
    }
  }
  let leaves = ends;
  for (let i = 0; i < phases.length; i++) leaves = Math.min(leaves, enters + stayOf(phases[i], rates[i], box.low[i], box.width[i], enters));
  return enters <= leaves ? [enters, leaves] : null;
}

/** Turns of the input until a phase stands in its interval, a pad deep so that rounding cannot put it out again; 0 if it does. */
function waitFor(phase: Phase, rate: number, low: number, width: number, t: number): number {
  const room = width + 4 * PHASE_PAD_TURNS;
  if (room >= 1) return 0;
  const inside = fraction(phaseAt(phase, rate, t) - low + 2 * PHASE_PAD_TURNS);
  if (inside <= room) return 0;
  return (PHASE_PAD_TURNS + (rate > 0 ? 1 - inside : inside - room)) / Math.abs(rate);
}

function stayOf(phase: Phase, rate: number, low: number, width: number, t: number): number {
  const room = width + 4 * PHASE_PAD_TURNS;
  if (room >= 1) return Infinity;
  const inside = fraction(phaseAt(phase, rate, t) - low + 2 * PHASE_PAD_TURNS);
  return Math.max(0, rate > 0 ? room - inside : inside) / Math.abs(rate);
}

/** Turns in [0, 1) at which a phase stands after t turns of the input; whole turns are taken off exactly. */
export function phaseAt(phase: Phase, rate: number, t: number): number {
  const whole = Math.floor(t);
  if (Math.abs(whole) < 4096) return fraction(phase.start + rate * t);
  const { n, d, s } = phase.rate;
  const rest = (((s < 0n ? -n : n) * BigInt(whole)) % d + d) % d;
  return fraction(phase.start + toNumber(ratio(rest, d)) + rate * (t - whole));
}

/** Least k ≥ 0 with low ≤ step·k mod size ≤ high; null: never. 0 ≤ low ≤ high < size. */
export function firstInRange(step: bigint, size: bigint, low: bigint, high: bigint): bigint | null {
  if (low > high) return null;
  if (low === 0n) return 0n;
  const a = step % size;
  if (a === 0n) return null;
  const k = (low + a - 1n) / a;
  if (a * k <= high) return k;
  const wraps = firstInRange(size % a, a, mod(-high, a), mod(-low, a));
  return wraps === null ? null : (low + size * wraps + a - 1n) / a;
}

/** The same in doubles, for sizes whose products are exact. */
function firstInRangeSmall(step: number, size: number, low: number, high: number): number | null {
  if (low > high) return null;
  if (low <= 0) return 0;
  const a = step % size;
  if (a === 0) return null;
  const k = Math.ceil(low / a);
  if (a * k <= high) return k;
  const wraps = firstInRangeSmall(size % a, a, (a - (high % a)) % a, (a - (low % a)) % a);
  return wraps === null ? null : Math.ceil((low + size * wraps) / a);
}

/** Whole parts of a range may be met a rounding early: widened by this, nothing is missed. */
const ROUNDING = 1e-6;

const numberOf = (v: bigint | null): number | null => (v === null ? null : Number(v));

function fractionOfProduct(step: Step, k: number): number {
  if (step.smallQ > 0 && Math.abs(k) < 2 ** 26) return (((step.smallP * k) % step.smallQ) + step.smallQ) % step.smallQ / step.smallQ;
  return toNumber(ratio(mod(step.p * BigInt(k), step.q), step.q));
}

/** While the fastest phase visits its interval once, no other makes a whole turn. */
function fastest(rates: readonly number[]): number {
  let at = 0;
  rates.forEach((r, i) => { if (Math.abs(r) > Math.abs(rates[at])) at = i; });
  return at;
}

/** ⌈x·q⌉ and ⌊x·q⌋ for 0 ≤ x < 1, rounded outward for huge q. */
function scaledUp(x: number, q: bigint): bigint {
  const v = scaled(x, q, false);
  return v < 0n ? 0n : v;
}
function scaledDown(x: number, q: bigint): bigint {
  const v = scaled(x, q, true);
  return v >= q ? q - 1n : v;
}
function scaled(x: number, q: bigint, up: boolean): bigint {
  const ONE = 1n << 53n;
  const product = BigInt(Math.round(x * 2 ** 53)) * q;
  return up ? product / ONE : (product + ONE - 1n) / ONE;
}

const mod = (v: bigint, m: bigint): bigint => ((v % m) + m) % m;
const fraction = (turns: number): number => turns - Math.floor(turns);
const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? a : gcd(b, a % b));
const lcm = (a: bigint, b: bigint): bigint => (a / gcd(a, b)) * b;
