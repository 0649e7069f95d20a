// Half a tooth as a chain of smooth pieces. It is the single source of outlines and of contact work, so that what is
// drawn and what touches agree. Lengths in mm; the tooth's middle lies on +x.

export interface ProfilePoint {
  readonly x: number;
  readonly y: number;
  /** Unit normal, out of the metal. */
  readonly nx: number;
  readonly ny: number;
}

/** root: the bottom of a space; fillet: what joins it to the flank; flank: below the pitch circle, or the whole side of
 *  an involute or straight tooth; tip: the rounded side of a clock tooth above the pitch circle; top: the land at the tip. */
export type PieceName = "root" | "fillet" | "flank" | "tip" | "top";

export interface Piece {
  readonly name: PieceName;
  /** The parameter runs from `from` to `to` (either may be the greater), towards the middle of the tooth. */
  readonly from: number;
  readonly to: number;
  at(u: number): ProfilePoint;
}

export interface Profile {
  /** From the middle of the space before the tooth (y ≤ 0) to its middle on +x, end to end; the other half is its mirror
   *  in the x axis. A lantern: half a trundle alone, from its innermost point to its outermost. */
  readonly pieces: readonly Piece[];
  /** The profile reaches from the middle of the space, so that turned copies join. A lantern's does not. */
  readonly joined: boolean;
  /** mm: nearest and farthest from the axis that the profile truly comes. */
  readonly leastRadius: number;
  readonly greatestRadius: number;
}
