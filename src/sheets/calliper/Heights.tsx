// What is taken hold of in the elevation: the chosen part, the shoulders of its arbor, the plates. Beside the chosen part
// the levels that are full, and the gaps to the faces over and under it.
import { type KeyboardEvent, type PointerEvent, useDeferredValue, useMemo, useRef } from "react";
import { mayRise, type Movement } from "../../../geometry/index.ts";
import type { Command } from "../../commands/command.ts";
import { raisePart, raisePlate, setEnd } from "../../commands/heights.ts";
import { length } from "../../state/figures.ts";
import { useBench } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import { keepTried, putTriedBack, tryOut } from "../../state/trial.ts";
import { DrawnFigure } from "./DrawnFigure.tsx";
import { facesOf } from "./faces.ts";
import type { Row } from "./row.ts";

/** mm a key moves it, and with Shift. */
const STEP_MM = 0.005, LONG_STEP_MM = 0.1;
/** Pixels: the least height of what is taken hold of. */
const GRIP_PX = 12;

export function Heights({ movement, row, chosen, arbor: chosenArbor, pxPerMm, units }: {
  readonly movement: Movement; readonly row: Row; readonly chosen: string | null; readonly arbor: string | null; readonly pxPerMm: number; readonly units: Units;
}) {
  const at = movement.arbors[movement.arborIndex.get(chosenArbor ?? "") ?? -1];
  const column = row.columns.find((c) => chosenArbor !== null && c.arbors.includes(chosenArbor));
  const bar = row.bars.find((b) => b.id === chosen && b.kind !== "arbor");
  const part = at?.arbor.parts.find((p) => p.id === chosen);
  return (
    <g>
      {row.plates.map((b) => {
        const plate = movement.instrument.frame.plates.find((p) => p.id === b.id);
        return plate && <Grip key={b.id} label={`Plate ${b.id}`} box={{ x: b.x, y: b.y, w: 22, h: b.h }} z={plate.z} pxPerMm={pxPerMm} command={raisePlate} argsAt={(z) => ({ plate: b.id, z })} />;
      })}
      {at && column && (["foot", "head"] as const).map((end) => (
        <Grip key={`${at.id} ${end}`} label={`${end === "foot" ? "Foot" : "Head"} of ${at.id}`} box={{ x: column.x - 8, y: row.yOf(at.arbor[end]) - GRIP_PX / 2, w: 16, h: GRIP_PX }}
          z={at.arbor[end]} pxPerMm={pxPerMm} command={setEnd} argsAt={(z) => ({ arbor: at.id, end, z })} />
      ))}
      {part && bar && (
        <>
          <Levels movement={movement} part={part.id} x={bar.x - 7} row={row} thickness={part.thickness} />
          <Gaps movement={movement} part={part.id} bar={bar} row={row} units={units} />
          <Grip key={part.id} label={`Height of ${part.id}`} box={bar} z={part.z} pxPerMm={pxPerMm} command={raisePart} argsAt={(z) => ({ part: part.id, z })} />
        </>
      )}
    </g>
  );
}

function Grip<A>({ label, box, z, pxPerMm, command, argsAt }: {
  readonly label: string; readonly box: { readonly x: number; readonly y: number; readonly w: number; readonly h: number };
  readonly z: number; readonly pxPerMm: number; readonly command: Command<A>; readonly argsAt: (z: number) => A;
}) {
  const bench = useBench();
  const hand = useRef<{ readonly y: number; readonly z: number; to: number | null } | null>(null);
  const keyHand = useRef<number | null>(null);
  const down = (event: PointerEvent<SVGRectElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    hand.current = { y: event.clientY, z, to: null };
  };
  const move = (event: PointerEvent<SVGRectElement>) => {
    const held = hand.current;
    if (!held || (held.to === null && Math.abs(event.clientY - held.y) < 3)) return;
    held.to = Math.round((held.z + (held.y - event.clientY) / pxPerMm) * 100) / 100;
    tryOut(bench, command, argsAt(held.to));
  };
  const up = () => {
    if (hand.current?.to != null) keepTried(bench, command, argsAt(hand.current.to));
    hand.current = null;
  };
  const keyed = (event: KeyboardEvent) => {
    const by = event.key === "ArrowUp" ? 1 : event.key === "ArrowDown" ? -1 : 0;
    if (by !== 0) {
      keyHand.current = (keyHand.current ?? z) + by * (event.shiftKey ? LONG_STEP_MM : STEP_MM);
      tryOut(bench, command, argsAt(keyHand.current));
    } else if (event.key === "Enter" && keyHand.current !== null) {
      keepTried(bench, command, argsAt(keyHand.current));
      keyHand.current = null;
    } else if (event.key === "Escape") {
      keyHand.current = null;
      hand.current = null;
      putTriedBack(bench);
    } else return;
    event.preventDefault();
  };
  const h = Math.max(GRIP_PX, box.h);
  return (
    <rect className="grip" x={box.x} y={box.y - (h - box.h) / 2} width={box.w} height={h} tabIndex={0} role="slider" aria-orientation="vertical" aria-label={`${label}: arrows move it, Enter keeps, Escape puts back`}
      aria-valuenow={z} onPointerDown={down} onPointerMove={move} onPointerUp={up} onPointerCancel={() => { hand.current = null; putTriedBack(bench); }} onKeyDown={keyed}
      onBlur={() => { if (keyHand.current !== null) { keyHand.current = null; putTriedBack(bench); } }} />
  );
}

/** Where on its arbor the part may sit: free wide, tight narrower, full dotted. Drawn by the middle of the part. */
function Levels({ movement, part, x, row, thickness }: { readonly movement: Movement; readonly part: string; readonly x: number; readonly row: Row; readonly thickness: number }) {
  const behind = useDeferredValue(movement);
  const rise = useMemo(() => (behind.partIndex.has(part) ? mayRise(behind, part) : null), [behind, part]);
  return (
    <g className="slide">
      {rise?.bands.map((b) => (
        <path key={b.from} className={b.severity} d={`M${x} ${row.yOf(b.from + thickness / 2)}V${row.yOf(b.to + thickness / 2)}`}>
          <title>{b.by === null ? "free" : `${b.severity === "foul" ? "full" : "tight"}: ${b.by}`}</title>
        </path>
      ))}
    </g>
  );
}

function Gaps({ movement, part, bar, row, units }: {
  readonly movement: Movement; readonly part: string; readonly bar: Row["bars"][number]; readonly row: Row; readonly units: Units;
}) {
  const { above, below } = facesOf(movement, part);
  const x = bar.x + bar.w + 8, left = x > row.width - 60;
  const figure = (gap: number, from: number, to: number, text: number) => (
    <g key={from}>
      <path className="dimension" d={`M${x} ${from}V${to}M${x - 4} ${from}h8M${x - 4} ${to}h8`} />
      <DrawnFigure x={left ? x - 7 : x + 7} y={text} end={left} text={length(gap, units)} />
    </g>
  );
  return <>{above && figure(above.gap, bar.y, row.yOf(above.z), bar.y - 3)}{below && figure(below.gap, bar.y + bar.h, row.yOf(below.z), bar.y + bar.h + 12)}</>;
}
