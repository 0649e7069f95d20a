// Between what distances every engagement of a movement may stand, in its order: worked out once, used by many sheets.
import { pairOf } from "../depth/pair.ts";
import { type Window, windowOf } from "../depth/window.ts";
import type { Movement } from "../movement.ts";

export const windowsOf = (movement: Movement): readonly Window[] =>
  movement.engagements.map((_, i) => windowOf(pairOf(movement, i), movement.practice));
