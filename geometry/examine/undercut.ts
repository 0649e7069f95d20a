// `undercut`: involute parts with so few teeth, for their shift, that the rack cuts into the flank it has just made.
import { leastShiftWithoutUndercut } from "../depth/involute.ts";
import type { Finding } from "../finding.ts";
import { isToothed } from "../instrument.ts";
import type { Movement } from "../movement.ts";

/** Every outside-toothed involute part, engaged or not; how high its tip is cut plays no part. */
export const undercutFindings = (movement: Movement): Finding[] => movement.arbors.flatMap(({ arbor, x, y }) =>
  arbor.parts.filter(isToothed).flatMap((part) => {
    const teeth = movement.teeth.get(part.id);
    if (!teeth || teeth.form !== "involute" || teeth.internal) return [];
    const leastShift = leastShiftWithoutUndercut(teeth.count, teeth.pressureAngleDeg);
    const isUndercut = teeth.shift < leastShift;
    const finding: Finding = {
      code: "undercut", severity: isUndercut ? "tight" : "free", between: [part.id],
      at: { x, y, z: part.z + part.thickness / 2 },
      says: isUndercut
        ? `${part.id} is undercut: ${teeth.count} teeth at ${teeth.pressureAngleDeg}° want a shift of ${leastShift.toFixed(3)} modules at least, and have ${teeth.shift}`
        : `${part.id} is not undercut`,
      remedies: [],
    };
    return [finding];
  }));
