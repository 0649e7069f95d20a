// Opening and saving: the browser's own file windows where there are such, else a picker and a download. A file is read
// whole or refused whole; what was open stays until another has been read.
import type { Instrument } from "../../geometry/index.ts";
import { readInstrument, writeInstrument } from "../document/index.ts";
import { isSaved } from "../state/history.ts";
import type { Bench } from "../state/hooks.ts";
import { type Example, ENDING, exampleText } from "./examples.ts";

interface SaveWindow {
  showSaveFilePicker?(options: unknown): Promise<FileSystemFileHandle>;
}

const MOST_BYTES = 5 * 1024 * 1024;

export function openText({ actions, clock }: Bench, text: string, file: string, keepFile = true): void {
  const read = readInstrument(text);
  if ("refused" in read) return actions.refuse(file, read.refused);
  actions.open(read.instrument, keepFile ? file : null);
  clock.stop();
  clock.set(0);
  if (read.unknown.length > 0) actions.set({ saying: unknownInWords(read.unknown) });
}

export async function openFile(bench: Bench, file: File): Promise<void> {
  if (!settled(bench)) return;
  if (file.size > MOST_BYTES) {
    const found = `${(file.size / 1024 / 1024).toFixed(1)} MiB`;
    return bench.actions.refuse(file.name, [{ path: "", found, expected: "at most 5 MiB" }]);
  }
  try {
    openText(bench, await file.text(), file.name);
  } catch {
    bench.actions.refuse(file.name, [{ path: "", found: "nothing that could be read", expected: "a file" }]);
  }
}

export async function openExample(bench: Bench, example: Example): Promise<void> {
  if (!settled(bench)) return;
  try {
    openText(bench, await exampleText(example), `${example.file}${ENDING}`, false);
  } catch (fault) {
    bench.actions.set({ saying: `${fault instanceof Error ? fault.message : String(fault)}.` });
  }
}

/** Puts the instrument away and shows the ways to begin. */
export function beginAfresh(bench: Bench): void {
  if (!settled(bench)) return;
  bench.clock.stop();
  bench.clock.set(0);
  bench.actions.putAway();
}

/** Shows the picker; what is picked is opened. */
export function pickFile(bench: Bench): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".json,application/json";
  input.addEventListener("change", () => {
    const [file] = input.files ?? [];
    if (file) void openFile(bench, file);
  });
  input.click();
}

export async function save({ store, actions }: Bench): Promise<void> {
  actions.keep();
  const { instrument, file } = store.getState();
  if (!instrument) return;
  const name = file ?? fileNameFor(instrument);
  const text = writeInstrument(instrument);
  const saveAs = (window as SaveWindow).showSaveFilePicker?.bind(window);
  if (!saveAs) {
    download(name, text);
    return actions.saved(name);
  }
  try {
    const handle = await saveAs({ suggestedName: name, types: [{ description: "Instrument", accept: { "application/json": [".json"] } }] });
    const out = await handle.createWritable();
    await out.write(text);
    await out.close();
    actions.saved(handle.name);
  } catch (fault) {
    if ((fault as Error).name !== "AbortError") actions.set({ saying: `It was not saved: ${(fault as Error).message}` });
  }
}

/** Work that would be lost is asked about once, in the browser's own window. */
function settled({ store, actions }: Bench): boolean {
  actions.keep();
  const { instrument, history } = store.getState();
  if (!instrument || isSaved(history)) return true;
  return window.confirm(`“${instrument.name}” has changes that are not saved. Put it away and lose them?`);
}

const unknownInWords = (unknown: readonly string[]): string => {
  const first = unknown.slice(0, 3).join(", "), more = unknown.length - 3;
  return `Kept, but not understood: ${first}${more > 0 ? ` and ${more} more` : ""}.`;
};

const fileNameFor = (instrument: Instrument): string => {
  const words = instrument.name.toLowerCase().normalize("NFKD").replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "");
  return `${words || "instrument"}${ENDING}`;
};

function download(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
