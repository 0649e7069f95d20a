// The distance typed, stepped, or turned on the fine wheel; what is tried is kept by taking it.
import { type PointerEvent, useEffect, useRef } from "react";
import type { Movement } from "../../../geometry/index.ts";
import { takeDistance } from "../../commands/distance.ts";
import { length, typedLength, unitName } from "../../state/figures.ts";
import { useBench, useNow } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import { type Fine, STEP_MM } from "./useFine.ts";

export function Distance({ movement, engagement, stands, units, fine }: {
  readonly movement: Movement; readonly engagement: string; readonly stands: number; readonly units: Units; readonly fine: Fine;
}) {
  const { store, actions } = useBench();
  const inHand = useNow((s) => s.drag !== null);
  const field = useRef<HTMLInputElement>(null);
  const written = length(stands, units, "distance");
  useEffect(() => { if (field.current && document.activeElement !== field.current) field.current.value = written; }, [written]);
  const typed = (): number | null => {
    const text = field.current?.value ?? written;
    return text === written ? stands : typedLength(text, units);
  };
  /** One step of undo, from where the pair stood before it was tried. */
  const take = () => {
    const mm = typed();
    if (mm !== null) {
      actions.putBack();
      actions.run(takeDistance, { movement: store.getState().worked?.movement ?? movement, engagement, mm });
    }
    const now = store.getState().worked?.movement.engagements.find((e) => e.id === engagement)?.distance;
    if (field.current) field.current.value = now === undefined ? written : length(now, units, "distance");
  };
  const left = () => {
    const mm = typed();
    if (mm !== null && mm !== stands) actions.tryDistance(engagement, mm);
    else if (mm === null && field.current) field.current.value = written;
  };
  return (
    <div className="typed">
      <label className="field">
        <span className="soft">Distance</span>
        <input key={engagement} ref={field} inputMode="decimal" defaultValue={written} onBlur={left}
          onKeyDown={(event) => { if (event.key === "Enter") take(); }} />
        <span className="soft">{unitName(units)}</span>
      </label>
      <span className="joined">
        <button type="button" onClick={() => fine.by(-STEP_MM)}>− {length(STEP_MM, units, "distance")}</button>
        <FineWheel stands={stands} units={units} fine={fine} />
        <button type="button" onClick={() => fine.by(STEP_MM)}>+ {length(STEP_MM, units, "distance")}</button>
      </span>
      <button type="button" className={inHand ? "strong" : ""} onClick={take}>Take the distance</button>
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
