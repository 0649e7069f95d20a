// One long run at a time, each on a worker of its own that ends with it.

export interface Run<Q, T> {
  /** Begins; a run in hand is stopped. Nothing is heard after a stop, nor after what `last` calls the last word. */
  begin(question: Q, hear: (told: T) => void, broken: () => void): void;
  /** Ends the run in hand. */
  stop(): void;
}

/** `last`: nothing follows this word. `broken` is called where the worker itself failed. */
export function runOn<Q, T>(start: () => Worker, last: (told: T) => boolean): Run<Q, T> {
  let worker: Worker | null = null;
  const stop = () => {
    worker?.terminate();
    worker = null;
  };
  return {
    stop,
    begin(question, hear, broken) {
      stop();
      const own = start();
      worker = own;
      own.addEventListener("message", ({ data }: MessageEvent<T>) => {
        if (worker !== own) return;
        if (last(data)) stop();
        hear(data);
      });
      own.addEventListener("error", () => {
        if (worker !== own) return;
        stop();
        broken();
      });
      own.postMessage(question);
    },
  };
}
