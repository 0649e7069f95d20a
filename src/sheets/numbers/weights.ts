// How much each figure of a train counts with the maker: six weights from 0 to 5, kept in the browser's small storage for
// every instrument. It may be full or forbidden; then they hold until the page closes.
import type { Merit, Weights } from "../../../geometry/index.ts";
import { keepOf } from "../../state/keeping.ts";

export const MOST_WEIGHT = 5;
/** What is better, and what a train is that has the best of it. */
export const MERIT_WORDS: Readonly<Record<Merit, { readonly weight: string; readonly best: string }>> = {
  error: { weight: "Little error", best: "least error" },
  teeth: { weight: "Few teeth", best: "fewest teeth" },
  wheels: { weight: "Few wheels", best: "fewest wheels" },
  largest: { weight: "Small wheels", best: "smallest largest wheel" },
  cutters: { weight: "Cutters owned", best: "fewest cutters to buy" },
  awkward: { weight: "Plain dividing", best: "fewest awkward divisions" },
};

const KEY = "endshake.weights", BEGINNING: Weights = { error: MOST_WEIGHT };

export function keptWeights(): Weights {
  try {
    const kept: unknown = JSON.parse(keepOf(() => localStorage).getItem(KEY) ?? "null");
    if (typeof kept !== "object" || kept === null) return BEGINNING;
    return Object.fromEntries(Object.entries(kept).filter(([merit, weight]) => merit in MERIT_WORDS && isWeight(weight)));
  } catch {
    return BEGINNING;
  }
}

export function keepWeights(weights: Weights): void {
  try {
    keepOf(() => localStorage).setItem(KEY, JSON.stringify(weights));
  } catch {
    // They hold all the same.
  }
}

const isWeight = (weight: unknown): boolean => Number.isInteger(weight) && (weight as number) >= 0 && (weight as number) <= MOST_WEIGHT;

/** What "best" means by these weights, in words. */
export function bestSays(weights: Weights, merits: readonly Merit[]): string {
  const counted = merits.filter((m) => (weights[m] ?? 0) > 0).sort((a, b) => (weights[b] ?? 0) - (weights[a] ?? 0));
  if (counted.length === 0) return "Nothing counts: least error first.";
  const words = counted.map((m) => MERIT_WORDS[m].weight.toLowerCase());
  return words.length === 1 ? `Best is ${words[0]} alone.` : `Best weighs ${words.slice(0, -1).join(", ")} and ${words.at(-1)}, each against the worst in the list.`;
}
