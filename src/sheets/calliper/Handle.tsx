// What the hand or the keys take hold of to move an arbor in the plan.
import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import type { Place } from "../../commands/planting.ts";
import { useBench } from "../../state/hooks.ts";
import type { AxisGroup } from "./axes.ts";
import type { Frame } from "./frame.ts";

/** mm a key moves the arbor, and with Shift. */
const STEP_MM = 0.005;
const LONG_STEP_MM = 0.1;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

/** What the hand or the keys take hold of; without a movable arbor it only chooses. */
export function Handle({ axis, ids, movable, frame, snap }: {
  readonly axis: AxisGroup; readonly ids: readonly string[]; readonly movable: string | null; readonly frame: Frame;
  /** Where a hand that is near a place that would be chosen by eye stands instead. */
  readonly snap: ((arbor: string, to: Place) => Place) | null;
}) {
  const { store, actions: { choose, takeUp, moveTo, keep, putBack } } = useBench();
  const hand = useRef<{ readonly x: number; readonly y: number; moved: boolean } | null>(null);
  const keyHand = useRef<{ x: number; y: number } | null>(null);
  const down = (event: PointerEvent<SVGCircleElement>) => {
    if (movable === null || event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    hand.current = { x: event.clientX - frame.k * axis.x, y: event.clientY + frame.k * axis.y, moved: false };
  };
  const move = (event: PointerEvent<SVGCircleElement>) => {
    if (!hand.current || movable === null) return;
    const to = { x: (event.clientX - hand.current.x) / frame.k, y: (hand.current.y - event.clientY) / frame.k };
    if (!hand.current.moved && Math.hypot(to.x - axis.x, to.y - axis.y) * frame.k < 3) return;
    if (!hand.current.moved) takeUp(movable);
    hand.current.moved = true;
    moveTo(snap ? snap(movable, to) : to);
  };
  const keyed = (event: KeyboardEvent<SVGCircleElement>) => {
    const arrow = ARROWS[event.key];
    if (arrow && movable !== null) {
      const step = event.shiftKey ? LONG_STEP_MM : STEP_MM;
      if (!keyHand.current || store.getState().drag?.arbor !== movable) {
        takeUp(movable);
        keyHand.current = { x: axis.x, y: axis.y };
      }
      keyHand.current = { x: keyHand.current.x + step * arrow[0], y: keyHand.current.y + step * arrow[1] };
      moveTo(keyHand.current);
    } else if (event.key === "Enter") {
      if (keyHand.current) keep();
      else choose(movable ?? ids[0] ?? null);
      keyHand.current = null;
    } else if (event.key === "Escape") {
      keyHand.current = null;
      putBack();
    } else return;
    event.preventDefault();
  };
  const name = movable === null ? `Arbor ${ids.join(", ")}` : `Arbor ${movable}: arrows move it, Enter keeps, Escape puts back`;
  const at = { cx: frame.x(axis.x), cy: frame.y(axis.y) };
  return (
    <>
      <circle className="handle" {...at} r={11} tabIndex={0} role="button" aria-label={name} onPointerDown={down} onPointerMove={move}
        onPointerUp={() => { if (hand.current?.moved) keep(); else choose(movable ?? ids[0] ?? null); hand.current = null; }}
        onPointerCancel={() => { hand.current = null; putBack(); }} onKeyDown={keyed} />
      <circle className="ring" {...at} r={13} />
    </>
  );
}
