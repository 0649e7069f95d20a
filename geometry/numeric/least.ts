// The least value of a function of one variable over a closed stretch: looked at in even steps, then each dip among
// them brought to its bottom by golden section (R. P. Brent, Algorithms for Minimization without Derivatives, ch. 5).
// Right where no dip is narrower than a step.
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Golden section narrows a stretch by 0.618 each time: 70 times is beyond the resolution of a double. */
const NARROWINGS = 70;

export function leastOver(f: (at: number) => number, from: number, to: number, steps: number): number {
  const step = (to - from) / steps;
  const values = Array.from({ length: steps + 1 }, (_, i) => f(from + i * step));
  let least = Infinity;
  for (let i = 0; i <= steps; i++) {
    const before = values[Math.max(0, i - 1)], after = values[Math.min(steps, i + 1)];
    least = Math.min(least, values[i]);
    if (values[i] > before || values[i] > after) continue;
    least = Math.min(least, bottomOf(f, from + Math.max(0, i - 1) * step, from + Math.min(steps, i + 1) * step));
  }
  return least;
}

function bottomOf(f: (at: number) => number, from: number, to: number): number {
  let a = from, b = to;
  let c = b - GOLDEN * (b - a), d = a + GOLDEN * (b - a);
  let fc = f(c), fd = f(d);
  for (let i = 0; i < NARROWINGS; i++) {
    if (fc < fd) { b = d; d = c; fd = fc; c = b - GOLDEN * (b - a); fc = f(c); }
    else { a = c; c = d; fc = fd; d = a + GOLDEN * (b - a); fd = f(d); }
  }
  return Math.min(fc, fd);
}
