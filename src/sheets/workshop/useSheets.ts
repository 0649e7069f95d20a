// Sheets drawn off the page's own thread. What was drawn before stands until the newer drawing comes; where questions
// come faster than drawings, only the newest waits.
import { useCallback, useEffect, useMemo, useState } from "react";
import type { Drawing, Drawn, DrawnSheet } from "../../workers/drawing.ts";
import { latestOnly } from "../../workers/latest.ts";
import { sheetsPort } from "../../workers/paper.ts";
import { STOPPED } from "../../workers/port.ts";

export interface Seen {
  /** Null: nothing has been drawn yet. */
  readonly answer: Drawn | null;
  readonly state: "drawn" | "drawing" | "stopped";
  /** Ends the drawing in hand; what stood before stands. */
  stop(): void;
  again(): void;
}

type Wanted = Omit<Drawing, "wanted">;

/** The list and one sheet, drawn anew whenever either would be another. */
export function useSheet(question: Wanted | null, id: string): Seen {
  const { port, latest } = useMemo(() => {
    const own = sheetsPort();
    return { port: own, latest: latestOnly(own) };
  }, []);
  const [answer, setAnswer] = useState<Drawn | null>(null);
  const [state, setState] = useState<Seen["state"]>("drawing");
  const [turn, setTurn] = useState(0);
  useEffect(() => () => port.stop(), [port]);
  useEffect(() => {
    if (!question) return;
    setState("drawing");
    latest.ask({ ...question, wanted: [id] }, (come) => {
      if (come) setAnswer(come);
      setState(come ? "drawn" : "stopped");
    });
    return () => latest.forget();
  }, [latest, question, id, turn]);
  return { answer, state, stop: port.stop, again: () => setTurn(turn + 1) };
}

export interface Several {
  /** 0 to 1 while they are drawn; null: none are. */
  readonly done: number | null;
  readonly fault: string | null;
  draw(question: Drawing, then: (sheets: readonly DrawnSheet[]) => void): void;
  stop(): void;
}

/** Many sheets at once, to be printed. */
export function useSeveral(): Several {
  const port = useMemo(sheetsPort, []);
  const [done, setDone] = useState<number | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => () => port.stop(), [port]);
  const draw = useCallback((question: Drawing, then: (sheets: readonly DrawnSheet[]) => void) => {
    setDone(0);
    setFault(null);
    port.ask(question, setDone).then((given) => then(given.sheets), (why: Error) => setFault(why.message === STOPPED ? null : why.message)).finally(() => setDone(null));
  }, [port]);
  return { done, fault, draw, stop: port.stop };
}
