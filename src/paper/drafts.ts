// All sheets of a movement, in the order in which a maker turns them over.
import { arborFigures, isToothed, type Movement, wheelFigures, windowsOf } from "../../geometry/index.ts";
import type { Draft } from "./draft.ts";
import { arborDraft } from "./sheets/arbor.ts";
import { wheelDraft } from "./sheets/wheel.ts";

export function draftsOf(movement: Movement): Draft[] {
  const windows = windowsOf(movement);
  const wheels = movement.arbors.flatMap((a) => a.arbor.parts).filter(isToothed)
    .map((p) => wheelFigures(movement, p.id, windows)).filter((w) => w !== null);
  return [
    ...wheels.filter((w) => w.kind === "wheel").map(wheelDraft),
    ...wheels.filter((w) => w.kind !== "wheel").map(wheelDraft),
    ...movement.arbors.map((_, i) => arborDraft(arborFigures(movement, i))),
  ];
}
