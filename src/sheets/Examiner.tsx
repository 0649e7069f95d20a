// The examiner's sheet: counts always, findings gravest first. Choosing one turns the movement to it; a cure is applied
// as one step that can be undone.
import { type KeyboardEvent, lazy, Suspense, useEffect, useId, useRef, useState } from "react";
import { applied, type Finding, type Movement, type Remedy, workOut } from "../../geometry/index.ts";
import { findingKey } from "../state/actions.ts";
import { length } from "../state/figures.ts";
import { useActions, useBench, useNarrow, useNow } from "../state/hooks.ts";
import type { Units } from "../state/state.ts";
import "./examiner.css";
import { Counts, Mark } from "./Severity.tsx";
import { WhenShown } from "./When.tsx";
import { FindingTitle } from "./words.tsx";

/** It brings its worker with it only when it is opened. */
const Turning = lazy(() => import("./Turning.tsx").then((m) => ({ default: m.Turning })));

const WaysOut = lazy(() => import("./making/WaysOut.tsx").then((m) => ({ default: m.WaysOut })));

export interface ExaminerProps {
  /** There is no room for three columns of figures. */
  readonly short: boolean;
  /** On a narrow screen: the list is open. */
  readonly reading: boolean;
  readonly onRead: () => void;
}

export function Examiner({ short, reading, onRead }: ExaminerProps) {
  const worked = useNow((s) => s.worked);
  const narrow = useNarrow();
  const sheet = worked && worked.examined !== "to come" ? worked.sheet : null;
  const [spoiled, setSpoiled] = useState(false);
  return (
    <section className={spoiled ? "examiner seeking" : "examiner"} aria-label="Examiner’s sheet">
      <div className="heading">
        <h2>Examiner’s sheet</h2>
        {worked && worked.examined !== "now" && <span className="note behind">being worked out</span>}
        {sheet && <Counts counts={sheet.counts} />}
        {narrow && sheet && <button type="button" aria-pressed={reading} onClick={onRead}>Read</button>}
      </div>
      {!worked && <p className="note">There is nothing to examine. Findings will stand here, gravest first.</p>}
      {worked && sheet && spoiled && (!narrow || reading) && (
        <Suspense fallback={null}><WaysOut movement={worked.movement} onDone={() => setSpoiled(false)} /></Suspense>
      )}
      {worked && sheet && !spoiled && (!narrow || reading) && (sheet.findings.length > 0
        ? <Findings movement={worked.movement} findings={sheet.findings} short={short || narrow} />
        : <p className="note">Nothing fouls and nothing is tight.</p>)}
      {worked && sheet && !spoiled && (!narrow || reading) && <Further movement={worked.movement} fouls={sheet.counts.foul > 0} onSpoiled={() => setSpoiled(true)} />}
    </section>
  );
}

function Findings({ movement, findings, short }: { readonly movement: Movement; readonly findings: readonly Finding[]; readonly short: boolean }) {
  const { chooseFinding, choose } = useActions();
  const units = useNow((s) => s.units);
  const chosenKey = useNow((s) => s.finding);
  const at = findings.findIndex((f) => findingKey(f) === chosenKey);
  const list = useRef<HTMLDivElement>(null);
  const id = useId();
  const chosen = findings[at], opens = chosen !== undefined && (chosen.when != null || chosen.remedies.length > 0);
  useEffect(() => {
    for (const shown of [".opened", "[aria-selected=true]"]) list.current?.querySelector(shown)?.scrollIntoView({ block: "nearest" });
  }, [at]);
  const keyed = (event: KeyboardEvent) => {
    const to = nextRow(event.key, at, findings.length);
    if (to === null) return;
    event.preventDefault();
    chooseFinding(findings[to] ?? null);
  };
  const row = (finding: Finding, i: number) => (
    <li key={findingKey(finding)} id={`${id}${i}`} role="option" aria-selected={i === at} className={`one ${finding.severity} ${finding.gap === undefined ? "unfigured" : ""}`}
      onClick={() => { chooseFinding(i === at ? null : finding); if (i === at) choose(null); }}>
      <FindingRow movement={movement} finding={finding} short={short} units={units} />
    </li>
  );
  const before = opens ? at + 1 : findings.length;
  return (
    <>
      <div className="columns" aria-hidden="true"><span /><span>between</span><span>gap</span><span>at worst</span><span>wanted</span></div>
      <div className="findings" ref={list}>
        <ul role="listbox" tabIndex={0} aria-label="Findings, gravest first" onKeyDown={keyed} aria-activedescendant={at < 0 ? undefined : `${id}${at}`}
          aria-owns={findings.slice(before).map((_, i) => `${id}${before + i}`).join(" ") || undefined}>
          {findings.slice(0, before).map(row)}
        </ul>
        {opens && (
          <div className={`opened ${chosen.severity}`}>
            {chosen.when && <WhenShown movement={movement} finding={chosen} when={chosen.when} />}
            {chosen.remedies.length > 0 && <Cures movement={movement} finding={chosen} />}
          </div>
        )}
        {opens && <ul role="presentation">{findings.slice(before).map((finding, i) => row(finding, before + i))}</ul>}
      </div>
    </>
  );
}

