// The examiner's sheet: counts always, and under them the findings, the ways out and the whole turn.
import { lazy, Suspense, useState } from "react";
import type { Movement } from "../../geometry/index.ts";
import { useNarrow, useNow } from "../state/hooks.ts";
import "./examiner.css";
import { Counts } from "./Severity.tsx";

/** Not before there is a finding, which is after the first picture. */
const Findings = lazy(() => import("./Findings.tsx").then((m) => ({ default: m.Findings })));
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
        ? <Suspense fallback={null}><Findings movement={worked.movement} findings={sheet.findings} short={short || narrow} /></Suspense>
        : <p className="note">Nothing fouls and nothing is tight.</p>)}
      {worked && sheet && !spoiled && (!narrow || reading) && <Further movement={worked.movement} fouls={sheet.counts.foul > 0} onSpoiled={() => setSpoiled(true)} />}
    </section>
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
