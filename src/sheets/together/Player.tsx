// The panel over the movement while it is put together: which step, how high it hangs, and how to go on.
import { useEffect, useMemo, useRef } from "react";
import { puttingTogether, type Movement } from "../../../geometry/index.ts";
import { fixed, length } from "../../state/figures.ts";
import { useNow, usePlayed, usePlaying, useStill } from "../../state/hooks.ts";

export function Player({ movement }: { readonly movement: Movement }) {
  const playing = usePlaying();
  const played = usePlayed();
  const still = useStill();
  const units = useNow((s) => s.units);
  const together = useMemo(() => puttingTogether(movement), [movement]);
  const lifted = useRef<HTMLSpanElement>(null);
  const count = together.steps.length, step = together.steps[played?.step ?? -1];
  useEffect(() => {
    const show = () => { if (lifted.current) lifted.current.textContent = fixed(Math.abs(playing.hung()?.by ?? 0) * playing.height(), 0); };
    show();
    return playing.subscribe(show);
  }, [playing, played]);
  return (
    <div className="panel player" role="group" aria-label="Putting together">
      <p aria-live="polite">{step && played
        ? <><b>Step {played.step + 1} of {count}</b>, {step.title.charAt(0).toLowerCase() + step.title.slice(1)}, lifted <span className="figure" ref={lifted} /> mm</>
        : <><b>All {count} steps</b> are in</>}
        {step?.clear && <span className="beside under">{step.clear.over} over {step.clear.under}, clear {length(step.clear.air, units)}</span>}</p>
      <div className="joined">
        <button type="button" onClick={playing.back}>Step back</button>
        <button type="button" className={played?.way === 1 ? "strong" : ""} onClick={() => (played?.way === 1 ? playing.stop() : playing.play(1, still))}>{played?.way === 1 ? "Stop" : "Play"}</button>
        <button type="button" onClick={playing.on}>Step on</button>
        <button type="button" className={played?.way === -1 ? "strong" : ""} onClick={() => (played?.way === -1 ? playing.stop() : playing.play(-1, still))}>{played?.way === -1 ? "Stop" : "Take down"}</button>
      </div>
    </div>
  );
}
