// Trains on an arm written out by Willis's rule, wheel by wheel: the rate against the arm, where the train is a plain one, and
// with the arm's own rate added the rate in the frame.
import { type Ratio, type WillisRow, type WillisTable, type WrittenTrain, writeRatio } from "../../../geometry/index.ts";

export function OnArms({ table }: { readonly table: readonly WrittenTrain[] }) {
  const carried = table.filter((t) => t.willis !== null);
  if (carried.length === 0) return null;
  return (
    <div className="on-arms">
      <div className="heading"><h3>Trains on an arm</h3><span className="beside">Willis’s rule: against the arm a train is a plain one; turns for one turn of the crank</span></div>
      <div className="halves">{carried.map((t) => t.willis && <OnArm key={t.id} train={t} willis={t.willis} />)}</div>
    </div>
  );
}

function OnArm({ train, willis }: { readonly train: WrittenTrain; readonly willis: WillisTable }) {
  const { arm, armRate, rows, then } = willis;
  return (
    <div>
      <div className="scroll-x"><table aria-label={`${train.name}, on the arm ${arm}`}>
        <caption>{train.name}, on the arm {arm}</caption>
        <thead><tr><th>arbor</th><th>engaged</th><th className="figure">against {arm}</th><th className="figure">in the frame</th></tr></thead>
        <tbody>
          <tr><td><b>{arm}</b>, the arm</td><td /><td className="figure">0</td><td className="figure">{exact(armRate)}</td></tr>
          {rows.map((r, i) => (
            <tr key={i}><td><b>{r.arbor}</b>{r.fixed ? ", fixed" : ""}</td><td>{engaged(r.by, i === 0)}</td><td className="figure">{exact(r.against)}</td><td className="figure">{exact(r.rate)}</td></tr>
          ))}
          {then.map((s, i) => <tr key={`then ${i}`}><td><b>{s.arbor}</b></td><td>{engaged(s.by, false)}</td><td /><td className="figure">{exact(s.rate)}</td></tr>)}
        </tbody>
      </table></div>
      <p className="note">{says(train, willis)}</p>
    </div>
  );
}

const exact = (r: Ratio): string => writeRatio(r).replace("-", "−");

const engaged = (by: WillisRow["by"], first: boolean): string =>
  (by === null ? (first ? "" : "turn for turn") : `${by.driver} drives ${by.driven}${by.inside ? ", inside" : ""}`);

function says({ against }: WrittenTrain, { arm, armRate, rows, value, arms }: WillisTable): string {
  const [first] = rows, last = rows.at(-1);
  if (!first || !last) return "";
  if (arms) return `The wheels from ${first.arbor} to ${last.arbor} give ${exact(value)} with the arm at rest, so ${arm} turns (${exact(last.rate)} − ${exact(value)} × ${exact(first.rate)}) / (1 − ${exact(value)}) = ${exact(armRate)}.`;
  const read = against === arm ? ` Its dial goes round with ${arm}, so it is read against the arm.` : "";
  return `${first.arbor} turns ${exact(first.rate)} − ${exact(armRate)} = ${exact(first.against)} against the arm; times ${exact(value)} that is ${exact(last.against)}; the arm’s ${exact(armRate)} added, ${exact(last.rate)}.${read}`;
}
