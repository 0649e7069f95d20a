// "I have already spoiled this": ways out of what fouls, given what is made. What is steady or measured stays; each way has
// been examined, and the cheapest by what must be made otherwise stands first. A way is shown before it is taken.
import { useEffect, useRef, useState } from "react";
import { type Instrument, type Movement, type WayOut, workOut } from "../../../geometry/index.ts";
import { takeFound } from "../../commands/edit.ts";
import { useBench, useNow } from "../../state/hooks.ts";
import { searcherOn, type SearchStep } from "../../workers/searching.ts";
import { Counts, Mark } from "../Severity.tsx";
import { FindingTitle } from "../words.tsx";
import "./ways-out.css";

type Step = Extract<SearchStep, { kind: "ways out" }>;

export function WaysOut({ movement, onDone }: { readonly movement: Movement; readonly onDone: () => void }) {
  const { store, actions } = useBench();
  const instrument = useNow((s) => s.instrument);
  const [asked] = useState(instrument);
  const [step, setStep] = useState<Step | null>(null);
  const [ended, setEnded] = useState(false);
  const searcher = useRef<ReturnType<typeof searcherOn> | null>(null);
  useEffect(() => {
    if (!asked) return;
    const own = searcherOn(() => new Worker(new URL("../../workers/searching.worker.ts", import.meta.url), { type: "module" }));
    searcher.current = own;
    own.begin({ kind: "ways out", instrument: asked }, (now) => { if (now.kind === "ways out") setStep(now); }, () => setEnded(true));
    return () => { own.stop(); store.setState({ preview: null }); };
  }, [asked, store]);
  const take = (found: Instrument, says: string) => {
    store.setState({ preview: null });
    if (asked && actions.run(takeFound, { asked, found, says })) onDone();
  };
  const { fouls = [], inTurn = [], counts } = step?.best ?? {};
  return (
    <div className="ways-out" role="region" aria-label="Ways out" tabIndex={0}>
      <div className="row">
        {!ended && <progress aria-label="Ways out, done" max={1} value={step?.done ?? 0} />}
        {!ended && <button type="button" onClick={() => { searcher.current?.stop(); setEnded(true); }}>Stop</button>}
        <button type="button" onClick={onDone}>Back to the findings</button>
      </div>
      <p className="note">What is steady or measured stays as it is. The cheapest stands first, by what must be made otherwise.</p>
      {fouls.map(({ finding, ways }, i) => (
        <section key={i}>
          <p><Mark severity={finding.severity} /> <FindingTitle movement={movement} finding={finding} short /></p>
          {ways.length === 0 ? <p className="note">No way out of this one was found.</p>
            : <ul>{ways.map((way) => <li key={way.says}><Way way={way} onTake={() => take(way.instrument, lowered(way.says))} /></li>)}</ul>}
        </section>
      ))}
      {ended && fouls.length === 0 && <p className="note">Nothing fouls, or nothing could be found.</p>}
      {step && inTurn.length > 1 && counts && (
        <section>
          <p>One after another, the cheapest of each:</p>
          <ol>{inTurn.map((way) => <li key={way.says} className="note">{way.says}</li>)}</ol>
          <div className="row"><Counts counts={counts} /><button type="button" className="strong" onClick={() => take(step.best.instrument, `${inTurn.length} ways out taken`)}>Take them all</button></div>
        </section>
      )}
    </div>
  );
}

function Way({ way, onTake }: { readonly way: WayOut; readonly onTake: () => void }) {
  const { store } = useBench();
  const show = () => store.setState({ preview: workOut(way.instrument) });
  const hide = () => store.setState({ preview: null });
  return (
    <button type="button" onClick={onTake} onPointerEnter={show} onPointerLeave={hide} onFocus={show} onBlur={hide}>
      {way.says}<span className="soft"> · {way.remade.map((r) => `${r.id}: ${r.work}`).join(", ")}</span>
    </button>
  );
}

const lowered = (says: string): string => says.charAt(0).toLowerCase() + says.slice(1);
