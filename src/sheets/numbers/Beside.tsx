// Where a plain train is poor or several pointers are wanted at once: trains on a carrier, differentials, and lead-offs that
// share wheels. Each is asked for; each runs on a worker and can be stopped.
import { allowedCounts, decimalRatio, headOf, type Movement, ratio, writeRatio } from "../../../geometry/index.ts";
import { fixed } from "../../state/figures.ts";
import type { Numbering } from "../../workers/numbering.ts";
import { useNumbering } from "./useNumbering.ts";
import { useState } from "react";
import { oneIn, typedRange } from "./words.ts";

/** Within one part in a hundred thousand, as a beginning. */
const WITHIN_PPM = "10";

export function Beside({ movement, display }: { readonly movement: Movement; readonly display: number | null }) {
  return (
    <section className="beside-plain">
      <div className="heading ruled"><h2>Beyond a plain train</h2><span className="beside">sums, differences, and wheels that are shared</span></div>
      <div className="halves"><Sums movement={movement} display={display} /><Together movement={movement} /></div>
    </section>
  );
}

function countsOf(movement: Movement, pinions: string, wheels: string): number[] {
  const one = typedRange(pinions), other = typedRange(wheels), { division } = movement.instrument;
  return one && other ? allowedCounts({ pinions: one, wheels: other, ...(division ? { head: headOf(division) } : {}) }) : [];
}

function Sums({ movement, display }: { readonly movement: Movement; readonly display: number | null }) {
  const searching = useNumbering();
  const [ppm, setPpm] = useState(WITHIN_PPM);
  const shown = display === null ? null : movement.displays[display];
  const answer = searching.answer?.kind === "beside" ? searching.answer : null;
  const wanted = shown?.wanted ? decimalRatio(movement.instrument.input.days).div(decimalRatio(shown.wanted)) : null;
  const ask = () => {
    if (!wanted || !/^\d+(\.\d+)?$/.test(ppm)) return;
    searching.begin({
      kind: "beside", most: 40, wanted: writeRatio(wanted), within: writeRatio(decimalRatio(ppm).div(ratio(1_000_000))), engagements: 2, counts: countsOf(movement, "12 to 30", "30 to 100"),
    });
  };
  return (
    <div>
      <div className="row"><h3>Carriers and differentials</h3>
        <label className="field"><span className="soft">within</span><input style={{ width: "5ch" }} value={ppm} onChange={(e) => setPpm(e.target.value)} aria-label="Within, parts in a million" /><span className="soft">parts in a million</span></label>
        <SearchButton searching={searching} disabled={!wanted} onAsk={ask} label={shown ? `Search for ${shown.name}` : "Search"} />
      </div>
      {!wanted && <p className="note">Choose a pointer whose period is wanted.</p>}
      {answer && <p role="status">{answer.exhaustive ? <b className="free">Complete</b> : <b className="tight">Not complete</b>} {answer.says ?? `${answer.trains.length}, counts 12 to 100`}</p>}
      {answer && answer.trains.length > 0 && (
        <table aria-label="Carriers and differentials found">
          <thead><tr><th>how</th><th className="figure">ratio, exact</th><th>error</th></tr></thead>
          <tbody>{answer.trains.slice(0, 12).map((t) => (
            <tr key={t.says}><td>{t.says}</td><td className="figure">{t.ratio.replace("-", "−")}</td><td className="nowrap">{t.error === 0 ? "exact" : `${t.error < 0 ? "slow" : "fast"} ${oneIn(t.error)}`}</td></tr>
          ))}</tbody>
        </table>
      )}
    </div>
  );
}

function Together({ movement }: { readonly movement: Movement }) {
  const searching = useNumbering();
  const [ppm, setPpm] = useState("200");
  const answer = searching.answer?.kind === "together" ? searching.answer : null;
  const wanted = movement.displays.filter((d) => d.wanted !== null && d.wanted !== movement.instrument.input.days);
  const ask = () => {
    if (!/^\d+(\.\d+)?$/.test(ppm)) return;
    const within = writeRatio(decimalRatio(ppm).div(ratio(1_000_000)));
    const displays = wanted.map((d) => ({ id: d.id, wanted: writeRatio(decimalRatio(movement.instrument.input.days).div(decimalRatio(d.wanted ?? 1))), within, eitherWay: true }));
    const question: Numbering = { kind: "together", displays, engagements: 3, counts: countsOf(movement, "12 to 24", "30 to 72") };
    searching.begin(question);
  };
  const name = (id: string) => movement.displays.find((d) => d.id === id)?.name ?? id;
  return (
    <div>
      <div className="row"><h3>All pointers together</h3>
        <label className="field"><span className="soft">within</span><input style={{ width: "5ch" }} value={ppm} onChange={(e) => setPpm(e.target.value)} aria-label="Each within, parts in a million" /><span className="soft">parts in a million</span></label>
        <SearchButton searching={searching} disabled={wanted.length === 0} onAsk={ask} label="Fewest wheels" />
      </div>
      {answer && (
        <p role="status">{searching.done !== null ? <span className="soft">best so far</span> : searching.stopped ? <b className="tight">Stopped</b> : answer.exhaustive ? <b className="free">Proven fewest</b> : <b className="tight">Not proven</b>}
          {answer.best ? ` ${answer.best.wheels} wheels and pinions, ${answer.best.teeth} teeth` : ""} {answer.says}</p>
      )}
      {answer?.best && (
        <table aria-label="Shared trains">
          <thead><tr><th>arbor</th><th>driven by</th><th>driver over driven</th><th>shows</th></tr></thead>
          <tbody>{answer.best.engagements.map((e, i) => {
            const shows = answer.best?.displays.filter((d) => d.arbor === i + 1) ?? [];
            return (
              <tr key={i}><td className="figure start">{i + 1}</td><td className="figure start">{e.from === 0 ? "the crank" : e.from}</td><td className="figure start">{e.driver}/{e.driven}</td>
                <td>{shows.map((d) => `${name(d.id)}, ${d.error === 0 ? "exact" : `${fixed(d.error * 1e6, 1)} in a million`}`).join("; ")}</td></tr>
            );
          })}</tbody>
        </table>
      )}
      <p className="note">Counts 12 to 24 and 30 to 72, three engagements at most from where each leads off, either way round.</p>
    </div>
  );
}

function SearchButton({ searching, disabled, onAsk, label }: {
  readonly searching: ReturnType<typeof useNumbering>; readonly disabled: boolean; readonly onAsk: () => void; readonly label: string;
}) {
  if (searching.done === null) return <button type="button" disabled={disabled} onClick={onAsk}>{label}</button>;
  return <><progress value={searching.done} aria-label="How much is searched" /><button type="button" onClick={searching.stop}>Stop</button></>;
}
