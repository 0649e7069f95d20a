// The shell that runs a search off the page's own thread.
import { type Searching, type SearchTold, stepsOf } from "./searching.ts";

const tell = (told: SearchTold) => self.postMessage(told);

self.addEventListener("message", ({ data }: MessageEvent<Searching>) => {
  try {
    for (const step of stepsOf(data)) tell({ step });
    tell({ ended: true });
  } catch (fault) {
    tell({ fault: String(fault) });
  }
});
