// Error and rate: what the chosen pointer shows less what is true, over years, as a plot with a table behind it; how it
// swings, how it drifts, and when it is first more than a division out.
import { type RefObject, useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import { compareWithSky, type Comparison, dayOfDate, dayOfMs, errorNow, type Movement, msOfDay, quantityOf, yearOf } from "../../../geometry/index.ts";
import { Choice } from "../../head/Choice.tsx";
import { dateInWords, epochMs } from "../../state/dates.ts";
import { fixed } from "../../state/figures.ts";
import { useBench } from "../../state/hooks.ts";
import { goodFor } from "../numbers/words.ts";
import { write } from "./live.ts";

const SPANS = ["2", "20", "200"] as const;
type Years = (typeof SPANS)[number];
const SPAN_WORDS: Readonly<Record<Years, string>> = { "2": "2 years", "20": "20 years", "200": "200 years" };
const SAMPLES: Readonly<Record<Years, number>> = { "2": 1461, "20": 4001, "200": 9001 };

export function Sky({ movement, display }: { readonly movement: Movement; readonly display: number }) {
  const [years, setYears] = useState<Years>("2");
  const slow = useDeferredValue(movement);
  const epoch = epochMs(slow.instrument);
  const start = epoch === null ? 0 : dayOfDate(yearOf(dayOfMs(epoch)), 1, 1);
  const found = useMemo(() => (epoch === null || display >= slow.displays.length ? null : compareWithSky(slow, display, {
    epoch: dayOfMs(epoch), from: start, to: dayOfDate(yearOf(start + 1) + Number(years), 1, 1), samples: SAMPLES[years],
  })), [display, epoch, slow, start, years]);
  const root = useRef<HTMLElement>(null);
  useNow(slow, display, root, found);
  const name = slow.displays[display]?.name ?? "";
  const shows = slow.instrument.displays?.[display]?.shows;
  return (
    <section ref={root}>
      <div className="heading"><h2 id="sky">Error and rate</h2><span className="beside">{name}, degrees at the pointer</span>
        <span className="end"><Choice label="Over how many years" of={SPANS} words={SPAN_WORDS} now={years} onChoose={setYears} /></span></div>
      {found ? <><Plot found={found} years={years} /><Figures found={found} /></> : <p className="note">{epoch === null ? "No display says the date at input 0, so there is no sky to hold it against."
        : shows !== undefined && quantityOf(shows) === null ? `“${shows}” is no quantity that is known; choose one below.` : "Say below what this pointer shows, and it is held against the sky."}</p>}
    </section>
  );
}

/** The error now and the line for now follow the crank. */
function useNow(movement: Movement, display: number, root: RefObject<HTMLElement | null>, found: Comparison | null): void {
  const { clock } = useBench();
  useEffect(() => {
    const epoch = epochMs(movement.instrument);
    const plot = root.current?.querySelector<SVGSVGElement>(".plot svg"), line = plot?.querySelector("[data-now-line]");
    if (epoch === null || !found || !plot || !line) return;
    const from = found.days[0] ?? 0, to = found.days[found.days.length - 1] ?? 1;
    const show = () => {
      const day = dayOfMs(epoch) + clock.turns() * movement.instrument.input.days, share = (day - from) / (to - from);
      const error = errorNow(movement, display, dayOfMs(epoch), day), inside = share >= 0 && share <= 1;
      line.setAttribute("visibility", inside ? "visible" : "hidden");
      line.setAttribute("transform", `translate(${LEFT + share * (W - LEFT - RIGHT)} 0)`);
      write(root.current, "[data-now-error]", error === null ? "–" : `${fixed(error, 2)}°`);
      write(plot, "[data-now-says]", inside && error !== null ? `now ${fixed(error, 1)}°` : "");
    };
    show();
    return clock.subscribe(show);
  }, [clock, display, found, movement, root]);
}

const W = 496, H = 232, LEFT = 40, RIGHT = 8, TOP = 12, FOOT = 24;

function Plot({ found, years }: { readonly found: Comparison; readonly years: Years }) {
  const { days, errorDeg, evenDeg, divisionDeg } = found;
  const from = days[0] ?? 0, to = days[days.length - 1] ?? 1;
  const most = niceLimit(Math.max(Math.abs(found.leastDeg), Math.abs(found.greatestDeg), Math.min(divisionDeg * 1.2, 90)));
  const x = (day: number) => LEFT + ((day - from) / (to - from)) * (W - LEFT - RIGHT);
  const y = (deg: number) => TOP + ((most - deg) / (2 * most)) * (H - TOP - FOOT);
  const line = (values: Float64Array, first = 0, last = values.length) => {
    let path = "";
    for (let i = first; i < last; i++) path += `${i === first ? "M" : "L"}${x(days[i] ?? 0).toFixed(1)} ${y(values[i] ?? 0).toFixed(1)}`;
    return path;
  };
  const band = divisionDeg < most;
  const ticks = timeTicks(from, to, years);
  return (
    <figure className="plot">
      <svg viewBox={`0 0 ${W} ${H}`} role="img" aria-label={`Error over ${years} years: from ${fixed(found.leastDeg, 1)}° to ${fixed(found.greatestDeg, 1)}°; its figures are in the table below`}>
        {band && <rect className="band" x={LEFT} width={W - LEFT - RIGHT} y={y(divisionDeg)} height={y(-divisionDeg) - y(divisionDeg)} />}
        {[most, most / 2, 0, -most / 2, -most].map((v) => (
          <g key={v}><line className="grid" x1={LEFT} x2={W - RIGHT} y1={y(v)} y2={y(v)} /><text className="axis end" x={LEFT - 6} y={y(v) + 4}>{fixed(v, most < 2 ? 1 : 0)}</text></g>
        ))}
        {band && [1, -1].map((s) => <line key={s} className="division" x1={LEFT} x2={W - RIGHT} y1={y(s * divisionDeg)} y2={y(s * divisionDeg)} />)}
        {ticks.map((t) => <g key={t.day}><line className="tick" x1={x(t.day)} x2={x(t.day)} y1={H - FOOT} y2={H - FOOT + 5} /><text className={`axis ${t.at}`} x={x(t.day)} y={H - 6}>{t.text}</text></g>)}
        <path className="error" d={line(errorDeg)} />
        {found.swing && found.evenTo - found.evenFrom > 2 && <path className="even" d={line(evenDeg, found.evenFrom, found.evenTo)} />}
        <g data-now-line><line className="now" y1={TOP} y2={H - FOOT} /></g>
        <text className="now-says" data-now-says x={LEFT + 14} y={TOP + 4} />
        {band && <text className="division-says" x={W - RIGHT} y={y(divisionDeg) - 5}>one division, {fixed(divisionDeg, 1)}°</text>}
      </svg>
      <figcaption><span className="key error">shown less true</span>{found.swing && <span className="key even">without the swing</span>}</figcaption>
      <details>
        <summary>The figures of the plot</summary>
        <div className="scroll-y"><table aria-label="Error by date">
          <thead><tr><th>date</th><th className="figure">error</th><th className="figure">without the swing</th></tr></thead>
          <tbody>{rowsOf(days).map((i) => (
            <tr key={i}><td>{dateOf(days[i] ?? 0)}</td><td className="figure">{fixed(errorDeg[i] ?? 0, 2)}°</td><td className="figure">{i >= found.evenFrom && i < found.evenTo ? `${fixed(evenDeg[i] ?? 0, 2)}°` : ""}</td></tr>
          ))}</tbody>
        </table></div>
      </details>
    </figure>
  );
}

function Figures({ found }: { readonly found: Comparison }) {
  const { swing, firstOut, yearsByDrift, driftDegPerYear } = found;
  const years = yearsByDrift === null ? "never" : yearsByDrift > 1e6 ? "after more than a million years" : `after ${goodFor(yearsByDrift)} years`;
  return (
    <dl className="figures">
      <div><dt>Error now</dt><dd data-now-error className="figure" /></div>
      {swing && <div><dt>Swings with {swing.says}</dt><dd className="figure">{fixed(swing.leastDeg, 1)}° to {fixed(swing.greatestDeg, 1)}°</dd></div>}
      {swing && <div><dt>A pin and slot would take away, and leave</dt><dd className="figure">{fixed(swing.recoveredDeg, 1)}°, {fixed(swing.leftDeg, 1)}°</dd></div>}
      <div><dt>First more than a division out</dt><dd className="figure">{firstOut === null ? "not in these years" : dateOf(firstOut)}</dd></div>
      <div><dt>Drift against the mean sky</dt><dd className="figure">{Math.abs(driftDegPerYear) < 5e-7 ? "0" : fixed(driftDegPerYear, 4)}° a year</dd></div>
      <div><dt>A division out by drift alone</dt><dd className="figure">{years}</dd></div>
    </dl>
  );
}

export const dateOf = (day: number): string => (dateInWords(msOfDay(day), "short") ?? "").replace(/^\w+ /, "").replace(/, \d\d:\d\d$/, "");

/** 1, 2, 3, 6, 12, 30 … so that halves are round too. */
function niceLimit(most: number): number {
  for (let power = 0.01; power < 1e6; power *= 10) for (const step of [1, 2, 3, 6]) if (step * power * 2 >= most) return step * power * 2;
  return most;
}

function timeTicks(from: number, to: number, years: Years): { readonly day: number; readonly text: string; readonly at: string }[] {
  const first = yearOf(from + 1), step = years === "2" ? 0.5 : Number(years) / 5;
  return Array.from({ length: Math.floor(Number(years) / step) + 1 }, (_, k) => {
    const year = first + k * step, whole = Number.isInteger(year), day = dayOfDate(Math.floor(year), whole ? 1 : 7, 1);
    return { day, text: years === "2" ? (whole ? `Jan ${year}` : "Jul") : String(year), at: k === 0 ? "start" : day >= to - 2 ? "end" : "middle" };
  });
}

/** At most some forty rows, evenly. */
const rowsOf = (days: Float64Array): number[] => {
  const step = Math.max(1, Math.floor(days.length / 48));
  return Array.from({ length: Math.ceil(days.length / step) }, (_, k) => k * step);
};
