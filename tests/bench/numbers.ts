// Finding numbers: every train within an error, against brute force over all sets of counts (every set of drivers held
// against every set of driven) where that ends at all, else against all sets sorted and searched by halving. Both must
// find as many. The aims: two engagements of 6–150 under 20 ms, three of 20–120 within 1e-7 under a second.
import { decimalRatio, findTrains, toNumber, writeRatio, type FoundTrains } from "../../geometry/index.ts";
import { figure, medianMs, table } from "./measure.ts";

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
  return table(`Finding numbers for ${writeRatio(WANTED)}`, rows);
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
