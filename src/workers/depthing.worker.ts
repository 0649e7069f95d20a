// The shell that depths a pair off the page's own thread.
import { type Asked, depthed } from "./depthing.ts";

self.addEventListener("message", ({ data }: MessageEvent<{ readonly number: number; readonly question: Asked }>) => {
  try {
    self.postMessage({ number: data.number, answer: depthed(data.question) });
  } catch (fault) {
    self.postMessage({ number: data.number, fault: String(fault) });
  }
});
