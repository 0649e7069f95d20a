// What a display shows held against the sky: how far it is out, how the error swings, how it drifts, and when it is first
// more than a division wrong. Errors are degrees at the pointer, shown less true, the way the dial is numbered.
import type { Movement } from "../movement.ts";
import { motionOf } from "../motion/motion.ts";
import { FIRST_OUT_DAYS } from "../numeric/tolerance.ts";
import { quantityOf, turnsAt, type Quantity } from "./quantities.ts";
import { dialRate, nearestTurn, shownAt } from "./shown.ts";

export interface SkySpan {
  /** Days (universal time, from noon on 1 January 2000) at which the input stands at 0. */
  readonly epoch: number;
  readonly from: number;
  readonly to: number;
  /** Places at which it is compared, 3 or more. */
  readonly samples: number;
}

export interface Comparison {
  readonly display: string;
  readonly quantity: string;
  /** Stride 1 each, in step: days, and degrees of error; `even` without the swing. */
  readonly days: Float64Array;
  readonly errorDeg: Float64Array;
  readonly evenDeg: Float64Array;
  /** The samples from `evenFrom` up to `evenTo`, itself not among them, are smoothed over a whole swing. */
  readonly evenFrom: number;
  readonly evenTo: number;
  /** Least and greatest error of the span. */
  readonly leastDeg: number;
  readonly greatestDeg: number;
  /** Degrees a year by which its mean period is out: of counts against the mean of the sky. */
  readonly driftDegPerYear: number;
  /** The part that swings: least and greatest of the error less its smoothed course; null where the quantity goes evenly. */
  readonly swing: {
    readonly says: string; readonly leastDeg: number; readonly greatestDeg: number;
    /** What a pin and slot turning with the anomaly would take away (half the swing), and what it would leave. */
    readonly recoveredDeg: number; readonly leftDeg: number;
  } | null;
  /** Degrees of one division. */
  readonly divisionDeg: number;
  /** Days of the first sample that is more than a division out, brought to a thousandth of a day; null: none in the span. */
  readonly firstOut: number | null;
  /** Years until the drift alone makes a division; null: never. */
  readonly yearsByDrift: number | null;
}

/** Compares one display; null where it names no known quantity or does not turn. */
export function compareWithSky(movement: Movement, display: number, span: SkySpan): Comparison | null {
  const quantity = quantityOf(movement.instrument.displays?.[display]?.shows);
  if (quantity === null || movement.displays[display].rate === null) return null;
  const samples = Math.max(3, Math.floor(span.samples)), step = (span.to - span.from) / (samples - 1);
  if (!(step > 0) || !Number.isFinite(step)) return null;
  const days = Float64Array.from({ length: samples }, (_, i) => span.from + i * step);
  const errorAt = errorFunction(movement, display, quantity, span.epoch);
  const errorDeg = unwrapped(days, errorAt);
  const swingDays = quantity.swing?.days ?? 0;
  const margin = Math.min(Math.ceil(swingDays / step / 2), Math.floor((samples - 1) / 2));
  const evenDeg = swingDays > 2 * step && swingDays < span.to - span.from ? smoothed(errorDeg, swingDays / step) : Float64Array.from(errorDeg);
  const divisionDeg = 360 / movement.displays[display].divisions;
  const driftDegPerYear = driftOf(movement, display, quantity);
  return {
    display: movement.displays[display].id, quantity: quantity.name, days, errorDeg, evenDeg, evenFrom: margin, evenTo: samples - margin,
    leastDeg: least(errorDeg), greatestDeg: greatest(errorDeg), driftDegPerYear, divisionDeg,
    swing: quantity.swing === undefined ? null : swingOf(days, errorDeg, evenDeg, quantity.swing),
    firstOut: firstOver(days, errorDeg, divisionDeg, errorAt),
    yearsByDrift: driftDegPerYear === 0 ? null : divisionDeg / Math.abs(driftDegPerYear),
  };
}

/** Degrees of error at one day, from −180 to 180; null as above. */
export function errorNow(movement: Movement, display: number, epoch: number, day: number): number | null {
  const quantity = quantityOf(movement.instrument.displays?.[display]?.shows);
  return quantity === null || movement.displays[display].rate === null ? null : errorFunction(movement, display, quantity, epoch)(day);
}

