// Opening and saving: the browser's own file windows where there are such, else a picker and a download. A file is read
// whole or refused whole; what was open stays until another has been read.
import type { Instrument } from "../../geometry/index.ts";
import { readInstrument, writeInstrument } from "../document/index.ts";
import { withBook } from "../state/book.ts";
import { isSaved } from "../state/history.ts";
import type { Bench } from "../state/hooks.ts";
import type { State } from "../state/state.ts";
import { type Example, ENDING, exampleText } from "./examples.ts";

interface FileWindows {
  showSaveFilePicker?(options: unknown): Promise<FileSystemFileHandle>;
  showOpenFilePicker?(options: unknown): Promise<readonly FileSystemFileHandle[]>;
}
interface Asking {
  requestPermission?(mode: { readonly mode: "readwrite" }): Promise<PermissionState>;
}
type Handle = State["handle"];

const TYPES = [{ description: "Instrument", accept: { "application/json": [".json"] } }];

const MOST_BYTES = 5 * 1024 * 1024;

export function openText({ actions, clock }: Bench, text: string, file: string, keepFile = true, handle: Handle = null): void {
  const read = readInstrument(text);
  if ("refused" in read) return actions.refuse(file, read.refused);
  actions.open(read.instrument, keepFile ? file : null, { handle });
  clock.stop();
  clock.set(0);
  if (read.unknown.length > 0) actions.set({ saying: unknownInWords(read.unknown) });
}

export async function openFile(bench: Bench, file: File, from: FileSystemFileHandle | null = null): Promise<void> {
  if (!settled(bench)) return;
  if (file.size > MOST_BYTES) {
    const found = `${(file.size / 1024 / 1024).toFixed(1)} MiB`;
    return bench.actions.refuse(file.name, [{ path: "", found, expected: "at most 5 MiB" }]);
  }
  try {
    openText(bench, await file.text(), file.name, true, from && { file: from, changedMs: file.lastModified });
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
export async function pickFile(bench: Bench): Promise<void> {
  const pick = (window as FileWindows).showOpenFilePicker?.bind(window);
  if (!pick) return pickByField(bench);
  try {
    const [handle] = await pick({ types: TYPES });
    if (handle) await openFile(bench, await handle.getFile(), handle);
  } catch (fault) {
    if ((fault as Error).name !== "AbortError") pickByField(bench);
  }
}

function pickByField(bench: Bench): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".json,application/json";
  input.addEventListener("change", () => {
    const [file] = input.files ?? [];
    if (file) void openFile(bench, file);
  });
  input.click();
}

/** Writes its file: the one it came from where the browser lets us, else one that is chosen, else a download. */
export async function save({ store, actions }: Bench, elsewhere = false): Promise<void> {
  actions.keep();
  const { instrument, file, handle, history, book } = store.getState();
  if (!instrument) return;
  const name = file ?? fileNameFor(instrument);
  const text = writeInstrument(withBook(instrument, book));
  const saveAs = (window as FileWindows).showSaveFilePicker?.bind(window);
  try {
    const to = (elsewhere ? null : await sameFile(handle)) ?? await saveAs?.({ suggestedName: name, types: TYPES });
    if (to) {
      const out = await to.createWritable();
      await out.write(text);
      await out.close();
      return actions.saved(to.name, history, { file: to, changedMs: (await to.getFile()).lastModified });
    }
    download(name, text);
    actions.saved(name, history, null);
  } catch (fault) {
    if ((fault as Error).name !== "AbortError") actions.set({ saying: `It was not saved: ${(fault as Error).message}` });
  }
}

/** The file it came from, where it may be written over: allowed, still there, and not changed by another hand unless the maker says so. */
async function sameFile(handle: Handle): Promise<FileSystemFileHandle | null> {
  if (!handle) return null;
  const allowed = await (handle.file as Asking).requestPermission?.({ mode: "readwrite" }) ?? "granted";
  const there = allowed === "granted" ? await handle.file.getFile().catch(() => null) : null;
  if (!there) return null;
  const changed = there.lastModified !== handle.changedMs;
  return changed && !window.confirm(`${there.name} was changed by something else since. Write over it?`) ? null : handle.file;
}

/** Work that would be lost, since the browser keeps nothing, is asked about once, in the browser's own window. */
function settled({ store, actions }: Bench): boolean {
  actions.keep();
  const state = store.getState();
  if (state.notKept === null || !state.instrument || isSaved(state.history)) return true;
  return window.confirm(`“${state.instrument.name}” has changes that are not saved, and this browser does not keep them. Put it away and lose them?`);
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
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
