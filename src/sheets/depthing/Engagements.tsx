// Every engagement with its state, worst first, or sorted by any column.
import { type ReactNode, useState } from "react";
import type { Movement } from "../../../geometry/index.ts";
import { length } from "../../state/figures.ts";
import type { Units } from "../../state/state.ts";
import { depthOf, type DepthWord, type EngagementRow } from "../depth.ts";
import { Mark } from "../Severity.tsx";
import { pairCounts } from "../words.tsx";

type Column = "pair" | "distance" | "backlash" | "depth";
interface Order { readonly by: Column; readonly up: boolean }
interface Row { readonly row: EngagementRow; readonly depth: DepthWord }

const GRAVITY = { foul: 0, tight: 1, free: 2 } as const;
const COMPARE: Record<Column, (a: Row, b: Row) => number> = {
  pair: (a, b) => a.row.id.localeCompare(b.row.id, "en", { numeric: true }),
  distance: (a, b) => a.row.distance - b.row.distance,
  backlash: (a, b) => (a.row.backlash ?? -Infinity) - (b.row.backlash ?? -Infinity),
  depth: (a, b) => GRAVITY[a.depth.severity] - GRAVITY[b.depth.severity],
};

export function Engagements({ movement, rows, here, units, onPick }: {
  readonly movement: Movement; readonly rows: readonly EngagementRow[]; readonly here: EngagementRow | null; readonly units: Units;
  readonly onPick: (row: EngagementRow) => void;
}) {
  const [order, setOrder] = useState<Order>({ by: "depth", up: true });
  const sorted = rows.map((row) => ({ row, depth: depthOf(movement, row) }))
    .sort((a, b) => (order.up ? 1 : -1) * COMPARE[order.by](a, b));
  const head = (by: Column, says: ReactNode, figure = false) => (
    <th scope="col" className={figure ? "figure" : ""} aria-sort={order.by !== by ? "none" : order.up ? "ascending" : "descending"}>
      <button type="button" className="plain" onClick={() => setOrder({ by, up: order.by === by ? !order.up : true })}>
        {says}<span aria-hidden="true">{order.by === by ? (order.up ? " ↓" : " ↑") : ""}</span>
      </button>
    </th>
  );
  return (
    <section className="engagements">
      <div className="heading"><h2 id="pairs">Engagements</h2><span className="beside">{order.by === "depth" ? (order.up ? "worst first" : "worst last") : `by ${order.by}`}</span></div>
      <table aria-labelledby="pairs">
        <thead><tr>{head("pair", "pair")}{head("distance", "distance", true)}{head("backlash", "backlash", true)}{head("depth", "depth")}</tr></thead>
        <tbody>
          {sorted.map(({ row, depth }) => (
            <tr key={row.id} className={`pick ${row.id === here?.id ? "here" : ""}`} onClick={() => onPick(row)}>
              <td className="nowrap">
                <Mark severity={depth.severity} />{" "}
                <button type="button" className="plain" aria-current={row.id === here?.id} onClick={(event) => { event.stopPropagation(); onPick(row); }}>{row.driver}–{row.driven}</button>
                <span className="soft">{pairCounts(movement, row.driver, row.driven)}</span>
              </td>
              <td className="figure">{length(row.distance, units, "distance")}</td>
              <td className={`figure ${depth.severity === "free" ? "" : depth.severity}`}>{row.backlash === null ? "none" : length(row.backlash, units, "distance")}</td>
              <td className={`nowrap ${depth.severity}`}>{depth.word}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
