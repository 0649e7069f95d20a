// A remedy carried out: what it moves stands where it says, with whatever must follow. Lengths in mm.
import type { Remedy } from "../finding.ts";
import type { Instrument } from "../instrument.ts";
import type { Movement } from "../movement.ts";

/** The instrument with a remedy carried out. */
export function applied(movement: Movement, remedy: Pick<Remedy, "move" | "by" | "with">): Instrument {
  const by = new Map([[remedy.move, remedy.by], ...(remedy.with ?? []).map((f) => [f.move, f.by] as const)]);
  const arbors = movement.arbors.map(({ arbor, x, y }) => {
    const aside = by.get(arbor.id);
    const parts = arbor.parts.map((p) => {
      const lift = by.get(p.id);
      return lift !== undefined && "z" in lift ? { ...p, z: p.z + lift.z } : p;
    });
    return aside !== undefined && "x" in aside ? { ...arbor, parts, x: x + aside.x, y: y + aside.y } : { ...arbor, parts };
  });
  return { ...movement.instrument, arbors };
}
