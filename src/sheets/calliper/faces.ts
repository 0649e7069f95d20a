// The faces nearest over and under a part, among everything that is not clear of it in plan nor in gear with it: with the
// gaps as drawn. mm.
import { type Movement, type SweptThing, sweptThings } from "../../../geometry/index.ts";

export interface Face { readonly by: string; readonly gap: number; readonly z: number }
export interface Faces { readonly above: Face | null; readonly below: Face | null }

export function facesOf(movement: Movement, id: string, things: readonly SweptThing[] = sweptThings(movement)): Faces {
  const own = things.find((t) => t.id === id), mine = own?.cylinders;
  if (!own || !mine || mine.length === 0) return { above: null, below: null };
  const low = Math.min(...mine.map((c) => c.z0)), high = Math.max(...mine.map((c) => c.z1));
  const reach = Math.max(...mine.map((c) => c.radius)), { planGap } = movement.practice;
  const mates = new Set(movement.engagements.flatMap((e) => (e.driver.id === id ? [e.driven.id] : e.driven.id === id ? [e.driver.id] : [])));
  let above: Face | null = null, below: Face | null = null;
  for (const other of things) {
    if (other === own || mates.has(other.id) || other.kind === "arbor" || other.kind === "pillar" || other.kind === "case" || !meets(other, own, reach + planGap)) continue;
    for (const { z0, z1 } of other.cylinders) {
      if (z0 + z1 > low + high && (above === null || z0 < above.z)) above = { by: other.id, gap: z0 - high, z: z0 };
      if (z0 + z1 <= low + high && (below === null || z1 > below.z)) below = { by: other.id, gap: low - z1, z: z1 };
    }
  }
  return { above, below };
}

/** Plates lie over and under everything; round things where their discs come within reach. */
function meets(other: SweptThing, own: SweptThing, reach: number): boolean {
  if (other.plate !== null) return true;
  const far = Math.hypot(other.axis.atRest.x - own.axis.atRest.x, other.axis.atRest.y - own.axis.atRest.y);
  return other.cylinders.some((c) => far < c.radius + reach && far + reach > c.inner);
}
