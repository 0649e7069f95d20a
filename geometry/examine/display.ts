// `sense` and `drift`: a display that turns the wrong way, or whose period is off by more than a division in ten years.
import type { Finding } from "../finding.ts";
import type { Movement, WorkedDisplay } from "../movement.ts";
import { AT_LIMIT_DEG } from "../numeric/tolerance.ts";

const YEARS = 10;

/** Displays that turn and have a sense wanted. */
export const senseFindings = (movement: Movement): Finding[] => movement.displays.flatMap((d) => {
  const wanted = wantedSense(movement, d);
  if (wanted === undefined || d.sense === null) return [];
  const wrong = d.sense !== wanted;
  const finding: Finding = {
    code: "sense", severity: wrong ? "foul" : "free", between: [d.id], ...placeOf(movement, d),
    says: wrong ? `${d.name} turns ${d.sense} seen from the dial side, ${wanted} is wanted` : `${d.name} turns ${d.sense}, as wanted`,
    remedies: [],
  };
  return [finding];
});

/** Displays that turn and have a period wanted. */
export const driftFindings = (movement: Movement): Finding[] => movement.displays.flatMap((d) => {
  if (d.degreesPerYear === null) return [];
  const offDeg = Math.abs(d.degreesPerYear) * YEARS, divisionDeg = 360 / d.divisions;
  const drifts = offDeg > divisionDeg + AT_LIMIT_DEG;
  const finding: Finding = {
    code: "drift", severity: drifts ? "tight" : "free", between: [d.id], ...placeOf(movement, d),
    says: `${d.name} is ${Number(offDeg.toPrecision(3))}° out after ten years, ${drifts ? "more than" : "within"} its division of ${Number(divisionDeg.toPrecision(3))}°`,
    remedies: [],
  };
  return [finding];
});

const wantedSense = (movement: Movement, d: WorkedDisplay) =>
  movement.instrument.displays?.find((display) => display.id === d.id)?.sense;

function placeOf(movement: Movement, d: WorkedDisplay): Pick<Finding, "at"> {
  const { x, y, arbor } = movement.arbors[d.arbor];
  return { at: { x, y, z: arbor.head } };
}
