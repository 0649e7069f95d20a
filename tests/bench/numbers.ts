// Finding numbers: every train within an error, against brute force over all sets of counts (every set of drivers held
// against every set of driven) where that ends at all, else against all sets sorted and searched by halving. Both must
// find as many. The aims: two engagements of 6–150 under 20 ms, three of 20–120 within 1e-7 under a second; four within a
// bound and with progress. Growth is the power of the number of counts by which the time of ours, and of every pair, goes up
// from one width to the next.
import { decimalRatio, findTrains, searchTrains, toNumber, writeRatio, type FoundTrains } from "../../geometry/index.ts";
import { figure, leastMs, medianMs, table } from "./measure.ts";

interface Case { readonly name: string; readonly size: number; readonly from: number; readonly to: number; readonly within: string; readonly peer: "every pair" | "sorted sets" | null; readonly rounds: number }

const WANTED = decimalRatio("0.0338631");
const CASES: readonly Case[] = [
  { name: "two engagements, 6–80", size: 2, from: 6, to: 80, within: "1e-4", peer: "every pair", rounds: 9 },
  { name: "two engagements, 6–150", size: 2, from: 6, to: 150, within: "1e-5", peer: "every pair", rounds: 9 },
  { name: "three engagements, 12–60", size: 3, from: 12, to: 60, within: "1e-6", peer: "every pair", rounds: 5 },
  { name: "three engagements, 20–120", size: 3, from: 20, to: 120, within: "1e-7", peer: "sorted sets", rounds: 5 },
  { name: "four engagements, 15–64", size: 4, from: 15, to: 64, within: "1e-8", peer: "sorted sets", rounds: 3 },
  { name: "four engagements, 6–120", size: 4, from: 6, to: 120, within: "1e-10", peer: null, rounds: 1 },
];

export function benchNumbers(): string {
  const rows = [["", "ours ms", "peer ms", "times", "against", "trains", "checksum"]];
  for (const c of CASES) {
    const counts = Array.from({ length: c.to - c.from + 1 }, (_, i) => c.from + i);
    let found: FoundTrains | null = null, peers = 0;
    const ours = medianMs(c.rounds, () => { found = findTrains({ wanted: WANTED, within: decimalRatio(c.within), engagements: c.size, counts }); });
    const peerOf = { "every pair": everyPair, "sorted sets": sortedSets };
    const peer = c.peer === null ? null : medianMs(1, () => { peers = peerOf[c.peer ?? "every pair"](counts, c.size, Number(c.within)); });
    const trains = (found as FoundTrains | null)?.trains ?? [];
    if (peer !== null && peers !== trains.length) throw new Error(`${c.name}: ${trains.length} trains, and ${peers} by the other way`);
    rows.push([c.name, figure(ours), peer === null ? "–" : figure(peer), peer === null ? "–" : `${figure(peer / ours)} ×`, c.peer ?? "nothing ends", `${trains.length}`, checksum(trains)]);
  }
  return [table(`Finding numbers for ${writeRatio(WANTED)}`, rows), ...WIDTHS.map(growth), progress()].join("\n");
}

interface Width { readonly size: number; readonly from: number; readonly to: readonly number[]; readonly within: string; readonly pairsTo: number; readonly aimMs: number }
const WIDTHS: readonly Width[] = [
  { size: 2, from: 6, to: [40, 80, 150, 300], within: "1e-5", pairsTo: 150, aimMs: 20 },
  { size: 3, from: 20, to: [40, 60, 90, 120, 180], within: "1e-7", pairsTo: 60, aimMs: 1000 },
];

/** How the time goes up with the width of the range, ours against every pair of sets in the same run. */
function growth({ size, from, to, within, pairsTo, aimMs }: Width): string {
  const rows = [["counts", "how many", "ours ms", "growth", "every pair ms", "growth", "trains"]];
  let before: { readonly n: number; readonly ours: number; readonly pairs: number | null } | null = null;
  for (const end of to) {
    const counts = Array.from({ length: end - from + 1 }, (_, i) => from + i), n = counts.length;
    let found = 0, peers = 0;
    const ours = leastMs(7, () => { found = findTrains({ wanted: WANTED, within: decimalRatio(within), engagements: size, counts }).trains.length; });
    const pairs = end > pairsTo ? null : leastMs(2, () => { peers = everyPair(counts, size, Number(within)); });
    if (pairs !== null && peers !== found) throw new Error(`${from}–${end}: ${found} trains, and ${peers} by every pair`);
    const power = (now: number | null, then: number | null | undefined) => (before === null || now === null || then === null || then === undefined ? "–" : `n^${(Math.log(now / then) / Math.log(n / before.n)).toFixed(1)}`);
    rows.push([`${from}–${end}`, String(n), figure(ours), power(ours, before?.ours), pairs === null ? "too many" : figure(pairs), power(pairs, before?.pairs), String(found)]);
    before = { n, ours, pairs };
  }
  return table(`Growth, ${size} engagements within ${within} (aim for ${size === 2 ? "6–150" : "20–120"}: under ${aimMs} ms)`, rows);
}

/** Four engagements: how soon and how often progress is told, and how long the whole takes. */
function progress(): string {
  const counts = Array.from({ length: 101 }, (_, i) => 20 + i), start = performance.now();
  let steps = 0, first = NaN, longest = 0, last = start;
  const run = searchTrains({ wanted: WANTED, within: decimalRatio("1e-10"), engagements: 4, counts });
  for (;;) {
    const step = run.next(), now = performance.now();
    longest = Math.max(longest, now - last);
    last = now;
    if (step.done) return table("Four engagements, 20–120 within 1e-10: progress", [
      ["steps told", "first after ms", "longest apart ms", "whole ms", "trains", "complete"],
      [String(steps), figure(first), figure(longest), figure(now - start), String(step.value.trains.length), step.value.exhaustive ? "yes" : "no"],
    ]);
    if (steps++ === 0) first = now - start;
  }
}

/** Products of all sets of counts, with repetition. */
function allSets(counts: readonly number[], size: number): Float64Array {
  const products: number[] = [];
  const add = (product: number, from: number, left: number): void => {
    if (left === 0) { products.push(product); return; }
    for (let i = from; i < counts.length; i++) add(product * (counts[i] ?? 1), i, left - 1);
  };
  add(1, 0, size);
  return Float64Array.from(products);
}

function everyPair(counts: readonly number[], size: number, within: number): number {
  const sets = allSets(counts, size), w = toNumber(WANTED), low = w * (1 - within), high = w * (1 + within);
  let n = 0;
  for (let j = 0; j < sets.length; j++) {
    const least = (sets[j] ?? 0) * low, greatest = (sets[j] ?? 0) * high;
    for (let i = 0; i < sets.length; i++) { const d = sets[i] ?? 0; if (d >= least && d <= greatest) n++; }
  }
  return n;
}

function sortedSets(counts: readonly number[], size: number, within: number): number {
  const sets = allSets(counts, size).sort(), w = toNumber(WANTED);
  let n = 0;
  for (const v of sets) n += firstOver(sets, v * w * (1 + within)) - firstOver(sets, v * w * (1 - within));
  return n;
}

function firstOver(sets: Float64Array, limit: number): number {
  let low = 0, high = sets.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sets[middle] ?? 0) < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The sum of all counts found: the same on every machine. */
const checksum = (trains: FoundTrains["trains"]): string =>
  String(trains.reduce((sum, t) => sum + t.drivers.reduce((a, b) => a + b, 0) + 3 * t.driven.reduce((a, b) => a + b, 0), 0));
