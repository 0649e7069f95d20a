// `edge`: the metal between a pivot hole (pivot and sideshake) and the edges of its plate, its openings' too.
import { metalRound, platesInPlan, type PlateInPlan } from "../bodies/openings.ts";
import { severityOf } from "../clearance/severity.ts";
import type { Finding, Severity } from "../finding.ts";
import type { Movement, WorkedArbor } from "../movement.ts";
import { mm } from "./engaged.ts";

export function edgeFindings(movement: Movement): Finding[] {
  const plates = platesInPlan(movement.instrument.frame.plates);
  return movement.arbors.flatMap((worked) => {
    const widest = new Map<string, number>();
    for (const pivot of [worked.arbor.pivots?.foot, worked.arbor.pivots?.head])
      if (pivot !== undefined) widest.set(pivot.plate, Math.max(pivot.diameter, widest.get(pivot.plate) ?? 0));
    return [...widest].flatMap(([id, diameter]) => {
      const plate = plates.get(id);
      return plate === undefined ? [] : [edgeFinding(movement, worked, plate, (diameter + worked.ownSideshake) / 2)];
    });
  });
}

function edgeFinding(movement: Movement, worked: WorkedArbor, inPlan: PlateInPlan, radiusMm: number): Finding {
  const { plate } = inPlan;
  const metal = metalRound(inPlan, worked.x, worked.y, radiusMm), wanted = movement.practice.edge;
  const severity = severityOf(metal, wanted);
  const words: Record<Severity, string> = {
    foul: `The hole for ${worked.id} breaks an edge of plate ${plate.id} by ${mm(-metal)}`,
    tight: `Only ${mm(metal)} of metal stands between the hole for ${worked.id} and an edge of plate ${plate.id}, ${mm(wanted)} is wanted`,
    free: `${mm(metal)} of metal stands between the hole for ${worked.id} and the nearest edge of plate ${plate.id}`,
  };
  return {
    code: "edge", severity, between: [worked.id, plate.id], gap: metal, worst: metal, wanted,
    at: { x: worked.x, y: worked.y, z: plate.z + plate.thickness / 2 }, says: words[severity], remedies: [],
  };
}
