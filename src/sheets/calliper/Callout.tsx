// The smallest gap of the calliper on the plan: the two named, the gap and what is wanted figured, with a leader to where they come so near.
import type { SmallestGap } from "../../../geometry/index.ts";
import { length } from "../../state/figures.ts";
import { useNow } from "../../state/hooks.ts";
import { SHAPES } from "../Severity.tsx";
import { type Box, placeCallout } from "./callout.ts";
import type { Frame } from "./frame.ts";
import type { Size } from "./useSize.ts";

const HEIGHT_PX = 42, PADDING_PX = 9;
/** Of a letter of the names and of a figure, at the most. */
const LETTER_PX = 8.5, FIGURE_PX = 7.9;

export function Callout({ least, frame, size, keepClear }: { readonly least: SmallestGap; readonly frame: Frame; readonly size: Size; readonly keepClear: readonly Box[] }) {
  const units = useNow((s) => s.units);
  const names = least.between.join(" and "), figures = `${length(least.gap, units)} of ${length(least.wanted, units)}`;
  const width = 2 * PADDING_PX + 20 + Math.max(names.length * LETTER_PX, figures.length * FIGURE_PX);
  const at = { x: frame.x(least.at.x), y: frame.y(least.at.y) };
  const place = placeCallout(at, { width, height: HEIGHT_PX }, keepClear, size);
  return (
    <g className={`callout ${least.severity}`} aria-hidden="true">
      <path className="leader" d={`M${place.from.x} ${place.from.y}L${at.x} ${at.y}`} />
      <circle className="place" cx={at.x} cy={at.y} r={4} />
      <rect className="words" x={place.x} y={place.y} width={width} height={HEIGHT_PX} />
      <path className="sign" d={SHAPES[least.severity]} transform={`translate(${place.x + PADDING_PX} ${place.y + 7})`} />
      <text className="names" x={place.x + PADDING_PX + 20} y={place.y + 17}>{names}</text>
      <text className="figures" x={place.x + PADDING_PX + 20} y={place.y + 34}>{figures}</text>
    </g>
  );
}
