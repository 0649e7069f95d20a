// The figures of a pair as it stands, beside those at its computed distance.
import type { Severity, Standing } from "../../../geometry/index.ts";
import { fixed, length, unitName } from "../../state/figures.ts";
import type { Units } from "../../state/state.ts";

export function Comparison({ stands, computed, severity, units }: {
  readonly stands: Standing; readonly computed: Standing | null; readonly severity: Severity; readonly units: Units;
}) {
  const rows: readonly [string, (s: Standing) => string][] = [
    [`Backlash, ${unitName(units)}`, (s) => orNone(s.backlashMm, (mm) => length(mm, units, "distance"))],
    ["Contact ratio", (s) => orNone(s.contact?.ratio ?? null, (n) => n.toFixed(2))],
    [`Tip to root, ${unitName(units)}`, (s) => orNone(s.tipToRootMm, (mm) => length(mm, units, "distance"))],
    ["Begins, ends, pitches", (s) => `${orNone(s.contact?.begins ?? null, (n) => fixed(n, 2))}, ${orNone(s.contact?.ends ?? null, (n) => fixed(n, 2))}`],
  ];
  return (
    <table className="comparison">
      <thead><tr><td /><th className="figure" scope="col">as it stands</th><th className="figure" scope="col">computed</th></tr></thead>
      <tbody>
        {rows.map(([name, figure], i) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className={`figure ${i === 0 && severity !== "free" ? severity : ""}`}>{figure(stands)}</td>
            <td className="figure">{computed ? figure(computed) : "none"}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const orNone = (value: number | null, write: (value: number) => string): string => (value === null ? "none" : write(value));
