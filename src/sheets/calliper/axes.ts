// The axes of a movement in plan: arbors that stand in line are one axis, and are lettered together.
import type { Movement } from "../../../geometry/index.ts";

export interface AxisGroup {
  readonly x: number;
  readonly y: number;
  /** Indices of its arbors, in the order of the instrument. */
  readonly arbors: readonly number[];
  /** Their ids, set side by side. */
  readonly letters: string;
}

/** mm. On a drawing, nearer than this is one cross. */
const ONE_CROSS_MM = 1e-4;

export function axesOf(movement: Movement): readonly AxisGroup[] {
  const groups: { x: number; y: number; arbors: number[] }[] = [];
  movement.arbors.forEach(({ x, y }, i) => {
    const group = groups.find((g) => Math.hypot(g.x - x, g.y - y) < ONE_CROSS_MM);
    if (group) group.arbors.push(i);
    else groups.push({ x, y, arbors: [i] });
  });
  return groups.map((g) => ({ ...g, letters: g.arbors.map((i) => movement.arbors[i]?.id ?? "").join(" ") }));
}

/** Pairs of axes between which wheels are engaged, each once, as indices of groups. */
export function engagedAxes(movement: Movement, axes: readonly AxisGroup[]): readonly (readonly [number, number])[] {
  const groupOf = (arbor: number) => axes.findIndex((g) => g.arbors.includes(arbor));
  const pairs = movement.engagements.map((e) => [groupOf(e.driverArbor), groupOf(e.drivenArbor)] as const);
  return pairs.filter(([a, b], i) => a !== b && pairs.findIndex(([c, d]) => (a === c && b === d) || (a === d && b === c)) === i);
}

/** The axes in a row, as a developed elevation wants them: the train from the input to the right, what branches off it to the left. */
export function rowOf(movement: Movement, axes: readonly AxisGroup[]): readonly number[] {
  const pairs = engagedAxes(movement, axes);
  const input = movement.arborIndex.get(movement.instrument.input.arbor) ?? 0;
  const start = Math.max(0, axes.findIndex((g) => g.arbors.includes(input)));
  const seen = new Set([start]);
  const walk = (from: number): number[] => {
    const branches = pairs.flatMap(([a, b]) => (a === from ? [b] : b === from ? [a] : [])).flatMap((next) => {
      if (seen.has(next)) return [];
      seen.add(next);
      return [[next, ...walk(next)]];
    });
    return branches.sort((a, b) => b.length - a.length).flat();
  };
  const right: number[] = [], left: number[] = [];
  for (const [a, b] of pairs) {
    const next = a === start ? b : b === start ? a : start;
    if (seen.has(next)) continue;
    seen.add(next);
    const branch = [next, ...walk(next)];
    if (right.length <= left.length) right.push(...branch);
    else left.unshift(...branch.reverse());
  }
  const rest = axes.map((_, i) => i).filter((i) => !seen.has(i));
  return axes.length === 0 ? [] : [...left, start, ...right, ...rest];
}
