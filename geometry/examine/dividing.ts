// `dividing`: a count that the maker's own division gives neither plainly, nor compound, nor by change gears.
import type { Finding } from "../finding.ts";
import type { Division, Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { canDivide, type Head } from "../numbers/dividing.ts";

export function dividingFindings(movement: Movement): Finding[] {
  const division = movement.instrument.division;
  if (!division) return [];
  const head = headOf(division);
  const known = new Map<number, boolean>();
  return movement.instrument.arbors.flatMap((a) => a.parts).flatMap((part) => {
    const count = dividedCount(part);
    if (count === null) return [];
    const had = known.get(count) ?? canDivide(count, head);
    known.set(count, had);
    return [{
      code: "dividing", severity: had ? "free" : "tight", between: [part.id], remedies: [],
      says: had ? `${count} divisions of ${part.id} can be had from the head`
        : `${part.id} wants ${count} divisions, which this head gives neither plainly, nor compound, nor by its change gears`,
    } satisfies Finding];
  });
}

/** A plain list of circles is one plate. */
export function headOf(division: Division): Head {
  const lists = division.circles.some(Array.isArray);
  return {
    ratio: division.ratio,
    plates: lists ? (division.circles as readonly (readonly number[])[]) : [division.circles as readonly number[]],
    gears: division.gears ?? [],
  };
}

function dividedCount(part: Part): number | null {
  switch (part.kind) {
    case "wheel": case "ratchet": return part.teeth;
    case "pinion": return part.leaves;
    case "lantern": return part.trundles;
    default: return null;
  }
}
