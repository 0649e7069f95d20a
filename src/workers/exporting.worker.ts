// The shell that makes files off the page's own thread.
import { exported, type Exporting, type ExportTold } from "./exporting.ts";

const tell = (told: ExportTold) => self.postMessage(told);

self.addEventListener("message", ({ data }: MessageEvent<Exporting>) => {
  exported(data, (done) => tell({ done })).then((file) => tell({ file }), (fault: unknown) => tell({ fault: String(fault) }));
});
