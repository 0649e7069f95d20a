// Where a condition on one number stops holding, and where a rising function comes to a value. Nothing is asked of the
// function but that it changes once; it may be infinite on either side.

/** The last place, going from `holds` to `fails`, at which the test still holds, to so many halvings of the way. */
export function lastHolding(holds: number, fails: number, halvings: number, test: (at: number) => boolean): number {
  let inside = holds, outside = fails;
  for (let i = 0; i < halvings; i++) {
    const mid = (inside + outside) / 2;
    if (test(mid)) inside = mid;
    else outside = mid;
  }
  return inside;
}

/**
 * Where a rising function comes to 0 between two places, within `enough`; the nearer end where it does not in between.
 * By chords (the Illinois rule), and by halving where the function is infinite.
 */
export function risingRoot(f: (at: number) => number, from: number, to: number, enough: number): number {
  let low = from, high = to, fLow = f(from), fHigh = f(to);
  if (fLow >= 0) return from;
  if (fHigh <= 0) return to;
  let last = 0;
  for (let i = 0; i < 200 && high - low > enough; i++) {
    // A chord that ends on one side again and again lets the other end lose weight; every sixth time the stretch is halved.
    const chord = low - (fLow * (high - low)) / (fHigh - fLow);
    // Kept a little off the ends, so that a root beside one of them is closed in at once.
    const off = Math.min(Math.max(chord, low + enough / 2), high - enough / 2);
    const at = Number.isFinite(fHigh - fLow) && off > low && off < high && i % 6 < 5 ? off : (low + high) / 2;
    const value = f(at);
    if (value === 0 || at === low || at === high) return at;
    if (value < 0) {
      low = at;
      fLow = value;
      if (last < 0) fHigh /= 2;
    } else {
      high = at;
      fHigh = value;
      if (last > 0) fLow /= 2;
    }
    last = Math.sign(value);
  }
  return (low + high) / 2;
}
