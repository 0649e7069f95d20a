// Finding numbers: what is wanted at the left, every train within it at the right, ranked, one of them in use. A search runs
// on a worker, shows what it has done and can be stopped; it says Complete only where the list is proven to be.
import { type FormEvent, type ReactNode, useEffect, useId, useMemo, useRef, useState } from "react";
import {
  bestAt, driftOf, gearingOf, type Merit, MERITS, meritsOf, type Movement, ranked, revertedPairing, roomOf, toNumber, trainTo, type Weights, workshopOf, yearsToOneDivision,
} from "../../../geometry/index.ts";
import { Choice } from "../../head/Choice.tsx";
import { grouped } from "../../state/dates.ts";
import { fixed } from "../../state/figures.ts";
import { read, type ToldTrain } from "../../workers/numbering.ts";
import { type Asked, beginningFor, type Question, questionOf, wheelsOn } from "./ask.ts";
import { Train, type Writing } from "./Fractions.tsx";
import { Best } from "./Best.tsx";
import { oversOf } from "./Standing.tsx";
import { useNumbering, type Searching } from "./useNumbering.ts";
import { usePut } from "./usePut.ts";
import { keepWeights, keptWeights, MERIT_WORDS } from "./weights.ts";
import { WeightFields } from "./WeightFields.tsx";
import { goodFor, sixths } from "./words.ts";

/** Trains told to the page, and rows drawn of them. */
const MOST_TOLD = 2000, MOST_ROWS = 60;

export function Finding({ movement, display, way }: { readonly movement: Movement; readonly display: number | null; readonly way: Writing }) {
  const [asked, setAsked] = useState(() => beginningFor(movement, display));
  const question = useMemo(() => questionOf(movement, asked), [movement, asked]);
  const [answered, setAnswered] = useState<Question | null>(null);
  const searching = useNumbering();
  const { begin } = searching;
  const search = () => {
    if ("fault" in question) return;
    setAnswered(question);
    begin({ kind: "trains", most: MOST_TOLD, ...question.limits });
  };
  const first = useRef(search);
  useEffect(() => { first.current(); }, []);
  const shown = display === null ? null : movement.displays[display] ?? null;
  const send = (event: FormEvent) => { event.preventDefault(); search(); };
  const arbor = shown ? movement.arbors[shown.arbor]?.id : null;
  return (
    <section>
      <div className="heading ruled">
        <h2>Finding numbers</h2><span className="beside">{shown ? `for ${shown.name}, ${arbor}` : "for something new"}</span>
        <span className="end row">
          {searching.done !== null && <progress value={searching.done} aria-label="How much is searched" />}
          {searching.done === null ? <button type="button" disabled={"fault" in question} onClick={search}>Search</button>
            : <button type="button" onClick={searching.stop}>Stop</button>}
        </span>
      </div>
      <div className="finding">
        <div>
          <Limits movement={movement} asked={asked} onAsk={(some) => setAsked({ ...asked, ...some })} onSend={send} />
          {"fault" in question ? <p className="foul" role="status">{question.fault}</p> : question.says && <p className="note" role="status">{question.says}</p>}
          {!("fault" in question) && <Best wanted={question.limits.wanted} period={asked.by === "period"} largest={Math.max(0, ...question.limits.counts)} fromDays={question.fromDays} />}
        </div>
        <Found movement={movement} display={display} asked={asked} answered={answered} searching={searching} way={way} />
      </div>
    </section>
  );
}

