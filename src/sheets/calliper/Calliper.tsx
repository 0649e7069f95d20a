// The calliper: plan, the developed elevation under it, and the chosen arbor's figures. Planting gives it the wide layout.
import { useMemo } from "react";
import { Choice } from "../../head/Choice.tsx";
import { WAY_WORDS, WAYS } from "../../head/ways.ts";
import { findingKey } from "../../state/actions.ts";
import { length, unitName } from "../../state/figures.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import { engagementRows } from "../depth.ts";
import { Mark } from "../Severity.tsx";
import { arborOf, FindingTitle } from "../words.tsx";
import { ArborTable } from "./ArborTable.tsx";
import "./calliper.css";
import { Elevation } from "./Elevation.tsx";
import { Plan } from "./Plan.tsx";

export function Calliper() {
  const worked = useNow((s) => s.worked);
  const chosen = useNow((s) => s.chosen);
  const chosenFinding = useNow((s) => s.finding);
  const drag = useNow((s) => s.drag);
  const planting = useNow((s) => s.planting);
  const units = useNow((s) => s.units);
  const way = useNow((s) => s.way);
  const { set } = useActions();
  const rows = useMemo(() => (worked ? engagementRows(worked.movement, worked.sheet) : []), [worked]);
  if (!worked) return null;
  const { movement, sheet } = worked;
  const arbor = arborOf(movement, chosen);
  const finding = sheet.findings.find((f) => findingKey(f) === chosenFinding) ?? null;
  return (
    <div className={planting ? "calliper planting" : "calliper"}>
      <div className="plan-part">
        <div className="heading">
          <h2>Plan</h2>
          <span className="beside">{planting && arbor !== null ? `planting arbor ${arbor}` : "dial side"}</span>
          {planting && <span className="end"><Choice label="How an arbor is dragged" of={WAYS} words={WAY_WORDS} now={way} onChoose={(to) => set({ way: to })} /></span>}
        </div>
        {planting && <p className="note side">DIAL SIDE</p>}
        <Plan movement={movement} chosen={chosen} finding={finding} drag={drag} scaled={planting} />
        {planting && <Key />}
      </div>
      <div className="arbor-part">
        {arbor === null ? <p className="note">Choose an arbor, here or in the movement, to see where it stands and what it is engaged with.</p>
          : <ArborTable movement={movement} rows={rows} arbor={arbor} full={planting || drag !== null} />}
        <InHand />
        <div className="does row">
          <button type="button" onClick={() => set({ planting: !planting })}>{planting ? "Planting done" : "Plant it"}</button>
        </div>
      </div>
      <div className="elevation-part">
        <div className="heading"><h2>Elevation</h2><span className="beside">developed, heights three times the widths</span></div>
        <Elevation movement={movement} chosen={chosen} finding={finding} units={units} high={planting ? 250 : 170} />
        {finding && (
          <p className="note"><Mark severity={finding.severity} /> <FindingTitle movement={movement} finding={finding} short={false} />
            {finding.gap === undefined ? null : <span className="figure">{"  "}{length(finding.gap, units)} {unitName(units)}</span>}</p>
        )}
      </div>
    </div>
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

function Key() {
  return (
    <p className="key note">
      <span><svg className="drawn" aria-hidden="true"><line className="tip" x2="28" y1="5" y2="5" /></svg>tip circles</span>
      <span><svg className="drawn" aria-hidden="true"><line className="pitch" x2="28" y1="5" y2="5" /></svg>pitch circles</span>
      <span><svg className="drawn" aria-hidden="true"><line className="centres" x2="28" y1="5" y2="5" /></svg>line of centres</span>
      <span><svg className="drawn" aria-hidden="true"><line className="former" x2="28" y1="5" y2="5" /></svg>where it was</span>
    </p>
  );
}
