// The fine ways to move a distance: arrow keys and a wheel by 0.005 mm, with Shift by 0.1; Enter keeps, Escape puts back.
// Nothing is kept before that: the arbor is in hand meanwhile.
import { type KeyboardEvent, type RefCallback, useMemo } from "react";
import { useBench } from "../../state/hooks.ts";

/** mm */
export const STEP_MM = 0.005;
const LONG_STEP_MM = 0.1;
const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -STEP_MM, ArrowDown: -STEP_MM, ArrowRight: STEP_MM, ArrowUp: STEP_MM, PageDown: -LONG_STEP_MM, PageUp: LONG_STEP_MM,
};

export interface Fine {
  readonly by: (mm: number) => void;
  /** To the nearest step. */
  readonly to: (mm: number) => void;
  readonly exactly: (mm: number) => void;
  readonly keyed: (event: KeyboardEvent) => void;
  /** For whatever is to hear the wheel; it keeps the page from scrolling meanwhile. */
  readonly wheel: RefCallback<Element>;
}

/** For an engagement by its id. What it stands at is read when it is moved, so that quick steps add up. */
export function useFine(engagement: string): Fine {
  const { store, actions } = useBench();
  return useMemo(() => {
    const stands = () => store.getState().worked?.movement.engagements.find((e) => e.id === engagement)?.distance ?? 0;
    const rounded = (mm: number, to: number) => Math.round(mm / to) * to;
    const to = (mm: number) => actions.tryDistance(engagement, Math.max(STEP_MM, rounded(mm, STEP_MM)));
    // Steps go from where it stands, a thousandth being all that is seen of it.
    const by = (mm: number) => actions.tryDistance(engagement, Math.max(STEP_MM, rounded(stands(), 0.001) + mm));
    const keyed = (event: KeyboardEvent) => {
      const step = STEPS[event.key];
      if (step !== undefined) by(event.shiftKey ? Math.sign(step) * LONG_STEP_MM : step);
      else if (event.key === "Enter" && store.getState().drag) actions.keep();
      else if (event.key === "Escape" && store.getState().drag) actions.putBack();
      else return;
      event.preventDefault();
      event.stopPropagation();
    };
    // Shift turns a wheel sideways on some systems.
    const wheeled = (event: Event) => {
      if (!(event instanceof WheelEvent)) return;
      event.preventDefault();
      by(-Math.sign(event.deltaY || event.deltaX) * (event.shiftKey ? LONG_STEP_MM : STEP_MM));
    };
    const wheel = (element: Element | null) => {
      element?.addEventListener("wheel", wheeled, { passive: false });
      return () => element?.removeEventListener("wheel", wheeled);
    };
    return { by, to, exactly: (mm) => actions.tryDistance(engagement, mm), keyed, wheel };
  }, [store, actions, engagement]);
}
