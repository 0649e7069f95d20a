// Files for the workshop: which of them, on what paper, with what kerf; made off the page's own thread, with progress and
// a way to stop. It comes on demand and stands over the bench until it is closed.
import { useEffect, useRef, useState } from "react";
import { PAPER, type PaperSize } from "../../paper/drawing.ts";
import { type Format, FORMATS } from "../../paper/files/formats.ts";
import type { OutFile } from "../../paper/files/file.ts";
import { typedNumber } from "../../state/figures.ts";
import { useNow } from "../../state/hooks.ts";
import type { Exporting, ExportTold } from "../../workers/exporting.ts";
import { Choice } from "../Choice.tsx";
import "./export.css";
import { pageFonts } from "./fonts.ts";

const SAYS: Readonly<Record<Format, string>> = {
  PDF: "all sheets, true scale", SVG: "every page", DXF: "every page, and outlines to cut by", STL: "every part", "3MF": "all parts on a plate", glTF: "the whole, turning", CSV: "every table",
};
const SIZES = Object.keys(PAPER) as PaperSize[];
const MOST_KERF_MM = 10;

export function Export({ onClose }: { readonly onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const worker = useRef<Worker | null>(null);
  const instrument = useNow((s) => s.instrument);
  const [formats, setFormats] = useState<readonly Format[]>(["PDF"]);
  const [size, setSize] = useState<PaperSize>("A4");
  const [kerf, setKerf] = useState("0");
  const [done, setDone] = useState<number | null>(null);
  const [said, setSaid] = useState("");
  const stop = () => {
    worker.current?.terminate();
    worker.current = null;
    setDone(null);
  };
  useEffect(() => {
    dialog.current?.showModal();
    return () => worker.current?.terminate();
  }, []);
  const wide = typedNumber(kerf), fits = wide !== null && wide >= 0 && wide <= MOST_KERF_MM;
  const make = async () => {
    if (!instrument || !fits) return;
    const own = worker.current = new Worker(new URL("../../workers/exporting.worker.ts", import.meta.url), { type: "module" });
    setDone(0);
    setSaid("");
    const end = (words: string) => {
      if (worker.current !== own) return;
      stop();
      setSaid(words);
    };
    own.addEventListener("error", () => end("It was not made: the worker stopped."));
    own.addEventListener("message", ({ data }: MessageEvent<ExportTold>) => {
      if (worker.current !== own) return;
      if ("done" in data) return setDone(data.done);
      if ("fault" in data) return end(`It was not made: ${data.fault}.`);
      download(data.file);
      end(`${data.file.name} is made.`);
    });
    try {
      const question: Exporting = { instrument, fonts: await pageFonts(), how: { formats, size, kerf: wide } };
      if (worker.current === own) own.postMessage(question);
    } catch (fault) {
      end(`It was not made: ${fault instanceof Error ? fault.message : String(fault)}.`);
    }
  };
  const toggle = (format: Format) => setFormats(FORMATS.filter((f) => (f === format) !== formats.includes(f)));
  return (
    <dialog ref={dialog} className="export" aria-label="Files for the workshop" onClose={onClose} onKeyDown={(event) => event.stopPropagation()}
      onClick={(event) => { if (event.target === dialog.current) dialog.current?.close(); }}>
      <div className="within">
        <div className="heading"><h2>Files for the workshop</h2><button type="button" className="end" onClick={() => dialog.current?.close()}>Close</button></div>
        <fieldset disabled={done !== null}>
          <legend>Formats</legend>
          {FORMATS.map((format) => (
            <label key={format}><input type="checkbox" checked={formats.includes(format)} onChange={() => toggle(format)} /> {format} <small>{SAYS[format]}</small></label>
          ))}
        </fieldset>
        <div className="row"><span>Paper</span><Choice label="Paper" of={SIZES} now={size} onChoose={setSize} /></div>
        <label className="field"><span>Kerf, mm</span><input inputMode="decimal" value={kerf} aria-invalid={!fits} onChange={(event) => setKerf(event.target.value)} /></label>
        <div className="row">
          {done === null ? <button type="button" disabled={formats.length === 0 || !fits || !instrument} onClick={() => void make()}>Make</button>
            : <button type="button" onClick={stop}>Stop</button>}
          {done !== null && <progress value={done} aria-label="Part of the files made" />}
          <span role="status">{said}</span>
        </div>
      </div>
    </dialog>
  );
}

function download({ name, bytes }: OutFile): void {
  const address = URL.createObjectURL(new Blob([bytes.slice()]));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
