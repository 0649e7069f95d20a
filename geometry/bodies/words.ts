// What a thing is called, in the trade's words: its kind and its id.
import type { Thing } from "./thing.ts";
import type { Arbor, Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";

/** In the middle of a sentence: "wheel C1", "pipe E", "plate back", "the case". */
export function nameOf(movement: Movement, thing: Thing): string {
  if (thing.kind === "case") return "the case";
  if (thing.arbor < 0) return `${thing.kind} ${thing.id}`;
  const { arbor } = movement.arbors[thing.arbor];
  return thing.part < 0 ? arborName(arbor) : partName(arbor.parts[thing.part]);
}

export function arborName(arbor: Arbor): string {
  return `${arborWord(arbor)} ${arbor.id}`;
}

export function partName(part: Part): string {
  return `${partWord(part)} ${part.id}`;
}

/** At the head of a sentence. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function arborWord({ rides, fixed, bore }: Arbor): string {
  if (rides !== undefined && rides.radius > 0) return "stud";
  if (rides !== undefined && bore !== undefined) return "pipe";
  return fixed === true ? "post" : "arbor";
}

function partWord(part: Part): string {
  switch (part.kind) {
    case "wheel": return part.internal === true ? "annulus" : "wheel";
    case "lantern": return "lantern pinion";
    case "slot": return "slotted disc";
    default: return part.kind;
  }
}
