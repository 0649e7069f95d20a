// The wheel and the keys on the movement: arrows turn, Shift and arrows pan, + and − and the wheel come nearer.
import type { Eye } from "./eye.ts";
import { nearedBy, slidBy, turnedBy, type Bound, type View } from "./view.ts";

const KEY_RAD = Math.PI / 36;
const KEY_NEARER = 1.15;
const LINE_PX = 30;

interface Looking { readonly eye: Eye; bound(): Bound }

export function attachKeys(element: HTMLElement, looking: Looking, look: (view: View) => void, signal: AbortSignal): void {
  element.addEventListener("keydown", (e) => {
    if (e.target !== element || e.ctrlKey || e.metaKey || e.altKey) return;
    const to = keyed(e, looking);
    if (!to) return;
    e.preventDefault();
    look(to);
  }, { signal });
  element.addEventListener("wheel", (e) => {
    e.preventDefault();
    const box = element.getBoundingClientRect(), half = box.height / 2;
    const px = e.deltaMode === WheelEvent.DOM_DELTA_LINE ? LINE_PX * e.deltaY : e.deltaY;
    // Two fingers on a pad come as a wheel with Ctrl, in smaller steps.
    const factor = Math.exp(-px * (e.ctrlKey ? 0.008 : 0.0014));
    const across = (e.clientX - box.left - box.width / 2) / half, upward = (half - (e.clientY - box.top)) / half;
    look(nearedBy(looking.eye.view(), factor, looking.bound(), across, upward));
  }, { passive: false, signal });
}

function keyed({ key, shiftKey }: KeyboardEvent, { eye, bound }: Looking): View | null {
  const view = eye.view();
  const across = key === "ArrowLeft" ? -1 : key === "ArrowRight" ? 1 : 0;
  const upward = key === "ArrowUp" ? 1 : key === "ArrowDown" ? -1 : 0;
  if (across || upward)
    return shiftKey ? slidBy(view, 0.05 * across, 0.05 * upward) : turnedBy(view, -KEY_RAD * across, KEY_RAD * upward);
  if (key === "+" || key === "=") return nearedBy(view, KEY_NEARER, bound());
  if (key === "-" || key === "−") return nearedBy(view, 1 / KEY_NEARER, bound());
  return null;
}
