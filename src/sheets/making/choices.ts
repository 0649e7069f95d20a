// What a field that names a thing may name: of the right sort, and of the kinds that make sense there.
import { type Instrument, isToothed, type Part } from "../../../geometry/index.ts";
import { type Path, valueAt } from "../../document/index.ts";
import type { Shape } from "../../document/shape.ts";
import { partInWords } from "./entries.ts";

export interface ChoiceOf { readonly id: string; readonly says: string }

export function choicesFor(instrument: Instrument, path: Path, shape: Shape): readonly ChoiceOf[] {
  if (shape.is === "word") return shape.words.map((word) => ({ id: word, says: word }));
  if (shape.is !== "reference") return [];
  switch (shape.to) {
    case "part": return partsWhere(instrument, suits(instrument, path));
    case "plate": return instrument.frame.plates.map((p) => ({ id: p.id, says: called(p) }));
    case "pillar": return instrument.frame.pillars.map((p) => ({ id: p.id, says: p.id }));
    case "display": return (instrument.displays ?? []).map((d) => ({ id: d.id, says: called(d) }));
    case "dial": return (instrument.dials ?? []).map((d) => ({ id: d.id, says: called(d) }));
    default: return instrument.arbors.map((a) => ({ id: a.id, says: called(a) }));
  }
}

export const partsWhere = ({ arbors }: Instrument, wanted: (part: Part) => boolean): readonly ChoiceOf[] =>
  arbors.flatMap((a) => a.parts.filter(wanted).map((p) => ({ id: p.id, says: `${p.id}, ${partInWords(p)}` })));

function suits(instrument: Instrument, path: Path): (part: Part) => boolean {
  if (path[0] === "engagements") return isToothed;
  const kind = valueAt(instrument, [...path.slice(0, -1), "kind"]);
  if (path.at(-1) === "pawl") {
    const on = valueAt(instrument, [...path.slice(0, -1), "on"]);
    return (part) => part.kind === "arm" && instrument.arbors.some((a) => a.id === on && a.parts.includes(part));
  }
  return kind === "click" ? (part) => part.kind === "ratchet" : (part) => part.kind === "pin" || part.kind === "slot";
}

const called = ({ id, name }: { readonly id: string; readonly name?: string }): string => (name ? `${id}, ${name}` : id);
