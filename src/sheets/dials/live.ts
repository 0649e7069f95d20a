// What follows the crank without passing through React: hands, carried rings, readings, the row for now and the line for
// now in the plot. Elements are found by their data attributes and written into.
import { type RefObject, useEffect, useMemo, useRef } from "react";
import { dayOfMs, motionOf, type Movement, pointerOf, poseInto, POSE_STRIDE, readingAt, settingUp, shownAt, type SettingUp } from "../../../geometry/index.ts";
import { epochMs } from "../../state/dates.ts";
import { fixed } from "../../state/figures.ts";
import { useBench } from "../../state/hooks.ts";
import { readsAs } from "./reads.ts";

export function useLive(movement: Movement | null, root: RefObject<HTMLDivElement | null>, onNow: (now: SettingUp | null, turns: number) => void): void {
  const { clock } = useBench();
  const motion = useMemo(() => (movement ? motionOf(movement) : null), [movement]);
  const hear = useRef(onNow);
  useEffect(() => { hear.current = onNow; });
  useEffect(() => {
    if (!movement || !motion) return;
    const pose = new Float64Array(POSE_STRIDE * movement.arbors.length);
    const epoch = epochMs(movement.instrument);
    const clockwiseDeg = (arbor: number) => (-(pose[POSE_STRIDE * arbor + 2] ?? 0) * 180) / Math.PI;
    const show = () => {
      const page = root.current;
      if (!page) return;
      const turns = clock.turns();
      poseInto(pose, motion, turns);
      movement.displays.forEach((d, i) => {
        const pointer = pointerOf(movement, i);
        page.querySelector(`[data-hand="${i}"]`)?.setAttribute("transform", `rotate(${90 - (pointer?.angle ?? 90) + clockwiseDeg(d.arbor)})`);
        write(page, `[data-reading="${i}"]`, readsAs(movement, i, shownAt(movement, i, turns, motion).part));
        write(page, `[data-angle="${i}"]`, `${fixed(readingAt(movement, i, turns, motion).fraction * 360, 3)}°`);
      });
      for (const ring of page.querySelectorAll<SVGGElement>("[data-carrier]")) ring.setAttribute("transform", `rotate(${clockwiseDeg(Number(ring.dataset.carrier))})`);
      hear.current(epoch === null ? null : settingUp(movement, dayOfMs(epoch), dayOfMs(epoch) + turns * movement.instrument.input.days), turns);
    };
    show();
    return clock.subscribe(show);
  });
}

export function write(root: Element | null, at: string, text: string): void {
  root?.querySelectorAll(at).forEach((e) => { if (e.textContent !== text) e.textContent = text; });
}
