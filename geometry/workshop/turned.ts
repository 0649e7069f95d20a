// The lengths of one diameter that an arbor is turned in, from its foot end. Lengths in mm.
import type { Arbor, Part } from "../instrument.ts";

export interface Step { readonly from: number; readonly to: number; readonly diameter: number; readonly what: "pivot" | "body" }

/** Foot pivot, body, head pivot: those that have a length. */
export function stepsOf(arbor: Arbor): Step[] {
  const { foot, head } = arbor.pivots ?? {}, length = arbor.head - arbor.foot;
  const low = Math.min(length, foot?.length ?? 0), high = Math.max(low, length - (head?.length ?? 0));
  const steps: Step[] = [
    { from: 0, to: low, diameter: foot?.diameter ?? arbor.diameter, what: "pivot" },
    { from: low, to: high, diameter: arbor.diameter, what: "body" },
    { from: high, to: length, diameter: head?.diameter ?? arbor.diameter, what: "pivot" },
  ];
  return steps.filter((s) => s.to > s.from);
}

/** Where a part begins and ends, from a foot. */
export const bandFrom = (foot: number, part: Part): { readonly from: number; readonly to: number } => ({ from: part.z - foot, to: part.z + part.thickness - foot });
