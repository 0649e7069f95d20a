// What the pointers show: a face and a reading for each display, turning with the crank. Readings and hands are written
// into the page by the clock, never through React.
import { useEffect, useMemo, useRef } from "react";
import { motionOf, type Movement, readingAt, type Sheet } from "../../../geometry/index.ts";
import { fixed } from "../../state/figures.ts";
import { useActions, useBench, useNow } from "../../state/hooks.ts";
import { arborOf } from "../words.tsx";
import "./dials.css";

export function Dials() {
  const worked = useNow((s) => s.worked);
  const root = useLive(worked?.movement ?? null);
  if (!worked) return null;
  const { movement, sheet } = worked;
  if (movement.displays.length === 0) return <p className="note">This instrument has no displays yet: nothing is to be shown.</p>;
  return (
    <div className="dials" ref={root}>
      <section>
        <div className="heading"><h2>Dials</h2><span className="beside">turn with the crank</span></div>
        <div className="faces">{movement.displays.map((_, i) => <Face key={i} movement={movement} display={i} lostMotion={sheet.displays[i]?.lostMotion ?? null} />)}</div>
      </section>
      <Readings movement={movement} sheet={sheet} />
      <p className="note">The pale arc at a pointer’s tip is its arc of doubt: the lost motion, drawn true.</p>
    </div>
  );
}

/** Writes each reading and turns each hand whenever the crank has moved. */
function useLive(movement: Movement | null) {
  const { clock } = useBench();
  const root = useRef<HTMLDivElement>(null);
  const motion = useMemo(() => (movement ? motionOf(movement) : null), [movement]);
  useEffect(() => {
    if (!movement || !motion) return;
    const show = () => movement.displays.forEach((d, i) => {
      const { fraction, value } = readingAt(movement, i, clock.turns(), motion);
      root.current?.querySelector(`[data-hand="${i}"]`)?.setAttribute("transform", `rotate(${fraction * 360})`);
      const reads = `${fixed(value, 2)} of ${d.divisions}`;
      root.current?.querySelectorAll(`[data-reading="${i}"]`).forEach((e) => { e.textContent = reads; });
      write(root.current, `[data-angle="${i}"]`, `${fixed(fraction * 360, 3)}°`);
    });
    show();
    return clock.subscribe(show);
  }, [clock, motion, movement]);
  return root;
}

function write(root: Element | null, at: string, text: string): void {
  const element = root?.querySelector(at);
  if (element) element.textContent = text;
}

function Readings({ movement, sheet }: { readonly movement: Movement; readonly sheet: Sheet }) {
  const { choose } = useActions();
  const chosen = arborOf(movement, useNow((s) => s.chosen));
  return (
    <div className="scroll-x">
      <table aria-label="Readings">
        <thead>
          <tr>
            <th>pointer</th><th>arbor</th><th className="figure">reads, in divisions</th><th className="figure">stands at</th>
            <th className="figure">lost motion</th><th className="figure">drift a year</th><th>sense</th>
          </tr>
        </thead>
        <tbody>
          {movement.displays.map((d, i) => {
            const id = movement.arbors[d.arbor]?.id ?? "";
            const lost = sheet.displays[i]?.lostMotion ?? null;
            return (
              <tr key={d.id} className={`pick ${id === chosen ? "here" : ""}`} onClick={() => choose(id)}>
                <td><h3>{d.name}</h3></td>
                <td><button type="button" className="plain" onClick={() => choose(id)}><b>{id}</b></button></td>
                <td className="figure" data-reading={i} />
                <td className="figure" data-angle={i} data-display={d.id} />
                <td className="figure">{lost === null ? "–" : `${fixed(lost, 2)}°`}</td>
                <td className="figure">{d.degreesPerYear === null ? "–" : `${d.degreesPerYear === 0 ? "0" : fixed(d.degreesPerYear, 4)}°`}</td>
                <td>{d.sense ?? "does not turn"}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

const RADIUS = 100;
/** More marks than this cannot be told apart at this size; then every so many of them is drawn. */
const MOST_MARKS = 120;
/** Numbers stand so many divisions apart: the first that leaves room for them. */
const ROUND_STEPS = [1, 2, 4, 5, 8, 10, 20, 30, 50, 100, 200, 500, 1000];

function Face({ movement, display, lostMotion }: { readonly movement: Movement; readonly display: number; readonly lostMotion: number | null }) {
  const d = movement.displays[display];
  if (!d) return null;
  const way = movement.instrument.displays?.[display]?.sense === "anticlockwise" ? -1 : 1;
  const step = Math.max(1, Math.ceil(d.divisions / MOST_MARKS));
  const marks = Array.from({ length: Math.max(1, Math.floor(d.divisions / step)) }, (_, i) => i * step);
  const apart = ROUND_STEPS.find((n) => d.divisions / n <= 13) ?? d.divisions;
  const numbers = Array.from({ length: Math.ceil(d.divisions / apart) }, (_, i) => i * apart).filter((n) => n === 0 || d.divisions - n > apart / 2);
  const degrees = (division: number) => (way * division * 360) / d.divisions;
  const end = ((lostMotion ?? 0) * Math.PI) / 180;
  return (
    <figure>
      <svg viewBox="-104 -104 208 208" role="img" aria-label={`Dial of ${d.name}`}>
        <circle className="edge" r={RADIUS} /><circle className="inner" r={RADIUS - 10} />
        {marks.map((m) => <line key={m} className="division" y1={-RADIUS} y2={-RADIUS + 10} transform={`rotate(${degrees(m)})`} />)}
        {numbers.map((m) => {
          const a = (degrees(m) * Math.PI) / 180;
          return <text key={m} className="count" x={Math.sin(a) * 80} y={-Math.cos(a) * 80}>{m === 0 ? fixed(d.divisions, d.divisions % 1 === 0 ? 0 : 1) : m}</text>;
        })}
        <g data-hand={display}>
          {lostMotion !== null && lostMotion > 0 && (
            <path className="doubt" d={`M${-Math.sin(end / 2) * 68} ${-Math.cos(end / 2) * 68}A68 68 0 0 1 ${Math.sin(end / 2) * 68} ${-Math.cos(end / 2) * 68}`} />
          )}
          <path className="hand" d="M-2 24L-2.6 0L-1.6 -52L-4 -56L0 -70L4 -56L1.6 -52L2.6 0L2 24Z" />
          <circle className="hand" r="6" />
        </g>
      </svg>
      <h3>{d.name}</h3>
      <figcaption className="figure" data-reading={display} />
    </figure>
  );
}
