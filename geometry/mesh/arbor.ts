// Arbors, posts and pipes as turned: pivots, shoulders, body; broken where a square is filed on them, since the square
// is the metal there. Lengths in mm.
import type { Arbor } from "../instrument.ts";
import { JOINED_MM } from "../numeric/tolerance.ts";
import { joined, type Mesh } from "./mesh.ts";
import { turned, type Profile } from "./lathe.ts";

/** One length of an arbor between two heights. */
export interface Step { readonly from: number; readonly to: number; readonly radius: number }

/** Foot pivot, body, head pivot: those that have a length. */
export function stepsOf(arbor: Arbor): readonly Step[] {
  const foot = arbor.pivots?.foot, head = arbor.pivots?.head;
  const low = Math.min(arbor.head, arbor.foot + (foot?.length ?? 0));
  const high = Math.max(low, arbor.head - (head?.length ?? 0));
  return [
    { from: arbor.foot, to: low, radius: (foot?.diameter ?? arbor.diameter) / 2 },
    { from: low, to: high, radius: arbor.diameter / 2 },
    { from: high, to: arbor.head, radius: (head?.diameter ?? arbor.diameter) / 2 },
  ].filter(isLong);
}

/** Long enough to be drawn: two rings that single precision can tell apart. */
const isLong = (s: Step): boolean => s.to - s.from > JOINED_MM;

/** Radius of the arbor within a part: the widest of its steps there, 0 beyond its ends. */
export const arborRadiusIn = (arbor: Arbor, from: number, to: number): number =>
  stepsOf(arbor).reduce((most, s) => (s.from < to && s.to > from ? Math.max(most, s.radius) : most), 0);

/** Radius of a pipe's bore as drawn: its own, else with the practice's shake over what it rides on; 0: no pipe. */
export function boreRadiusOf(arbor: Arbor, ridden: Arbor | null, pipeShakeMm: number): number {
  const bore = arbor.bore ?? (arbor.rides?.radius === 0 && ridden !== null ? ridden.diameter + pipeShakeMm : 0);
  // However wide it is asked for, a drawn pipe keeps a skin of a fiftieth of its radius.
  return (Math.min(bore, 0.98 * Math.min(...stepsOf(arbor).map((s) => 2 * s.radius))) || 0) / 2;
}

/** The bare body, as several lengths where squares stand on it. */
export function arborMesh(arbor: Arbor, boreMm: number, chordMm: number): Mesh {
  const squares = boreMm > 0 ? [] : arbor.parts.filter((p) => p.kind === "square").map((p) => ({ from: p.z, to: p.z + p.thickness }));
  const whole = [stepsOf(arbor)];
  const left = squares.reduce<readonly (readonly Step[])[]>((all, gap) => all.flatMap((steps) => without(steps, gap)), whole);
  // An arbor that is all square is drawn within its square.
  return joined((left.length > 0 ? left : whole).map((steps) => turned(boreMm > 0 ? pipeProfile(steps, boreMm) : solidProfile(steps), chordMm)));
}

/** What is left of a run of steps below and above a gap. */
function without(steps: readonly Step[], gap: { readonly from: number; readonly to: number }): readonly (readonly Step[])[] {
  const below = steps.map((s) => ({ ...s, to: Math.min(s.to, gap.from) })), above = steps.map((s) => ({ ...s, from: Math.max(s.from, gap.to) }));
  return [below, above].map((run) => run.filter(isLong)).filter((run) => run.length > 0);
}

const outsideOf = (steps: readonly Step[]): [number, number][] => {
  const points = steps.flatMap((s): [number, number][] => [[s.radius, s.from], [s.radius, s.to]]);
  return points.filter(([r, z], i) => i === 0 || Math.abs(r - points[i - 1][0]) > JOINED_MM || Math.abs(z - points[i - 1][1]) > JOINED_MM);
};

const solidProfile = (steps: readonly Step[]): Profile => {
  const outside = outsideOf(steps);
  return { points: [[0, outside[0][1]], ...outside, [0, outside[outside.length - 1][1]]], closed: false };
};

const pipeProfile = (steps: readonly Step[], bore: number): Profile => {
  const outside = outsideOf(steps);
  return { points: [...outside, [bore, outside[outside.length - 1][1]], [bore, outside[0][1]]], closed: true };
};
