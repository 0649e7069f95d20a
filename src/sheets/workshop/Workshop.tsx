// The Workshop: the list of sheets, the chosen one as it will be printed, and what to heed. All of it is worked out and
// drawn off the page's own thread.
import { useDeferredValue, useEffect, useMemo, useState } from "react";
import { createPortal } from "react-dom";
import { PAPER, type PaperSize, type SheetKind } from "../../paper/drawing.ts";
import { useNow } from "../../state/hooks.ts";
import type { DrawnSheet, ListedSheet } from "../../workers/drawing.ts";
import { Mark } from "../Severity.tsx";
import { keepPrinted, type Printed, printedOf } from "./printed.ts";
import { type Seen, useSeveral, useSheet } from "./useSheets.ts";
import "./workshop.css";

const HEADS: readonly (readonly [string, readonly SheetKind[]])[] = [
  ["The whole", ["general", "calliper", "elevation", "train"]], ["Wheels", ["wheel"]], ["Pinions", ["pinion"]], ["Arbors and pipes", ["arbor"]],
  ["Pieces and hands", ["piece", "hands", "ratchet", "fit"]], ["Plates and templates", ["plate", "template"]], ["Case", ["housing"]], ["Dials", ["dial"]],
  ["In order", ["heats", "assembly", "parts", "cutters", "setting"]],
];
const SIZES = Object.keys(PAPER) as PaperSize[];
const today = (): string => new Date().toISOString().slice(0, 10);

export function Workshop() {
  const worked = useDeferredValue(useNow((s) => s.worked));
  const [size, setSize] = useState<PaperSize>("A4");
  const [id, setId] = useState("general");
  const [whole, setWhole] = useState(true);
  const name = worked?.movement.instrument.name ?? "";
  const [printed, setPrinted] = useState<{ readonly name: string; readonly marks: Printed }>({ name: "", marks: {} });
  const marks = printed.name === name ? printed.marks : printedOf(name);
  const [issued] = useState(today);
  const question = useMemo(() => (worked ? {
    kind: "sheets" as const, instrument: worked.movement.instrument, how: { size, issued, printed: marks }, fouls: worked.examined === "to come" ? null : worked.sheet.counts.foul,
  } : null), [worked, size, issued, marks]);
  const seen = useSheet(question, id), several = useSeveral();
  const [printing, setPrinting] = useState<readonly DrawnSheet[] | null>(null);
  const print = (which: readonly ListedSheet[]) => {
    if (question && which.length > 0) several.draw({ ...question, wanted: which.map((l) => l.id) }, setPrinting);
  };
  const onPrinted = (sheets: readonly DrawnSheet[]) => {
    const now = Object.fromEntries(sheets.map((s) => [s.id, s.mark]));
    keepPrinted(name, now);
    setPrinted({ name, marks: { ...marks, ...now } });
    setPrinting(null);
  };
  const list = seen.answer?.list ?? [], sheet = seen.answer?.sheets[0];
  if (!question) return <p className="note">There is nothing to draw yet.</p>;
  if (!seen.answer || !sheet) return <div className="workshop"><section className="paper" aria-label="Sheet"><div className="heading"><h2>Sheets</h2></div><InHand seen={seen} /></section></div>;
  const stale = list.filter((l) => l.stale), { fouls } = seen.answer;
  return (
    <div className="workshop">
      <section className="list" aria-label="Sheets of the plans">
        <div className="heading"><h2>Sheets</h2><span className="beside">{list.length}, {size}</span></div>
        <SheetList list={list} chosen={list.some((l) => l.id === id) ? id : sheet.id} choose={setId} />
        <div className="row">
          {several.done === null ? <>
            <button type="button" onClick={() => print(list)}>Print all</button>
            <button type="button" disabled={stale.length === 0} onClick={() => print(stale)}>Stale only</button>
          </> : <>
            <progress value={several.done} aria-label="Part of the sheets drawn" />
            <button type="button" onClick={several.stop}>Stop</button>
          </>}
          {several.fault !== null && <span role="status">They were not drawn: {several.fault}.</span>}
          <label className="field"><span className="soft">paper</span>
            <select value={size} onChange={(event) => setSize(event.target.value as PaperSize)}>{SIZES.map((s) => <option key={s}>{s}</option>)}</select>
          </label>
        </div>
      </section>
      <section className="paper" aria-label={sheet.title}>
        <div className="heading"><h2>{sheet.title}</h2><span className="beside">{sheet.pages.length > 1 ? `${sheet.pages.length} pages` : "one page"}</span>
          <span className="beside end">{sheet.scale === "–" ? size : `${sheet.scale} on ${size}`}</span></div>
        {sheet.stale && <p className="stale"><b>Stale:</b> {sheet.stale}.</p>}
        <Pages pages={sheet.pages} size={size} whole={whole} />
        <div className="row">
          <button type="button" className="strong" onClick={() => print([sheet])}>{sheet.stale ? "Print it afresh" : "Print"}</button>
          <button type="button" aria-pressed={!whole} onClick={() => setWhole(!whole)}>Magnify</button>
          <span className="soft">mark <span className="figure">{sheet.mark}</span></span>
          <InHand seen={seen} />
        </div>
      </section>
      <aside className="heed" aria-label="To be heeded">
        {fouls > 0 && <p><Mark severity="foul" /> <b>Every sheet says</b> that this instrument fouls in {fouls === 1 ? "one place" : `${fouls} places`}.</p>}
        {sheet.cautions.length > 0 && <p><b>Caution.</b> {sheet.cautions.join(" ")}</p>}
        <p className="soft">A sheet’s mark is made of just what it shows. When that changes, the sheet is said to be stale. Every print has a bar of 100 mm where it matters: measure it.</p>
      </aside>
      {printing && <Printing name={name} sheets={printing} size={size} done={onPrinted} />}
    </div>
  );
}

/** Drawing that takes longer than a blink says so, and can be stopped. */
function InHand({ seen }: { readonly seen: Seen }) {
  if (seen.state === "drawn") return null;
  return (
    <span className="row in-hand" role="status">
      {seen.state === "drawing" ? <><progress aria-label="The sheet is being drawn" /> <button type="button" onClick={seen.stop}>Stop</button></>
        : <><span>It was not drawn to its end.</span> <button type="button" onClick={seen.again}>Draw it</button></>}
    </span>
  );
}

function SheetList({ list, chosen, choose }: { readonly list: readonly ListedSheet[]; readonly chosen: string; readonly choose: (id: string) => void }) {
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

function Pages({ pages, size, whole }: { readonly pages: readonly string[]; readonly size: PaperSize; readonly whole: boolean }) {
  return (
    <div className={`pages ${size} ${whole ? "" : "near"}`} tabIndex={0} role="group" aria-label="The sheet as it will be printed">
      {pages.map((svg, i) => <div key={i} className="leaf" dangerouslySetInnerHTML={{ __html: svg }} />)}
    </div>
  );
}

/** Puts the pages alone on paper, asks the browser to print, and takes them away again. */
function Printing({ name, sheets, size, done }: { readonly name: string; readonly sheets: readonly DrawnSheet[]; readonly size: PaperSize; readonly done: (sheets: readonly DrawnSheet[]) => void }) {
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
    <main className={`to-print ${size}`}>
      <h1 className="unseen">{name}</h1>
      {sheets.flatMap((s) => s.pages.map((page, i) => <div key={`${s.id} ${i}`} className="leaf" dangerouslySetInnerHTML={{ __html: page }} />))}
    </main>,
    document.body,
  );
}
