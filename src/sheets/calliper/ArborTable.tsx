// The chosen arbor's figures: where it stands (typed or dragged), the distances of its engagements and how each depth
// is. They change while it is moved.
import { type MayStand, type Movement, toNumber } from "../../../geometry/index.ts";
import { cannotMove, holdSteady, plantArbor } from "../../commands/planting.ts";
import { Choice } from "../../head/Choice.tsx";
import { fixed, length, unitName } from "../../state/figures.ts";
import { grouped } from "../../state/dates.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import { depthOf, type EngagementRow } from "../depth.ts";
import { anAngle, ifDone, lengthIn } from "../reading.ts";
import { Typed } from "../Typed.tsx";
import { pairCounts, thingInWords } from "../words.tsx";
import { arcsInWords } from "./Standing.tsx";

export function ArborTable({ movement, rows, arbor, full, stand }: {
  readonly movement: Movement; readonly rows: readonly EngagementRow[]; readonly arbor: string; readonly full: boolean; readonly stand: MayStand | null;
}) {
  const units = useNow((s) => s.units);
  const at = movement.arbors[movement.arborIndex.get(arbor) ?? -1];
  if (!at) return null;
  const engaged = rows.filter((r) => r.driverArbor === arbor || r.drivenArbor === arbor);
  const fixed = cannotMove(movement.instrument, arbor);
  const { kind } = thingInWords(movement, arbor);
  return (
    <>
      <h3>{kind.charAt(0).toUpperCase() + kind.slice(1)} {arbor}{at.arbor.name ? <span className="beside">, {at.arbor.name}</span> : null}</h3>
      <table aria-label={`Figures of ${kind} ${arbor}`}>
        <tbody>
          {stand?.slide && <AngleRow slide={stand.slide} root={stand.arbor} at={at} />}
          <PlaceRow axis="x" arbor={arbor} movement={movement} at={at} movable={fixed === null} />
          <PlaceRow axis="y" arbor={arbor} movement={movement} at={at} movable={fixed === null} />
          {stand && <StandRow stand={stand} />}
          {engaged.map((r) => (
            <tr key={r.id}>
              <td><b>{r.driverArbor}</b> to <b>{r.drivenArbor}</b></td>
              <td className="figure">{length(r.distance, units, "distance")}</td>
            </tr>
          ))}
          {engaged.map((r) => <DepthRows key={r.id} movement={movement} row={r} full={full} />)}
          <tr>
            <td>one turn</td>
            <td className="figure">{oneTurn(movement, at)}</td>
          </tr>
          {full && fixed === null && <SteadyRow arbor={arbor} steady={at.arbor.steady === true} />}
        </tbody>
      </table>
      {fixed && <p className="note">{fixed}</p>}
    </>
  );
}

function DepthRows({ movement, row, full }: { readonly movement: Movement; readonly row: EngagementRow; readonly full: boolean }) {
  const units = useNow((s) => s.units);
  const depth = depthOf(movement, row);
  return (
    <>
      <tr>
        <td>{row.driver}–{row.driven}, <span className="nowrap">{pairCounts(movement, row.driver, row.driven)}</span></td>
        <td className={`figure ${depth.severity}`}>{depth.word}</td>
      </tr>
      {full && (
        <tr>
          <td className="soft">backlash, contact ratio</td>
          <td className="figure" data-backlash={row.id}>
            {row.backlash === null ? "none" : length(row.backlash, units, "distance")}, {row.contactRatio === null ? "none" : row.contactRatio.toFixed(2)}
          </td>
        </tr>
      )}
      {full && row.computed !== null && (
        <tr><td className="soft">computed distance</td><td className="figure">{length(row.computed, units, "distance")}</td></tr>
      )}
    </>
  );
}

function PlaceRow({ axis, arbor, movement, at, movable }: {
  readonly axis: "x" | "y"; readonly arbor: string; readonly movement: Movement; readonly at: { readonly x: number; readonly y: number }; readonly movable: boolean;
}) {
  const units = useNow((s) => s.units);
  const { run } = useActions();
  const stands = length(at[axis], units, "distance");
  const argsFor = (mm: number) => ({ arbor, x: at.x, y: at.y, [axis]: mm });
  return (
    <tr>
      <td>{axis}</td>
      <td className="figure">
        {movable ? <Typed label={`${axis} of ${arbor} in ${unitName(units)}`} stands={stands} read={ifDone(lengthIn(units), movement.instrument, plantArbor, argsFor)}
          take={(mm: number) => run(plantArbor, argsFor(mm))} unit={unitName(units)} /> : stands}
      </td>
    </tr>
  );
}

/** Where on its circle it stands: typed in degrees, its distance kept. */
function AngleRow({ slide, root, at }: { readonly slide: NonNullable<MayStand["slide"]>; readonly root: string; readonly at: { readonly x: number; readonly y: number } }) {
  const { run } = useActions();
  const take = (deg: number) => {
    const rad = (deg * Math.PI) / 180;
    return run(plantArbor, { arbor: root, x: slide.x + slide.radius * Math.cos(rad), y: slide.y + slide.radius * Math.sin(rad) });
  };
  return (
    <tr>
      <td>angle on its arc, about {slide.about}</td>
      <td className="figure">
        <Typed label={`Angle of ${root} on its arc in degrees`} stands={fixed((Math.atan2(at.y - slide.y, at.x - slide.x) * 180) / Math.PI, 1)} read={anAngle} take={take} unit="°" />
      </td>
    </tr>
  );
}

function StandRow({ stand }: { readonly stand: MayStand }) {
  const free = arcsInWords(stand, "free"), tight = arcsInWords(stand, "tight");
  const says = free ?? (tight === null ? null : `${tight}, tight`);
  if (stand.holds !== null) return <tr><td>may stand</td><td className="figure soft">held: {stand.holds}</td></tr>;
  return (
    <tr>
      <td>may stand</td>
      <td className={`figure ${free ? "free" : tight ? "tight" : stand.at.severity}`}>{says ?? (stand.slide ? "nowhere on its arc" : `${stand.at.severity} here`)}</td>
    </tr>
  );
}

function SteadyRow({ arbor, steady }: { readonly arbor: string; readonly steady: boolean }) {
  const { run } = useActions();
  return (
    <tr>
      <td>Steady, no search may move it</td>
      <td><Choice label={`Hold ${arbor} steady`} of={["Yes", "No"]} now={steady ? "Yes" : "No"} onChoose={(to) => run(holdSteady, { arbor, steady: to === "Yes" })} /></td>
    </tr>
  );
}

function oneTurn(movement: Movement, { rate, bound }: Movement["arbors"][number]): string {
  if (bound) return "bound";
  if (rate === null) return "not driven";
  const turns = toNumber(rate);
  return turns === 0 ? "stands still" : `${grouped(Math.abs(movement.instrument.input.days / turns), 3)} d`;
}
