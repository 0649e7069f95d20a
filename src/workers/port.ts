// A worker as a port: questions are numbered, answers find their question again. The worker starts with the first
// question; one that dies fails what it was asked, and the next question starts another.
import type { Port } from "./latest.ts";

interface Answer<A> { readonly number: number; readonly answer?: A; readonly fault?: string }

export function workerPort<Q, A>(start: () => Worker): Port<Q, A> {
  const open = new Map<number, { readonly give: (answer: A) => void; readonly fail: (why: Error) => void }>();
  let worker: Worker | null = null;
  let number = 0;
  const started = (): Worker => {
    const fresh = start();
    fresh.addEventListener("message", ({ data }: MessageEvent<Answer<A>>) => {
      const question = open.get(data.number);
      open.delete(data.number);
      if (data.answer === undefined) question?.fail(new Error(data.fault ?? "no answer came"));
      else question?.give(data.answer);
    });
    fresh.addEventListener("error", () => {
      fresh.terminate();
      worker = null;
      for (const question of open.values()) question.fail(new Error("the worker stopped"));
      open.clear();
    });
    return fresh;
  };
  return {
    ask: (question) => new Promise<A>((give, fail) => {
      worker ??= started();
      number += 1;
      open.set(number, { give, fail });
      worker.postMessage({ number, question });
    }),
  };
}
