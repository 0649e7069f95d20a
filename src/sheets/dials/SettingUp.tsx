// Setting up: for a list of dates where the crank leaves each pointer and where it should stand; the row for now follows
// the crank; any date can be turned to; the table can be printed.
import { useMemo, useState } from "react";
import { checkTable, dayOfDate, dayOfMs, type Movement, msOfDay, nearestSetting, settingUp, turnsAtDay, type SettingUp as Row, yearOf } from "../../../geometry/index.ts";
import { dateInWords, epochMs } from "../../state/dates.ts";
import { fixed } from "../../state/figures.ts";
import { useBench } from "../../state/hooks.ts";
import { readsAs } from "./reads.ts";

const MONTHS = [1, 2, 3, 4, 7, 13];

export function SettingUp({ movement }: { readonly movement: Movement }) {
  const { clock } = useBench();
  const epoch = epochMs(movement.instrument);
  const start = epoch === null ? 0 : dayOfMs(epoch), year = yearOf(start + 0.5);
  const [typed, setTyped] = useState("");
  const days = useMemo(() => MONTHS.map((m) => dayOfDate(m > 12 ? year + 1 : year, m > 12 ? m - 12 : m, 1)), [year]);
  const rows = useMemo(() => (epoch === null ? [] : checkTable(movement, start, days)), [movement, epoch, start, days]);
  const ms = /^\d{4}-\d\d-\d\d$/.test(typed) ? Date.parse(`${typed}T00:00:00Z`) : NaN;
  if (epoch === null) return <section><h2>Setting up</h2><p className="note">No display says the date at input 0; say it below, and the table is worked out.</p></section>;
  const inSky = (i: number) => rows[0]?.pointers[i]?.trueValue !== null && rows[0]?.pointers[i]?.trueValue !== undefined;
  const to = Number.isFinite(ms) ? dayOfMs(ms) : null;
  return (
    <section className="setting-up">
      <div className="heading"><h2 id="setting">Setting up</h2><span className="beside">where each pointer should stand</span>
        <span className="end"><button type="button" onClick={() => print()}>Print the table</button></span></div>
      <div className="scroll-x" tabIndex={0} role="group" aria-label="Setting up, a wide table">
        <table aria-labelledby="setting">
          <thead><tr><th>date</th><th className="figure">turns</th>{movement.displays.flatMap((d, i) => [
            <th key={d.id} className="figure">{d.name}</th>, ...(inSky(i) ? [<th key={`${d.id} true`} className="figure soft">true</th>] : []),
          ])}</tr></thead>
          <tbody>
            <DateRow movement={movement} row={rows[0]} inSky={inSky} />
            <NowRow movement={movement} inSky={inSky} />
            {rows.slice(1).map((row) => <DateRow key={row.day} movement={movement} row={row} inSky={inSky} />)}
            {to !== null && !days.includes(to) && <DateRow movement={movement} row={settingUp(movement, start, to)} inSky={inSky} />}
          </tbody>
        </table>
      </div>
      <div className="row set-for">
        <label className="field"><span className="soft">Set for</span><input type="date" style={{ width: "14ch" }} value={typed} onChange={(e) => setTyped(e.target.value)} /></label>
        <button type="button" disabled={to === null} onClick={() => { if (to !== null) clock.set(turnsAtDay(movement, start, to)); }}>Turn the crank there</button>
      </div>
      {to !== null && <Nearest movement={movement} start={start} day={to} />}
    </section>
  );
}

/** For a date: the turns that it stands for, and the nearest at which each pointer would stand true. */
function Nearest({ movement, start, day }: { readonly movement: Movement; readonly start: number; readonly day: number }) {
  const { clock } = useBench();
  const at = settingUp(movement, start, day);
  const lines = at.pointers.flatMap((p, i) => {
    if (p.truePart === null) return [];
    const turns = nearestSetting(movement, i, p.truePart, at.turns);
    return turns === null ? [] : [{ name: movement.displays[i]?.name ?? p.display, turns, reads: readsAs(movement, i, p.truePart) }];
  });
  return (
    <ul className="nearest">{lines.map((l) => (
      <li key={l.name}><button type="button" className="plain" onClick={() => clock.set(l.turns)}>{l.name} stands true, {l.reads}, at {fixed(l.turns, 3)} turns</button></li>
    ))}</ul>
  );
}

function DateRow({ movement, row, inSky }: { readonly movement: Movement; readonly row: Row | undefined; readonly inSky: (i: number) => boolean }) {
  if (!row) return null;
  return (
    <tr><td className="nowrap">{dateAndTime(row.day)}</td><td className="figure">{fixed(row.turns, 2)}</td>{row.pointers.flatMap((p, i) => [
      <td key={p.display} className="figure">{readsAs(movement, i, p.part, true)}</td>,
      ...(inSky(i) ? [<td key={`${p.display} true`} className="figure soft">{p.truePart === null ? "" : readsAs(movement, i, p.truePart, true)}</td>] : []),
    ])}</tr>
  );
}

/** Written by the clock. */
function NowRow({ movement, inSky }: { readonly movement: Movement; readonly inSky: (i: number) => boolean }) {
  return (
    <tr className="here" data-now-row><td className="nowrap" data-now="date" /><td className="figure" data-now="turns" />{movement.displays.flatMap((d, i) => [
      <td key={d.id} className="figure" data-now={`shown ${i}`} />, ...(inSky(i) ? [<td key={`${d.id} true`} className="figure soft" data-now={`true ${i}`} />] : []),
    ])}</tr>
  );
}

export const dateAndTime = (day: number): string => (dateInWords(msOfDay(day), "short") ?? "beyond the calendar").replace(/^\w+ /, "");
