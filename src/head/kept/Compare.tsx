// The instrument in hand held against another version of it: an earlier step, the one that was saved, another that is
// kept, or a file.
import { type ReactNode, useEffect, useMemo, useRef, useState } from "react";
import { type Finding, type Instrument, workOut } from "../../../geometry/index.ts";
import { readInstrument } from "../../document/index.ts";
import { Mark } from "../../sheets/Severity.tsx";
import { WithIds } from "../../sheets/words.tsx";
import { compare, type Comparison, isAlike, type Version } from "../../state/compare.ts";
import { fixed, length, unitName } from "../../state/figures.ts";
import { stoodAt } from "../../state/history.ts";
import { useBench, useNow } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import { examineWorked } from "../../workers/examining.ts";
import { useShelf } from "./useShelf.ts";

const STEPS_OFFERED = 30;

export function Compare() {
  const { keeper } = useBench();
  const instrument = useNow((s) => s.instrument);
  const history = useNow((s) => s.history);
  const mine = useNow((s) => s.shelf);
  const units = useNow((s) => s.units);
  const others = useShelf().all.filter((h) => h.deletedMs === null && h.id !== mine && !h.passing);
  const [with_, setWith] = useState("0");
  const [other, setOther] = useState<Instrument | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (!with_.startsWith("shelf ")) return;
    let asked = true;
    keeper.look(with_.slice(6)).then((found) => { if (asked) setOther(found); }, () => setSaid("The browser did not give it."));
    return () => { asked = false; };
  }, [keeper, with_]);
  const steps = Number(with_);
  const before = useMemo(
    () => (instrument && Number.isInteger(steps) ? stoodAt(history, instrument, steps).value : other), [instrument, history, steps, other]);
  const told = useMemo(() => (before && instrument ? compare(versionOf(before), versionOf(instrument)) : null), [before, instrument]);
  const choose = (to: string) => {
    setSaid(null);
    if (to === "file") return field.current?.click();
    setOther(null);
    setWith(to);
  };
  const read = async (file: File | undefined) => {
    const found = file && readInstrument(await file.text());
    if (!found) return;
    if (!found.ok) return setSaid(`${file.name} was refused; open it to see every fault.`);
    setOther(found.instrument);
    setWith(`file ${file.name}`);
  };
  const shown = history.past.map((step, i) => ({ at: i, says: step.says })).slice(1).slice(-STEPS_OFFERED).reverse();
  return (
    <>
      <div className="row asks">
        <label className="row">As it is now, against
          <select value={with_} onChange={(event) => choose(event.target.value)}>
            <option value="0">as it was at first</option>
            {history.savedAt !== null && history.savedAt > 0 && <option value={`${history.savedAt} `}>as it was saved</option>}
            {shown.map(({ at, says }) => <option key={at} value={String(at)}>before: {says}</option>)}
            {others.map((h) => <option key={h.id} value={`shelf ${h.id}`}>{h.name}</option>)}
            {with_.startsWith("file ") && <option value={with_}>{with_.slice(5)}</option>}
            <option value="file">a file …</option>
          </select>
        </label>
        <input ref={field} type="file" hidden accept=".json,application/json" onChange={(event) => void read(event.target.files?.[0])} />
      </div>
      <p className="said tight" role="status">{said}</p>
      {told && (isAlike(told) ? <p>The two are alike.</p> : <Told told={told} units={units} />)}
    </>
  );
}

const versionOf = (instrument: Instrument): Version => {
  const movement = workOut(instrument);
  return { movement, sheet: examineWorked(movement) };
};

function Told({ told, units }: { readonly told: Comparison; readonly units: Units }) {
  const mm = (value: number) => length(value, units, "distance");
  return (
    <>
      <Findings title="Findings gained" findings={told.gained} />
      <Findings title="Findings cured" findings={told.cured} cured />
      <Findings title="Graver than before" findings={told.graver} />
      <Findings title="Less grave than before" findings={told.eased} />
      <Part title={`Moved in plan, ${unitName(units)}`} count={told.moved.length}>
        <table>
          <thead><tr><th>arbor</th><th className="figure">x</th><th className="figure">y</th><th className="figure">by</th></tr></thead>
          <tbody>
            {told.moved.map(({ arbor, from, to, byMm }) => (
              <tr key={arbor}><td><b>{arbor}</b></td><td className="figure">{mm(from.x)} → {mm(to.x)}</td><td className="figure">{mm(from.y)} → {mm(to.y)}</td><td className="figure">{mm(byMm)}</td></tr>
            ))}
          </tbody>
        </table>
      </Part>
      <Part title="Changed" count={told.changed.length}>
        <table>
          <thead><tr><th>thing</th><th>field</th><th className="figure">before</th><th className="figure">now</th></tr></thead>
          <tbody>
            {told.changed.map(({ of, field, from, to }) => (
              <tr key={`${of} ${field}`}><td>{of === "" ? "the whole" : <b>{of}</b>}</td><td>{fieldInWords(field)}</td><td className="figure">{shortened(from)}</td><td className="figure">{shortened(to)}</td></tr>
            ))}
          </tbody>
        </table>
      </Part>
      <Part title="Added" count={told.added.length}><p><b>{told.added.join(", ")}</b></p></Part>
      <Part title="Taken away" count={told.taken.length}><p><b>{told.taken.join(", ")}</b></p></Part>
    </>
  );
}

function Part({ title, count, children }: { readonly title: string; readonly count: number; readonly children: ReactNode }) {
  return count === 0 ? null : <section><h3>{title} <span className="beside">{count}</span></h3>{children}</section>;
}

function Findings({ title, findings, cured = false }: { readonly title: string; readonly findings: readonly Finding[]; readonly cured?: boolean }) {
  return (
    <Part title={title} count={findings.length}>
      <ul className="apart">
        {findings.map((f, i) => (
          <li key={i}><Mark severity={cured ? "free" : f.severity} /><span><span className="unseen">{cured ? "was " : ""}{f.severity}: </span><WithIds text={f.says} ids={f.between} /></span></li>
        ))}
      </ul>
    </Part>
  );
}

/** "pivots.foot.diameter" as a maker reads it. */
const fieldInWords = (field: string): string => field.replaceAll(".", ", ").replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`);

const LONGEST = 40;
function shortened(text: string | null): string {
  if (text === null) return "–";
  const value = Number(text);
  const plain = text.trim() !== "" && Number.isFinite(value) ? fixed(value, Math.min(4, (text.split(".")[1] ?? "").length)) : text;
  return plain.length > LONGEST ? `${plain.slice(0, LONGEST)} …` : plain;
}
