// What hands do in a movement view: choose a thing, say what is under the pointer, hold an arbor and carry it in plan.
// Pixels from the upper left of the picture; places in mm.
import { POSE_STRIDE } from "../geometry/index.ts";
import type { Hands } from "./eye/hands.ts";
import { onLevel } from "./eye/view.ts";
import { arborOf } from "./marks/quarrel.ts";
import { nameOf } from "./marks/words.ts";
import { metAt, rayAt } from "./sight.ts";
import type { Stage } from "./stage.ts";

interface Held {
  readonly arbor: string;
  /** The plane z in which the hand carries it, and where the axis stands from the hand. */
  readonly levelMm: number;
  readonly dx: number;
  readonly dy: number;
}

export function handsOn(stage: Stage, hint: HTMLElement): Hands {
  let held: Held | null = null;
  return {
    eye: stage.eye,
    bound: () => stage.bound,
    moved() {
      stage.standing = null;
      stage.place = null;
      stage.redraw();
    },
    press: (x, y) => stage.props.onChoose(chosenBy(stage, metAt(stage, x, y)?.id ?? null)),
    hover(at) {
      const met = at && metAt(stage, at.x, at.y);
      hint.textContent = met ? nameOf(met.id, stage.props.movement) : "";
      if (at && met) hint.style.transform = `translate(${Math.round(at.x + 14)}px, ${Math.round(at.y + 16)}px)`;
    },
    grips: (x, y) => gripped(stage, x, y)?.arbor ?? null,
    grab(x, y, letter) {
      const grip = letter ? headOf(stage, letter) : gripped(stage, x, y);
      const ray = rayAt(stage, x, y), hand = grip && ray && onLevel(ray.origin, ray.direction, grip.levelMm);
      const at = grip && axisAt(stage, grip.arbor);
      if (!grip || !hand || !at) return false;
      held = { ...grip, dx: at.x - hand.x, dy: at.y - hand.y };
      stage.props.onDrag?.begin(grip.arbor);
      return true;
    },
    carry(x, y) {
      const ray = held && rayAt(stage, x, y), hand = held && ray && onLevel(ray.origin, ray.direction, held.levelMm);
      if (held && hand) stage.props.onDrag?.move(held.arbor, { x: hand.x + held.dx, y: hand.y + held.dy });
    },
    drop(kept) {
      if (!held) return;
      held = null;
      if (kept) stage.props.onDrag?.end();
      else stage.props.onDrag?.cancel();
    },
  };
}

/** The arbor first; its part where the arbor, or something on it, is chosen already. */
function chosenBy({ props: { movement, chosen } }: Stage, met: string | null): string | null {
  if (met === null) return null;
  const arbor = arborOf(met, movement);
  if (arbor < 0 || (chosen !== null && arborOf(chosen, movement) === arbor)) return met;
  return movement.arbors[arbor]?.id ?? met;
}

/** A press holds an arbor by its bare body, or by anything on it once it is chosen; elsewhere it turns the view. */
function gripped(stage: Stage, x: number, y: number): { arbor: string; levelMm: number } | null {
  const { props } = stage;
  const met = props.drag && props.onDrag ? metAt(stage, x, y) : null;
  if (!met) return null;
  const index = arborOf(met.id, props.movement), bare = props.movement.arborIndex.has(met.id);
  if (index < 0 || (!bare && chosenIndex(stage) !== index)) return null;
  const arbor = planted(stage, index);
  return arbor === null ? null : { arbor, levelMm: met.point[2] };
}

function headOf(stage: Stage, letter: string): { arbor: string; levelMm: number } | null {
  const { props, frame } = stage;
  const index = props.movement.arborIndex.get(letter) ?? -1;
  const arbor = props.drag && props.onDrag ? planted(stage, index) : null;
  if (arbor === null || !frame) return null;
  return { arbor, levelMm: (props.movement.arbors[index]?.arbor.head ?? 0) + (frame.raised[index] ?? 0) };
}

/** What is moved when an arbor is: itself, or for a pipe what it rides on; a stud that is carried round has no place of its own. */
function planted({ props: { movement } }: Stage, index: number): string | null {
  const worked = movement.arbors[index];
  if (!worked || worked.carrier !== null) return null;
  return movement.arbors[worked.chain.at(-1) ?? index]?.id ?? null;
}

function axisAt({ props: { movement }, frame }: Stage, arbor: string): { x: number; y: number } | null {
  const index = movement.arborIndex.get(arbor);
  if (index === undefined || !frame) return null;
  return { x: frame.poses[POSE_STRIDE * index] ?? 0, y: frame.poses[POSE_STRIDE * index + 1] ?? 0 };
}

const chosenIndex = ({ props: { movement, chosen } }: Stage) => (chosen === null ? -2 : arborOf(chosen, movement));