/** A dial whose 0 is the maker's own is taken to be right at the epoch. */
function errorFunction(movement: Movement, display: number, quantity: Quantity, epoch: number): (day: number) => number {
  const motion = motionOf(movement);
  const inputDays = movement.instrument.input.days;
  const raw = (day: number) => shownAt(movement, display, (day - epoch) / inputDays, motion).part - turnsAt(quantity, day);
  const zero = quantity.ownZero ? raw(epoch) : 0;
  return (day) => 360 * nearestTurn(raw(day) - zero);
}

/** Counts that go truer than the mean drift by nothing; rates are compared in turns a day, signed as the dial is numbered. */
function driftOf(movement: Movement, display: number, quantity: Quantity): number {
  const perDay = dialRate(movement, display) / movement.instrument.input.days;
  return 360 * 365.25 * (perDay - quantity.mean.perDay);
}

/** Errors without leaps of a whole turn between neighbours. */
function unwrapped(days: Float64Array, errorAt: (day: number) => number): Float64Array {
  let before = 0;
  return days.map((day, i) => {
    const error = errorAt(day);
    before = i === 0 ? error : before + 360 * nearestTurn((error - before) / 360);
    return before;
  });
}

/** The mean over so many samples about each; near the ends over what there is to both sides alike. */
function smoothed(values: Float64Array, width: number): Float64Array {
  const sums = new Float64Array(values.length + 1);
  values.forEach((v, i) => { sums[i + 1] = sums[i] + v; });
  const integral = (at: number): number => {
    const i = Math.min(values.length - 1, Math.max(0, Math.floor(at)));
    return sums[i] + (at - i) * values[i];
  };
  return values.map((_, i) => {
    const half = Math.min(width / 2, i + 0.5, values.length - i - 0.5);
    return (integral(i + 0.5 + half) - integral(i + 0.5 - half)) / (2 * half);
  });
}

function swingOf(days: Float64Array, errorDeg: Float64Array, evenDeg: Float64Array, { says, anomaly, days: period }: NonNullable<Quantity["swing"]>): NonNullable<Comparison["swing"]> {
  const margin = days[0] + period / 2, end = days[days.length - 1] - period / 2;
  const inside = Array.from(days.keys()).filter((i) => days[i] >= margin && days[i] <= end);
  const kept = inside.length > 2 ? inside : Array.from(days.keys());
  const swing = kept.map((i) => errorDeg[i] - evenDeg[i]);
  const phase = kept.map((i) => 2 * Math.PI * (anomaly.at + anomaly.perDay * days[i]));
  const [sine, cosine] = fitted(swing, phase);
  const left = swing.map((v, k) => v - sine * Math.sin(phase[k]) - cosine * Math.cos(phase[k]));
  return {
    says, leastDeg: swing.reduce((a, b) => Math.min(a, b), 0), greatestDeg: swing.reduce((a, b) => Math.max(a, b), 0),
    recoveredDeg: Math.hypot(sine, cosine), leftDeg: left.reduce((most, v) => Math.max(most, Math.abs(v)), 0),
  };
}

/** Least squares of a·sin + b·cos; 0, 0 where the phases cannot tell. */
function fitted(values: readonly number[], phase: readonly number[]): [number, number] {
  let ss = 0, sc = 0, cc = 0, sv = 0, cv = 0;
  values.forEach((v, k) => {
    const s = Math.sin(phase[k]), c = Math.cos(phase[k]);
    ss += s * s; sc += s * c; cc += c * c; sv += s * v; cv += c * v;
  });
  const det = ss * cc - sc * sc;
  return det > 0 ? [(sv * cc - cv * sc) / det, (cv * ss - sv * sc) / det] : [0, 0];
}

function firstOver(days: Float64Array, errorDeg: Float64Array, limitDeg: number, errorAt: (day: number) => number): number | null {
  const k = errorDeg.findIndex((e) => Math.abs(e) > limitDeg);
  if (k <= 0) return k < 0 ? null : days[0];
  let low = days[k - 1], high = days[k];
  while (high - low > FIRST_OUT_DAYS) {
    const middle = (low + high) / 2;
    if (Math.abs(errorAt(middle)) > limitDeg) high = middle;
    else low = middle;
  }
  return high;
}

const least = (values: Float64Array): number => values.reduce((a, b) => Math.min(a, b), Infinity);
const greatest = (values: Float64Array): number => values.reduce((a, b) => Math.max(a, b), -Infinity);
