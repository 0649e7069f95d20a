// The ends of the shakes: how far each arbor is drawn up or down from where it stands. mm.
import type { Finding, Movement } from "../../../geometry/index.ts";

export const ENDS = ["as drawn", "all up", "all down", "worst"] as const;
export type Ends = (typeof ENDS)[number];
export const ENDS_WORDS: Record<Ends, string> = { "as drawn": "As drawn", "all up": "All up", "all down": "All down", worst: "Worst" };

/** By arbor. At the worst the two of the chosen finding come together, the lower up and the upper down; without one, the chosen arbor goes up and all others down. */
export function liftsAt(movement: Movement, ends: Ends, finding: Finding | null, chosen: string | null): readonly number[] {
  const arbor = (id: string | undefined) => (id === undefined ? -1 : movement.arborIndex.get(id) ?? movement.partIndex.get(id)?.arbor ?? -1);
  const [a, b] = finding ? finding.between.map(arbor) : [-1, -1];
  const middle = (id: string | undefined) => middleOf(movement, id);
  const pair = finding !== null && a !== undefined && b !== undefined && a !== b;
  const lower = pair && middle(finding.between[0]) <= middle(finding.between[1]) ? a : b;
  const own = arbor(chosen ?? undefined);
  return movement.arbors.map(({ shake }, i) => {
    if (ends === "as drawn") return 0;
    if (ends === "all up") return shake.up;
    if (ends === "all down") return -shake.down;
    if (pair) return i === lower ? shake.up : i === a || i === b ? -shake.down : 0;
    return i === own ? shake.up : -shake.down;
  });
}

function middleOf(movement: Movement, id: string | undefined): number {
  const at = id === undefined ? undefined : movement.partIndex.get(id);
  const part = at && movement.arbors[at.arbor]?.arbor.parts[at.part];
  if (part) return part.z + part.thickness / 2;
  const { frame } = movement.instrument, plate = frame.plates.find((p) => p.id === id);
  if (plate) return plate.z + plate.thickness / 2;
  const arbor = movement.arbors[movement.arborIndex.get(id ?? "") ?? -1]?.arbor;
  return arbor ? (arbor.foot + arbor.head) / 2 : 0;
}
