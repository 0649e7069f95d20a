// The developed elevation: axes in a row, plates as bars, wheels hatched, pipes nested, endshake figured at a shoulder.
// Heights are three times the widths, and the letters are those of the plan.
import { useMemo } from "react";
import { type Finding, type Movement, sweptThings } from "../../../geometry/index.ts";
import { length } from "../../state/figures.ts";
import { useActions } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import { arborOf } from "../words.tsx";
import { DrawnFigure } from "./DrawnFigure.tsx";
import { Hatches } from "./Hatches.tsx";
import { Heights } from "./Heights.tsx";
import { type Bar, layRow, type Row } from "./row.ts";
import { useSize } from "./useSize.ts";

export interface ElevationProps {
  readonly movement: Movement;
  readonly chosen: string | null;
  readonly finding: Finding | null;
  readonly units: Units;
  /** Pixels it may be high, without its letters. */
  readonly high: number;
  /** It is no higher than its box, so that nothing of it is cut off. */
  readonly fills: boolean;
  /** mm each arbor is drawn up or down from where it stands. */
  readonly lifts: readonly number[];
  /** Things are taken hold of, and gaps figured between faces. */
  readonly live: boolean;
}

const ABOVE_PX = 8, LETTERS_PX = 8, LINE_PX = 17;
/** The least that can still be read. */
const LEAST_PX = 60;
/** Pixels over and under the row, for its letters. */
const lettersOf = (row: Row): number => ABOVE_PX + LETTERS_PX + LINE_PX * (1 + Math.max(0, ...row.columns.map((c) => c.line)));
const HATCHED: ReadonlySet<Bar["kind"]> = new Set(["wheel", "disc", "slot", "ratchet", "arm"]);

export function Elevation(props: ElevationProps) {
  const [box, size] = useSize<HTMLDivElement>();
  return <div className="drawing" ref={box}>{size && size.width > 0 && <Drawn {...props} width={size.width} room={props.fills ? size.height : null} />}</div>;
}

function Drawn({ movement, chosen, finding, units, high, lifts, live, width, room }: ElevationProps & { readonly width: number; readonly room: number | null }) {
  const { choose } = useActions();
  const row = useMemo(() => {
    const laid = (height: number) => layRow(movement, sweptThings(movement), { width, height });
    const free = laid(high);
    return room === null || free.height + lettersOf(free) <= room ? free : laid(Math.max(LEAST_PX, room - lettersOf(free)));
  }, [movement, width, high, room]);
  const chosenArbor = arborOf(movement, chosen);
  const markOf = (ids: readonly string[]): string => (finding?.between.some((id) => ids.includes(id)) ? `is-${finding.severity}`
    : ids.some((id) => id === chosen || id === chosenArbor) ? "chosen" : "");
  const pxPerMm = row.yOf(0) - row.yOf(1);
  const liftOf = (arbor: number) => { const lift = lifts[arbor] ?? 0; return lift === 0 ? undefined : `translate(0 ${-lift * pxPerMm})`; };
  const height = row.height + lettersOf(row);
  return (
    <svg className="drawn" viewBox={`0 ${-ABOVE_PX} ${width} ${height}`} style={{ height }} role="group" aria-label="Developed elevation">
      <Hatches />
      {row.plates.map((b) => <g key={b.id} className={markOf([b.id])}><rect className="section plate-bar" x={b.x} y={b.y} width={b.w} height={b.h} /></g>)}
      {row.bars.map((b, i) => (
        <g key={`${b.id} ${i}`} className={`${markOf([b.id])} pick`} onClick={() => choose(b.id)} transform={liftOf(b.arbor)}>
          {sectionsOf(b).map((r, n) => <rect key={n} className={`section ${sectionClass(b)}`} {...r} />)}
          <title>{b.id}</title>
        </g>
      ))}
      {row.columns.map((c) => (
        <g key={c.letters} className={`${markOf(c.arbors)} pick`} onClick={() => choose(c.arbors[0] ?? null)}>
          <text className="letter" x={c.x} y={row.height + 14 + LINE_PX * c.line}>{c.letters}</text>
        </g>
      ))}
      {chosenArbor !== null && <Shake movement={movement} row={row} arbor={chosenArbor} units={units} />}
      {live && <Heights movement={movement} row={row} chosen={chosen} arbor={chosenArbor} pxPerMm={pxPerMm} units={units} />}
      {finding && <Quarrel movement={movement} row={row} finding={finding} />}
    </svg>
  );
}

/** A ring is cut through twice; anything else once. */
function sectionsOf({ x, y, w, h, inner }: Bar): readonly { x: number; y: number; width: number; height: number }[] {
  const wall = w / 2 - inner;
  return inner > 0 && wall > 0 ? [{ x, y, width: wall, height: h }, { x: x + w - wall, y, width: wall, height: h }] : [{ x, y, width: w, height: h }];
}

const sectionClass = ({ kind }: Bar): string => (kind === "arbor" ? "body" : kind === "pointer" ? "pointer" : HATCHED.has(kind) ? "hatched" : "");

/** The endshake of the chosen arbor, at the shoulder where it is free to rise. */
function Shake({ movement, row, arbor, units }: { readonly movement: Movement; readonly row: Row; readonly arbor: string; readonly units: Units }) {
  const at = movement.arbors[movement.arborIndex.get(arbor) ?? -1];
  const column = row.columns.find((c) => c.arbors.includes(arbor));
  if (!at || !column || at.onFrame) return null;
  const y = row.yOf(at.arbor.head - (at.arbor.pivots?.head?.length ?? 0));
  const left = column.x > row.width - 110;
  const x = column.x + (left ? -24 : 24);
  return (
    <g>
      <path className="cross" d={`M${column.x + (left ? -3 : 3)} ${y}L${x} ${y - 14}h${left ? -4 : 4}`} />
      <DrawnFigure x={x + (left ? -7 : 7)} y={y - 10} end={left} text={`shake ${length(at.ownShake.up + at.ownShake.down, units)}`} />
    </g>
  );
}

/** Between the two that quarrel, at the height where they do. */
function Quarrel({ movement, row, finding }: { readonly movement: Movement; readonly row: Row; readonly finding: Finding }) {
  const columns = finding.between.flatMap((id) => {
    const arbor = arborOf(movement, id);
    const column = row.columns.find((c) => arbor !== null && c.arbors.includes(arbor));
    return column ? [column] : [];
  });
  const [a, b] = columns;
  if (!a || !finding.at) return null;
  const y = row.yOf(finding.at.z), to = b?.x ?? a.x, middle = (a.x + to) / 2;
  return (
    <g>
      <path className={`quarrel ${finding.severity}`} d={`M${a.x} ${y}H${to}`} />
      <path className={`spot ${finding.severity}`} d={finding.severity === "foul" ? `M${middle} ${y - 6}l6 6l-6 6l-6 -6Z` : `M${middle + 6} ${y - 6}v12h-12Z`} />
    </g>
  );
}
