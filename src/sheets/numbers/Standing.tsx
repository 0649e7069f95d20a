// The train as it stands: every pointer with the wheels that lead to it from the crank, what it should do and what it
// does; then every arbor with its exact rate and sense from both sides.
import { daysOf, type Movement, trainTable, trainTo, type TrainStep, type WrittenTrain, writeRatio } from "../../../geometry/index.ts";
import { Choice } from "../../head/Choice.tsx";
import { grouped } from "../../state/dates.ts";
import { fixed } from "../../state/figures.ts";
import { useActions } from "../../state/hooks.ts";
import { type Over, Train, type Writing, WRITING_WORDS, WRITINGS } from "./Fractions.tsx";
import { OnArms } from "./OnArm.tsx";
import { sixths } from "./words.ts";

export const oversOf = (steps: readonly TrainStep[]): Over[] =>
  steps.flatMap((s) => (s.driver === null || s.driven === null ? [] : [{ over: s.driven, under: s.driver }]));

export function Pointers({ movement, chosen, way, onWay }: {
  readonly movement: Movement; readonly chosen: string | null; readonly way: Writing; readonly onWay: (way: Writing) => void;
}) {
  const table = trainTable(movement);
  return (
    <section>
      <div className="heading">
        <h2 id="train">The train as it stands</h2><span className="beside">wheels over pinions, turns multiplied down</span>
        <span className="end"><Choice label="How a train is written" of={WRITINGS} words={WRITING_WORDS} now={way} onChoose={onWay} /></span>
      </div>
      <div className="scroll-x">
        <table aria-labelledby="train">
          <thead>
            <tr>
              <th>pointer</th><th>arbor</th><th>from the crank, {movement.instrument.input.arbor}</th><th>seen from the dial</th>
              <th className="figure">one turn, days</th><th className="figure">wanted</th><th className="figure">degrees a year</th>
              <th className="figure">one division wrong after</th>
            </tr>
          </thead>
          <tbody>{table.map((t) => <Pointer key={t.id} train={t} here={t.arbor === chosen} way={way} table={table} />)}</tbody>
        </table>
      </div>
      <OnArms table={table} />
    </section>
  );
}

function Pointer({ train, here, way, table }: {
  readonly train: WrittenTrain; readonly here: boolean; readonly way: Writing; readonly table: readonly WrittenTrain[];
}) {
  const { choose } = useActions();
  const { degreesPerYear, yearsToOneDivision: years, days, wanted } = train;
  return (
    <tr className={`pick ${here ? "here" : ""}`} onClick={() => choose(train.arbor)}>
      <td><h3>{train.name}</h3></td>
      <td><button type="button" className="plain" onClick={() => choose(train.arbor)}><b>{train.arbor}</b></button></td>
      <td title={sharedSays(train, table)}>
        {train.steps === null ? <span className="soft" title={train.says ?? ""}>{train.rate ? `${writeRatio(train.rate).replace("-", "−")}${train.willis ? `, on the arm ${train.willis.arm}` : ""}` : "not driven"}</span>
          : <Train of={oversOf(train.steps.slice(train.leadsFrom?.after ?? 0))} way={way} from={train.leadsFrom?.arbor ?? null} />}
        {train.against !== null && <span className="soft"> against {train.against}</span>}
      </td>
      <td>{train.dialSide ?? "does not turn"}</td>
      <td className="figure" title={train.rate ? `${writeRatio(train.rate)} of a turn` : ""}>{days === null ? "–" : sixths(Math.abs(days))}</td>
      <td className="figure soft">{wanted === null ? "–" : sixths(wanted)}</td>
      <td className="figure">{degreesPerYear === null ? "–" : degreesPerYear === 0 ? "0" : fixed(degreesPerYear, 4)}</td>
      <td className="figure">{degreesPerYear === null ? "–" : years === null ? "never" : `${grouped(years, years < 10 ? 1 : 0)} years`}</td>
    </tr>
  );
}

/** Which other pointers its wheels serve. */
function sharedSays(train: WrittenTrain, table: readonly WrittenTrain[]): string {
  const others = new Set((train.steps ?? []).flatMap((s) => s.serves).filter((id) => id !== train.id));
  const names = table.filter((t) => others.has(t.id)).map((t) => t.name);
  return names.length === 0 ? "" : `Wheels shared with ${names.join(", ")}`;
}

export function Arbors({ movement, chosen, way }: { readonly movement: Movement; readonly chosen: string | null; readonly way: Writing }) {
  const { choose } = useActions();
  return (
    <section>
      <div className="heading"><h2 id="arbors">Every arbor</h2><span className="beside">for one turn of the crank; + the same way round</span></div>
      <div className="scroll-x">
        <table aria-labelledby="arbors">
          <thead>
            <tr><th>arbor</th><th>name</th><th>from the crank</th><th className="figure">turns, exact</th><th className="figure">one turn, days</th><th>dial side</th><th>back side</th></tr>
          </thead>
          <tbody>
            {movement.arbors.map((a, i) => {
              const days = daysOf(movement, a.rate), steps = trainTo(movement, i), last = steps?.at(-1);
              const input = movement.instrument.input.sense;
              return (
                <tr key={a.id} className={`pick ${a.id === chosen ? "here" : ""}`} onClick={() => choose(a.id)}>
                  <td><button type="button" className="plain" onClick={() => choose(a.id)}><b>{a.id}</b></button></td>
                  <td>{a.arbor.name ?? ""}</td>
                  <td>{steps === null ? <span className="soft">no plain train</span> : <Train of={oversOf(steps)} way={way === "columns" ? "fractions" : way} />}</td>
                  <td className="figure">{a.rate === null ? (a.bound ? "bound" : "not driven") : writeRatio(a.rate).replace("-", "−")}</td>
                  <td className="figure">{days === null ? "–" : sixths(days)}</td>
                  <td>{last?.dialSide ?? (steps ? input : "–")}</td>
                  <td>{last?.backSide ?? (steps ? (input === "clockwise" ? "anticlockwise" : "clockwise") : "–")}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
