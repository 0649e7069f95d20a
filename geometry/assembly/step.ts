// One step of putting together, as it is played and printed. Lengths in mm, angles in degrees.

export interface Step {
  readonly kind: "arbors" | "plate" | "parts";
  /** Arbors, one plate, or parts put on afterwards. */
  readonly ids: readonly string[];
  readonly title: string;
  /** How it goes in, in the maker's words. */
  readonly says: string;
  /** How far from its place it is clear of everything that is in already: up for what comes from the dial side, below 0 for what comes from behind. */
  readonly lift: number;
  /** Of things that go in together: the one that could instead be leaned in last, its foot in its hole. */
  readonly lean: Lean | null;
  /** The nearest that it comes to lie over: the least air in height as drawn. */
  readonly clear: { readonly over: string; readonly under: string; readonly air: number } | null;
}

export interface Lean { readonly arbor: string; readonly degrees: number }
