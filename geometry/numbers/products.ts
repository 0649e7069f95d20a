// Products of a fixed number of tooth counts: every distinct value once, and the sets of counts that give it. A search
// over products instead of over sets is what makes a complete list cheap: 176,851 triples of 20–120 have far fewer values.

/** Largest product taken as an exact double; beyond it a search would no longer be exact. */
export const EXACT_PRODUCT = 2 ** 53;

/** Every distinct product of `size` counts (with repetition), ascending. `counts` ascending and distinct. size 0: [1]. */
export function productsOf(counts: readonly number[], size: number): Float64Array {
  let values: Float64Array = Float64Array.of(1);
  for (let k = 0; k < size; k++) {
    const next = new Float64Array(values.length * counts.length);
    let n = 0;
    for (const c of counts) for (let i = 0; i < values.length; i++) next[n++] = values[i] * c;
    values = distinctSorted(next);
  }
  return values;
}

/** Every product of so many counts is one of `large` times one of `small`: any stretch of them is had without the rest. */
export interface Halves {
  readonly large: Float64Array;
  readonly small: Float64Array;
  /** Both halves are one list, so a pair need be taken only once. */
  readonly alike: boolean;
  readonly least: number;
  readonly greatest: number;
}

export function halvesOf(counts: readonly number[], size: number): Halves {
  const small = productsOf(counts, Math.floor(size / 2));
  const alike = size % 2 === 0;
  const large = alike ? small : productsOf(counts, Math.ceil(size / 2));
  const end = (list: Float64Array) => list[list.length - 1];
  return { large, small, alike, least: large[0] * small[0], greatest: end(large) * end(small) };
}

/** How many products a list of halves is made from, before the like ones are counted once. */
export const pairsOf = ({ large, small, alike }: Halves): number => (alike ? (large.length * (large.length + 1)) / 2 : large.length * small.length);

/** Every distinct product from `low` up to and with `high`, ascending. */
export function productsBetween({ large, small, alike }: Halves, low: number, high: number): Float64Array {
  let size = 0;
  const from = new Int32Array(large.length), to = new Int32Array(large.length);
  for (let i = 0; i < large.length; i++) {
    const most = alike ? i + 1 : small.length;
    from[i] = firstOver(small, most, large[i], low, false);
    to[i] = Math.max(from[i], firstOver(small, most, large[i], high, true));
    size += to[i] - from[i];
  }
  const values = new Float64Array(size);
  let n = 0;
  for (let i = 0; i < large.length; i++) for (let j = from[i]; j < to[i]; j++) values[n++] = large[i] * small[j];
  return distinctSorted(values);
}

/** The first place among `most` whose product with `by` is at least `limit`, or over it. */
function firstOver(list: Float64Array, most: number, by: number, limit: number, over: boolean): number {
  let low = 0, high = most;
  while (low < high) {
    const middle = (low + high) >> 1, product = list[middle] * by;
    if (product > limit || (!over && product === limit)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Every set of `size` counts whose product is `product`, each largest first, in descending order. */
export function setsWithProduct(counts: readonly number[], size: number, product: number): number[][] {
  const found: number[][] = [];
  const chosen: number[] = [];
  const least = counts[0] ?? Infinity;
  const visit = (rest: number, left: number, from: number): void => {
    if (left === 0) {
      if (rest === 1) found.push([...chosen]);
      return;
    }
    for (let i = from; i >= 0; i--) {
      const c = counts[i];
      if (c ** left < rest) return;
      if (rest % c !== 0 || c * least ** (left - 1) > rest) continue;
      chosen.push(c);
      visit(rest / c, left - 1, i);
      chosen.pop();
    }
  };
  visit(product, size, counts.length - 1);
  return found;
}

/** How many sets of `size` there are out of n counts, with repetition. */
export function setsOf(n: number, size: number): number {
  let sets = 1;
  for (let k = 1; k <= size; k++) sets = (sets * (n + k - 1)) / k;
  return sets;
}

function distinctSorted(values: Float64Array): Float64Array {
  values.sort();
  let n = 0;
  for (let i = 0; i < values.length; i++) if (i === 0 || values[i] !== values[i - 1]) values[n++] = values[i];
  return values.slice(0, n);
}