/** What takes longer and is asked for: the ways out of what is spoiled, and the whole turn, folded until it is wanted. */
function Further({ movement, fouls, onSpoiled }: { readonly movement: Movement; readonly fouls: boolean; readonly onSpoiled: () => void }) {
  const [open, setOpen] = useState(false);
  return (
    <div className="further">
      <div className="row">
        {fouls && <button type="button" onClick={onSpoiled}>I have already spoiled this</button>}
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>Turn it for a thousand years</button>
      </div>
      {open && <Suspense fallback={null}><Turning movement={movement} /></Suspense>}
    </div>
  );
}

/** The row that a key leads to: the first or last where none is chosen yet; null for any other key. */
function nextRow(key: string, at: number, rows: number): number | null {
  if (key === "ArrowDown") return Math.min(rows - 1, at + 1);
  if (key === "ArrowUp") return at < 0 ? rows - 1 : Math.max(0, at - 1);
  if (key === "Home" || (key === "Enter" && at < 0)) return 0;
  if (key === "End") return rows - 1;
  return key === "Enter" ? at : null;
}

function FindingRow({ movement, finding, short, units }: {
  readonly movement: Movement; readonly finding: Finding; readonly short: boolean; readonly units: Units;
}) {
  const written = (mm: number | undefined) => (mm === undefined ? "" : length(mm, units));
  const worst = finding.worst === undefined ? "" : `; at worst ${written(finding.worst)}`;
  const wanted = finding.wanted === undefined ? "" : `, wanted ${written(finding.wanted)}`;
  return (
    <>
      <span><Mark severity={finding.severity} /><span className="unseen">{finding.severity}: </span></span>
      <span><FindingTitle movement={movement} finding={finding} short={short} /></span>
      {finding.gap !== undefined && <span className="figure gap">{written(finding.gap)}</span>}
      {finding.gap === undefined ? null : short
        ? finding.way && <span className="under">in {finding.way}{worst}{wanted}</span>
        : <><span className="figure">{written(finding.worst)}</span><span className="figure soft">{written(finding.wanted)}</span></>}
    </>
  );
}

/** A cure that the hand is over or the keys are on is shown in the movement before it is taken. */
function Cures({ movement, finding }: { readonly movement: Movement; readonly finding: Finding }) {
  const { store, actions: { cure } } = useBench();
  const show = (remedy: Remedy) => store.setState({ preview: workOut(applied(movement, remedy)) });
  const hide = () => { if (store.getState().preview) store.setState({ preview: null }); };
  useEffect(() => () => store.setState({ preview: null }), [store, finding]);
  return (
    <div className="cures" role="group" aria-label="Cures">
      {finding.remedies.map((remedy) => (
        <button key={remedy.says} type="button" onClick={() => { hide(); cure(remedy); }} onPointerEnter={() => show(remedy)} onPointerLeave={hide}
          onFocus={() => show(remedy)} onBlur={hide}>Cure: {remedy.says}</button>
      ))}
    </div>
  );
}
