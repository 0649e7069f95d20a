// A movement is an instrument worked out: every arbor with its exact rate, place and shake, every engagement with its
// distances. Plain data; `workOut` makes it and nothing changes it.
import type { Arbor, Engagement, Instrument, Practice, Sense, ToothedPart } from "./instrument.ts";
import type { Ratio } from "./numeric/ratio.ts";
import type { Teeth } from "./teeth/teeth.ts";

export interface Movement {
  readonly instrument: Instrument;
  readonly practice: Practice;
  /** In the order of the instrument. */
  readonly arbors: readonly WorkedArbor[];
  readonly engagements: readonly WorkedEngagement[];
  readonly displays: readonly WorkedDisplay[];
  /** Rings that cannot turn; each is a `bind` finding. */
  readonly binds: readonly Bind[];
  /** Index into `arbors` by arbor id. */
  readonly arborIndex: ReadonlyMap<string, number>;
  /** The part and the index of its arbor, by part id. */
  readonly partIndex: ReadonlyMap<string, { readonly arbor: number; readonly part: number }>;
  /** Teeth of every toothed part, by part id, with every default filled in. */
  readonly teeth: ReadonlyMap<string, Teeth>;
}

export interface WorkedArbor {
  readonly id: string;
  readonly arbor: Arbor;
  /** mm, with the input at 0. */
  readonly x: number;
  readonly y: number;
  /** open: not fully decided, one free choice was taken. */
  readonly planted: "file" | "solved" | "open";
  /** Turns in the frame for one turn of the input; null: not driven, or bound. Fixed arbors stand at 0. */
  readonly rate: Ratio | null;
  /** It cannot turn: it belongs to a ring that contradicts itself. */
  readonly bound: boolean;
  /** mm its own pivots, or its own endshake, let it rise and fall from where it is drawn. */
  readonly ownShake: { readonly up: number; readonly down: number };
  /** mm in the frame: its own shake and that of everything it rides on. */
  readonly shake: { readonly up: number; readonly down: number };
  /** mm on diameter, its own. 0 for an arbor of the frame. */
  readonly ownSideshake: number;
  /** Indices of the arbors it rides on, nearest first. */
  readonly chain: readonly number[];
  /** Index of the arbor that carries its axis round (rides with radius above 0, itself or through pipes), or null. */
  readonly carrier: number | null;
  /** It belongs to the frame: fixed and riding on nothing. */
  readonly onFrame: boolean;
}

export interface WorkedEngagement {
  readonly id: string;
  readonly engagement: Engagement;
  readonly driver: ToothedPart;
  readonly driven: ToothedPart;
  readonly driverArbor: number;
  readonly drivenArbor: number;
  /** mm between centres as they stand (input at 0). */
  readonly distance: number;
  /** mm from teeth, module, shift and ease; null where teeth and mate have no working distance. */
  readonly computed: number | null;
  /** Index of the arbor on which both axes stand still, or null for the frame. */
  readonly carrier: number | null;
  /** Its axes keep their distance at every turn. */
  readonly steadyDistance: boolean;
}

export interface WorkedDisplay {
  readonly id: string;
  readonly name: string;
  readonly arbor: number;
  readonly against: number | null;
  /** Against its dial; null: not driven. */
  readonly rate: Ratio | null;
  readonly days: number | null;
  readonly wanted: number | null;
  readonly degreesPerYear: number | null;
  readonly yearsToOneDegree: number | null;
  readonly sense: Sense | null;
  readonly divisions: number;
}

/** A ring or contradiction: the engagements' ids that close it, and the arbors that cannot turn for it. */
export interface Bind {
  readonly engagements: readonly string[];
  readonly arbors: readonly string[];
  /** ring: a closed ring of wheels; input, fixed: against those; train: engagements contradict one another; distance: the axes change their distance. */
  readonly because: "ring" | "input" | "fixed" | "train" | "distance";
}
