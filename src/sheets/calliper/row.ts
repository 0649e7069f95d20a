// The developed elevation laid out: axes in a row so that no wheel hides another, heights three times the widths.
// Pixels; x to the right, y downward from the highest thing.
import type { Movement, SweptThing } from "../../../geometry/index.ts";
import { axesOf, rowOf } from "./axes.ts";

export const HEIGHTS_TO_WIDTHS = 3;

export interface Bar {
  readonly id: string;
  readonly kind: SweptThing["kind"];
  readonly arbor: number;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  /** Half the width of a hole through it, drawn as two bars; 0: none. */
  readonly inner: number;
}
export interface Column {
  readonly x: number;
  readonly letters: string;
  readonly arbors: readonly string[];
  /** Which line under the row its letters stand on, so that none covers another. */
  readonly line: number;
}
export interface Row {
  readonly width: number;
  readonly height: number;
  readonly plates: readonly Bar[];
  /** Outer pipes first, so that what they ride on is drawn over them. */
  readonly bars: readonly Bar[];
  readonly columns: readonly Column[];
  /** The height, from the top, at which a z of the frame stands. */
  readonly yOf: (zMm: number) => number;
  /** Pixels a millimetre across. */
  readonly scale: number;
}

export interface Room { readonly width: number; readonly height: number }

/** mm of air between things of neighbours in the row that share heights, and outside the first and last. */
const AIR_MM = 2;
/** mm. Room for a letter under each axis. */
const LEAST_PITCH_MM = 8;

export function layRow(movement: Movement, things: readonly SweptThing[], room: Room): Row {
  const axes = axesOf(movement);
  const order = rowOf(movement, axes);
  const onAxes = order.map((i) => things.filter((t) => t.arbor >= 0 && axes[i]?.arbors.includes(t.arbor)));
  const middles = spread(onAxes);
  const edges = onAxes.map((of, i) => ({ middle: middles[i] ?? 0, reach: Math.max(1, ...of.map(widest)) }));
  const left = Math.min(0, ...edges.map((e) => e.middle - e.reach)) - AIR_MM;
  const right = Math.max(0, ...edges.map((e) => e.middle + e.reach)) + AIR_MM;
  const heights = things.filter((t) => t.kind !== "case").flatMap((t) => t.cylinders.flatMap((c) => [c.z0, c.z1]));
  const top = Math.max(1, ...heights), bottom = Math.min(0, ...heights);
  const scale = Math.min(room.width / (right - left), room.height / (HEIGHTS_TO_WIDTHS * (top - bottom)));
  const zScale = HEIGHTS_TO_WIDTHS * scale;
  const xOf = (mm: number) => (room.width - (right - left) * scale) / 2 + (mm - left) * scale;
  const yOf = (z: number) => (top - z) * zScale;
  const bar = (t: SweptThing, middle: number, half: number, c: SweptThing["cylinders"][number]): Bar => ({
    id: t.id, kind: t.kind, arbor: t.arbor, x: xOf(middle - half), w: 2 * half * scale, y: yOf(c.z1), h: (c.z1 - c.z0) * zScale, inner: c.inner * scale,
  });
  const depth = (b: Bar) => movement.arbors[b.arbor]?.chain.length ?? 0;
  const bars = onAxes.flatMap((of, i) => of.flatMap((t) => t.cylinders.map((c) => bar(t, middles[i] ?? 0, c.radius, c))));
  return {
    width: room.width, height: (top - bottom) * zScale, scale, yOf,
    plates: things.filter((t) => t.kind === "plate").flatMap((t) => t.cylinders.map((c) => bar(t, (left + right) / 2, (right - left) / 2, c))),
    bars: bars.sort((a, b) => depth(b) - depth(a) || Number(a.kind === "arbor") - Number(b.kind === "arbor")),
    columns: onLines(order.map((i, place) => ({
      x: xOf(middles[place] ?? 0), letters: axes[i]?.letters ?? "",
      arbors: (axes[i]?.arbors ?? []).map((a) => movement.arbors[a]?.id ?? ""),
    }))),
  };
}

/** Pixels that a letter takes along the row. */
const LETTER_PX = 9;

/** Each on the first line where its letters stand clear of those to its left. */
function onLines(columns: readonly Omit<Column, "line">[]): readonly Column[] {
  const ends: number[] = [];
  return columns.map((column) => {
    const half = (column.letters.length * LETTER_PX) / 2;
    const free = ends.findIndex((end) => end < column.x - half);
    const line = free < 0 ? ends.length : free;
    ends[line] = column.x + half;
    return { ...column, line };
  });
}

const widest = (thing: SweptThing): number => Math.max(...thing.cylinders.map((c) => c.radius));

/** Middles along the row: each axis as near to those before it as its things allow, where they share heights. */
function spread(onAxes: readonly (readonly SweptThing[])[]): number[] {
  const middles: number[] = [];
  onAxes.forEach((of, i) => {
    let at = i === 0 ? 0 : (middles[i - 1] ?? 0) + LEAST_PITCH_MM;
    for (let before = 0; before < i; before++) {
      const clear = apart(onAxes[before] ?? [], of);
      if (clear !== null) at = Math.max(at, (middles[before] ?? 0) + clear + AIR_MM);
    }
    middles.push(at);
  });
  return middles;
}

/** How far apart two axes stand when nothing of the one hides a thing of the other; null where they share no height. */
function apart(a: readonly SweptThing[], b: readonly SweptThing[]): number | null {
  let least: number | null = null;
  for (const s of a) for (const t of b) for (const c of s.cylinders) for (const d of t.cylinders)
    if (c.z0 < d.z1 && d.z0 < c.z1) least = Math.max(least ?? 0, c.radius + d.radius);
  return least;
}
