// A small plot with its units on it, and the same as a table for whoever does not see it, or wants the figures.
import { fixed } from "../../state/figures.ts";
import { type Size, useSize } from "../calliper/useSize.ts";
import { ticksOf } from "./scale.ts";

export interface Curve {
  readonly points: readonly (readonly [number, number])[];
  readonly kind: "stands" | "computed";
  readonly says: string;
}

export interface PlotProps {
  readonly title: string;
  /** After the title: the unit, and over what. */
  readonly beside: string;
  readonly along: string;
  readonly range: readonly [number, number];
  /** The least that the height of the plot reaches over. */
  readonly atLeast: readonly [number, number];
  readonly curves: readonly Curve[];
  readonly band?: { readonly from: number; readonly to: number; readonly says: string };
  /** One sentence: what is to be seen. */
  readonly says: string;
  /** A later answer is on its way. */
  readonly behind?: boolean;
  readonly table: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

export function Plot(props: PlotProps) {
  const [box, size] = useSize<HTMLDivElement>();
  const { title, beside, says, table, behind } = props;
  return (
    <figure className="plot" aria-busy={behind ?? false}>
      <figcaption><h3>{title} <span className="beside">{beside}</span></h3></figcaption>
      <div className="plotted" ref={box} role="img" aria-label={says}>{size && size.width > 0 && <Drawn {...props} size={size} />}</div>
      <details>
        <summary>as a table</summary>
        <table>
          <caption className="unseen">{title}, {beside}</caption>
          <thead><tr>{table.heads.map((head) => <th key={head} scope="col" className="figure">{head}</th>)}</tr></thead>
          <tbody>{table.rows.map((row) => <tr key={row[0]}>{row.map((cell, i) => <td key={i} className="figure">{cell}</td>)}</tr>)}</tbody>
        </table>
      </details>
    </figure>
  );
}

const LEFT = 48, RIGHT = 16, TOP = 8, FOOT = 34;

function Drawn({ range, atLeast, curves, band, along, size }: PlotProps & { readonly size: Size }) {
  const values = [...atLeast, ...curves.flatMap((c) => c.points.map((p) => p[1]))];
  const least = Math.min(...values), most = Math.max(...values), spare = 0.12 * (most - least) || 1;
  const low = least - spare, high = most + spare;
  const x = (v: number) => LEFT + ((v - range[0]) / (range[1] - range[0] || 1)) * (size.width - LEFT - RIGHT);
  const y = (v: number) => size.height - FOOT - ((v - low) / (high - low)) * (size.height - TOP - FOOT);
  const up = ticksOf(low, high, 4), over = ticksOf(range[0], range[1], 4);
  const bandTop = band && y(Math.min(high, band.to)), bandFoot = band && y(Math.max(low, band.from));
  return (
    <svg viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true">
      {band && bandTop !== undefined && bandFoot !== undefined && bandFoot > bandTop && <rect className="band" x={LEFT} width={size.width - LEFT - RIGHT} y={bandTop} height={bandFoot - bandTop} />}
      {up.at.map((t) => (
        <g key={t}>
          <line className="grid" x1={LEFT} x2={size.width - RIGHT} y1={y(t)} y2={y(t)} />
          <text className="figure-text" x={LEFT - 6} y={y(t) + 4} textAnchor="end">{fixed(t, up.decimals)}</text>
        </g>
      ))}
      {over.at.map((t) => <text key={t} className="figure-text" x={x(t)} y={size.height - FOOT + 15} textAnchor="middle">{fixed(t, over.decimals)}</text>)}
      <path className="frame" d={`M${LEFT} ${TOP}V${size.height - FOOT}H${size.width - RIGHT}`} />
      {curves.map((c) => <polyline key={c.kind} className={`curve ${c.kind}`} points={c.points.map(([a, b]) => `${x(a).toFixed(1)},${y(b).toFixed(1)}`).join(" ")} />)}
      {curves.map((c, i) => <text key={c.kind} className={`curve-text ${c.kind}`} x={size.width - RIGHT - 4} y={TOP + 12 + 16 * i} textAnchor="end">{c.says}</text>)}
      {band && bandFoot !== undefined && <text className="band-text" x={size.width - RIGHT - 4} y={Math.min(bandFoot, size.height - FOOT) - 5} textAnchor="end">{band.says}</text>}
      <text className="soft" x={(LEFT + size.width) / 2} y={size.height - 3} textAnchor="middle">{along}</text>
    </svg>
  );
}
