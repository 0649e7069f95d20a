// The height of the chosen part, typed, with the gaps to the faces over and under it and where it was.
import { useEffect, useRef } from "react";
import type { Movement } from "../../../geometry/index.ts";
import { raisePart } from "../../commands/heights.ts";
import { length, typedLength, unitName } from "../../state/figures.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import { partOf } from "../words.tsx";
import { type Face, facesOf } from "./faces.ts";

export function PartTable({ movement, part: id }: { readonly movement: Movement; readonly part: string }) {
  const units = useNow((s) => s.units);
  const was = useNow((s) => s.instrument?.arbors.flatMap((a) => a.parts).find((p) => p.id === id)?.z ?? null);
  const { run } = useActions();
  const field = useRef<HTMLInputElement>(null);
  const part = partOf(movement, id);
  const written = part ? length(part.z, units, "distance") : "";
  useEffect(() => { if (field.current && document.activeElement !== field.current) field.current.value = written; }, [written]);
  if (!part) return null;
  const { above, below } = facesOf(movement, id);
  const take = () => {
    const input = field.current, typed = input && input.value !== written ? typedLength(input.value, units) : null;
    if (input && (typed === null || !run(raisePart, { part: id, z: typed }))) input.value = written;
  };
  const figured = (face: Face | null) => (face ? <>{length(face.gap, units)} <span className="soft">{face.by}</span></> : "–");
  return (
    <table className="part-table" aria-label={`Height of ${id}`}>
      <thead><tr><th>{id}, lower face</th><th className="figure">above</th><th className="figure">below</th><th className="figure">was</th></tr></thead>
      <tbody><tr>
        <td><label className="field"><span className="unseen">Lower face of {id} in {unitName(units)}</span>
          <input ref={field} defaultValue={written} onBlur={take}
            onKeyDown={(event) => { if (event.key === "Enter") take(); if (event.key === "Escape" && field.current) field.current.value = written; }} />
          <span className="soft">{unitName(units)}</span></label></td>
        <td className="figure">{figured(above)}</td><td className="figure">{figured(below)}</td>
        <td className="figure soft">{was === null ? "" : length(was, units)}</td>
      </tr></tbody>
    </table>
  );
}
