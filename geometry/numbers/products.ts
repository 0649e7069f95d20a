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
