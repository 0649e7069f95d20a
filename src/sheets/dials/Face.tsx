// A dial drawn at its true proportions: rings with their marks and letters, apertures, the pointers in order from below, each
// with its arc of doubt. What turns is turned by the clock, by its data attributes.
import { memo } from "react";
import { type Face as FaceData, type FaceRing, type Mark, type Movement, pointerOf, type PointerPart, type Sheet } from "../../../geometry/index.ts";

/** Colours of pointers, the first for the longest. */
export const HANDS = ["ink", "brass", "blue", "edge"] as const;
/** Which of them a display's pointer has. */
export const handOf = (movement: Movement, display: number): string => {
  const lengths = movement.displays.map((_, i) => pointerOf(movement, i)?.length ?? 0);
  const order = lengths.map((_, i) => i).sort((a, b) => (lengths[b] ?? 0) - (lengths[a] ?? 0));
  return HANDS[order.indexOf(display) % HANDS.length] ?? "ink";
};

interface Props { readonly movement: Movement; readonly sheet: Sheet; readonly face: FaceData }

export const DialFace = memo(function DialFace({ movement, sheet, face }: Props) {
  const pad = face.radiusMm * 0.02 + 0.3, r = face.radiusMm + pad;
  const hands = face.rings.flatMap(({ display }) => {
    const pointer = display === null ? null : pointerOf(movement, display);
    return display === null || !pointer ? [] : [{ display, pointer }];
  }).sort((a, b) => a.pointer.z - b.pointer.z);
  return (
    <svg className="face" viewBox={`${-r} ${-r} ${2 * r} ${2 * r}`} role="img" aria-label={`${face.name}, drawn`}>
      {[...face.rings].reverse().map((ring, i) => <Ring key={i} ring={ring} unit={face.radiusMm / 100} />)}
      {face.apertures.map((a, i) => <path key={i} className="aperture" d={windowPath(a)} />)}
      {hands.map(({ display, pointer }) => (
        <g key={display} data-hand={display} className={`hand ${handOf(movement, display)}`}>
          <Doubt movement={movement} display={display} pointer={pointer} lostDeg={sheet.displays[display]?.lostMotion ?? 0} />
          <path d={handPath(pointer)} />
          <circle r={Math.max(pointer.width * 0.8, 0.02 * face.radiusMm)} />
        </g>
      ))}
    </svg>
  );
});

function Ring({ ring, unit }: { readonly ring: FaceRing; readonly unit: number }) {
  const { insideMm: a, outsideMm: b } = ring, band = b - a;
  const numbers = a + 0.45 * band, size = Math.min(0.52 * band, (2.2 * Math.PI * numbers) / Math.max(8, ring.letters.reduce((n, l) => n + l.text.length + 1, 0)));
  return (
    <g {...(ring.carrier === null ? {} : { "data-carrier": ring.carrier })}>
      <circle className="edge" r={b} style={{ strokeWidth: 0.9 * unit }} /><circle className="rule" r={b - 0.1 * band} style={{ strokeWidth: 0.4 * unit }} /><circle className="edge" r={a} style={{ strokeWidth: 0.5 * unit }} />
      <path className="marks" style={{ strokeWidth: 0.35 * unit }} d={ring.marks.map((m) => markPath(m, b, band)).join("")} />
      <path className="marks" style={{ strokeWidth: 0.8 * unit }} d={ring.marks.filter((m) => m.weight === 2).map((m) => markPath(m, b, band)).join("")} />
      {ring.letters.map((l, i) => (
        <text key={i} className="numeral" fontSize={size} transform={`rotate(${360 * l.turn}) translate(0 ${-numbers}) rotate(${upright(l.turn)})`}>{l.text}</text>
      ))}
      {ring.name !== "" && a > 6 * unit && (
        <text className="title" fontSize={Math.min(4.6 * unit, Math.max(2.4 * unit, 0.34 * a))} transform={`rotate(45) translate(0 ${-a + 4.2 * unit})`}>{ring.name}</text>
      )}
    </g>
  );
}

