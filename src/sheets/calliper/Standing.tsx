// Where the chosen arbor may stand, drawn on the plan: the true regions in which it would foul hatched, those in which it
// would be tight hatched lighter, and the circle that it slides on in gear: free wide, tight narrower, foul dotted.
import type { MayStand } from "../../../geometry/index.ts";
import { pathText, type Severity } from "../../../geometry/index.ts";
import type { Frame } from "./frame.ts";

export function Standing({ stand, frame }: { readonly stand: MayStand; readonly frame: Frame }) {
  const { k } = frame, turned = `translate(${frame.x(0)} ${frame.y(0)}) scale(${k} ${-k})`;
  return (
    <g className="standing" clipPath="url(#in-plates)">
      <defs>
        <Hatch name="may-not" gap={7 / k} /><Hatch name="would-be-tight" gap={14 / k} />
      </defs>
      <path className="may-not" d={pathText(stand.foul)} transform={turned} fillRule="evenodd" />
      <path className="would-be-tight" d={pathText(stand.tight)} transform={turned} fillRule="evenodd" />
    </g>
  );
}

/** Drawn in the frame's own millimetres, so that lines are as wide on any scale. */
function Hatch({ name, gap }: { readonly name: string; readonly gap: number }) {
  return (
    <pattern id={name} width={gap} height={gap} patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
      <line className={`${name}-line`} x1="0" y1="0" x2="0" y2={gap} vectorEffect="non-scaling-stroke" />
    </pattern>
  );
}

/** The circle it slides on; over everything else, so that it is never hidden. */
export function SlideArcs({ stand: { slide }, frame }: { readonly stand: MayStand; readonly frame: Frame }) {
  if (!slide) return null;
  const at = (deg: number) => [frame.x(slide.x + slide.radius * Math.cos((deg * Math.PI) / 180)), frame.y(slide.y + slide.radius * Math.sin((deg * Math.PI) / 180))] as const;
  const r = slide.radius * frame.k;
  return (
    <g className="slide" aria-hidden="true">
      {slide.arcs.map(({ from, to, severity }) => {
        if (to - from >= 360) return <circle key={from} className={severity} cx={frame.x(slide.x)} cy={frame.y(slide.y)} r={r} />;
        const [x0, y0] = at(from), [x1, y1] = at(to);
        return <path key={from} className={severity} d={`M${x0} ${y0}A${r} ${r} 0 ${to - from > 180 ? 1 : 0} 0 ${x1} ${y1}`} />;
      })}
    </g>
  );
}

/** The arcs on which it stands well, in words: "−14° to 1°"; null where it is held by nothing or may stand nowhere. */
export function arcsInWords({ slide }: MayStand, severity: Severity): string | null {
  if (!slide) return null;
  const arcs = slide.arcs.filter((a) => a.severity === severity);
  if (arcs.some((a) => a.to - a.from >= 360)) return "all round";
  return arcs.map((a) => `${degrees(a.from)} to ${degrees(a.to)}`).join(", ") || null;
}

const degrees = (deg: number): string => `${Math.round(((deg + 180) % 360 + 360) % 360 - 180)}°`.replace("-", "−");
