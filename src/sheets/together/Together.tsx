// Putting together: numbered steps with small pictures, played in the movement; under them what comes out before a chosen
// arbor, the order of heats, a straight line for the tool to each join, and the error at each pointer.
import { useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import { createPortal } from "react-dom";
import { accessOf, puttingTogether, type Movement, type PuttingTogether, type Step, takingDown } from "../../../geometry/index.ts";
import { useActions, useDark, useNow, usePlayed, usePlaying } from "../../state/hooks.ts";
import type { Hung } from "../../state/playing.ts";
import { arborOf, WithIds } from "../words.tsx";
import { Heats } from "./Heats.tsx";
import { hungIn } from "./hold.ts";
import { type Colours, frameOf, paint, type Solid, solidsOf } from "./picture.ts";
import { PointerErrors } from "./PointerErrors.tsx";
import "./together.css";

export function Together() {
  const worked = useDeferredValue(useNow((s) => s.worked));
  const movement = worked?.movement ?? null;
  const together = useMemo(() => (movement ? puttingTogether(movement) : null), [movement]);
  const playing = usePlaying();
  const [printing, setPrinting] = useState(false);
  const hung = useMemo(() => (movement && together ? hungIn(movement, together) : []), [movement, together]);
  useEffect(() => playing.prepare(hung), [playing, hung]);
  useEffect(() => () => playing.show(null), [playing]);
  if (!movement || !together || together.steps.length === 0) return <p className="note">There is nothing to put together yet.</p>;
  const base = movement.instrument.frame.plates.find((p) => p.id === together.base);
  const on = base ? `on to the ${base.name ? base.name.charAt(0).toLowerCase() + base.name.slice(1) : `plate ${base.id}`}` : "on the bench";
  return (
    <div className="together">
      <section aria-label="Steps">
        <div className="heading ruled"><h2>Putting together</h2><span className="beside">{on}</span>
          <button type="button" className="end" onClick={() => setPrinting(true)}>Print</button></div>
        <Steps movement={movement} together={together} hung={hung} />
      </section>
      <Down movement={movement} together={together} />
      <Heats movement={movement} />
      <Reached movement={movement} />
      <PointerErrors movement={movement} />
      {printing && <Printed movement={movement} together={together} on={on} done={() => setPrinting(false)} />}
    </div>
  );
}

/** Pictures for more things than this, all steps together, would take longer than a look. */
const MOST_DRAWN = 40_000;

function Steps({ movement, together, hung }: { readonly movement: Movement; readonly together: PuttingTogether; readonly hung: readonly Hung[] }) {
  const playing = usePlaying();
  const played = usePlayed();
  const { choose } = useActions();
  const solids = useMemo(() => solidsOf(movement), [movement]);
  const pictured = solids.length * together.steps.length <= MOST_DRAWN;
  const list = useRef<HTMLOListElement>(null);
  const at = played?.step ?? -1;
  useEffect(() => { list.current?.querySelector("[aria-current=step]")?.scrollIntoView({ block: "nearest" }); }, [at]);
  return (
    <ol className="steps" ref={list}>
      {together.steps.map((step, i) => (
        <li key={step.ids.join(" ")} aria-current={i === at ? "step" : undefined}>
          <button type="button" className="plain" aria-pressed={i === at}
            onClick={() => { playing.show(i === at ? null : i); choose(null); }}>
            {pictured && hung[i] && <Picture solids={solids} hung={hung[i]} />}
            <span className="words"><StepWords step={step} number={i + 1} /></span>
          </button>
        </li>
      ))}
    </ol>
  );
}

function StepWords({ step, number }: { readonly step: Step; readonly number: number }) {
  return <><b className="number">{number}</b> <b>{step.title}</b><span className="says">{step.says}</span></>;
}

const WIDTH = 88, HEIGHT = 66;

function Picture({ solids, hung }: { readonly solids: readonly Solid[]; readonly hung: Hung }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const dark = useDark();
  useEffect(() => {
    const context = canvas.current?.getContext("2d");
    if (!canvas.current || !context) return;
    const ratio = Math.min(3, devicePixelRatio || 1);
    canvas.current.width = WIDTH * ratio;
    canvas.current.height = HEIGHT * ratio;
    context.scale(ratio, ratio);
    const held = new Set(hung.ids);
    // What goes in hangs a little over its place; a true lift would leave the picture.
    const by = Math.sign(hung.by) * Math.min(Math.abs(hung.by), 14);
    paint(context, solids, frameOf(solids, WIDTH, HEIGHT), dark ? DARK : LIGHT, hung.hidden, (s) => (held.has(s.id) || held.has(s.arbor ?? "") ? by : 0));
  }, [solids, hung, dark]);
  return <canvas ref={canvas} style={{ width: WIDTH, height: HEIGHT }} aria-hidden="true" />;
}

const LIGHT: Colours = {
  edge: "#6d4a12", fill: { brass: "#b98a3c", steel: "#5b646b", plate: "#b58a45" }, top: { brass: "#dfb868", steel: "#aab2b8", plate: "#e3c17c" },
};
const DARK: Colours = {
  edge: "#2a1f0c", fill: { brass: "#8d6a30", steel: "#4d565c", plate: "#7d5f2f" }, top: { brass: "#c89b4e", steel: "#98a1a6", plate: "#b48a45" },
};

/** What must come out before the chosen arbor, plate or part. */
function Down({ movement, together }: { readonly movement: Movement; readonly together: PuttingTogether }) {
  const chosen = useNow((s) => s.chosen);
  const { choose } = useActions();
  const ids = together.steps.flatMap((s) => s.ids);
  const arbor = arborOf(movement, chosen);
  const named = chosen !== null && ids.includes(chosen) ? chosen : arbor !== null && ids.includes(arbor) ? arbor : ids[0] ?? "";
  const out = useMemo(() => takingDown(movement, named), [movement, named]);
  return (
    <section aria-label="Taking down">
      <div className="heading ruled"><h2>Taking down</h2>
        <label className="end"><span className="beside">to have out </span>
          <select value={named} onChange={(event) => choose(event.target.value)}>{ids.map((id) => <option key={id}>{id}</option>)}</select>
        </label>
      </div>
      <p>{out.length <= 1 && (out[0]?.length ?? 0) <= 1 ? <><b>{named}</b> comes out by itself.</>
        : <><WithIds text={`First out: ${out.slice(0, -1).map((g) => g.join(" with ")).join(", ")}${out.length > 1 ? "; then " : ""}${out.at(-1)?.join(" with ") ?? ""}.`} ids={out.flat()} /></>}</p>
    </section>
  );
}

/** Joins by screw and pin, and pivots, that no straight line reaches. */
function Reached({ movement }: { readonly movement: Movement }) {
  const access = useMemo(() => accessOf(movement), [movement]);
  const barred = access.filter((a) => !a.free), joins = access.filter((a) => a.tool !== "oiler");
  return (
    <section aria-label="Reach of the tools">
      <div className="heading ruled"><h2>Reach of the tools</h2><span className="beside">a straight line, with everything in</span></div>
      {joins.filter((a) => a.free).map((a) => <p key={`${a.tool} ${a.to}`}>{a.tool === "screwdriver" ? "Screwdriver" : "Taper pin"} to <b>{a.to}</b>: free, from {Math.round(a.from ?? 0)}°.</p>)}
      {barred.map((a) => <p key={`${a.tool} ${a.to} ${a.plate ?? ""}`}>{a.tool === "oiler" ? <>Oil to the pivot of <b>{a.to}</b> in {a.plate}</> : <>{a.tool === "screwdriver" ? "Screwdriver" : "Taper pin"} to <b>{a.to}</b></>}: <WithIds text={`${a.inTheWay.join(", ")} in the way.`} ids={a.inTheWay} /></p>)}
      <p className="note">{access.length === 0 ? "No join by screw or pin is declared, and no pivot runs in a plate." : `${access.length - barred.length} of ${access.length} joins and pivots are reached.`}</p>
    </section>
  );
}

function Printed({ movement, together, on, done }: { readonly movement: Movement; readonly together: PuttingTogether; readonly on: string; readonly done: () => void }) {
  useEffect(() => {
    const soon = requestAnimationFrame(() => { window.print(); done(); });
    return () => cancelAnimationFrame(soon);
  }, [done]);
  return createPortal(
    <div className="printed-steps">
      <h1>{movement.instrument.name}: putting together, {on}</h1>
      <ol>{together.steps.map((s) => <li key={s.ids.join(" ")}><b>{s.title}</b> {s.says}{s.lift === 0 ? "" : ` (clear at ${Math.abs(s.lift).toFixed(1)} mm)`}</li>)}</ol>
    </div>, document.body);
}
