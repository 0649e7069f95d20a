// How many trains a search is to expect, before it is begun: from how the logarithms of counts are spread, on a grid. Rough,
// some tens of hundredths out; enough to tell a thousand from a thousand million.

/** Steps of the grid for the spread of one count's logarithm. */
const STEPS = 128;

/** Trains of so many engagements within a relative error of a ratio; `drivers` of them free to choose, as many `driven`. */
export function expectedTrains(counts: readonly number[], drivers: number, driven: number, wanted: number, within: number): number {
  const logs = counts.map(Math.log), least = Math.min(...logs), width = Math.max(Math.max(...logs) - least, 1e-9) / STEPS;
  const one = new Float64Array(STEPS + 1);
  for (const log of logs) one[Math.round((log - least) / width)] += 1;
  let spread = Float64Array.of(1), zero = 0;
  for (let k = 0; k < drivers; k++) { spread = convolved(spread, one); zero += least; }
  for (let k = 0; k < driven; k++) { spread = convolved(spread, one.slice().reverse()); zero -= least + STEPS * width; }
  const low = Math.log(wanted) + Math.log1p(-Math.min(within, 1 - Number.EPSILON)), high = Math.log(wanted) + Math.log1p(within);
  let ordered = 0;
  spread.forEach((n, i) => {
    const from = zero + (i - 0.5) * width, share = (Math.min(high, from + width) - Math.max(low, from)) / width;
    if (share > 0) ordered += n * share;
  });
  // Sets of counts, not rows of them; rows with like counts are few.
  return ordered / (factorial(drivers) * factorial(driven));
}

function convolved(a: Float64Array, b: Float64Array): Float64Array<ArrayBuffer> {
  const sum = new Float64Array(a.length + b.length - 1);
  a.forEach((x, i) => { if (x !== 0) b.forEach((y, j) => { sum[i + j] += x * y; }); });
  return sum;
}

const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1));
