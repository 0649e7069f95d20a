// A search on a worker of its own: what it has done, what it found, and how to stop it. It ends with the sheet.
import { useEffect, useMemo, useState } from "react";
import { type Numberer, type Numbering, type NumberingAnswer, numbererOn } from "../../workers/numbering.ts";

export interface Searching {
  /** 0 to 1 while it runs; null: nothing runs. */
  readonly done: number | null;
  readonly answer: NumberingAnswer | null;
  readonly fault: string | null;
  /** It was stopped before its end. */
  readonly stopped: boolean;
  begin(question: Numbering): void;
  stop(): void;
}

type Told = Pick<Searching, "done" | "answer" | "fault" | "stopped">;
const NOTHING: Told = { done: null, answer: null, fault: null, stopped: false };

export function useNumbering(): Searching {
  const numberer = useMemo((): Numberer => numbererOn(() => new Worker(new URL("../../workers/numbering.worker.ts", import.meta.url), { type: "module" })), []);
  const [told, setTold] = useState<Told>(NOTHING);
  useEffect(() => () => numberer.stop(), [numberer]);
  return useMemo(() => ({
    ...told,
    begin: (question) => {
      setTold((before) => ({ ...before, done: 0, fault: null, stopped: false }));
      numberer.begin(question, (heard) => setTold((before) => ("fault" in heard ? { ...NOTHING, fault: heard.fault }
        : { ...before, answer: heard.answer ?? before.answer, done: heard.done === 1 ? null : heard.done })));
    },
    stop: () => {
      numberer.stop();
      setTold((before) => ({ ...before, done: null, stopped: true }));
    },
  }), [numberer, told]);
}
