// The train as it stands: every pointer with what it should do and what it does, then every arbor with its exact rate.
import { type Movement, writeRatio } from "../../../geometry/index.ts";
import { grouped } from "../../state/dates.ts";
import { fixed } from "../../state/figures.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import { arborOf } from "../words.tsx";
import "./numbers.css";
import { daysOf, type Fraction, trainTo, yearsToOneDivision } from "./path.ts";

export function Numbers() {
  const movement = useNow((s) => s.worked?.movement ?? null);
  const chosen = useNow((s) => s.chosen);
  if (!movement) return null;
  const arbor = arborOf(movement, chosen);
  return (
    <div className="numbers">
      {movement.displays.length > 0 && <Pointers movement={movement} chosen={arbor} />}
      <Arbors movement={movement} chosen={arbor} />
    </div>
  );
}

function Pointers({ movement, chosen }: { readonly movement: Movement; readonly chosen: string | null }) {
  const { choose } = useActions();
  return (
    <section>
      <div className="heading"><h2 id="train">The train as it stands</h2><span className="beside">wheels over pinions, turns multiplied down</span></div>
      <div className="scroll-x">
        <table aria-labelledby="train">
          <thead>
            <tr>
              <th>pointer</th><th>arbor</th><th>from the crank, {movement.instrument.input.arbor}</th><th>seen from the dial</th>
              <th className="figure">one turn, days</th><th className="figure">wanted</th><th className="figure">degrees a year</th>
              <th className="figure">one division wrong after</th>
            </tr>
          </thead>
          <tbody>
            {movement.displays.map((d) => {
              const id = movement.arbors[d.arbor]?.id ?? "";
              const years = yearsToOneDivision(d.degreesPerYear, d.divisions);
              return (
                <tr key={d.id} className={`pick ${id === chosen ? "here" : ""}`} onClick={() => choose(id)}>
                  <td><h3>{d.name}</h3></td>
                  <td><button type="button" className="plain" onClick={() => choose(id)}><b>{id}</b></button></td>
                  <td>{d.against === null ? <Train movement={movement} arbor={d.arbor} /> : `against ${movement.arbors[d.against]?.id ?? ""}: ${d.rate ? writeRatio(d.rate) : "not driven"}`}</td>
                  <td>{d.sense ?? "does not turn"}</td>
                  <td className="figure">{d.days === null ? "–" : sixths(Math.abs(d.days))}</td>
                  <td className="figure soft">{d.wanted === null ? "–" : sixths(d.wanted)}</td>
                  <td className="figure">{d.degreesPerYear === null ? "–" : d.degreesPerYear === 0 ? "0" : fixed(d.degreesPerYear, 4)}</td>
                  <td className="figure">{d.degreesPerYear === null ? "–" : years === null ? "never" : `${grouped(years, years < 10 ? 1 : 0)} years`}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Arbors({ movement, chosen }: { readonly movement: Movement; readonly chosen: string | null }) {
  const { choose } = useActions();
  return (
    <section>
      <div className="heading"><h2 id="arbors">Every arbor</h2><span className="beside">for one turn of the crank; + the same way round</span></div>
      <div className="scroll-x">
        <table aria-labelledby="arbors">
          <thead><tr><th>arbor</th><th>name</th><th>from the crank</th><th className="figure">turns, exact</th><th className="figure">one turn, days</th></tr></thead>
          <tbody>
            {movement.arbors.map((a, i) => {
              const days = daysOf(movement, a.rate);
              return (
                <tr key={a.id} className={`pick ${a.id === chosen ? "here" : ""}`} onClick={() => choose(a.id)}>
                  <td><button type="button" className="plain" onClick={() => choose(a.id)}><b>{a.id}</b></button></td>
                  <td>{a.arbor.name ?? ""}</td>
                  <td><Train movement={movement} arbor={i} /></td>
                  <td className="figure">{a.rate === null ? (a.bound ? "bound" : "not driven") : writeRatio(a.rate).replace("-", "−")}</td>
                  <td className="figure">{days === null ? "–" : sixths(days)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Train({ movement, arbor }: { readonly movement: Movement; readonly arbor: number }) {
  const fractions = trainTo(movement, arbor);
  if (fractions === null) return <span className="soft">no plain train</span>;
  if (fractions.length === 0) return "—";
  return <span className="nowrap">{fractions.map((f, i) => <Times key={i} fraction={f} first={i === 0} />)}</span>;
}

function Times({ fraction, first }: { readonly fraction: Fraction; readonly first: boolean }) {
  return (
    <>
      {!first && <span className="times">×</span>}
      <span className="fraction"><span>{fraction.over}</span><span className="unseen"> over </span><span>{fraction.under}</span></span>
    </>
  );
}

/** Six decimals in two groups of three: 29.530 596. */
const sixths = (days: number): string => fixed(days, 6).replace(/(\d{3})$/, "\u202f$1");
