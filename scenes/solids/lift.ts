// Lifting apart: how far along z each arbor, and each plate but the lowest, is raised when all are lifted clear. In the
// order in which they go in, so that what goes in last hangs highest; a pipe never below what it rides on. mm.
import type { Movement, Sheet } from "../../geometry/index.ts";

export interface Lifts {
  /** By index of the arbor. */
  readonly arbors: readonly number[];
  readonly plates: ReadonlyMap<string, number>;
  readonly highestMm: number;
}

export function liftsOf(movement: Movement, sheet: Pick<Sheet, "assembly">): Lifts {
  const { arbors, instrument } = movement;
  const order = arbors.map((_, i) => i).sort((a, b) => rank(movement, sheet, a) - rank(movement, sheet, b) || lowest(movement, a) - lowest(movement, b));
  const heightMm = Math.max(0, ...arbors.map((a) => a.arbor.head)) - Math.min(0, ...arbors.map((a) => a.arbor.foot));
  const step = order.length > 1 ? (1.3 * heightMm) / order.length : 0;
  const raised = arbors.map(() => 0);
  order.forEach((arbor, place) => { raised[arbor] = arbors[arbor]?.onFrame ? 0 : step * (place + 1); });
  for (const [i, worked] of arbors.entries())
    for (const host of worked.chain) raised[i] = Math.max(raised[i] ?? 0, raised[host] ?? 0);
  const plates = [...instrument.frame.plates].sort((a, b) => a.z - b.z);
  const inside = Math.max(0, ...raised.filter((_, i) => !pointed(movement, i)));
  const lifted = new Map(plates.map((p, i) => [p.id, i === 0 ? 0 : inside + 0.35 * heightMm + 0.1 * i * heightMm] as const));
  // What points lies over the plates.
  const over = Math.max(0, ...lifted.values());
  const all = raised.map((up, i) => {
    const worked = arbors[i];
    return worked && !worked.onFrame && pointed(movement, i) ? Math.max(up, over) + PIPE_APART * heightMm * worked.chain.length : up;
  });
  return { arbors: all, plates: lifted, highestMm: Math.max(over, ...all) };
}

/** Nested pipes draw apart by this share of the height. */
const PIPE_APART = 0.22;

const rank = (movement: Movement, sheet: Pick<Sheet, "assembly">, arbor: number) => {
  const at = sheet.assembly.findIndex((together) => together.includes(movement.arbors[arbor]?.id ?? ""));
  return at < 0 ? Infinity : at;
};
const lowest = (movement: Movement, arbor: number) => movement.arbors[arbor]?.arbor.foot ?? 0;
const pointed = (movement: Movement, arbor: number) => movement.arbors[arbor]?.arbor.parts.some((p) => p.kind === "pointer") ?? false;
