// `edge`: the metal between a pivot hole (pivot and sideshake) and the edges of its plate, its openings' too.
import { metalRound } from "../bodies/plate.ts";
import { severityOf } from "../clearance/severity.ts";
import type { Finding, Severity } from "../finding.ts";
import type { Movement, WorkedArbor } from "../movement.ts";
import { mm } from "./engaged.ts";

export const edgeFindings = (movement: Movement): Finding[] => movement.arbors.flatMap((worked) => {
  const widest = new Map<string, number>();
  for (const pivot of [worked.arbor.pivots?.foot, worked.arbor.pivots?.head])
    if (pivot !== undefined) widest.set(pivot.plate, Math.max(pivot.diameter, widest.get(pivot.plate) ?? 0));
  return [...widest].flatMap(([plate, diameter]) => edgeFinding(movement, worked, plate, (diameter + worked.ownSideshake) / 2));
});

function edgeFinding(movement: Movement, worked: WorkedArbor, plateId: string, radiusMm: number): Finding[] {
  const plate = movement.instrument.frame.plates.find((p) => p.id === plateId);
  if (plate === undefined) return [];
  const metal = metalRound(plate, worked.x, worked.y, radiusMm), wanted = movement.practice.edge;
  const severity = severityOf(metal, wanted);
  const words: Record<Severity, string> = {
    foul: `The hole for ${worked.id} breaks an edge of plate ${plateId} by ${mm(-metal)}`,
    tight: `Only ${mm(metal)} of metal stands between the hole for ${worked.id} and an edge of plate ${plateId}, ${mm(wanted)} is wanted`,
    free: `${mm(metal)} of metal stands between the hole for ${worked.id} and the nearest edge of plate ${plateId}`,
  };
  return [{
    code: "edge", severity, between: [worked.id, plateId], gap: metal, worst: metal, wanted,
    at: { x: worked.x, y: worked.y, z: plate.z + plate.thickness / 2 }, says: words[severity], remedies: [],
  }];
}