function Limits({ movement, asked, onAsk, onSend }: {
  readonly movement: Movement; readonly asked: Asked; readonly onAsk: (some: Partial<Asked>) => void; readonly onSend: (event: FormEvent) => void;
}) {
  const { division, cutters } = movement.instrument, wheels = wheelsOn(movement, asked.from);
  const typed = (name: keyof Asked, label: string, after = "", width = "9ch") => (
    <Line label={label}>{(id) => (
      <span className="field"><input id={id} style={{ width }} value={String(asked[name])} onChange={(e) => onAsk({ [name]: e.target.value })} />{after && <span className="soft">{after}</span>}</span>
    )}</Line>
  );
  const yes = (name: "divides" | "cutters" | "reverted", label: string) => (
    <div className="line"><span>{label}</span><Choice label={label} of={["yes", "no"]} words={{ yes: "Yes", no: "No" }} now={asked[name] ? "yes" : "no"} onChoose={(to) => onAsk({ [name]: to === "yes" })} /></div>
  );
  return (
    <form className="limits" aria-label="What is wanted" onSubmit={onSend}>
      <div className="line">
        <select aria-label="Wanted as" value={asked.by} onChange={(e) => onAsk({ by: e.target.value === "ratio" ? "ratio" : "period" })}>
          <option value="period">One turn in</option><option value="ratio">Turns for one turn</option>
        </select>
        <span className="field"><input aria-label={asked.by === "period" ? "One turn in, days" : "Turns for one turn"} style={{ width: "12ch" }} value={asked.wanted}
          onChange={(e) => onAsk({ wanted: e.target.value })} />{asked.by === "period" && <span className="soft">days</span>}</span>
      </div>
      <Line label="Led off from">{(id) => (
        <select id={id} value={asked.from} onChange={(e) => onAsk({ from: e.target.value, wheel: "" })}>
          {movement.arbors.filter((a) => a.rate !== null && a.rate.n !== 0n).map((a) => (
            <option key={a.id} value={a.id}>{a.id === movement.instrument.input.arbor ? `${a.id}, the crank` : a.id}</option>
          ))}
        </select>
      )}</Line>
      <div className="line"><span>Sense</span><Choice label="Sense" of={["same", "contrary"]} words={{ same: "Same", contrary: "Contrary" }} now={asked.sense} onChoose={(sense) => onAsk({ sense })} /></div>
      {wheels.length > 0 && <Line label="First wheel">{(id) => (
        <select id={id} value={wheels.some((w) => w.id === asked.wheel) ? asked.wheel : ""} onChange={(e) => onAsk({ wheel: e.target.value })}>
          <option value="">a new one</option>{wheels.map((w) => <option key={w.id} value={w.id}>{w.count}, {w.id}</option>)}
        </select>
      )}</Line>}
      {typed("engagements", "Engagements", "", "6ch")}
      {typed("pinions", "Pinions")}
      {typed("wheels", "Wheels")}
      {typed("within", "Within", "parts in a million", "6ch")}
      {typed("largest", "No count over", "", "6ch")}
      {division && yes("divides", "Only what my head divides")}
      {cutters && cutters.some((c) => c.from !== undefined || c.to !== undefined) && yes("cutters", "Only what my cutters serve")}
      {yes("reverted", "Sums agree, two by two")}
      <button type="submit" className="unseen" tabIndex={-1}>Search</button>
    </form>
  );
}

function Line({ label, children }: { readonly label: string; readonly children: (id: string) => ReactNode }) {
  const id = useId();
  return <div className="line"><label htmlFor={id}>{label}</label>{children(id)}</div>;
}

