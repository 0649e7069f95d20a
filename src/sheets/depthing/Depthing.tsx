// Every engagement, worst first, with its figures at the distance as it stands; the chosen one's distance can be typed,
// stepped, or taken as computed.
import { useEffect, useMemo, useRef, useState } from "react";
import type { Movement } from "../../../geometry/index.ts";
import { takeDistance } from "../../commands/distance.ts";
import { length, typedLength, unitName } from "../../state/figures.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import { depthOf, type EngagementRow, engagementRows } from "../depth.ts";
import { Mark } from "../Severity.tsx";
import { arborOf, pairCounts } from "../words.tsx";
import "./depthing.css";

const GRAVITY = { foul: 0, tight: 1, free: 2 } as const;
/** mm a button moves the distance. */
const STEP_MM = 0.005;

export function Depthing() {
  const worked = useNow((s) => s.worked);
  const chosen = useNow((s) => s.chosen);
  const units = useNow((s) => s.units);
  const [picked, setPicked] = useState<string | null>(null);
  const rows = useMemo(() => (worked ? [...engagementRows(worked.movement, worked.sheet)]
    .sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]) : []), [worked]);
  if (!worked) return null;
  const { movement } = worked;
  const arbor = arborOf(movement, chosen);
  const here = rows.find((r) => r.id === picked) ?? rows.find((r) => r.drivenArbor === arbor || r.driverArbor === arbor) ?? rows[0];
  return (
    <div className="depthing">
      {here ? <Pair movement={movement} row={here} units={units} /> : <p className="note">Nothing is engaged yet.</p>}
      <section>
        <div className="heading"><h2 id="pairs">Engagements</h2><span className="beside">worst first</span></div>
        <table aria-labelledby="pairs">
          <thead>
            <tr>
              <th>pair</th><th>counts</th><th className="figure">distance</th><th className="figure">computed</th><th className="figure">backlash</th>
              <th className="figure">contact ratio</th><th className="figure">face overlap</th><th>depth</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((r) => <PairRow key={r.id} movement={movement} row={r} units={units} here={r === here} onPick={setPicked} />)}
          </tbody>
        </table>
      </section>
    </div>
  );
}

function PairRow({ movement, row, units, here, onPick }: {
  readonly movement: Movement; readonly row: EngagementRow; readonly units: Units; readonly here: boolean; readonly onPick: (id: string) => void;
}) {
  const { choose } = useActions();
  const depth = depthOf(movement, row);
  const pick = () => { onPick(row.id); choose(row.driven); };
  const orNone = (mm: number | null) => (mm === null ? "none" : length(mm, units, "distance"));
  return (
    <tr className={`pick ${here ? "here" : ""}`} onClick={pick}>
      <td><button type="button" className="plain" onClick={pick}>{row.driver}–{row.driven}</button></td>
      <td className="soft nowrap">{pairCounts(movement, row.driver, row.driven)}</td>
      <td className="figure">{length(row.distance, units, "distance")}</td>
      <td className="figure">{orNone(row.computed)}</td>
      <td className={`figure ${depth.severity === "free" ? "" : depth.severity}`}>{orNone(row.backlash)}</td>
      <td className="figure">{row.contactRatio === null ? "none" : row.contactRatio.toFixed(2)}</td>
      <td className="figure">{length(row.faceOverlap, units)}</td>
      <td className="nowrap"><Mark severity={depth.severity} /> <span className={depth.severity}>{depth.word}</span></td>
    </tr>
  );
}

function Pair({ movement, row, units }: { readonly movement: Movement; readonly row: EngagementRow; readonly units: Units }) {
  const { run } = useActions();
  const field = useRef<HTMLInputElement>(null);
  const written = length(row.distance, units, "distance");
  useEffect(() => { if (field.current && document.activeElement !== field.current) field.current.value = written; }, [written]);
  const depth = depthOf(movement, row);
  const take = (mm: number) => run(takeDistance, { movement, engagement: row.id, mm });
  const typed = () => {
    const input = field.current;
    if (!input || input.value === written) return;
    const mm = typedLength(input.value, units);
    input.value = mm !== null && take(mm) ? length(mm, units, "distance") : written;
  };
  const { computed } = row;
  return (
    <section>
      <div className="heading">
        <h2>{row.driver} drives {row.driven}</h2>
        <span className="beside">{pairCounts(movement, row.driver, row.driven)}{computed === null ? "" : `, computed ${length(computed, units, "distance")}`}</span>
        <span className={`end ${depth.severity}`}><Mark severity={depth.severity} /> <b>{depth.word}</b></span>
      </div>
      <div className="typed">
        <label className="field">
          <span className="soft">Distance</span>
          <input key={row.id} ref={field} inputMode="decimal" defaultValue={written} onBlur={typed} onKeyDown={(event) => { if (event.key === "Enter") typed(); }} />
          <span className="soft">{unitName(units)}</span>
        </label>
        <button type="button" onClick={() => take(row.distance - STEP_MM)}>− {length(STEP_MM, units, "distance")}</button>
        <button type="button" onClick={() => take(row.distance + STEP_MM)}>+ {length(STEP_MM, units, "distance")}</button>
        {computed !== null && <button type="button" onClick={() => take(computed)}>Take the computed distance</button>}
      </div>
    </section>
  );
}
