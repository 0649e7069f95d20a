// `stack`: two parts of one arbor that stand in the same height. Collets, pins and squares may.
import { thicknessOf } from "../bodies/thing.ts";
import type { Finding } from "../finding.ts";
import type { Part, PartKind } from "../instrument.ts";
import type { Movement, WorkedArbor } from "../movement.ts";
import { TOUCH_MM } from "../numeric/tolerance.ts";
import { mm } from "./engaged.ts";
import { capital, partName } from "./words.ts";

/** What may stand in the height of another part of its arbor. */
export const MAY_SHARE_HEIGHT: readonly PartKind[] = ["collet", "pin", "square"];

export const stackFindings = (movement: Movement): Finding[] => movement.arbors.flatMap((worked) => {
  const parts = worked.arbor.parts.filter((p) => !MAY_SHARE_HEIGHT.includes(p.kind));
  return parts.flatMap((a, i) => parts.slice(i + 1).map((b) => stackFinding(worked, a, b)));
});

function stackFinding(worked: WorkedArbor, a: Part, b: Part): Finding {
  const [lower, upper] = a.z < b.z || (a.z === b.z && a.id < b.id) ? [a, b] : [b, a];
  const gap = Math.max(b.z - topOf(a), a.z - topOf(b));
  const shares = gap < -TOUCH_MM;
  return {
    code: "stack", severity: shares ? "foul" : "free", between: [lower.id, upper.id], gap, worst: gap, wanted: 0,
    at: { x: worked.x, y: worked.y, z: (Math.max(a.z, b.z) + Math.min(topOf(a), topOf(b))) / 2 },
    says: shares
      ? `${capital(partName(lower))} and ${partName(upper)} share ${mm(-gap)} of height on arbor ${worked.id}`
      : `${capital(partName(lower))} and ${partName(upper)} stand one above the other on arbor ${worked.id}`,
    remedies: [],
  };
}

const topOf = (part: Part): number => part.z + thicknessOf(part);
