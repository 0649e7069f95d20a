// What the benches share: warmed rounds, the median of them, and figures set under one another.

/** As long as the engine takes to have compiled what it runs often. */
const WARM_MS = 500;

/** ms a call: the median of rounds, after a third as many unmeasured, and more until it is warm. */
export function medianMs(rounds: number, call: () => void): number {
  const begun = performance.now();
  for (let i = 0; i < Math.ceil(rounds / 3) || performance.now() - begun < WARM_MS; i++) call();
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    call();
    return performance.now() - start;
  });
  return median(times);
}

/** ms a call: the least of rounds, which is what the work itself takes where other work shares the machine. */
export function leastMs(rounds: number, call: () => void): number {
  let least = Infinity;
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    call();
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

export const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

/** Three significant figures. */
export const figure = (v: number): string => (v === 0 ? "0" : v >= 100 ? v.toFixed(0) : v.toPrecision(3));

export function table(title: string, rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((r) => (r[c] ?? "").length)));
  const lines = rows.map((r) => `  ${r.map((cell, c) => (c === 0 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0))).join("  ")}`);
  return `${title}\n${lines.join("\n")}\n`;
}
