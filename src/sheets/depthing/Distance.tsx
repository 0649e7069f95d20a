// The distance typed, stepped, or turned on the fine wheel; what is tried is kept by taking it.
import { type PointerEvent, useRef } from "react";
import type { Movement } from "../../../geometry/index.ts";
import { atDistance } from "../../commands/distance.ts";
import { takeDistance } from "../../commands/take-distance.ts";
import { length, unitName } from "../../state/figures.ts";
import { useBench, useNow } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import { lengthIn } from "../reading.ts";
import { isRead, type Read, Typed } from "../Typed.tsx";
import { type Fine, STEP_MM } from "./useFine.ts";

export function Distance({ movement, engagement, stands, units, fine }: {
  readonly movement: Movement; readonly engagement: string; readonly stands: number; readonly units: Units; readonly fine: Fine;
}) {
  const { store, actions } = useBench();
  const inHand = useNow((s) => s.drag !== null);
  /** One step of undo, from where the pair stood before it was tried. */
  const take = (mm: number) => {
    actions.putBack();
    return actions.run(takeDistance, { movement: store.getState().worked?.movement ?? movement, engagement, mm });
  };
  const read = (text: string): Read<number> => {
    const typed = lengthIn(units)(text), slid = isRead(typed) ? atDistance(movement.instrument, movement, engagement, typed.value) : null;
    return slid && "refused" in slid ? { refused: slid.refused } : typed;
  };
  return (
    <div className="typed">
      <Typed key={engagement} label="Distance" before="Distance" stands={length(stands, units, "distance")} read={read} take={take}
        leave={(mm) => actions.tryDistance(engagement, mm)} unit={unitName(units)} />
      <span className="joined">
        <button type="button" onClick={() => fine.by(-STEP_MM)}>− {length(STEP_MM, units, "distance")}</button>
        <FineWheel stands={stands} units={units} fine={fine} />
        <button type="button" onClick={() => fine.by(STEP_MM)}>+ {length(STEP_MM, units, "distance")}</button>
      </span>
      <button type="button" className={inHand ? "strong" : ""} onClick={() => take(stands)}>Take the distance</button>
      {inHand && <button type="button" onClick={actions.putBack}>Put back</button>}
    </div>
  );
}

/** px of the fine wheel that move the distance by a step. */
const STEP_PX = 4;

function FineWheel({ stands, units, fine }: { readonly stands: number; readonly units: Units; readonly fine: Fine }) {
  const held = useRef<{ readonly x: number; readonly mm: number } | null>(null);
  const down = (event: PointerEvent<HTMLDivElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { x: event.clientX, mm: stands };
  };
  const move = (event: PointerEvent<HTMLDivElement>) => {
    if (held.current) fine.to(held.current.mm + Math.round((event.clientX - held.current.x) / STEP_PX) * STEP_MM);
  };
  const letGo = () => { held.current = null; };
  return (
    <div className="fine-wheel" ref={fine.wheel} role="slider" tabIndex={0} aria-label="Fine wheel" aria-valuenow={Number(stands.toFixed(3))}
      aria-valuemin={0} aria-valuemax={10_000} aria-valuetext={`${length(stands, units, "distance")} ${unitName(units)}`} title="Turn it, or use the arrow keys: 0.005 mm a step, with Shift 0.1"
      onKeyDown={fine.keyed} onPointerDown={down} onPointerMove={move} onPointerUp={letGo} onPointerCancel={letGo}>
      <svg aria-hidden="true" width="72" height="30">
        {Array.from({ length: 20 }, (_, i) => {
          const at = (((i * STEP_PX + (stands / STEP_MM) * STEP_PX) % 80) + 80) % 80 - 4;
          // The knurl of a round wheel, seen from its edge.
          const x = 36 + 36 * Math.sin((Math.max(-36, Math.min(36, at - 36)) / 36) * (Math.PI / 2));
          return <line key={i} x1={x} x2={x} y1={4} y2={26} />;
        })}
      </svg>
    </div>
  );
}
