// The Workshop: the list of sheets, the chosen one as it will be printed, and what to heed. A sheet is drawn when it is
// looked at; the list alone is worked out at once.
import { useDeferredValue, useEffect, useMemo, useState } from "react";
import { createPortal } from "react-dom";
import type { PaperSize, PlanSheet, SheetKind } from "../../paper/drawing.ts";
import { type Listed, listOf } from "../../paper/plans.ts";
import { drawingSvg } from "../../paper/svg.ts";
import { useNow } from "../../state/hooks.ts";
import { Mark } from "../Severity.tsx";
import { keepPrinted, type Printed, printedOf } from "./printed.ts";
import "./workshop.css";

const HEADS: readonly (readonly [string, readonly SheetKind[]])[] = [
  ["The whole", ["general", "calliper", "elevation", "train"]], ["Wheels", ["wheel"]], ["Pinions", ["pinion"]], ["Arbors and pipes", ["arbor"]],
  ["Pieces and hands", ["piece", "hands", "ratchet", "fit"]], ["Plates and templates", ["plate", "template"]], ["Case", ["housing"]], ["Dials", ["dial"]],
  ["In order", ["heats", "assembly", "parts", "cutters", "setting"]],
];
const SIZES: readonly PaperSize[] = ["A4", "A3", "Letter"];
const today = (): string => new Date().toISOString().slice(0, 10);

export function Workshop() {
  const worked = useDeferredValue(useNow((s) => s.worked));
  const [size, setSize] = useState<PaperSize>("A4");
  const [id, setId] = useState("general");
  const [whole, setWhole] = useState(true);
  const name = worked?.movement.instrument.name ?? "";
  const [printed, setPrinted] = useState<{ readonly name: string; readonly marks: Printed }>({ name: "", marks: {} });
  const marks = printed.name === name ? printed.marks : printedOf(name);
  const movement = worked?.movement ?? null, fouls = worked && worked.examined !== "to come" ? worked.sheet.counts.foul : 0;
  const [issued] = useState(today);
  const list = useMemo(() => (movement ? listOf(movement, { size, issued, printed: marks }, fouls) : []), [movement, size, issued, marks, fouls]);
  const chosen = list.find((l) => l.id === id) ?? list[0];
  const sheet = useMemo(() => chosen?.draw() ?? null, [chosen]);
  const [printing, setPrinting] = useState<readonly PlanSheet[] | null>(null);
  const print = (which: readonly Listed[]) => {
    if (which.length === 0) return;
    setPrinting(which.map((l) => l.draw()));
  };
  const onPrinted = (sheets: readonly PlanSheet[]) => {
    const now = Object.fromEntries(sheets.map((s) => [s.id, s.mark]));
    keepPrinted(name, now);
    setPrinted({ name, marks: { ...marks, ...now } });
    setPrinting(null);
  };
  if (!movement || !sheet || !chosen) return <p className="note">There is nothing to draw yet.</p>;
  const stale = list.filter((l) => l.stale);
  return (
    <div className="workshop">
      <section className="list" aria-label="Sheets of the plans">
        <div className="heading"><h2>Sheets</h2><span className="beside">{list.length}, {size}</span></div>
        <SheetList list={list} chosen={chosen.id} choose={setId} />
        <div className="row">
          <button type="button" onClick={() => print(list)}>Print all</button>
          <button type="button" disabled={stale.length === 0} onClick={() => print(stale)}>Stale only</button>
          <label className="field"><span className="soft">paper</span>
            <select value={size} onChange={(event) => setSize(event.target.value as PaperSize)}>{SIZES.map((s) => <option key={s}>{s}</option>)}</select>
          </label>
        </div>
      </section>
      <section className="paper" aria-label={sheet.title}>
        <div className="heading"><h2>{sheet.title}</h2><span className="beside">{sheet.pages.length > 1 ? `${sheet.pages.length} pages` : "one page"}</span>
          <span className="beside end">{sheet.pages[0]?.titleBlock.scale} on {size}</span></div>
        {chosen.stale && <p className="stale"><b>Stale:</b> {chosen.stale}.</p>}
        <Pages sheet={sheet} whole={whole} />
        <div className="row">
          <button type="button" className="strong" onClick={() => print([chosen])}>{chosen.stale ? "Print it afresh" : "Print"}</button>
          <button type="button" aria-pressed={!whole} onClick={() => setWhole(!whole)}>Magnify</button>
          <span className="soft">mark <span className="figure">{sheet.mark}</span></span>
        </div>
      </section>
      <aside className="heed" aria-label="To be heeded">
        {fouls > 0 && <p><Mark severity="foul" /> <b>Every sheet says</b> that this instrument fouls in {fouls === 1 ? "one place" : `${fouls} places`}.</p>}
        {sheet.cautions.length > 0 && <p><b>Caution.</b> {sheet.cautions.join(" ")}</p>}
        <p className="soft">A sheet’s mark is made of just what it shows. When that changes, the sheet is said to be stale. Every print has a bar of 100 mm where it matters: measure it.</p>
      </aside>
      {printing && <Printing sheets={printing} size={size} done={onPrinted} />}
    </div>
  );
}

function SheetList({ list, chosen, choose }: { readonly list: readonly Listed[]; readonly chosen: string; readonly choose: (id: string) => void }) {
  return (
    <ul className="sheets-list">
      {HEADS.map(([head, kinds]) => ({ head, of: list.filter((l) => kinds.includes(l.kind)) })).filter(({ of }) => of.length > 0).map(({ head, of }) => (
        <li key={head}>
          <h3>{head}</h3>
          <ul>
            {of.map((l) => (
              <li key={l.id}>
                <button type="button" className="plain" aria-current={l.id === chosen} onClick={() => choose(l.id)}>
                  <span>{l.title}</span>{l.stale && <b className="foul">stale</b>}
                </button>
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}

function Pages({ sheet, whole }: { readonly sheet: PlanSheet; readonly whole: boolean }) {
  const pages = useMemo(() => sheet.pages.map(drawingSvg), [sheet]);
  return (
    <div className={`pages ${sheet.pages[0]?.size ?? ""} ${whole ? "" : "near"}`} tabIndex={0} role="group" aria-label="The sheet as it will be printed">
      {pages.map((svg, i) => <div key={i} className="leaf" dangerouslySetInnerHTML={{ __html: svg }} />)}
    </div>
  );
}

/** Puts the pages alone on paper, asks the browser to print, and takes them away again. */
function Printing({ sheets, size, done }: { readonly sheets: readonly PlanSheet[]; readonly size: PaperSize; readonly done: (sheets: readonly PlanSheet[]) => void }) {
  useEffect(() => {
    const after = () => done(sheets);
    window.addEventListener("afterprint", after, { once: true });
    // After the pages have been laid out.
    const soon = requestAnimationFrame(() => window.print());
    return () => { cancelAnimationFrame(soon); window.removeEventListener("afterprint", after); };
    // Once for these sheets: printing itself changes what is known as printed.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [sheets]);
  return createPortal(
    <div className={`to-print ${size}`}>
      {sheets.flatMap((s) => s.pages.map((page, i) => <div key={`${s.id} ${i}`} className="leaf" dangerouslySetInnerHTML={{ __html: drawingSvg(page) }} />))}
    </div>,
    document.body,
  );
}
