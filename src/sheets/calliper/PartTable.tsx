// The height of the chosen part, typed, with the gaps to the faces over and under it and where it was.
import type { Movement } from "../../../geometry/index.ts";
import { raisePart } from "../../commands/heights.ts";
import { length, unitName } from "../../state/figures.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import { ifDone, lengthIn } from "../reading.ts";
import { Typed } from "../Typed.tsx";
import { partOf } from "../words.tsx";
import { type Face, facesOf } from "./faces.ts";

export function PartTable({ movement, part: id }: { readonly movement: Movement; readonly part: string }) {
  const units = useNow((s) => s.units);
  const was = useNow((s) => s.instrument?.arbors.flatMap((a) => a.parts).find((p) => p.id === id)?.z ?? null);
  const { run } = useActions();
  const part = partOf(movement, id);
  if (!part) return null;
  const { above, below } = facesOf(movement, id);
  const argsFor = (z: number) => ({ part: id, z });
  const figured = (face: Face | null) => (face ? <>{length(face.gap, units)} <span className="soft">{face.by}</span></> : "–");
  return (
    <table className="part-table" aria-label={`Height of ${id}`}>
      <thead><tr><th>{id}, lower face</th><th className="figure">above</th><th className="figure">below</th><th className="figure">was</th></tr></thead>
      <tbody><tr>
        <td><Typed label={`Lower face of ${id} in ${unitName(units)}`} stands={length(part.z, units, "distance")} read={ifDone(lengthIn(units), movement.instrument, raisePart, argsFor)}
          take={(z: number) => run(raisePart, argsFor(z))} unit={unitName(units)} /></td>
        <td className="figure">{figured(above)}</td><td className="figure">{figured(below)}</td>
        <td className="figure soft">{was === null ? "" : length(was, units)}</td>
      </tr></tbody>
    </table>
  );
}
