// The worker that draws and exports, seen from the page: one for each place that asks, so that either can be stopped
// without the other.
import type { Drawing, Drawn } from "./drawing.ts";
import type { Exporting } from "./exporting.ts";
import type { OutFile } from "../paper/files/file.ts";
import { type StoppedPort, workerPort } from "./port.ts";

const start = () => new Worker(new URL("./paper.worker.ts", import.meta.url), { type: "module" });

export const sheetsPort = (): StoppedPort<Drawing, Drawn> => workerPort<Drawing, Drawn>(start);
export const filesPort = (): StoppedPort<Exporting, OutFile> => workerPort<Exporting, OutFile>(start);
