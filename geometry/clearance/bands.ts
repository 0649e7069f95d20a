// Where on its arbor a part may stand: the heights of its lower face at which it would foul or be tight, everything else
// standing as it stands. For every other thing that is not free of it in plan there is one band of heights in which the
// two are bad in height too. Lengths in mm.
import { thicknessOf, type Cylinder } from "../bodies/thing.ts";
import type { Severity } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";
import { isExempt, sceneOf } from "./gaps.ts";
import { heightClear, planClear, relationOf } from "./pair.ts";
import { severityOf } from "./severity.ts";

export interface Band {
  /** Heights of the part's lower face. */
  readonly from: number;
  readonly to: number;
  readonly severity: Severity;
  /** What stands there, or next to it; null where it is free. */
  readonly by: string | null;
}

export interface MayRise {
  readonly part: string;
  readonly at: number;
  readonly severity: Severity;
  /** From where its arbor begins between its shoulders to where it ends, all heights in order. */
  readonly bands: readonly Band[];
}

/** Throws where there is no such part. */
export function mayRise(movement: Movement, partId: string): MayRise {
  const at = movement.partIndex.get(partId);
  if (at === undefined) throw new Error(`there is no part ${partId}`);
  const { arbor } = movement.arbors[at.arbor], part = arbor.parts[at.part], thickness = thicknessOf(part);
  const from = arbor.foot + (arbor.pivots?.foot?.length ?? 0), to = arbor.head - (arbor.pivots?.head?.length ?? 0) - thickness;
  const taken = takenBy(movement, at.arbor, at.part);
  const cuts = [from, to, ...taken.flatMap((t) => [t.from, t.to])].filter((z) => z >= from && z <= to).sort((a, b) => a - b);
  const bands: Band[] = [];
  for (let i = 1; i < cuts.length; i++) {
    if (cuts[i] - cuts[i - 1] <= AT_LIMIT_MM) continue;
    const { severity, by } = standingAt(taken, (cuts[i - 1] + cuts[i]) / 2);
    const last = bands[bands.length - 1];
    if (last?.severity === severity && last.by === by) bands[bands.length - 1] = { ...last, to: cuts[i] };
    else bands.push({ from: cuts[i - 1], to: cuts[i], severity, by });
  }
  return { part: partId, at: part.z, severity: standingAt(taken, part.z).severity, bands };
}

interface Taken { readonly from: number; readonly to: number; readonly severity: "foul" | "tight"; readonly by: string }

function standingAt(taken: readonly Taken[], z: number): { severity: Severity; by: string | null } {
  const here = taken.filter((t) => z > t.from && z < t.to);
  const worst = here.find((t) => t.severity === "foul") ?? here[0];
  return worst === undefined ? { severity: "free", by: null } : { severity: worst.severity, by: worst.by };
}

function takenBy(movement: Movement, arbor: number, index: number): Taken[] {
  const scene = sceneOf(movement), taken: Taken[] = [];
  const own = scene.places.arborStart[arbor] + 1 + index, mine = scene.things[own];
  scene.things.forEach((other, j) => {
    if (other.body === mine.body || isExempt(scene, own, j)) return;
    const relation = relationOf(movement, mine, other);
    for (const ca of mine.cylinders) for (const cb of other.cylinders) {
      const plan = severityOf(planClear(relation, ca, cb).worst, movement.practice.planGap);
      if (plan === "free") continue;
      const { low, high } = lostOf(relation, ca, cb);
      const tall = ca.z1 - ca.z0, { faceGap } = movement.practice;
      // Here the order of the two turns over; a shake below nothing can end a band before it.
      const turn = (cb.z0 + cb.z1 - tall) / 2;
      const band = (air: number, severity: "foul" | "tight") => {
        const from = Math.min(turn, cb.z0 - tall - low - air), to = Math.max(turn, cb.z1 + high + air);
        taken.push({ from, to, severity, by: other.id });
      };
      if (plan === "foul") band(0, "foul");
      band(faceGap, "tight");
    }
  });
  return taken;
}

/** Farther than any two faces shake, near enough not to cost a figure. */
const FAR_MM = 4096;

/** What height loses at the worst with the part under the other, and with it over the other. */
function lostOf(relation: ReturnType<typeof relationOf>, ca: Cylinder, cb: Cylinder): { low: number; high: number } {
  const lost = (z: number) => {
    const { gap, worst } = heightClear(relation, { ...ca, z0: z, z1: z }, { ...cb, z0: 0, z1: 0 });
    return gap - worst;
  };
  return { low: lost(-FAR_MM), high: lost(FAR_MM) };
}
