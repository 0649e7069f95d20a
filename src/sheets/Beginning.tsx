// The empty beginning: a plate with nothing planted, and the ways in.
import { useState } from "react";
import { freshInstrument } from "../commands/fresh.ts";
import { instrumentOfTrain, readStages } from "../commands/train.ts";
import { EXAMPLES } from "../head/examples.ts";
import { openExample, pickFile } from "../head/files.ts";
import { length, unitName } from "../state/figures.ts";
import { useBench, useNow } from "../state/hooks.ts";
import { between, lengthIn } from "./reading.ts";
import "./refusal.css";
import { isRead, TypedBox } from "./Typed.tsx";

const PLATE_MM = 110, LEAST_PLATE_MM = 20, MOST_PLATE_MM = 2000;

export function Beginning() {
  const bench = useBench();
  const units = useNow((s) => s.units);
  const [own, setOwn] = useState<string | null>(null);
  const typed = own ? between(lengthIn(units), LEAST_PLATE_MM, MOST_PLATE_MM, `from ${length(LEAST_PLATE_MM, units)} to ${length(MOST_PLATE_MM, units)} ${unitName(units)}`)(own) : null;
  const begin = (mm: number) => bench.actions.open(freshInstrument(mm), null);
  const beginOwn = () => { if (typed && isRead(typed)) begin(typed.value); };
  return (
    <div className="beginning">
      <Plate />
      <dl>
        <div><dt>Begin</dt><dd className="row">
          <button type="button" className="strong" onClick={() => begin(PLATE_MM)}>A plate, {PLATE_MM} mm round</button>
          {own === null ? <button type="button" onClick={() => setOwn("")}>A plate of your own</button> : (
            <>
              <TypedBox label="diameter" before="diameter" unit={unitName(units)} autoFocus text={own} read={typed} onText={setOwn}
                onKeyDown={(event) => { if (event.key === "Enter") beginOwn(); }} />
              <button type="button" disabled={!typed || !isRead(typed)} onClick={beginOwn}>Begin</button>
            </>
          )}
        </dd></div>
        <div><dt>From the numbers</dt><dd className="row"><Train /></dd></div>
        <div><dt>Open</dt><dd className="row"><button type="button" onClick={() => void pickFile(bench)}>A file</button><span className="soft">or drop one here</span></dd></div>
        <div><dt>Examples</dt><dd className="row">
          {EXAMPLES.map((example) => <button key={example.file} type="button" onClick={() => void openExample(bench, example)}>{example.name}</button>)}
        </dd></div>
      </dl>
    </div>
  );
}

/** Counts in one line, made into an instrument on a plate that they go on. */
function Train() {
  const { actions } = useBench();
  const [text, setText] = useState<string | null>(null);
  const read = readStages(text ?? "");
  const fault = text && "fault" in read ? read.fault : null;
  const begin = () => { if ("stages" in read) actions.open(instrumentOfTrain(read.stages, "A new instrument"), null); };
  if (text === null) return <><button type="button" onClick={() => setText("")}>Write a train</button><span className="soft figure">42/17 × 41/19 × …</span></>;
  return (
    <>
      <TypedBox label="Train, drivers over followers" words autoFocus placeholder="42/17 × 41/19" text={text} read={fault === null ? null : { fault }} onText={setText}
        onKeyDown={(event) => { if (event.key === "Enter") begin(); }} />
      <button type="button" disabled={!("stages" in read)} onClick={begin}>Plant it</button>
    </>
  );
}

function Plate() {
  const holes = [[25, -25], [-25, -25], [-25, 25], [25, 25]] as const;
  return (
    <svg viewBox="-52 -52 104 104" aria-hidden="true">
      <circle className="line" r="45" /><circle className="chain" r="35.4" />
      <path className="chain" d="M-51 0H51M0 -51V51" />
      {holes.map(([x, y]) => <g key={`${x} ${y}`}><circle className="line" cx={x} cy={y} r="2.6" /><path className="chain" d={`M${x - 4.5} ${y}h9M${x} ${y - 4.5}v9`} /></g>)}
      <text className="title" y="-3">An empty plate</text><text className="told" y="4">Nothing is planted yet.</text>
    </svg>
  );
}
