// "Turn it for a thousand years": everything examined only so far, off the page's own thread, with its progress and a way
// to stop. What would first come later is free; what comes by then is told with its date, the soonest first.
import { useEffect, useState } from "react";
import type { Finding, Movement, Sheet } from "../../geometry/index.ts";
import { standsFor } from "../state/dates.ts";
import { fixed } from "../state/figures.ts";
import { useActions, useBench } from "../state/hooks.ts";
import { searcherOn } from "../workers/searching.ts";
import { aNumber, between } from "./reading.ts";
import { Counts, Mark } from "./Severity.tsx";
import { Typed } from "./Typed.tsx";
import { WithIds } from "./words.tsx";

const DAYS_A_YEAR = 365.25;
const SOME_YEARS = between(aNumber, 0.001, 1_000_000, "from a thousandth to a million");

/** The part that is done; a sheet at the end, or why there is none. */
type Turned = { readonly done: number } | { readonly years: number; readonly sheet: Sheet } | { readonly fault: string };

export function Turning({ movement }: { readonly movement: Movement }) {
  const [years, setYears] = useState(1000);
  const [turned, setTurned] = useState<Turned | null>(null);
  const [searcher] = useState(() => searcherOn(() => new Worker(new URL("../workers/searching.worker.ts", import.meta.url), { type: "module" })));
  const { instrument } = movement;
  useEffect(() => {
    searcher.stop();
    setTurned(null);
    return () => searcher.stop();
  }, [searcher, instrument]);
  const turn = () => {
    setTurned({ done: 0 });
    searcher.begin({ kind: "turning", instrument, turns: (years * DAYS_A_YEAR) / instrument.input.days },
      (step) => { if (step.kind === "turning") setTurned(step.best ? { years, sheet: step.best } : { done: step.done }); },
      (fault) => { if (fault) setTurned({ fault }); });
  };
  const running = turned !== null && "done" in turned;
  return (
    <div className="turning" role="group" aria-label="Turn it for years">
      <div className="row">
        <Typed label="Years" before="Turn it for" unit="years" stands={String(years)} read={SOME_YEARS} take={(typed) => { setYears(typed); return true; }} />
        {running ? <button type="button" onClick={() => { searcher.stop(); setTurned(null); }}>Stop</button>
          : <button type="button" onClick={turn}>Turn</button>}
        {running && <progress value={turned.done} aria-label="Part of the pairs examined" />}
      </div>
      {turned && "fault" in turned && <p className="note">It could not be turned to the end: {turned.fault}.</p>}
      {turned && "sheet" in turned && <Told movement={movement} sheet={turned.sheet} years={turned.years} />}
    </div>
  );
}

function Told({ movement, sheet, years }: { readonly movement: Movement; readonly sheet: Sheet; readonly years: number }) {
  const { clock } = useBench();
  const { chooseFinding } = useActions();
  const timed = sheet.findings.filter((f): f is Finding & { when: NonNullable<Finding["when"]> } => f.when != null).sort((a, b) => a.when.turns - b.when.turns);
  return (
    <>
      <p>In {fixed(years, years % 1 === 0 ? 0 : 1)} years: {timed.length === 0 ? "nothing comes only at certain turns." : `${timed.length} that ${timed.length === 1 ? "comes" : "come"} only at certain turns.`}</p>
      <Counts counts={sheet.counts} />
      {timed.length > 0 && <ul>{timed.map((f) => (
        <li key={f.between.join(" ")}>
          <button type="button" className="plain" onClick={() => { chooseFinding(f); clock.stop(); clock.set(f.when.turns); }}>
            <Mark severity={f.severity} /> <span><WithIds text={f.between.join(" and ")} ids={f.between} />, {standsFor(movement.instrument, f.when.turns, "short")}</span>
          </button>
        </li>
      ))}</ul>}
    </>
  );
}
