// `heat`: of two joins on one arbor, the later undoing the earlier.
import type { Finding, Severity } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { HEAT_MARGIN_K, heatPairs, type HeatPair } from "../workshop/heats.ts";

export function heatFindings(movement: Movement): Finding[] {
  return movement.arbors.flatMap((worked) => heatPairs(worked.arbor).map(findingOf));
}

function findingOf({ earlier, later, marginK }: HeatPair): Finding {
  const severity: Severity = marginK <= 0 ? "foul" : marginK < HEAT_MARGIN_K ? "tight" : "free";
  const words = {
    foul: `The ${later.by} of ${later.part}, at ${later.heatedTo} °C, undoes the ${earlier.by} of ${earlier.part}, which lets go at ${earlier.undoneAt} °C`,
    tight: `The ${later.by} of ${later.part}, at ${later.heatedTo} °C, comes within ${marginK} K of the ${earlier.by} of ${earlier.part}`,
    free: `The ${later.by} of ${later.part} leaves the ${earlier.by} of ${earlier.part} alone, ${marginK} K under it`,
  };
  return { code: "heat", severity, between: [earlier.part, later.part], says: words[severity], remedies: [] };
}
