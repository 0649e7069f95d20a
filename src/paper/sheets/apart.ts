// Everything that is put together as upright prisms of its true outline, step by step: wheels with their teeth, bores and
// crossings, hands, plates with their holes, arbors by their steps.
import { arborFigures, isToothed, meshOf, type Movement, type PuttingTogether, thingsOf, type ThingKind } from "../../../geometry/index.ts";
import { faceLoops } from "../files/faces.ts";
import { areaOf, type Prism, reachOf } from "../axonometric.ts";

export interface Piece extends Prism {
  readonly id: string;
  readonly kind: ThingKind;
  /** Number of its step, from 1; 0: what stands on the bench at first. */
  readonly step: number;
}

/** mm: chords stand no farther from the true curves. */
const CHORD_MM = 0.03;
/** mm: a pillar stands on a plate where it is no farther from it. */
const ON_MM = 0.5;

export function piecesOf(movement: Movement, together: PuttingTogether): Piece[] {
  const stepOf = (id: string): number => (id === together.base ? 0 : together.steps.findIndex((s) => s.ids.includes(id)) + 1);
  const { plates, pillars } = movement.instrument.frame;
  // A pillar comes with the plate on which it stands.
  const under = (id: string): string => plates.find((p) => pillars.some((q) => q.id === id && Math.abs(q.from - p.z - p.thickness) < ON_MM))?.id ?? id;
  const pieces = thingsOf(movement).filter((t) => t.kind !== "case").flatMap((t): Piece[] => {
    const arbor = t.arbor === null ? null : movement.arbors[t.arbor]!, step = stepOf(t.kind === "pillar" ? under(t.id) : t.id) || (arbor ? stepOf(arbor.id) : 0);
    const common = { id: t.id, kind: t.kind, x: t.x, y: t.y, step };
    return prismsOf(movement, t.id, t.kind, t.arbor).map((p) => ({ ...common, ...p }));
  });
  return withoutHidden(pieces);
}

type Shape = Pick<Prism, "z0" | "z1" | "loops">;

function prismsOf(movement: Movement, id: string, kind: ThingKind, arbor: number | null): Shape[] {
  const { plates, pillars } = movement.instrument.frame, pillar = pillars.find((p) => p.id === id);
  if (pillar) return [{ z0: Math.min(pillar.from, pillar.to), z1: Math.max(pillar.from, pillar.to), loops: [ring(pillar.diameter / 2)] }];
  if (arbor !== null && (kind === "arbor" || kind === "pipe")) return arborPrisms(movement, arbor);
  const at = movement.partIndex.get(id), part = at && movement.arbors[at.arbor]!.arbor.parts[at.part], plate = plates.find((p) => p.id === id), thing = part ?? plate;
  const mesh = meshOf(movement, id, { chordMm: CHORD_MM });
  if (!thing || !mesh) return [];
  const whole: Shape = { z0: thing.z, z1: thing.z + thing.thickness, loops: faceLoops(mesh) };
  return part && isToothed(part) && part.kind === "lantern" ? lanternPrisms(movement, id, whole) : [whole];
}

/** Its shrouds are the lowest face of its mesh; between them its trundles. */
function lanternPrisms(movement: Movement, id: string, { z0, z1, loops }: Shape): Shape[] {
  const teeth = movement.teeth.get(id), shroud = 0.15 * (z1 - z0);
  if (!teeth) return [];
  const trundles = Array.from({ length: teeth.count }, (_, i) => {
    const a = (2 * Math.PI * i) / teeth.count, r = (teeth.module * teeth.count) / 2;
    return { z0: z0 + shroud, z1: z1 - shroud, loops: [ring(teeth.trundleDiameter / 2, r * Math.cos(a), r * Math.sin(a))] };
  });
  return [{ z0, z1: z0 + shroud, loops }, ...trundles, { z0: z1 - shroud, z1, loops }];
}

function arborPrisms(movement: Movement, index: number): Shape[] {
  const { steps, bore, footZ } = arborFigures(movement, index);
  return steps.map(({ from, to, diameter }) => ({ z0: footZ + from, z1: footZ + to, loops: bore > 0 ? [ring(diameter / 2), backwards(ring(bore / 2))] : [ring(diameter / 2)] }));
}

/** What is within a part on the same axis is not seen: arbors and collets are cut away there, and the part's bore is filled. */
function withoutHidden(pieces: readonly Piece[]): Piece[] {
  const round = (p: Piece): boolean => p.kind === "arbor" || p.kind === "pipe" || p.kind === "collet";
  return pieces.flatMap((p): Piece[] => {
    const same = pieces.filter((o) => o !== p && o.step === p.step && Math.hypot(o.x - p.x, o.y - p.y) < 1e-6);
    if (!round(p)) {
      const bored = same.some((o) => round(o) && o.z0 < p.z1 - 1e-6 && o.z1 > p.z1 - 1e-6);
      return [bored && boreOf(p) <= bodyOf(same.filter(round)) + 0.2 ? { ...p, loops: p.loops.filter((l) => !isBore(l)) } : p];
    }
    const over = same.filter((o) => o.kind === "square" ? p.kind === "arbor" : (!round(o) || p.kind !== "collet" ? reachOf(o) > reachOf(p) + 1e-6 : false) && boreOf(o) <= reachOf(p) + 0.2);
    return over.reduce<Piece[]>((left, o) => left.flatMap((l) => [{ ...l, z1: Math.min(l.z1, o.z0) }, { ...l, z0: Math.max(l.z0, o.z1) }].filter((k) => k.z1 - k.z0 > 1e-6)), [p]);
  });
}

/** A hole about the piece's own axis. */
const isBore = (loop: ArrayLike<number>): boolean => areaOf(loop) < 0 && Math.hypot(middle(loop, 0), middle(loop, 1)) < 1e-3;

function middle(loop: ArrayLike<number>, from: 0 | 1): number {
  let sum = 0;
  for (let i = from; i < loop.length; i += 2) sum += loop[i]!;
  return (2 * sum) / loop.length;
}

/** Radius of its bore; 0: it has none. */
function boreOf(p: Piece): number {
  const bore = p.loops.find(isBore);
  return bore ? Math.hypot(bore[0]!, bore[1]!) : 0;
}

const bodyOf = (round: readonly Piece[]): number => round.reduce((most, p) => Math.max(most, reachOf(p)), 0);

/** Anticlockwise. */
function ring(radius: number, x = 0, y = 0): number[] {
  const n = Math.max(16, Math.ceil(Math.PI / Math.acos(Math.max(0, 1 - CHORD_MM / radius))));
  return Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n).flatMap((a) => [x + radius * Math.cos(a), y + radius * Math.sin(a)]);
}

const backwards = (loop: readonly number[]): number[] => Array.from({ length: loop.length / 2 }, (_, i) => [loop[loop.length - 2 - 2 * i]!, loop[loop.length - 1 - 2 * i]!]).flat();
