// Everything that can be drawn of a movement, and the mesh of each. A mesh stands about its arbor's axis at the angle
// it has with the input at 0 (a toothed part with a tooth on +x: its tooth phase comes apart), at its height in the
// frame; whoever draws it only places and turns it. A pillar stands about its own axis, plates and case in the frame.
import { isToothed, type Arbor, type Part, type PartKind, type Sense } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { toothPhases } from "../motion/tooth-phases.ts";
import { toRad } from "../numeric/angle.ts";
import { CHORD_MM } from "../numeric/tolerance.ts";
import { arborMesh, arborRadiusIn, boreRadiusOf } from "./arbor.ts";
import { flatPartMesh } from "./flatparts.ts";
import { caseMesh, pillarMesh, pivotHolesOf, plateMesh } from "./frame.ts";
import type { Mesh } from "./mesh.ts";
import { squareMesh } from "./square.ts";
import { lanternMesh, toothedMesh } from "./toothed.ts";

export type ThingKind = PartKind | "arbor" | "pipe" | "plate" | "pillar" | "case";
export type Metal = "brass" | "steel" | "blued steel";

export interface Thing {
  /** Part, arbor, plate or pillar id, or `case`. */
  readonly id: string;
  readonly kind: ThingKind;
  /** Index of the arbor it belongs to, or null: the frame. */
  readonly arbor: number | null;
  /** Where its mesh's axis stands with the input at 0, mm. 0, 0 for plates and case. */
  readonly x: number;
  readonly y: number;
  /** What it is usually made of, where the file names no material of its own. */
  readonly metal: Metal;
  /** The file's own word for its material, or null. */
  readonly material: string | null;
}

/** Plates, pillars and case, then each arbor followed by its parts, in the order of the file. */
export function thingsOf(movement: Movement): readonly Thing[] {
  const { frame } = movement.instrument;
  const still = { arbor: null, x: 0, y: 0, metal: "brass", material: null } as const;
  return [
    ...frame.plates.map((p): Thing => ({ ...still, id: p.id, kind: "plate" })),
    ...frame.pillars.map((p): Thing => ({ ...still, id: p.id, kind: "pillar", x: p.x, y: p.y })),
    ...(frame.case === undefined ? [] : [{ ...still, id: "case", kind: "case" } as Thing]),
    ...movement.arbors.flatMap((a, arbor): Thing[] => {
      const pipe = boreOf(movement, arbor) > 0;
      const here = { arbor, x: a.x, y: a.y };
      return [
        { ...here, id: a.id, kind: pipe ? "pipe" : "arbor", metal: pipe ? "brass" : "steel", material: null },
        ...a.arbor.parts.map((p): Thing => ({ ...here, id: p.id, kind: p.kind, metal: METAL[p.kind], material: p.material ?? null })),
      ];
    }),
  ];
}

const METAL: Readonly<Record<PartKind, Metal>> = {
  wheel: "brass", pinion: "steel", lantern: "brass", collet: "brass", pointer: "blued steel", disc: "brass", pin: "steel",
  slot: "brass", arm: "brass", ratchet: "steel", square: "steel",
};

/** The closed mesh of one thing, chords within chordMm of the true curves; null for an id that names nothing. */
export function meshOf(movement: Movement, id: string, options: { readonly chordMm?: number } = {}): Mesh | null {
  const chordMm = options.chordMm ?? CHORD_MM;
  const { frame } = movement.instrument;
  const place = movement.partIndex.get(id);
  if (place !== undefined) return partMesh(movement, place.arbor, movement.arbors[place.arbor].arbor.parts[place.part], chordMm);
  const arbor = movement.arborIndex.get(id);
  if (arbor !== undefined) return arborMesh(movement.arbors[arbor].arbor, boreOf(movement, arbor), chordMm);
  const plate = frame.plates.find((p) => p.id === id);
  if (plate !== undefined) return plateMesh(movement, plate, chordMm);
  const pillar = frame.pillars.find((p) => p.id === id);
  if (pillar !== undefined) return pillarMesh(pillar, chordMm);
  return id === "case" && frame.case !== undefined ? caseMesh(frame.case, chordMm) : null;
}

/**
 * Everything the mesh of a thing depends on besides the chord, as one text: two things of one text have one mesh, so a
 * view may keep what it has already sent to the screen.
 */
export function meshTextOf(movement: Movement, id: string): string {
  const { frame } = movement.instrument;
  const place = movement.partIndex.get(id);
  if (place !== undefined) {
    const { arbor } = movement.arbors[place.arbor], part = arbor.parts[place.part];
    const { id: _id, name: _name, join: _join, material: _material, ...shape } = part;
    return JSON.stringify(["part", shape, movement.teeth.get(id), boreOfPart(arbor, part), boreOf(movement, place.arbor), passesOf(movement, id),
      part.kind === "square" ? [arbor.foot, arbor.head] : armsRad(movement, part)]);
  }
  const arbor = movement.arborIndex.get(id);
  if (arbor !== undefined) {
    const { diameter, foot, head, pivots, parts } = movement.arbors[arbor].arbor;
    return JSON.stringify(["arbor", diameter, foot, head, pivots, boreOf(movement, arbor), parts.filter((p) => p.kind === "square")]);
  }
  const plate = frame.plates.find((p) => p.id === id);
  if (plate !== undefined) return JSON.stringify(["plate", plate.z, plate.thickness, plate.outline, plate.openings, pivotHolesOf(movement, plate)]);
  const pillar = frame.pillars.find((p) => p.id === id);
  return JSON.stringify(pillar === undefined ? ["case", frame.case] : ["pillar", pillar.diameter, pillar.from, pillar.to]);
}

function partMesh(movement: Movement, index: number, part: Part, chordMm: number): Mesh {
  const { arbor } = movement.arbors[index];
  const bore = boreOfPart(arbor, part);
  if (part.kind === "square") return squareMesh(part, arbor, boreOf(movement, index), chordMm);
  if (!isToothed(part)) return flatPartMesh(part, bore, passesOf(movement, part.id), chordMm);
  const teeth = movement.teeth.get(part.id);
  if (teeth === undefined) throw new Error(`the movement holds no teeth for ${part.id}`);
  return part.kind === "lantern" ? lanternMesh(part, teeth, bore, chordMm) : toothedMesh(part, teeth, bore, armsRad(movement, part), chordMm);
}

/** How far a wheel's first arm stands past its tooth on +x: where the file says how the arms stand, that is what is left beside how its teeth do. */
const armsRad = (movement: Movement, part: Part): number => (part.kind !== "wheel" || part.crossings?.angle === undefined ? 0
  : toRad(part.crossings.angle) - (toothPhases(movement).get(part.id) ?? 0));

/** mm: radius of the arbor within the part. */
const boreOfPart = (arbor: Arbor, part: Part): number => arborRadiusIn(arbor, part.z, part.z + part.thickness);

/** mm: radius of an arbor's own bore; 0 where it is no pipe. */
function boreOf(movement: Movement, index: number): number {
  const { arbor } = movement.arbors[index];
  const ridden = arbor.rides === undefined ? undefined : movement.arborIndex.get(arbor.rides.on);
  return boreRadiusOf(arbor, ridden === undefined ? null : movement.arbors[ridden].arbor, movement.practice.pipeShake);
}

function passesOf(movement: Movement, partId: string): Sense {
  const click = movement.instrument.couplings?.find((c) => c.kind === "click" && c.ratchet === partId);
  return click?.kind === "click" ? click.passes : "clockwise";
}
