// Mouse and touch on the movement: turn, pan, choose, carry an arbor. One machine of states:
// idle → pressed (not yet moved) → turning | sliding | carrying | pinching → idle. The eye stands still while an arbor
// is carried; Esc, or losing the pointer, puts it back.
import type { Eye } from "./eye.ts";
import { attachKeys } from "./keys.ts";
import { nearedBy, slidBy, turnedBy, type Bound, type View } from "./view.ts";

export interface Hands {
  readonly eye: Eye;
  bound(): Bound;
  /** A click or a tap that did not move. */
  press(x: number, y: number): void;
  /** The pointer rests over the picture, or has left it. */
  hover(at: Point | null): void;
  /** The arbor that a press there would take hold of. */
  grips(x: number, y: number): string | null;
  /** Takes hold of what is there, or of the arbor of a letter; false where it cannot be carried. */
  grab(x: number, y: number, letter: string | null): boolean;
  carry(x: number, y: number): void;
  drop(kept: boolean): void;
  /** The eye was moved by hand. */
  moved(): void;
}

interface Point { readonly x: number; readonly y: number }
type State = "idle" | "pressed" | "turning" | "sliding" | "carrying" | "pinching";

const STILL_PX = 4;
const RAD_PER_PX = 0.0075;
const CURSOR: Record<State, string> = { idle: "", pressed: "", turning: "move", sliding: "move", carrying: "grabbing", pinching: "" };

export function attachHands(element: HTMLElement, hands: Hands): () => void {
  let state: State = "idle";
  let start: Point & { slide: boolean; letter: string | null; grips: boolean } = { x: 0, y: 0, slide: false, letter: null, grips: false };
  let hovering = 0, swallowClick = false;
  const down = new Map<number, Point>();
  const at = (e: MouseEvent): Point => {
    const box = element.getBoundingClientRect();
    return { x: e.clientX - box.left, y: e.clientY - box.top };
  };
  const look = (view: View) => { hands.eye.set(view); hands.moved(); };
  const go = (to: State) => { state = to; element.style.cursor = CURSOR[to]; };
  const rest = (kept: boolean) => {
    if (state === "carrying") hands.drop(kept);
    go("idle");
  };

  const press = (e: PointerEvent) => {
    const p = at(e), letter = letterOf(e);
    down.set(e.pointerId, p);
    swallowClick = false;
    hands.hover(null);
    if (down.size > 1) { rest(false); go("pinching"); return; }
    const slide = e.button !== 0 || e.shiftKey;
    start = { ...p, slide, letter, grips: !slide && (letter !== null || hands.grips(p.x, p.y) !== null) };
    go("pressed");
  };

  const move = (e: PointerEvent) => {
    const p = at(e), old = down.get(e.pointerId);
    if (!old) {
      if (e.pointerType === "mouse") hover(letterOf(e) === null ? p : null);
      return;
    }
    if (state === "pressed" && Math.hypot(p.x - start.x, p.y - start.y) >= STILL_PX) set(e.pointerId);
    if (state === "pressed") return;
    const height = element.clientHeight, view = hands.eye.view();
    if (state === "pinching") look(pinched(view, down, e.pointerId, p, height, hands.bound()));
    else if (state === "carrying") hands.carry(p.x, p.y);
    else if (state === "turning") look(turnedBy(view, -(p.x - old.x) * RAD_PER_PX, -(p.y - old.y) * RAD_PER_PX));
    else if (state === "sliding") look(slidBy(view, (p.x - old.x) / height, -(p.y - old.y) / height));
    down.set(e.pointerId, p);
  };

  /** The press has moved: what is it to be? */
  const set = (pointer: number) => {
    element.setPointerCapture(pointer);
    swallowClick = start.letter !== null;
    if (start.grips && hands.grab(start.x, start.y, start.letter)) go("carrying");
    else go(start.slide ? "sliding" : "turning");
  };

  const hover = (p: Point | null) => {
    cancelAnimationFrame(hovering);
    hovering = requestAnimationFrame(() => {
      if (state !== "idle") return;
      hands.hover(p);
      element.style.cursor = p && hands.grips(p.x, p.y) !== null ? "grab" : "";
    });
  };

  const release = (e: PointerEvent) => {
    if (!down.delete(e.pointerId)) return;
    const p = at(e);
    if (state === "pressed" && e.type === "pointerup" && !start.slide && start.letter === null) hands.press(p.x, p.y);
    if (state === "pinching" && down.size > 0) return;
    rest(e.type === "pointerup");
  };

  const escape = (e: KeyboardEvent) => {
    if (e.key !== "Escape" || state !== "carrying") return;
    e.stopPropagation();
    rest(false);
    down.clear();
  };
  const click = (e: Event) => {
    if (swallowClick) e.stopPropagation();
    swallowClick = false;
  };

  const ending = new AbortController();
  const on = <K extends keyof HTMLElementEventMap>(name: K, hear: (e: HTMLElementEventMap[K]) => void, options: AddEventListenerOptions = {}) =>
    element.addEventListener(name, hear, { ...options, signal: ending.signal });
  on("pointerdown", press);
  on("pointermove", move);
  on("pointerup", release);
  on("pointercancel", release);
  on("lostpointercapture", release);
  on("pointerleave", () => { cancelAnimationFrame(hovering); hands.hover(null); });
  on("click", click, { capture: true });
  on("contextmenu", (e) => e.preventDefault());
  attachKeys(element, hands, look, ending.signal);
  window.addEventListener("keydown", escape, { capture: true, signal: ending.signal });
  return () => {
    ending.abort();
    cancelAnimationFrame(hovering);
    rest(false);
  };
}

const letterOf = (e: Event): string | null => (e.target instanceof Element ? e.target.closest<HTMLElement>("[data-arbor]")?.dataset.arbor ?? null : null);

/** Two fingers: the picture follows their middle and grows with their distance. */
function pinched(view: View, down: ReadonlyMap<number, Point>, id: number, p: Point, height: number, bound: Bound): View {
  const other = [...down].find(([pointer]) => pointer !== id)?.[1], old = down.get(id);
  if (!other || !old) return view;
  const before = Math.hypot(old.x - other.x, old.y - other.y), after = Math.hypot(p.x - other.x, p.y - other.y);
  const slid = slidBy(view, (p.x - old.x) / 2 / height, -(p.y - old.y) / 2 / height);
  return nearedBy(slid, before > 0 && after > 0 ? after / before : 1, bound);
}
