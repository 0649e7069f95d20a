// `pivot`: an arbor's pivots in their plates, and its endshake against its own, else the practice's. The gravest of
// what is examined stands for the arbor. Lengths in mm.
import { metalRound, platesInPlan, type PlateInPlan } from "../bodies/openings.ts";
import { graver, severityOf } from "../clearance/severity.ts";
import type { Finding, Severity } from "../finding.ts";
import type { Pivot, Plate } from "../instrument.ts";
import type { Movement, WorkedArbor } from "../movement.ts";
import { mm } from "./engaged.ts";

interface Check {
  readonly severity: Severity;
  readonly gap: number;
  readonly worst: number;
  readonly wanted: number;
  readonly z: number;
  readonly says: string;
}

export function pivotFindings(movement: Movement): Finding[] {
  const plates = platesInPlan(movement.instrument.frame.plates);
  return movement.arbors.flatMap((worked) => {
    const { foot, head } = worked.arbor.pivots ?? {};
    const first = foot ?? head;
    if (first === undefined) return [];
    const checks = [endshakeCheck(movement, worked)];
    if (foot !== undefined) checks.push(...seatChecks(plates.get(foot.plate), worked, foot, worked.arbor.foot));
    if (head !== undefined) checks.push(...seatChecks(plates.get(head.plate), worked, head, worked.arbor.head - head.length));
    const { severity, gap, worst, wanted, z, says } = checks.reduce(gravest);
    const at = { x: worked.x, y: worked.y, z };
    return [{ code: "pivot", severity, between: [worked.id, first.plate], gap, worst, wanted, at, says, remedies: [] }];
  });
}

/** The axis is in the metal of the plate, and the pivot cannot leave it within the shake. */
function seatChecks(inPlan: PlateInPlan | undefined, worked: WorkedArbor, pivot: Pivot, z: number): Check[] {
  if (inPlan === undefined) return [];
  const { plate } = inPlan;
  const metal = metalRound(inPlan, worked.x, worked.y, 0);
  const drawn = heldIn(plate, pivot, z, 0);
  const least = Math.min(heldIn(plate, pivot, z, worked.shake.up), heldIn(plate, pivot, z, -worked.shake.down));
  const at = plate.z + plate.thickness / 2;
  return [
    {
      severity: severityOf(metal, 0), gap: metal, worst: metal, wanted: 0, z: at,
      says: metal > 0 ? `The axis of ${worked.id} is in the metal of plate ${plate.id}`
        : `The axis of ${worked.id} is off plate ${plate.id} or in an opening of it, by ${mm(-metal)}`,
    },
    {
      severity: severityOf(least, 0), gap: drawn, worst: least, wanted: 0, z: at,
      says: least > 0 ? `The pivot of ${worked.id} keeps ${mm(least)} in plate ${plate.id} at the worst of its shake`
        : `The pivot of ${worked.id} can leave plate ${plate.id} within its shake, by ${mm(-least)}`,
    },
  ];
}

/** How much of a pivot's length is in its plate with the arbor lifted so far. */
function heldIn(plate: Plate, pivot: Pivot, z: number, lift: number): number {
  return Math.min(z + pivot.length + lift, plate.z + plate.thickness) - Math.max(z + lift, plate.z);
}

function endshakeCheck(movement: Movement, worked: WorkedArbor): Check {
  const { up, down } = worked.ownShake;
  const wanted = worked.arbor.endshake ?? movement.practice.endshake;
  const endshake = up + down, severity = severityOf(endshake, wanted);
  const words: Record<Severity, string> = {
    foul: `Arbor ${worked.id} has no endshake: ${mm(endshake)}`,
    tight: `Arbor ${worked.id} has ${mm(endshake)} of endshake, ${mm(wanted)} is wanted`,
    free: `Arbor ${worked.id} has ${mm(endshake)} of endshake, its pivots stand in their plates`,
  };
  const { foot, head } = worked.arbor;
  return { severity, gap: endshake, worst: endshake, wanted, z: (foot + head) / 2, says: words[severity] };
}

function gravest(a: Check, b: Check): Check {
  const more = graver(b.severity, a.severity);
  if (more !== 0) return more > 0 ? b : a;
  return a.severity !== "free" && b.worst - b.wanted < a.worst - a.wanted ? b : a;
}
