// One engaged pair on the sheet, and the list of the others beside it.
import { type ReactNode, useMemo, useState } from "react";
import { formOf, type Movement, type Standing, type Teeth } from "../../../geometry/index.ts";
import { fixed, length } from "../../state/figures.ts";
import { useNow } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import type { Depthed } from "../../workers/depthing.ts";
import { useSize } from "../calliper/useSize.ts";
import { depthOf, type EngagementRow } from "../depth.ts";
import { Mark } from "../Severity.tsx";
import { partOf } from "../words.tsx";
import { Comparison } from "./Comparison.tsx";
import { Distance } from "./Distance.tsx";
import { Meeting } from "./Meeting.tsx";
import { assemblyInWords, CyclePlot, LeadPlot } from "./Plots.tsx";
import { asComputed, asItStands } from "./standings.ts";
import { pitchesBy } from "./turning.ts";
import { useDepthed } from "./useDepthed.ts";
import { type Fine, useFine } from "./useFine.ts";
import { Window } from "./Window.tsx";

/** Pixels of the page in a millimetre, as browsers count them. */
const PAGE_PX_PER_MM = 96 / 25.4;
const LEAST_TIMES = 5, MOST_TIMES = 100;
/** Pitches that the drawing is high at first. */
const PITCHES_HIGH = 2.4;

export function Pair({ movement, index, row, units, inHand, children }: {
  readonly movement: Movement; readonly index: number; readonly row: EngagementRow; readonly units: Units; readonly inHand: boolean;
  readonly children: ReactNode;
}) {
  const stands = useMemo(() => asItStands(movement, index, inHand), [movement, index, inHand]);
  const computed = asComputed(movement, index);
  const pitches = useMemo(() => pitchesBy(movement, index), [movement, index]);
  const fine = useFine(row.id);
  const asked = useNow((s) => (s.drag ? s.worked?.movement.instrument : s.instrument)) ?? movement.instrument;
  const heard = useDepthed(asked, row.id);
  const depth = depthOf(movement, row);
  const behind = heard?.instrument !== asked;
  const [box, size] = useSize<HTMLDivElement>();
  const [chosenTimes, setTimes] = useState<number | null>(null);
  const { pair } = stands, high = size?.height ?? 330;
  const fitting = high / (PITCHES_HIGH * Math.PI * pair.moduleMm) / PAGE_PX_PER_MM;
  const times = Math.min(MOST_TIMES, Math.max(LEAST_TIMES, chosenTimes ?? Math.round(fitting)));
  const scale = times * PAGE_PX_PER_MM;
  const window = heard?.answer.depthing.window ?? null;
  return (
    <div className="depthing-room"><div className="depthing">
      <section className="pair" aria-labelledby="pair">
        <div className="heading">
          <h2 id="pair"><b>{row.driver}</b> drives <b>{row.driven}</b></h2>
          <span className="beside">{teethInWords(pair.driver.teeth, pair.driven.teeth)}{window && !pair.fault && `, ${strayInWords(window, row.distance, units)}`}</span>
          <span className={`end ${depth.severity}`} aria-live="polite"><Mark severity={depth.severity} /> <b>{depth.word}</b></span>
        </div>
        <div className="drawing">
        <div className="magnified" ref={box} tabIndex={0} role="img" aria-label={pictureInWords(stands, units)} onKeyDown={fine.keyed}>
          {size && size.width > 0 && <Meeting standing={stands} pitches={pitches} scale={scale} size={size} units={units} lettered />}
          <p className="left"><b>{row.driver}</b> {partInWords(movement, row.driver)}, drives</p>
          <p className="right"><b>{row.driven}</b> {partInWords(movement, row.driven)}</p>
          {!stands.contact && <p className="fault foul">{pair.fault ? `They cannot work: ${pair.fault}.` : "The teeth do not reach one another here."}</p>}
        </div>
        <label className="times">
          <span className="soft">Magnified</span>
          <input type="range" min={LEAST_TIMES} max={MOST_TIMES} step={1} value={times} onChange={(event) => setTimes(Number(event.target.value))} />
          <output>{times} times</output>
        </label>
        </div>
        {window && <Window limits={window} isAnnulus={pair.annulus !== null} stands={row.distance} computed={row.computed} units={units} fine={fine} />}
        <Distance movement={movement} engagement={row.id} stands={row.distance} units={units} fine={fine} />
        <div className="plots">
          <LeadPlot stands={stands} computed={computed} units={units} />
          <CyclePlot heard={heard?.answer ?? null} driver={row.driver} leaves={pair.driver.teeth.count} units={units} behind={behind} />
        </div>
      </section>
      <div className="beside-it">
        <Computed computed={computed} pitches={pitches} scale={scale} units={units} row={row} fine={fine} />
        <Comparison stands={stands} computed={computed} severity={depth.severity} units={units} />
        {children}
        <Notes heard={behind ? null : heard?.answer ?? null} stands={stands} units={units} />
      </div>
    </div></div>
  );
}

