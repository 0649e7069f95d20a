// The shell that runs the examination off the page's own thread.
import { type Examining, examineWhole } from "./examining.ts";

self.addEventListener("message", ({ data }: MessageEvent<{ readonly number: number; readonly question: Examining }>) => {
  try {
    self.postMessage({ number: data.number, answer: examineWhole(data.question) });
  } catch (fault) {
    self.postMessage({ number: data.number, fault: String(fault) });
  }
});
