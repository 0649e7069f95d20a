// `pipe`: the bore of a pipe, or of a wheel loose on a post, and the diameter that it rides on.
import { severityOf } from "../clearance/severity.ts";
import type { Finding, Severity } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { mm } from "./engaged.ts";
import { arborName, capital } from "./words.ts";

export const pipeFindings = (movement: Movement): Finding[] => movement.arbors.flatMap((worked) => {
  const { arbor } = worked;
  if (arbor.bore === undefined || arbor.rides?.radius !== 0) return [];
  const inner = movement.arbors[worked.chain[0]].arbor;
  const clearance = arbor.bore - inner.diameter, wanted = movement.practice.pipeShake;
  const severity = severityOf(clearance, wanted);
  const pair = `${arborName(arbor)} on ${arborName(inner)}`;
  const words: Record<Severity, string> = {
    foul: `${capital(pair)} has no clearance in its bore: ${mm(clearance)}`,
    tight: `${capital(pair)} has ${mm(clearance)} of clearance in its bore, ${mm(wanted)} is wanted`,
    free: `${capital(pair)} has ${mm(clearance)} of clearance in its bore`,
  };
  return [{
    code: "pipe", severity, between: [arbor.id, inner.id], gap: clearance, worst: clearance, wanted,
    at: { x: worked.x, y: worked.y, z: (arbor.foot + arbor.head) / 2 }, says: words[severity], remedies: [],
  }];
});
