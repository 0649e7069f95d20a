// One question in hand at a time and at most one waiting: where questions come faster than answers, only the newest
// waits and those between are dropped. A failure answers null and loses nothing that was there before.

export interface Port<Q, A> {
  /** Answers one question; rejects where it could not. */
  ask(question: Q): Promise<A>;
}

export interface Latest<Q, A> {
  /** Calls back with the answer, or with null where it failed; never for a question that a newer one overtook. */
  ask(question: Q, hear: (answer: A | null) => void): void;
  /** Whatever is in hand is answered to nobody. */
  forget(): void;
}

export function latestOnly<Q, A>(port: Port<Q, A>): Latest<Q, A> {
  let newest = 0;
  let busy = false;
  let waiting: { readonly question: Q; readonly hear: (answer: A | null) => void; readonly number: number } | null = null;
  const send = (question: Q, hear: (answer: A | null) => void, number: number) => {
    busy = true;
    const done = (answer: A | null) => {
      busy = false;
      if (number === newest) hear(answer);
      const next = waiting;
      waiting = null;
      if (next) send(next.question, next.hear, next.number);
    };
    port.ask(question).then(done, () => done(null));
  };
  return {
    ask(question, hear) {
      newest += 1;
      if (busy) waiting = { question, hear, number: newest };
      else send(question, hear, newest);
    },
    forget() {
      newest += 1;
      waiting = null;
    },
  };
}
