// A worker as a port: questions are numbered, answers find their question again, and between the two the worker may tell
// how far it is. The worker starts with the first question; one that dies or is stopped fails what it was asked, and the
// next question starts another.
import type { Port } from "./latest.ts";

/** What a worker says of the question of a number. */
export type Said<A> = { readonly number: number } & ({ readonly done: number } | { readonly answer: A } | { readonly fault: string });

export interface StoppedPort<Q, A> extends Port<Q, A> {
  /** `told`: how much of it is done, 0 to 1, as often as the worker says. */
  ask(question: Q, told?: (done: number) => void): Promise<A>;
  /** Ends the worker; what it was asked fails with STOPPED. */
  stop(): void;
}

export const STOPPED = "it was stopped";

interface Open<A> { readonly give: (answer: A) => void; readonly fail: (why: Error) => void; readonly told: ((done: number) => void) | undefined }

export function workerPort<Q, A>(start: () => Worker): StoppedPort<Q, A> {
  const open = new Map<number, Open<A>>();
  let worker: Worker | null = null;
  let number = 0;
  const end = (why: string) => {
    worker?.terminate();
    worker = null;
    const failed = [...open.values()];
    open.clear();
    for (const question of failed) question.fail(new Error(why));
  };
  const started = (): Worker => {
    const fresh = start();
    fresh.addEventListener("message", ({ data }: MessageEvent<Said<A>>) => {
      const question = open.get(data.number);
      if ("done" in data) return question?.told?.(data.done);
      open.delete(data.number);
      if ("answer" in data) question?.give(data.answer);
      else question?.fail(new Error(data.fault));
    });
    fresh.addEventListener("error", () => { if (fresh === worker) end("the worker stopped"); });
    return fresh;
  };
  return {
    ask: (question, told) => new Promise<A>((give, fail) => {
      worker ??= started();
      number += 1;
      open.set(number, { give, fail, told });
      worker.postMessage({ number, question });
    }),
    stop: () => end(STOPPED),
  };
}
