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
 * By Chandrupatla's rule (T. R. Chandrupatla, Advances in Engineering Software 28, 1997): through the last three places
 * where they bend evenly, else by halving, and so wherever the function is infinite.
 */
export function risingRoot(f: (at: number) => number, from: number, to: number, enough: number): number {
  const fFrom = f(from);
  if (fFrom >= 0) return from;
  const fTo = f(to);
  if (fTo <= 0) return to;
  // The newest place, the one across the root from it, and the one before; first of all a chord, off the ends.
  let at = to, fAt = fTo, across = from, fAcross = fFrom, before = to, fBefore = fTo;
  for (let i = 0; i < 200 && Math.abs(across - at) > enough; i++) {
    const least = enough / 2 / Math.abs(across - at);
    const share = i === 0 ? fAt / (fAt - fAcross) : evenly(at, fAt, across, fAcross, before, fBefore);
    const next = at + Math.min(Math.max(Number.isFinite(share) ? share : 1 / 2, least), 1 - least) * (across - at), value = f(next);
    if (value === 0 || next === at || next === across) return next;
    if (value < 0 === fAt < 0) {
      before = at;
      fBefore = fAt;
    } else {
      before = across;
      fBefore = fAcross;
      across = at;
      fAcross = fAt;
    }
    at = next;
    fAt = value;
  }
  return Math.abs(fAt) < Math.abs(fAcross) ? at : across;
}

/** The share of the way from a place to the one across at which the inverse parabola through three places comes to 0; a half where they do not bend evenly. */
function evenly(at: number, fAt: number, across: number, fAcross: number, before: number, fBefore: number): number {
  const xi = (at - across) / (before - across), phi = (fAt - fAcross) / (fBefore - fAcross);
  if (!(phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)) return 1 / 2;
  return (fAt / (fAcross - fAt)) * (fBefore / (fAcross - fBefore)) + ((before - at) / (across - at)) * (fAt / (fBefore - fAt)) * (fAcross / (fBefore - fAcross));
}

/** Several rising functions, by their numbers from 0. */
export interface RisingFunctions {
  all(at: number): ArrayLike<number>;
  one(at: number, which: number): number;
}

/**
 * Where the least of several rising functions comes to 0, and which of them is least there. Sought along one of them, at
 * first `which`, until all of them looked at together find none under 0: so all are seldom asked for.
 */
export function risingRootOfLeast(f: RisingFunctions, from: number, to: number, enough: number, which: number): { at: number; which: number } {
  let low = from, along = which;
  for (let i = 0; i < MOST_ALONG; i++) {
    // Looked at just past the root, where none may be under 0.
    const at = risingRoot((x) => f.one(x, along), low, to, enough), past = Math.min(to, at + enough), values = f.all(past), least = leastOf(values);
    if (past >= to || values[least] >= 0) return { at, which: least };
    low = past;
    along = least;
  }
  return { at: risingRoot((x) => Math.min(...Array.from(f.all(x))), low, to, enough), which: along };
}

/** Functions that take turns at being least are followed one after another so many times at most. */
const MOST_ALONG = 12;

/** The number of the least value. */
export function leastOf(values: ArrayLike<number>): number {
  let least = 0;
  for (let i = 1; i < values.length; i++) if (values[i] < values[least]) least = i;
  return least;
}
