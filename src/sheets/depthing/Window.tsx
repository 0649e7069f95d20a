// The window as a scale: deep, right, shallow and letting go, where the pair stands, and the computed distance. The mark
// can be taken hold of, turned by a wheel, and moved by keys.
import type { PointerEvent } from "react";
import { length, unitName } from "../../state/figures.ts";
import type { Units } from "../../state/state.ts";
import { type Size, useSize } from "../calliper/useSize.ts";
import { rangeOf, ticksOf, type Zone, zoneAt, type ZoneName, zonesOf } from "./scale.ts";
import type { Window as Limits } from "../../../geometry/index.ts";
import type { Fine } from "./useFine.ts";

export interface WindowProps {
  readonly limits: Limits;
  readonly isAnnulus: boolean;
  readonly stands: number;
  readonly computed: number | null;
  readonly units: Units;
  readonly fine: Fine;
}

export function Window(props: WindowProps) {
  const [box, size] = useSize<HTMLDivElement>();
  const { limits, isAnnulus, stands, computed, units, fine } = props;
  const range = rangeOf(limits, computed === null ? [stands] : [stands, computed]);
  const zones = zonesOf(limits, isAnnulus, range), zone = zoneAt(zones, stands);
  return (
    <div className="window" ref={box} role="slider" tabIndex={0} aria-label="Distance of the pair, tried" aria-orientation="horizontal"
      aria-valuemin={Number(range[0].toFixed(3))} aria-valuemax={Number(range[1].toFixed(3))} aria-valuenow={Number(stands.toFixed(3))}
      aria-valuetext={`${length(stands, units, "distance")} ${unitName(units)}${zone ? `, ${WORDS[zone]}` : ""}`} onKeyDown={fine.keyed}>
      {size && size.width > 0 && <Drawn {...props} range={range} zones={zones} size={size} />}
    </div>
  );
}

const WORDS: Record<ZoneName, string> = { binds: "deep", deep: "deep", right: "right", shallow: "shallow", "lets go": "lets go" };
const KIND: Record<ZoneName, "foul" | "tight" | "free"> = { binds: "foul", deep: "tight", right: "free", shallow: "tight", "lets go": "foul" };
const TOP = 42, HIGH = 18, FOOT = TOP + HIGH;

function Drawn({ stands, computed, units, fine, range, zones, size }: WindowProps & {
  readonly range: readonly [number, number]; readonly zones: readonly Zone[]; readonly size: Size;
}) {
  const [low, high] = range, margin = 14, across = size.width - 2 * margin;
  const x = (mm: number) => margin + ((mm - low) / (high - low)) * across;
  const held = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    fine.to(low + ((event.clientX - box.left - margin) / across) * (high - low));
  };
  const inch = units === "inch" ? 25.4 : 1;
  const ticks = ticksOf(low / inch, high / inch, Math.max(3, size.width / 110)), fifth = ticksOf(low / inch, high / inch, 5 * ticks.at.length);
  const at = x(stands), left = Math.min(Math.max(at, 60), size.width - 60);
  return (
    <svg ref={fine.wheel} viewBox={`0 0 ${size.width} ${HEIGHT}`} aria-hidden="true"
      onPointerDown={(event) => { event.currentTarget.setPointerCapture(event.pointerId); held(event); }}
      onPointerMove={(event) => { if (event.buttons === 1) held(event); }}>
      <Hatch />
      {zones.map((zone) => <ZoneBar key={zone.name} zone={zone} x={x} all={zones} />)}
      {zones.length === 0 && <text x={size.width / 2} y={TOP + 13} textAnchor="middle" className="no-window">no distance at which they work</text>}
      <path className="ruled" d={`M${margin} ${FOOT}H${size.width - margin}${fifth.at.map((t) => `M${x(t * inch)} ${FOOT}v4`).join("")}${ticks.at.map((t) => `M${x(t * inch)} ${FOOT}v8`).join("")}`} />
      {ticks.at.map((t) => <text key={t} className="figure-text" x={x(t * inch)} y={FOOT + 21} textAnchor="middle">{t.toFixed(Math.max(ticks.decimals, units === "mm" ? 3 : 4))}</text>)}
      {computed !== null && (
        <>
          <line className="computed" x1={x(computed)} x2={x(computed)} y1={TOP - 5} y2={FOOT + 26} />
          <text className="blue" x={Math.min(Math.max(x(computed), 74), size.width - 74)} y={FOOT + 40} textAnchor="middle">computed <tspan className="mono">{length(computed, units, "distance")}</tspan></text>
        </>
      )}
      <line className="stands" x1={at} x2={at} y1={26} y2={FOOT + 4} />
      <path className="stands-mark" d={`M${at - 6} 17h12l-6 10Z`} />
      <text className="strong-text" x={left} y={12} textAnchor="middle">stands at <tspan className="mono">{length(stands, units, "distance")}</tspan></text>
    </svg>
  );
}

const HEIGHT = FOOT + 46;
/** px under which a zone's word has no room. */
const WORD_PX: Record<ZoneName, number> = { binds: 34, deep: 34, right: 30, shallow: 48, "lets go": 48 };

function ZoneBar({ zone, x, all }: { readonly zone: Zone; readonly x: (mm: number) => number; readonly all: readonly Zone[] }) {
  const left = x(zone.from), width = x(zone.to) - left, isFoul = KIND[zone.name] === "foul";
  // Both stretches that are deep are named once, on the wider.
  const other = zone.name === "deep" ? "binds" : zone.name === "binds" ? "deep" : null;
  const twin = all.find((z) => z.name === other), named = !twin || zone.to - zone.from >= twin.to - twin.from;
  return (
    <g className={`zone ${KIND[zone.name]}`}>
      <rect x={left} y={TOP} width={width} height={HIGH} fill={isFoul ? "url(#foul-hatch)" : undefined} />
      {named && width > WORD_PX[zone.name] && <text x={left + width / 2} y={TOP - 6} textAnchor="middle">{WORDS[zone.name]}</text>}
    </g>
  );
}

function Hatch() {
  return (
    <defs>
      <pattern id="foul-hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className="foul-line" x1="0" x2="0" y1="0" y2="6" />
      </pattern>
    </defs>
  );
}
