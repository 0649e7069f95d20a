// Dials for displays that the file says none for: one an axis, laid out by the lengths of the pointers. Lengths in mm.
import type { Dial, DialRing } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { pointerOf } from "../sky/shown.ts";

/**
 * As the file would say them, the greatest first; in each a ring for every display, shortest pointer first, and outside them
 * one for a display without a pointer. Their ids are unlike one another, though not unlike all others.
 */
export function laidOut(movement: Movement): Dial[] {
  const sizeOf = (rings: readonly DialRing[]) => rings[rings.length - 1].outsideDiameter;
  return axesOf(movement).map((displays) => ({ name: displays.length === 1 ? movement.displays[displays[0]].name : "Main dial", rings: ringsFor(movement, displays) }))
    .sort((a, b) => sizeOf(b.rings) - sizeOf(a.rings)).map((dial, i) => ({ id: i === 0 ? "dial" : `dial${i + 1}`, ...dial }));
}

/** Displays by the axis they are read on. */
function axesOf(movement: Movement): number[][] {
  const groups: { x: number; y: number; displays: number[] }[] = [];
  movement.displays.forEach((d, i) => {
    const { x, y } = movement.arbors[d.arbor];
    const group = groups.find((g) => Math.hypot(g.x - x, g.y - y) < SAME_AXIS_MM);
    if (group) group.displays.push(i);
    else groups.push({ x, y, displays: [i] });
  });
  return groups.map((g) => g.displays);
}

function ringsFor(movement: Movement, displays: readonly number[]): DialRing[] {
  const lengthOf = (display: number) => pointerOf(movement, display)?.length ?? Infinity;
  let taken = 0;
  return [...displays].sort((a, b) => lengthOf(a) - lengthOf(b)).map((display): DialRing => {
    const length = lengthOf(display);
    const inside = tenthsUp(2 * Math.max(Number.isFinite(length) ? 0.97 * length : LEAST_RADIUS_MM, taken + BETWEEN_RINGS_MM));
    const outside = tenthsUp(inside + 2 * Math.min(9, Math.max(2.2, 0.075 * inside)));
    taken = outside / 2;
    const { id, name, divisions } = movement.displays[display], labels = daysOfWeek(movement, display);
    const parts = divisions <= 24 ? 4 : divisions <= 60 ? 2 : 1;
    return { display: id, name, insideDiameter: inside, outsideDiameter: outside, ...(parts === 1 ? {} : { parts }), ...(labels ? { labels } : {}) };
  });
}

/** Of a ring for a display that has no pointer; and air from one ring to the next. */
const LEAST_RADIUS_MM = 12, BETWEEN_RINGS_MM = 0.8;

/** Seven divisions of a turn in seven days are the days of the week. */
function daysOfWeek(movement: Movement, display: number): string[] | null {
  const { divisions, wanted } = movement.displays[display];
  return divisions === 7 && wanted === 7 ? ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"] : null;
}

const tenthsUp = (mm: number): number => Math.ceil(10 * mm) / 10;
