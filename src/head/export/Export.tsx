// Files for the workshop: which of them, on what paper, with what kerf; made off the page's own thread, with progress and
// a way to stop. It comes on demand and stands over the bench until it is closed.
import { useEffect, useMemo, useRef, useState } from "react";
import { PAPER, type PaperSize } from "../../paper/drawing.ts";
import { type Format, FORMATS } from "../../paper/files/formats.ts";
import type { OutFile } from "../../paper/files/file.ts";
import { between, lengthIn } from "../../sheets/reading.ts";
import { Typed } from "../../sheets/Typed.tsx";
import { length, unitName } from "../../state/figures.ts";
import { useNow } from "../../state/hooks.ts";
import { filesPort } from "../../workers/paper.ts";
import { STOPPED } from "../../workers/port.ts";
import { Choice } from "../Choice.tsx";
import "./export.css";

const SAYS: Readonly<Record<Format, string>> = {
  PDF: "all sheets, true scale", SVG: "every page", DXF: "every page, and outlines to cut by", STL: "every part", "3MF": "all parts on a plate", glTF: "the whole, turning", CSV: "every table",
};
const SIZES = Object.keys(PAPER) as PaperSize[];
const MOST_KERF_MM = 10;

export function Export({ onClose }: { readonly onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const port = useMemo(filesPort, []);
  const instrument = useNow((s) => s.instrument);
  const [formats, setFormats] = useState<readonly Format[]>(["PDF"]);
  const [size, setSize] = useState<PaperSize>("A4");
  const units = useNow((s) => s.units);
  const [kerf, setKerf] = useState(0);
  const [done, setDone] = useState<number | null>(null);
  const [said, setSaid] = useState("");
  useEffect(() => {
    dialog.current?.showModal();
    return () => port.stop();
  }, [port]);
  const readKerf = between(lengthIn(units), 0, MOST_KERF_MM, `from 0 to ${length(MOST_KERF_MM, units)} ${unitName(units)}`);
  const make = async () => {
    if (!instrument) return;
    setDone(0);
    setSaid("");
    try {
      const file = await port.ask({ kind: "files", instrument, how: { formats, size, kerf } }, setDone);
      download(file);
      setSaid(`${file.name} is made.`);
    } catch (fault) {
      const why = fault instanceof Error ? fault.message : String(fault);
      setSaid(why === STOPPED ? "Stopped; nothing is made." : `It was not made: ${why}.`);
    }
    setDone(null);
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
        <Typed label="Kerf" before="Kerf" unit={unitName(units)} stands={length(kerf, units, "distance")} read={readKerf} take={(mm) => { setKerf(mm); return true; }} />
        <div className="row">
          {done === null ? <button type="button" disabled={formats.length === 0 || !instrument} onClick={() => void make()}>Make</button>
            : <button type="button" onClick={port.stop}>Stop</button>}
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