function Computed({ computed, pitches, scale, units, row, fine }: {
  readonly computed: Standing | null; readonly pitches: (turns: number) => number; readonly scale: number; readonly units: Units;
  readonly row: EngagementRow; readonly fine: Fine;
}) {
  const [box, size] = useSize<HTMLDivElement>();
  return (
    <section aria-labelledby="computed">
      <div className="heading">
        <h2 id="computed">At the computed distance</h2>
        {computed && <span className="end figure soft">{length(computed.pair.distanceMm, units, "distance")}</span>}
      </div>
      {computed ? (
        <div className="drawing">
        <div className="magnified small" ref={box} role="img" aria-label={pictureInWords(computed, units)}>
          {size && size.width > 0 && <Meeting standing={computed} pitches={pitches} scale={scale} size={size} units={units} lettered={false} />}
          <p className="left">{row.driver}</p><p className="right">{row.driven}</p>
        </div>
        <button type="button" className="try" onClick={() => fine.exactly(computed.pair.distanceMm)}>Try it</button>
        </div>
      ) : <p className="note">These teeth have no working distance.</p>}
    </section>
  );
}

/** What the form does not keep or cover, and the whole finding in words. */
function Notes({ heard, stands: { pair }, units }: { readonly heard: Depthed | null; readonly stands: Standing; readonly units: Units }) {
  const covers = [...new Set([pair.driver.teeth, pair.driven.teeth].flatMap((teeth) => formOf(teeth).doesNotCover))];
  return (
    <section className="notes" aria-label="Notes on these teeth">
      {heard && <p className="note">{heard.depthing.says}.</p>}
      {heard?.cycle && <p className="note">{assemblyInWords(heard.cycle, units)}</p>}
      {isStraight(pair.driver.teeth, pair.driven.teeth) && <p className="note tight"><Mark severity="tight" /> Straight teeth do not keep a constant rate.</p>}
      {covers.map((one) => <p key={one} className="note">{one}</p>)}
    </section>
  );
}

const isStraight = (...teeth: readonly Teeth[]): boolean => teeth.some((t) => t.form === "straight");

/** "module 0.6, involute 20°"; both forms, where the two have not the same. */
function teethInWords(driver: Teeth, driven: Teeth): string {
  const form = (t: Teeth) => (t.form === "involute" || t.form === "straight" ? `${t.form} ${t.pressureAngleDeg}°` : t.form);
  const both = form(driver) === form(driven) ? form(driver) : `${form(driver)} with ${form(driven)}`;
  return `module ${driver.module === driven.module ? driver.module : `${driver.module} with ${driven.module}`}, ${both}`;
}

function partInWords(movement: Movement, id: string): string {
  const part = partOf(movement, id);
  if (part?.kind === "pinion") return `pinion, ${part.leaves} leaves`;
  if (part?.kind === "lantern") return `lantern, ${part.trundles} trundles`;
  return part?.kind === "wheel" ? `${part.internal ? "annulus" : "wheel"}, ${part.teeth} teeth` : "";
}

/** How far the hole may stray from here, or has to come to be right. */
function strayInWords({ nearestWanted, farthestWanted }: { readonly nearestWanted: number | null; readonly farthestWanted: number | null }, mm: number, units: Units): string {
  if (nearestWanted === null || farthestWanted === null) return "no distance meets the practice";
  if (mm < nearestWanted) return `hole to come ${length(nearestWanted - mm, units, "distance")} farther`;
  if (mm > farthestWanted) return `hole to come ${length(mm - farthestWanted, units, "distance")} nearer`;
  return `hole may stray ${length(Math.min(mm - nearestWanted, farthestWanted - mm), units, "distance")}`;
}

function pictureInWords({ pair, contact, tipToRootMm }: Standing, units: Units): string {
  const at = `The teeth of ${pair.driver.id} and ${pair.driven.id}, magnified, at ${length(pair.distanceMm, units, "distance")}`;
  if (!contact) return `${at}: they do not reach one another`;
  const ends = contact.begins === null || contact.ends === null ? "" : `: contact begins ${fixed(contact.begins, 2)} and ends ${fixed(contact.ends, 2)} pitches from the line of centres`;
  return `${at}${ends}${tipToRootMm === null ? "" : `; tip to root ${length(tipToRootMm, units, "distance")}`}`;
}
