// What counts, and how much: a slider for each figure of a train. The list follows at once.
import type { Merit, Weights } from "../../../geometry/index.ts";
import { bestSays, MERIT_WORDS, MOST_WEIGHT } from "./weights.ts";

export function WeightFields({ weights, merits, onWeigh }: { readonly weights: Weights; readonly merits: readonly Merit[]; readonly onWeigh: (weights: Weights) => void }) {
  return (
    <fieldset className="weights">
      <legend>What counts, and how much</legend>
      <div className="sliders">
        {merits.map((merit) => {
          const now = weights[merit] ?? 0;
          return (
            <label key={merit}>
              <span>{MERIT_WORDS[merit].weight}</span><output className="figure">{now}</output>
              <input type="range" min={0} max={MOST_WEIGHT} step={1} value={now} aria-label={MERIT_WORDS[merit].weight} aria-valuetext={now === 0 ? "does not count" : `${now} of ${MOST_WEIGHT}`}
                onChange={(e) => onWeigh({ ...weights, [merit]: Number(e.target.value) })} />
            </label>
          );
        })}
      </div>
      <p className="note" role="status">{bestSays(weights, merits)}</p>
    </fieldset>
  );
}
