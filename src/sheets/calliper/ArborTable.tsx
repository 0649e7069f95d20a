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
          <PlaceRow arbor={arbor} movement={movement} at={at} movable={fixed === null} />
          {stand && <StandRow stand={stand} />}
          <tr>
            <td>one turn</td>
            <td className="figure">{oneTurn(movement, at)}</td>
          </tr>
          {full && fixed === null && <SteadyRow arbor={arbor} steady={at.arbor.steady === true} />}
        </tbody>
      </table>
      {engaged.length > 0 && <Engaged movement={movement} rows={engaged} arbor={arbor} full={full} />}
      {fixed && <p className="note">{fixed}</p>}
    </>
  );
}

/** With what it is engaged, how far from it, and how the depth is; there is room for more figures on the wide sheet. */
function Engaged({ movement, rows, arbor, full }: { readonly movement: Movement; readonly rows: readonly EngagementRow[]; readonly arbor: string; readonly full: boolean }) {
  const units = useNow((s) => s.units);
  const written = (mm: number | null) => (mm === null ? "none" : length(mm, units, "distance"));
  return (
    <table className="engaged" aria-label={`Engagements of ${arbor}`}>
      <thead><tr>
        <th>in gear</th><th className="figure">distance</th>{full && <><th className="figure">computed</th><th className="figure">backlash</th><th className="figure">contact</th></>}<th className="figure">depth</th>
      </tr></thead>
      <tbody>{rows.map((row) => {
        const { severity, word } = depthOf(movement, row);
        return (
          <tr key={row.id}>
            <td><b className="nowrap">{row.driver}–{row.driven}</b> <span className="soft nowrap">{pairCounts(movement, row.driver, row.driven)}</span></td>
            <td className="figure">{written(row.distance)}</td>
            {full && (
              <>
                <td className="figure soft">{written(row.computed)}</td>
                <td className="figure" data-backlash={row.id}>{written(row.backlash)}</td>
                <td className="figure">{row.contactRatio === null ? "none" : row.contactRatio.toFixed(2)}</td>
              </>
            )}
            <td className={`figure ${severity}`}>{word}</td>
          </tr>
        );
      })}</tbody>
    </table>
  );
}

function PlaceRow({ arbor, movement, at, movable }: {
  readonly arbor: string; readonly movement: Movement; readonly at: { readonly x: number; readonly y: number }; readonly movable: boolean;
}) {
  const units = useNow((s) => s.units);
  const { run } = useActions();
  const field = (axis: "x" | "y") => {
    const stands = length(at[axis], units, "distance");
    const argsFor = (mm: number) => ({ arbor, x: at.x, y: at.y, [axis]: mm });
    return movable ? <Typed key={axis} label={`${axis} of ${arbor} in ${unitName(units)}`} stands={stands} read={ifDone(lengthIn(units), movement.instrument, plantArbor, argsFor)}
      take={(mm: number) => run(plantArbor, argsFor(mm))} width="8ch" /> : stands;
  };
  return (
    <tr>
      <td>x, y <span className="soft">{unitName(units)}</span></td>
      <td className="figure pair">{field("x")}{movable ? " " : ", "}{field("y")}</td>
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
      <td className={`figure may-stand ${free ? "free" : tight ? "tight" : stand.at.severity}`}>{says?.replaceAll(" to ", "\u00a0to\u00a0") ?? (stand.slide ? "nowhere on its arc" : `${stand.at.severity} here`)}</td>
    </tr>
  );
}

function SteadyRow({ arbor, steady }: { readonly arbor: string; readonly steady: boolean }) {
  const { run } = useActions();
  return (
    <tr>
      <td>no search may move it</td>
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