function Found({ movement, display, asked, answered, searching, way }: {
  readonly movement: Movement; readonly display: number | null; readonly asked: Asked; readonly answered: Question | null; readonly searching: Searching; readonly way: Writing;
}) {
  const [weights, setWeights] = useState(keptWeights);
  const [picked, setPicked] = useState<string | null>(null);
  const putting = usePut(() => setPicked(null));
  const answer = searching.answer?.kind === "trains" ? searching.answer : null;
  const trains = useMemo(() => answer?.trains.map((t) => ({ ...t, ratio: read(t.ratio) })) ?? [], [answer]);
  const workshop = useMemo(() => workshopOf(movement.instrument), [movement]);
  const merits = MERITS.filter((m) => (m === "cutters" ? workshop.cutters !== undefined : m !== "awkward" || workshop.head !== undefined));
  const kept = useMemo(() => (asked.reverted ? trains.filter((t) => revertedPairing(t) !== null) : trains), [asked.reverted, trains]);
  const rows = useMemo(() => ranked(kept, weights, workshop), [kept, weights, workshop]);
  const best = useMemo(() => bestAt(kept, workshop), [kept, workshop]);
  const weigh = (to: Weights) => { setWeights(to); keepWeights(to); };
  const shown = display === null ? null : movement.displays[display] ?? null;
  const divisions = shown?.divisions ?? 360;
  const inUse = useMemo(() => keyInUse(movement, display), [movement, display]);
  const chosen = rows.find((t) => keyOf(t) === picked) ?? null;
  const head = searching.done !== null ? `searching, ${Math.round(100 * searching.done)} % done` : searching.stopped ? "stopped; the list is of the search before" : null;
  return (
    <div className="found">
      <div className="heading">
        <p role="status">{searching.fault ? <span className="foul">{searching.fault}</span> : head ? <span className="soft">{head}</span>
          : answer?.exhaustive ? <><b className="free">Complete</b> every train within these limits: {rows.length}</>
          : answer ? <><b className="tight">Not complete</b> {answer.says}</> : null}</p>
      </div>
      <WeightFields weights={weights} merits={merits} onWeigh={weigh} />
      <div className="scroll-x rows">
        <table aria-label="Trains found">
          <thead>
            <tr><th className="figure">rank</th><th>wheels over pinions</th><th className="figure">days</th><th>error</th><th className="figure">a year</th>
              <th className="figure">good for, years</th><th className="figure">teeth</th><th className="figure">largest</th></tr>
          </thead>
          <tbody>
            {rows.slice(0, MOST_ROWS).map((t, i) => {
              const key = keyOf(t), drift = driftOf(t.error, answered?.wantedDays ?? 0), years = yearsToOneDivision(drift, divisions);
              const figures = meritsOf(t, workshop), pick = () => setPicked(key === picked ? null : key);
              return (
                <tr key={key} className={`pick ${key === picked || (picked === null && key === inUse) ? "here" : ""}`} aria-selected={key === picked} onClick={pick}>
                  <td className="figure">{i + 1}</td>
                  <td><button type="button" className="plain choose" onClick={(e) => { e.stopPropagation(); pick(); }}>
                    <Train of={t.driven.map((over, k) => ({ over, under: t.drivers[k] ?? 1 }))} way={way === "columns" ? "fractions" : way} /></button>
                    {key === inUse && <span className="in-use"> in use</span>}
                    <Said of={[...(best.get(t) ?? []).map((m) => MERIT_WORDS[m].best), ...costs(figures, weights)]} /></td>
                  <td className="figure">{answered ? sixths(answered.fromDays / toNumber(t.ratio)) : ""}</td>
                  <td><ErrorBar error={t.error} /></td>
                  <td className="figure">{t.error === 0 ? "0" : `${fixed(drift, 4)}°`}</td>
                  <td className="figure">{years === null ? "for ever" : goodFor(years)}</td>
                  <td className="figure">{figures.teeth}</td>
                  <td className="figure">{figures.largest}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
        {answer && rows.length === 0 && <p className="note">{asked.reverted && trains.length > 0 ? "No train here pairs off with equal sums." : answer.says ?? "No train comes so near within these limits: allow more error, more engagements or more counts."}</p>}
      </div>
      {rows.length > MOST_ROWS && <p className="note">The first {MOST_ROWS} of {grouped(rows.length, 0)}.</p>}
      <div className="row">
        {putting.done === null ? (
          <button type="button" disabled={!chosen} onClick={() => {
            if (chosen) putting.put({ movement, drivers: chosen.drivers, driven: chosen.driven, from: asked.from, display: shown?.id ?? null, ...(asked.wheel === "" ? {} : { wheel: asked.wheel }) });
          }}>Put into the instrument</button>
        ) : (
          <><progress value={putting.done} aria-label="How far places and levels are worked again" /><button type="button" onClick={putting.enough}>Take the best so far</button>
            <span className="soft" role="status">Places and levels are worked again, so that the new wheels clear.</span></>
        )}
        <span className="note">{chosen ? chosenSays(movement, chosen) : `“Good for” is the time until the pointer is one division, ${fixed(360 / divisions, 1)}°, out.`}</span>
      </div>
    </div>
  );
}

/** What a train is best at and what it costs besides, under its counts. */
const Said = ({ of }: { readonly of: readonly string[] }) => (of.length === 0 ? null : <div className="said">{of.join(", ")}</div>);

/** What it wants of the workshop, where that counts. */
function costs({ cutters, awkward }: Readonly<Record<Merit, number>>, weights: Weights): string[] {
  return [
    ...(weights.cutters && cutters > 0 ? [cutters === 1 ? "one cutter to buy" : `${cutters} cutters to buy`] : []),
    ...(weights.awkward && awkward > 0 ? [awkward === 1 ? "one awkward division" : `${awkward} awkward divisions`] : []),
  ];
}

function chosenSays(movement: Movement, train: Pick<ToldTrain, "drivers" | "driven">): string {
  const { module } = gearingOf(movement.instrument), { largestMm, spanMm } = roomOf(train, module);
  const reverted = revertedPairing(train)?.engagements.map(([a, b]) => `${a}+${b}`).join(", ");
  return `At module ${module} the greatest blank is ${fixed(largestMm, 1)} mm, the distances add up to ${fixed(spanMm, 1)} mm${reverted ? `; sums agree: ${reverted}` : ""}.`;
}

/** Longer for a greater error, by powers of ten: from 1 in 10⁹ to 1 in 10³. */
function ErrorBar({ error }: { readonly error: number }) {
  const share = error === 0 ? 0 : Math.min(1, Math.max(0.03, (Math.log10(Math.abs(error)) + 9) / 6));
  return <svg className="error-bar" viewBox="0 0 72 10" aria-label={error === 0 ? "exact" : `${(error * 1e6).toPrecision(2)} parts in a million`} role="img"><line x1="0" x2="72" y1="9.5" y2="9.5" /><rect width={72 * share} height="8" y="1" /></svg>;
}

const keyOf = (t: Pick<ToldTrain, "drivers" | "driven">): string => `${[...t.drivers].sort((a, b) => b - a).join(" ")}/${[...t.driven].sort((a, b) => b - a).join(" ")}`;

function keyInUse(movement: Movement, display: number | null): string | null {
  const steps = display === null ? null : trainTo(movement, movement.displays[display]?.arbor ?? -1);
  if (!steps) return null;
  const overs = oversOf(steps);
  return keyOf({ drivers: overs.map((f) => f.under), driven: overs.map((f) => f.over) });
}
