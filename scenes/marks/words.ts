// Words for things and findings in the picture.
import type { Finding, Movement } from "../../geometry/index.ts";

/** "Wheel D1", "Arbor G", "Pillar P3": what a thing is, by the name the file gives it, else its id. */
export function nameOf(id: string, movement: Movement): string {
  const { frame } = movement.instrument;
  const at = movement.partIndex.get(id);
  if (at) {
    const part = movement.arbors[at.arbor]?.arbor.parts[at.part];
    return `${capital(part?.kind ?? "part")} ${part?.name ?? id}`;
  }
  const arbor = movement.arborIndex.get(id);
  if (arbor !== undefined) return `Arbor ${id}`;
  if (frame.pillars.some((p) => p.id === id)) return `Pillar ${id}`;
  const plate = frame.plates.find((p) => p.id === id);
  if (plate) return plate.name ?? `Plate ${id}`;
  return capital(id);
}

/** The finding's sentence without the figure, which stands under it. */
export const headingOf = (finding: Finding): string =>
  finding.gap === undefined ? finding.says : finding.says.replace(/ by [−-]?\d+(\.\d+)? mm( in (plan|height))?\.?$/, "");

/** "−0.42 mm in plan"; null where a finding has no figure. */
export function figureOf({ gap, way }: Finding): string | null {
  if (gap === undefined) return null;
  return `${gap < 0 ? "−" : ""}${Math.abs(gap).toFixed(2)} mm${way ? ` in ${way}` : ""}`;
}

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);
