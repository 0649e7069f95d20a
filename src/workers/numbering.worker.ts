// The shell that runs a search for numbers off the page's own thread; progress is told some thirty times a second at most.
import { type Numbering, type NumberingTold, numberingSteps } from "./numbering.ts";

const APART_MS = 33;
const tell = (told: NumberingTold) => self.postMessage(told);

self.addEventListener("message", ({ data }: MessageEvent<Numbering>) => {
  try {
    let last = 0;
    for (const step of numberingSteps(data)) {
      const now = performance.now();
      if (step.done < 1 && now - last < APART_MS) continue;
      last = now;
      tell(step);
    }
  } catch (fault) {
    tell({ fault: String(fault) });
  }
});
