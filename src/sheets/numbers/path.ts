// The way from the crank to an arbor through plain engagements, to be written as wheels over pinions; a friction-tight
// arbor goes with what carries it. Where carried axes or pins in slots come in there is no such way.
import { countOf, type Movement, type Ratio, ratio, toNumber } from "../../../geometry/index.ts";

export interface Fraction {
  /** Teeth of the driven over teeth of the driver: turns of the crank for one turn grow by it. */
  readonly over: number;
  readonly under: number;
}

/** The fractions in order from the input, or null where the rate is not their product. */
export function trainTo(movement: Movement, arbor: number): readonly Fraction[] | null {
  const start = movement.arborIndex.get(movement.instrument.input.arbor);
  const rate = movement.arbors[arbor]?.rate;
  if (start === undefined || !rate) return null;
  const way = new Map<number, { readonly from: number; readonly fraction: Fraction | null }>();
  const tight = (movement.instrument.couplings ?? []).flatMap((c) => (c.kind === "friction" ? [c.between.map((id) => movement.arborIndex.get(id) ?? -1)] : []));
  const next = [start];
  for (let at = next.shift(); at !== undefined && at !== arbor; at = next.shift()) {
    for (const pair of tight) {
      const [to] = pair.includes(at) ? pair.filter((a) => a !== at) : [];
      if (to === undefined || to === start || way.has(to)) continue;
      way.set(to, { from: at, fraction: null });
      next.push(to);
    }
    for (const e of movement.engagements) {
      const forward = e.driverArbor === at, to = forward ? e.drivenArbor : e.driverArbor;
      if ((!forward && e.drivenArbor !== at) || to === start || way.has(to) || e.carrier !== null) continue;
      const [driver, driven] = [countOf(e.driver), countOf(e.driven)];
      way.set(to, { from: at, fraction: forward ? { over: driven, under: driver } : { over: driver, under: driven } });
      next.push(to);
    }
  }
  const fractions: Fraction[] = [];
  for (let at = arbor; at !== start;) {
    const step = way.get(at);
    if (!step) return null;
    if (step.fraction) fractions.unshift(step.fraction);
    at = step.from;
  }
  return gives(fractions, rate) ? fractions : null;
}

/** The product of the fractions is one over the rate, but for its sign. */
function gives(fractions: readonly Fraction[], rate: Ratio): boolean {
  const product = fractions.reduce((p, f) => p.mul(ratio(f.under, f.over)), ratio(1));
  return product.equals(rate.abs());
}

/** Years until a pointer that gains or loses so much is one of its divisions wrong; null: never. */
export function yearsToOneDivision(degreesPerYear: number | null, divisions: number): number | null {
  return degreesPerYear === null || degreesPerYear === 0 ? null : 360 / divisions / Math.abs(degreesPerYear);
}

/** Days for one turn of the arbor in the frame; null: it does not turn. */
export function daysOf(movement: Movement, rate: Ratio | null): number | null {
  const turns = rate === null ? 0 : toNumber(rate);
  return turns === 0 ? null : Math.abs(movement.instrument.input.days / turns);
}
