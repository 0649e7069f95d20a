// How grave a clearance is. Anything under the resolution of the arithmetic counts as nothing.
import type { Severity } from "../finding.ts";
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";

/** foul: nothing is left at the worst; tight: less than wanted; free. */
export function severityOf(worstMm: number, wantedMm: number): Severity {
  if (worstMm <= AT_LIMIT_MM) return "foul";
  return worstMm < wantedMm - AT_LIMIT_MM ? "tight" : "free";
}

const RANK: Record<Severity, number> = { free: 0, tight: 1, foul: 2 };

/** Above 0 where a is graver than b. */
export const graver = (a: Severity, b: Severity): number => RANK[a] - RANK[b];
