// The shell that draws sheets and makes files off the page's own thread. What files alone need comes when one is made.
import { drawn, type Drawing } from "./drawing.ts";
import type { Exporting } from "./exporting.ts";
import type { Said } from "./port.ts";

type Question = Drawing | Exporting;

const tell = (said: Said<unknown>) => self.postMessage(said);

self.addEventListener("message", ({ data: { number, question } }: MessageEvent<{ readonly number: number; readonly question: Question }>) => {
  answer(question, (done) => tell({ number, done })).then((given) => tell({ number, answer: given }), (fault: unknown) => tell({ number, fault: String(fault) }));
});

async function answer(question: Question, told: (done: number) => void): Promise<unknown> {
  if (question.kind === "sheets") return drawn(question, told);
  const [{ exported }, { pageFonts }] = await Promise.all([import("./exporting.ts"), import("./fonts.ts")]);
  return exported(question, await pageFonts(), told);
}
