// "I have already spoiled this": ways out of what fouls, given what is made. What is steady or measured stays; each way has
// been examined, and the cheapest by what must be made otherwise stands first. A way is shown before it is taken.
import { type ReactNode, useEffect, useRef, useState } from "react";
import { type Instrument, type Movement, type WayOut, type Work, workOut } from "../../../geometry/index.ts";
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
  const [asked, setAsked] = useState(instrument);
  const [step, setStep] = useState<Step | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [ended, setEnded] = useState(false);
  const searcher = useRef<ReturnType<typeof searcherOn> | null>(null);
  useEffect(() => {
    if (!asked) return;
    const own = searcherOn(() => new Worker(new URL("../../workers/searching.worker.ts", import.meta.url), { type: "module" }));
    searcher.current = own;
    own.begin({ kind: "ways out", instrument: asked }, (now) => { if (now.kind === "ways out") setStep(now); }, (said) => { setFault(said); setEnded(true); });
    return () => { own.stop(); store.setState({ preview: null }); };
  }, [asked, store]);
  const take = (found: Instrument, says: string) => {
    store.setState({ preview: null });
    if (asked && actions.run(takeFound, { asked, found, says })) onDone();
  };
  const again = () => {
    setStep(null);
    setFault(null);
    setEnded(false);
    setAsked(instrument);
  };
  const best = instrument === asked ? step?.best : undefined;
  return (
    <div className="ways-out" role="region" aria-label="Ways out" tabIndex={0}>
      <div className="row">
        <h3>Ways out</h3>
        {!ended && <progress aria-label="Ways out, done" max={1} value={step?.done ?? 0} />}
        {!ended && <button type="button" onClick={() => { searcher.current?.stop(); setEnded(true); }}>Stop</button>}
        <button type="button" className="back" onClick={onDone}>Back to the findings</button>
      </div>
      <p className="note">What is steady or measured stays as it is. The cheapest stands first, by what must be made otherwise.</p>
      {instrument !== asked && <div className="row"><p className="note">The instrument has changed since.</p><button type="button" onClick={again}>Seek again</button></div>}
      {fault !== null && <p className="note foul">It could not go on: {fault}.</p>}
      {best && best.inTurn.length > 1 && (
        <section className="in-turn">
          <p>One after another, the cheapest of each:</p>
          <ol>{best.inTurn.map((way, i) => <li key={i}>{way.says} <span className="soft nowrap">{costInWords(way)}</span></li>)}</ol>
          <div className="row"><Counts counts={best.counts} />
            <Take strong instrument={best.instrument} onTake={() => take(best.instrument, `${best.inTurn.length} ways out taken`)}>Take {best.inTurn.length === 2 ? "both" : `all ${best.inTurn.length}`}</Take></div>
        </section>
      )}
      {best?.fouls.map(({ finding, ways }, i) => (
        <section key={i}>
          <p className="out-of"><Mark severity={finding.severity} /> <span><FindingTitle movement={movement} finding={finding} short={false} /></span></p>
          {ways.length === 0 ? <p className="note">No way out of this one was found.</p>
            : <ul>{ways.map((way, k) => (
              <li key={k}><Take instrument={way.instrument} onTake={() => take(way.instrument, lowered(way.says))}>{way.says} <span className="soft">{costInWords(way)}</span></Take></li>
            ))}</ul>}
        </section>
      ))}
      {ended && fault === null && best && best.fouls.length === 0 && <p className="note">Nothing fouls.</p>}
    </div>
  );
}

/** What it comes to is shown in the movement while the hand is over it or the keys are on it. */
function Take({ instrument, strong = false, onTake, children }: {
  readonly instrument: Instrument; readonly strong?: boolean; readonly onTake: () => void; readonly children: ReactNode;
}) {
  const { store } = useBench();
  const show = () => store.setState({ preview: workOut(instrument) });
  const hide = () => store.setState({ preview: null });
  return <button type="button" className={strong ? "strong" : ""} onClick={onTake} onPointerEnter={show} onPointerLeave={hide} onFocus={show} onBlur={hide}>{children}</button>;
}

const WORK_WORDS: Readonly<Record<Work, string>> = {
  drawing: "only drawn otherwise", setting: "set at another height", hole: "drilled elsewhere", turning: "turned anew", cutting: "cut anew", count: "cut with another count",
};

/** What must be made otherwise, the dearest last. */
function costInWords({ remade }: Pick<WayOut, "remade">): string {
  const works = (Object.keys(WORK_WORDS) as Work[]).filter((work) => remade.some((r) => r.work === work));
  return works.map((work) => `${remade.filter((r) => r.work === work).map((r) => r.id).join(", ")} ${WORK_WORDS[work]}`).join("; ");
}

const lowered = (says: string): string => says.charAt(0).toLowerCase() + says.slice(1);
