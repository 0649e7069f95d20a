// The dials that are drawn where none are said, as a file may say them: a beginning to change.
import type { Dial } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { laidOut } from "./layout.ts";

export function dialsFor(movement: Movement): Dial[] {
  const taken = new Set(idsOf(movement));
  return laidOut(movement).map((dial) => ({ ...dial, id: freeId(taken, dial.id) }));
}

function idsOf({ instrument }: Movement): string[] {
  return [...instrument.arbors.flatMap((a) => [a.id, ...a.parts.map((p) => p.id)]), ...instrument.frame.plates.map((p) => p.id),
    ...instrument.frame.pillars.map((p) => p.id), ...instrument.engagements.map((e) => e.id ?? `${e.driver}-${e.driven}`),
    ...(instrument.displays ?? []).map((d) => d.id), "case", "input"];
}

function freeId(taken: Set<string>, wanted: string): string {
  let id = wanted;
  for (let k = 2; taken.has(id); k++) id = `${wanted}-${k}`;
  taken.add(id);
  return id;
}
