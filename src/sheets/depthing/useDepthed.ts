// What is too heavy for a frame of a drag, the window and the whole cycle of a pair, worked out beside the page. Until
// the answer comes the one before stands, since a window does not change as the pair is moved.
import { useEffect, useMemo, useState } from "react";
import type { Instrument } from "../../../geometry/index.ts";
import { type Asked, type Depthed, depthed } from "../../workers/depthing.ts";
import { type Latest, latestOnly } from "../../workers/latest.ts";
import { workerPort } from "../../workers/port.ts";

export interface Heard {
  readonly answer: Depthed;
  readonly engagement: string;
  /** What was asked about; another instrument by now: the answer is behind. */
  readonly instrument: Instrument;
}

const start = () => new Worker(new URL("../../workers/depthing.worker.ts", import.meta.url), { type: "module" });
let shared: Latest<Asked, Depthed | null> | null = null;

/** The last answer about this engagement; null until there is one. */
export function useDepthed(instrument: Instrument, engagement: string): Heard | null {
  const [heard, setHeard] = useState<Heard | null>(null);
  const latest = useMemo(() => (shared ??= latestOnly(workerPort<Asked, Depthed | null>(start))), []);
  useEffect(() => {
    let wanted = true;
    const asked = { instrument, engagement };
    latest.ask(asked, (come) => {
      const answer = come ?? depthed(asked);
      if (answer && wanted) setHeard({ answer, engagement, instrument });
    });
    return () => { wanted = false; };
  }, [latest, instrument, engagement]);
  return heard?.engagement === engagement ? heard : null;
}
