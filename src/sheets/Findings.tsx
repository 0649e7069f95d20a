// The findings, gravest first. Choosing one turns the movement to it and opens it in its place; a cure is applied as one
// step that can be undone.
import { type KeyboardEvent, useEffect, useId, useRef } from "react";
import { applied, type Finding, type Movement, type Remedy, workOut } from "../../geometry/index.ts";
import { findingKey } from "../state/actions.ts";
import { length } from "../state/figures.ts";
import { useActions, useBench, useNow } from "../state/hooks.ts";
import type { Units } from "../state/state.ts";
import { Mark } from "./Severity.tsx";
import { WhenShown } from "./When.tsx";
import { FindingTitle } from "./words.tsx";

export function Findings({ movement, findings, short }: { readonly movement: Movement; readonly findings: readonly Finding[]; readonly short: boolean }) {
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
