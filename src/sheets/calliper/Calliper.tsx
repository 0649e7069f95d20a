// The calliper: plan, the developed elevation under it, and the chosen arbor's figures. Planting gives it the wide layout.
import { useDeferredValue, useMemo, useState } from "react";
import { type MayStand, mayStand, type Movement } from "../../../geometry/index.ts";
import { Choice } from "../../head/Choice.tsx";
import { WAY_WORDS, WAYS } from "../../head/ways.ts";
import { findingKey } from "../../state/actions.ts";
import { length, unitName } from "../../state/figures.ts";
import { useActions, useNarrow, useNow } from "../../state/hooks.ts";
import { engagementRows } from "../depth.ts";
import { Mark } from "../Severity.tsx";
import { arborOf, FindingTitle, thingInWords } from "../words.tsx";
import { ArborTable } from "./ArborTable.tsx";
import "./calliper.css";
import { Elevation } from "./Elevation.tsx";
import { ENDS, ENDS_WORDS, type Ends, liftsAt } from "./ends.ts";
import { PartTable } from "./PartTable.tsx";
import { Plan } from "./Plan.tsx";
import { Search } from "./Search.tsx";
import { Smallest, useSmallest } from "./Smallest.tsx";

export function Calliper() {
  const worked = useNow((s) => s.worked);
  const chosen = useNow((s) => s.chosen);
  const chosenFinding = useNow((s) => s.finding);
  const drag = useNow((s) => s.drag);
  const planting = useNow((s) => s.planting);
  const units = useNow((s) => s.units);
  const way = useNow((s) => s.way);
  const { set } = useActions();
  const narrow = useNarrow();
  const [snap, setSnap] = useState(true);
  const [ends, setEnds] = useState<Ends>("as drawn");
  const behind = useDeferredValue(worked?.movement ?? null);
  const rows = useMemo(() => (worked ? engagementRows(worked.movement, worked.sheet) : []), [worked]);
  const least = useSmallest(planting && worked ? worked.movement : null);
  if (!worked || !behind) return null;
  const { movement, sheet } = worked;
  const arbor = arborOf(movement, chosen);
  const stand = planting && arbor !== null && behind.arborIndex.has(arbor) ? standOf(behind, arbor) : null;
  const finding = sheet.findings.find((f) => findingKey(f) === chosenFinding) ?? null;
  return (
    <div className={planting ? "calliper planting" : "calliper"}>
      <div className="plan-part">
        <div className="heading">
          <h2>Plan</h2>
          <span className="beside">{planting && arbor !== null ? `planting arbor ${arbor}` : "dial side"}</span>
          <span className="end row">
            {planting && <Choice label="How an arbor is dragged" of={WAYS} words={WAY_WORDS} now={way} onChoose={(to) => set({ way: to })} />}
            <button type="button" aria-pressed={planting} onClick={() => set({ planting: !planting })}>{planting ? "Planting done" : "Plant it"}</button>
          </span>
        </div>
        {planting && <p className="note side">DIAL SIDE</p>}
        <Plan movement={movement} chosen={chosen} finding={finding} drag={drag} scaled={planting} stand={stand} snap={planting && snap} least={least} />
        {planting && <Smallest movement={movement} least={least} />}
        {planting && (
          <div className="key">
            <Key />
            <span className="row note">Snap <Choice label="Snap to symmetric places" of={["Yes", "No"]} now={snap ? "Yes" : "No"} onChoose={(to) => setSnap(to === "Yes")} /></span>
            <Search kind="places" />
          </div>
        )}
      </div>
      <div className="arbor-part">
        {arbor === null ? <p className="note">Choose an arbor, here or in the movement, to see where it stands and what it is engaged with.</p>
          : <ArborTable movement={movement} rows={rows} arbor={arbor} full={planting || drag !== null} stand={stand} />}
        <InHand />
      </div>
      <div className="elevation-part">
        <div className="heading">
          <h2>Elevation</h2><span className="beside">developed, heights {planting ? "threefold" : "three times the widths"}</span>
          {planting && arbor !== null && <Part movement={movement} arbor={arbor} chosen={chosen ?? arbor} />}
        </div>
        {planting && <Choice label="Ends of the shakes" of={ENDS} words={ENDS_WORDS} now={ends} onChoose={setEnds} />}
        <Elevation movement={movement} chosen={chosen} finding={finding} units={units} high={planting ? 250 : 170} fills={!narrow}
          lifts={liftsAt(movement, planting ? ends : "as drawn", finding, chosen)} live={planting} />
        {planting && chosen !== null && movement.partIndex.has(chosen) && <PartTable movement={movement} part={chosen} />}
        {planting && <div className="does row"><Search kind="heights" /></div>}
        {narrow && finding && (
          <p className="note"><Mark severity={finding.severity} /> <FindingTitle movement={movement} finding={finding} short={false} />
            {finding.gap === undefined ? null : <span className="figure">{"  "}{length(finding.gap, units)} {unitName(units)}</span>}</p>
        )}
      </div>
    </div>
  );
}

/** Which part of the arbor is to be moved in height, for those who do not reach it in the drawing. */
function Part({ movement, arbor, chosen }: { readonly movement: Movement; readonly arbor: string; readonly chosen: string }) {
  const { choose } = useActions();
  const parts = movement.arbors[movement.arborIndex.get(arbor) ?? -1]?.arbor.parts ?? [];
  return (
    <span className="end">
      <select aria-label="Heights of" value={chosen} onChange={(event) => choose(event.target.value)}>
        {[arbor, ...parts.map((p) => p.id)].map((id) => { const { kind } = thingInWords(movement, id); return <option key={id} value={id}>{kind} {id}</option>; })}
      </select>
    </span>
  );
}

/** Keep or put back what is in hand, for those who have no Enter and Escape. */
function InHand() {
  const drag = useNow((s) => s.drag);
  const { keep, putBack } = useActions();
  if (!drag) return null;
  return (
    <div className="does row" role="group" aria-label={`${drag.arbor} in hand`}>
      <button type="button" className="strong" onClick={keep}>Keep</button>
      <button type="button" onClick={putBack}>Put back</button>
      {drag.holds !== null && <p className="note tight">{drag.holds}</p>}
    </div>
  );
}

const standings = new WeakMap<Movement, Map<string, MayStand>>();

/** Worked out once for each movement and arbor. */
function standOf(movement: Movement, arbor: string): MayStand {
  const known = standings.get(movement) ?? new Map<string, MayStand>();
  standings.set(movement, known);
  const stand = known.get(arbor) ?? mayStand(movement, arbor);
  known.set(arbor, stand);
  return stand;
}

function Key() {
  return (
    <p className="note">
      <span><svg className="drawn" aria-hidden="true"><path className="slide free" d="M0 5H28" /></svg>free</span>
      <span><svg className="drawn" aria-hidden="true"><path className="slide tight" d="M0 5H28" /></svg>tight</span>
      <span><svg className="drawn" aria-hidden="true"><path className="slide foul" d="M0 5H28" /></svg>foul</span>
      <span><svg className="drawn hatched" aria-hidden="true"><path className="may-not-line" d="M2 10L10 0M10 10L18 0M18 10L26 0" /></svg>may not stand</span>
      <span><svg className="drawn" aria-hidden="true"><line className="former" x2="28" y1="5" y2="5" /></svg>where it was</span>
    </p>
  );
}