/** Letters in the lower half stand on their feet. */
const upright = (turn: number): number => (turn > 0.26 && turn < 0.74 ? 180 : 0);

function markPath({ turn, weight }: Mark, b: number, band: number): string {
  const outer = b, inner = b - band * ([0.1, 0.2, 0.28][weight] ?? 0.1), x = Math.sin(2 * Math.PI * turn), y = -Math.cos(2 * Math.PI * turn);
  return `M${(outer * x).toFixed(3)} ${(outer * y).toFixed(3)}L${(inner * x).toFixed(3)} ${(inner * y).toFixed(3)}`;
}

/** A hand within its bar from tail to tip: a spade before the tip, waisted, a counterpoise behind. Points up. */
function handPath({ length: l, tail: t, width: w }: PointerPart): string {
  const half = w / 2, n = (v: number) => v.toFixed(3);
  return `M${n(-half * 0.5)} ${n(0)}L${n(-half * 0.28)} ${n(-0.62 * l)}Q${n(-half)} ${n(-0.72 * l)} ${n(-half * 0.3)} ${n(-0.82 * l)}L0 ${n(-l)}L${n(half * 0.3)} ${n(-0.82 * l)}Q${n(half)} ${n(-0.72 * l)} ${n(half * 0.28)} ${n(-0.62 * l)}`
    + `L${n(half * 0.5)} 0L${n(half * 0.4)} ${n(0.5 * t)}Q${n(half)} ${n(0.7 * t)} ${n(half * 0.7)} ${n(t)}L${n(-half * 0.7)} ${n(t)}Q${n(-half)} ${n(0.7 * t)} ${n(-half * 0.4)} ${n(0.5 * t)}Z`;
}

/** Lost motion, drawn true; a thinner line beyond it for the wander of its tip within the sideshakes that it rides on. */
function Doubt({ movement, display, pointer, lostDeg }: { readonly movement: Movement; readonly display: number; readonly pointer: PointerPart; readonly lostDeg: number }) {
  const wander = wanderDeg(movement, display, pointer);
  const at = pointer.length * 0.98;
  return (
    <>
      {lostDeg > 0 && <path className="doubt" style={{ strokeWidth: 0.05 * pointer.length }} d={arc(at, lostDeg)} />}
      {wander > 0 && <path className="wander" style={{ strokeWidth: 0.012 * pointer.length }} d={arc(at + 0.04 * pointer.length, lostDeg + wander)} />}
    </>
  );
}

/** Degrees that a tip can stand aside by, from end to end, all sideshakes taken one way. */
export function wanderDeg(movement: Movement, display: number, pointer: PointerPart): number {
  const own = movement.arbors[movement.displays[display]?.arbor ?? -1];
  const play = own ? [own, ...own.chain.map((i) => movement.arbors[i])].reduce((sum, a) => sum + (a?.ownSideshake ?? 0), 0) : 0;
  return (Math.atan2(play, pointer.length) * 180) / Math.PI;
}

function arc(radius: number, degrees: number): string {
  const half = (Math.min(degrees, 359) * Math.PI) / 360, x = radius * Math.sin(half), y = -radius * Math.cos(half);
  return `M${(-x).toFixed(3)} ${y.toFixed(3)}A${radius.toFixed(3)} ${radius.toFixed(3)} 0 ${degrees > 180 ? 1 : 0} 1 ${x.toFixed(3)} ${y.toFixed(3)}`;
}

function windowPath({ radius, angle, width, height }: FaceData["apertures"][number]): string {
  const point = (r: number, deg: number) => `${(r * Math.cos((deg * Math.PI) / 180)).toFixed(3)} ${(-r * Math.sin((deg * Math.PI) / 180)).toFixed(3)}`;
  const [a, b] = [Math.max(0, radius - height / 2), radius + height / 2], [from, to] = [angle - width / 2, angle + width / 2], big = width > 180 ? 1 : 0;
  return `M${point(b, from)}A${b} ${b} 0 ${big} 0 ${point(b, to)}L${point(a, to)}A${a} ${a} 0 ${big} 1 ${point(a, from)}Z`;
}
