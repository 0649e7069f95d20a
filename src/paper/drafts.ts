// All sheets of a movement, in the order in which a maker turns them over.
import { arborFigures, isToothed, type Movement, plateFigures, wheelFigures, windowsOf } from "../../geometry/index.ts";
import type { Draft } from "./draft.ts";
import { arborDraft } from "./sheets/arbor.ts";
import { plateDraft, templateDraft } from "./sheets/plate.ts";
import { wheelDraft } from "./sheets/wheel.ts";

export function draftsOf(movement: Movement): Draft[] {
  const windows = windowsOf(movement);
  const wheels = movement.arbors.flatMap((a) => a.arbor.parts).filter(isToothed)
    .map((p) => wheelFigures(movement, p.id, windows)).filter((w) => w !== null);
  const plates = movement.instrument.frame.plates.map((p) => plateFigures(movement, p.id, windows)).filter((p) => p !== null);
  return [
    ...wheels.filter((w) => w.kind === "wheel").map(wheelDraft),
    ...wheels.filter((w) => w.kind !== "wheel").map(wheelDraft),
    ...plates.map(plateDraft),
    ...plates.map(templateDraft),
    ...movement.arbors.map((_, i) => arborDraft(arborFigures(movement, i))),
  ];
}
