// A finding that shows only at certain turns: choosing it turns the crank there; its date and gap, and a little before and
// after by the tooth.
import { useEffect } from "react";
import { type Finding, type Movement, type When } from "../../geometry/index.ts";
import { engagedTeeth } from "../crank/teeth.ts";
import { toothOn } from "../state/clock.ts";
import { standsFor } from "../state/dates.ts";
import { fixed, length, unitName } from "../state/figures.ts";
import { useBench, useNow } from "../state/hooks.ts";

export function WhenShown({ movement, finding, when }: { readonly movement: Movement; readonly finding: Finding; readonly when: When }) {
  const { clock } = useBench();
  const units = useNow((s) => s.units);
  const { instrument } = movement, teeth = engagedTeeth(movement);
  const about = `${finding.code} ${finding.between.join(" ")}`;
  useEffect(() => {
    clock.stop();
    clock.set(when.turns);
    // While the instrument changes under it the finding may come sooner or later; only another one turns the crank.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [about, clock]);
  const to = (turns: number) => { clock.stop(); clock.set(turns); };
  const at = (turns: number) => `turn ${fixed(turns, 2)}, ${standsFor(instrument, turns, "short")}`;
  return (
    <div className="when" role="group" aria-label="When it shows">
      <p>First at {at(when.turns)}. Nearest at {at(when.nearest.turns)}: <span className="figure">{length(when.nearest.gap, units)}</span> {unitName(units)} in plan as drawn.
        Comes round every {when.every === "1" ? "turn" : `${when.every} turns`}.{when.lostMotion ? " Lost motion alone could bring it on." : ""}</p>
      <div className="row">
        <div className="joined">
          <button type="button" onClick={() => to(when.turns)}>First</button>
          <button type="button" onClick={() => to(when.nearest.turns)}>Nearest</button>
        </div>
        <div className="joined">
          <button type="button" onClick={() => to(toothOn(clock.turns(), teeth, -1))}>A little before</button>
          <button type="button" onClick={() => to(toothOn(clock.turns(), teeth, 1))}>A little after</button>
        </div>
      </div>
    </div>
  );
}
