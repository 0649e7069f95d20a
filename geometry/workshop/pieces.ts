// Parts that are not turned on an arbor's sheet and have no teeth to engage: discs, slots, arms, pointers and ratchets,
// with every figure that defines them. Lengths in mm, angles in degrees.
import type { Arm, Disc, Part, Pointer, Ratchet, Sense, Slot } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { materialOf, massG } from "./metal.ts";
import { type Card, cardOf } from "./card.ts";
import { type Seat, seatOf } from "./seats.ts";

export type Piece = Disc | Slot | Arm | Pointer | Ratchet;

export interface PieceFigures {
  readonly piece: Piece;
  readonly arbor: string;
  readonly seat: Seat;
  readonly material: string;
  readonly massG: number | null;
  readonly ratchet: RatchetFigures | null;
}

/** Teeth with one radial face; the back falls evenly from each tip to the foot of the next face. */
export interface RatchetFigures {
  readonly teeth: number;
  readonly tipRadius: number;
  readonly rootRadius: number;
  /** Between two tips, along the chord. */
  readonly tipChord: number;
  /** Of the back of a tooth with the radial face. */
  readonly backAngle: number;
  readonly passes: Sense;
  readonly card: Card;
  /** Each face: its angle from the first. */
  readonly faces: readonly number[];
}

export const isPiece = (part: Part): part is Piece => ["disc", "slot", "arm", "pointer", "ratchet"].includes(part.kind);

export function pieceFigures(movement: Movement, partId: string): PieceFigures | null {
  const at = movement.partIndex.get(partId);
  if (at === undefined) return null;
  const { arbor, id } = movement.arbors[at.arbor], piece = arbor.parts[at.part];
  if (!isPiece(piece)) return null;
  const seat = seatOf(arbor, piece), material = materialOf(piece);
  return {
    piece, arbor: id, seat, material, massG: massG(Math.max(0, areaMmSq(piece) - (Math.PI / 4) * seat.diameter ** 2) * piece.thickness, material),
    ratchet: piece.kind === "ratchet" ? ratchetFigures(movement, piece) : null,
  };
}

function ratchetFigures(movement: Movement, piece: Ratchet): RatchetFigures {
  const click = movement.instrument.couplings?.find((c) => c.kind === "click" && c.ratchet === piece.id);
  const tip = piece.diameter / 2, root = Math.max(0, tip - piece.depth), pitch = (2 * Math.PI) / piece.teeth;
  return {
    teeth: piece.teeth, tipRadius: tip, rootRadius: root, tipChord: 2 * tip * Math.sin(pitch / 2),
    backAngle: (180 / Math.PI) * Math.atan2(root * Math.sin(pitch), tip - root * Math.cos(pitch)),
    passes: click?.kind === "click" ? click.passes : "clockwise", card: cardOf(piece.teeth, movement.instrument.division),
    faces: Array.from({ length: piece.teeth }, (_, i) => (360 * i) / piece.teeth),
  };
}

function areaMmSq(piece: Piece): number {
  const round = (diameter: number) => (Math.PI / 4) * diameter ** 2;
  switch (piece.kind) {
    case "disc": return round(piece.diameter) - (piece.windows ?? []).reduce((sum, w) => sum + round(w.diameter), 0);
    case "slot": return round(piece.diameter) - piece.width * (piece.length - piece.width) - round(piece.width);
    case "arm": return piece.length * piece.width + round(piece.width) / 2;
    // A hand is about six tenths of the bar that it is cut from.
    case "pointer": return 0.6 * (piece.length + piece.tail) * piece.width;
    case "ratchet": return Math.PI * (piece.diameter / 2 - piece.depth / 2) ** 2;
  }
}
