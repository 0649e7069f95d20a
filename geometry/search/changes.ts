// Changes that could be a way out of a fault: each an instrument changed, with what would have to be made or drilled
// otherwise. Nothing that is made is touched: an arbor that is steady or whose hole is measured keeps its place, a part
// that is measured keeps its shape (it may still be set at another height). None of them is tried here. Lengths in mm.
import type { Arbor, Engagement, Instrument, Part } from "../instrument.ts";
import { mm } from "../examine/engaged.ts";
import { arborName, partName } from "../examine/words.ts";
import type { Movement } from "../movement.ts";

/** What must be done otherwise, the cheapest first: drawn, set at another height, drilled, turned, cut, counted. */
export type Work = "drawing" | "setting" | "hole" | "turning" | "cutting" | "count";

export interface Change {
  readonly says: string;
  readonly instrument: Instrument;
  /** Ids of what is made otherwise, and how. */
  readonly remade: readonly { readonly id: string; readonly work: Work }[];
}

/** The instrument with one part changed. */
export const withPart = (instrument: Instrument, id: string, change: Partial<Part>): Instrument => ({
  ...instrument,
  arbors: instrument.arbors.map((a) => (a.parts.some((p) => p.id === id) ? { ...a, parts: a.parts.map((p) => (p.id === id ? { ...p, ...change } as Part : p)) } : a)),
});

/** The instrument with one arbor changed. */
export const withArbor = (instrument: Instrument, id: string, change: Partial<Arbor>): Instrument =>
  ({ ...instrument, arbors: instrument.arbors.map((a) => (a.id === id ? { ...a, ...change } : a)) });

/** The instrument with one engagement changed. */
export const withEngagement = (instrument: Instrument, engagement: Engagement, change: Partial<Engagement>): Instrument =>
  ({ ...instrument, engagements: instrument.engagements.map((e) => (e === engagement ? { ...e, ...change } : e)) });

/** A part as it stands in its instrument; null where the id is none of a part. */
export function partAt(movement: Movement, id: string): { arbor: Arbor; part: Part } | null {
  const at = movement.partIndex.get(id);
  if (at === undefined) return null;
  const { arbor } = movement.arbors[at.arbor];
  return { arbor, part: arbor.parts[at.part] };
}

export const isMade = (part: Part): boolean => part.measured !== undefined;

/** Least wall left round an arbor, and the least thickness, of a part turned down. */
const LEAST_WALL_MM = 0.5, LEAST_THICK_MM = 0.5;

/** A collet or disc turned smaller by so much in diameter. */
export function smaller({ instrument }: Movement, arbor: Arbor, part: Part, byMm: number): Change[] {
  if (isMade(part) || !(part.kind === "collet" || part.kind === "disc") || byMm <= 0) return [];
  const diameter = down(part.diameter - byMm);
  if (diameter < arbor.diameter + 2 * LEAST_WALL_MM) return [];
  return [{ says: `Turn ${partName(part)} down to ${mm(diameter)}`, instrument: withPart(instrument, part.id, { diameter }), remade: [{ id: part.id, work: "turning" }] }];
}

/** A part thinner by so much, from above or from below. */
export function thinner({ instrument }: Movement, part: Part, byMm: number): Change[] {
  const thickness = down(part.thickness - byMm);
  if (isMade(part) || part.kind === "pin" || byMm <= 0 || thickness < LEAST_THICK_MM) return [];
  const work = part.kind === "collet" || part.kind === "disc" ? "turning" : "cutting";
  return [part.z, part.z + part.thickness - thickness].map((z, i) => ({
    says: `Make ${partName(part)} ${mm(thickness)} thick, ${i === 0 ? "its lower face" : "its upper face"} as it is`,
    instrument: withPart(instrument, part.id, { z, thickness }), remade: [{ id: part.id, work }],
  }));
}

/** A part set higher (below 0: lower) on its arbor. */
export const raisedBy = ({ instrument }: Movement, part: Part, byMm: number): Change => ({
  says: `${byMm > 0 ? "Raise" : "Lower"} ${partName(part)} by ${mm(Math.abs(byMm))}`,
  instrument: withPart(instrument, part.id, { z: part.z + byMm }), remade: [{ id: part.id, work: "setting" }],
});

/** A pipe bored wider. */
export const boredTo = ({ instrument }: Movement, arbor: Arbor, bore: number): Change =>
  ({ says: `Bore ${arborName(arbor)} out to ${mm(bore)}`, instrument: withArbor(instrument, arbor.id, { bore }), remade: [{ id: arbor.id, work: "turning" }] });

/** The earlier of two joins made after the later. */
export function heatsSwapped({ instrument }: Movement, earlier: Part, later: Part): Change[] {
  if (earlier.join?.order === undefined || later.join?.order === undefined) return [];
  const one = withPart(instrument, earlier.id, { join: { ...earlier.join, order: later.join.order } });
  return [{
    says: `Join ${partName(earlier)} after ${partName(later)}`,
    instrument: withPart(one, later.id, { join: { ...later.join, order: earlier.join.order } }), remade: [{ id: earlier.id, work: "drawing" }, { id: later.id, work: "drawing" }],
  }];
}

/** A part thicker by so much, downward or upward. */
export function thicker({ instrument }: Movement, part: Part, byMm: number): Change[] {
  if (isMade(part)) return [];
  const thickness = -down(-part.thickness - byMm);
  return [part.z + part.thickness - thickness, part.z].map((z, i) => ({
    says: `Make ${partName(part)} ${mm(thickness)} thick, ${i === 0 ? "its upper face" : "its lower face"} as it is`,
    instrument: withPart(instrument, part.id, { z, thickness }), remade: [{ id: part.id, work: "cutting" }],
  }));
}

/** Makers work to hundredths. */
const down = (lengthMm: number): number => Math.floor(lengthMm * 100 + 1e-6) / 100;
