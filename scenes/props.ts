// What the screen gives the movement view, and what it hears back. Nothing here knows the store: kernel data come in
// as props, slow things by rendering, the crank through a source that is read in the frame loop. Lengths in mm.
import type { Finding, Movement, Sheet } from "../geometry/index.ts";

/** Turns of the input, read every frame and never put through React state. */
export interface TurnSource {
  get(): number;
  /** Calls back after every change; returns what ends it. */
  subscribe(heard: () => void): () => void;
}

/** The four standing views: square on to the dial, square on to the back, from the edge, and a quarter turned. */
export type Standing = "dial side" | "back side" | "edge" | "quarter";

/** Asks for a standing view. A new `nonce` asks again, even for the view last asked for. */
export interface StandingAsked {
  readonly view: Standing;
  readonly nonce: number;
}

/** How the movement stands to the eye. Told when the view comes to rest, and at most ten times a second on the way. */
export interface Seen {
  /** One phrase for the maker: "Seen from the dial side, turned 38°". */
  readonly says: string;
  /** The standing view it is in, or null once turned by hand. */
  readonly standing: Standing | null;
}

/** A drag of an arbor in plan. Exactly one of `end` or `cancel` follows each `begin`. */
export interface DragHearer {
  begin(arborId: string): void;
  /** Where the arbor's axis is wanted, the hand's first offset from it already allowed for. */
  move(arborId: string, wanted: { readonly x: number; readonly y: number }): void;
  /** The hand let go. */
  end(): void;
  /** Esc, or the browser took the pointer away: put it back. */
  cancel(): void;
}

/** in gear: the arbor keeps its distances; trying the depth: it moves freely. The view only shows which it is. */
export type DragWay = "in gear" | "trying the depth";

/** Arbors, plates or parts held over their places. */
export interface Held {
  readonly id: string;
  /** What goes with it. */
  readonly with?: readonly string[];
  /** mm along z; below 0 for what comes from behind. */
  readonly by: number;
  /** Which part of that, read every frame: 1 hanging … 0 in its place. Absent: 1. */
  readonly height?: TurnSource;
}

export interface MovementViewProps {
  /** A new object whenever the instrument changed; parts whose content is the same keep their meshes. */
  readonly movement: Movement;
  /** Its sheet: the order in which arbors lift apart. May be one step behind `movement`. */
  readonly sheet: Sheet;
  readonly turns: TurnSource;
  readonly theme: "light" | "dark";
  /** null: the view stays where the hand left it (quarter at first). */
  readonly standing: StandingAsked | null;
  readonly onSeen?: (seen: Seen) => void;
  /** Id of any thing: arbor, part, plate, pillar, `case`. A part's arbor is marked with it. */
  readonly chosen: string | null;
  /** A click chooses the arbor first, its part when the arbor is chosen already, null on bare ground. */
  readonly onChoose: (id: string | null) => void;
  /** The finding to show in its place. One of another code or about other things turns the view to it; the same, found afresh, does not. */
  readonly finding: Finding | null;
  /** 0 as it stands … 1 every arbor lifted clear along z. */
  readonly lift: number;
  /** 0 whole … 1 the frame (plates, pillars, case, dials) cut away from the six o'clock side past the far edge. Arbors stay whole. */
  readonly cut: number;
  /** 1 the plates as they are … 0 unseen. The back plate stays. */
  readonly plates: number;
  /** null: arbors are not to be dragged, every drag turns the view. Else a drag holds an arbor by its bare body, by its letter, or by
   * anything on it once it is chosen; a pipe moves what it rides on; elsewhere it turns the view. */
  readonly drag: DragWay | null;
  readonly onDrag?: DragHearer;
  /** Reduced motion: no turning or lifting in between. */
  readonly stillMotion: boolean;
  /** Letters on leaders; false: only those of what is chosen and of the finding. */
  readonly letters: boolean;
  /** Ids of things not to be drawn (putting together: what is not in yet): an arbor with all its parts, a display with its dial. */
  readonly hidden?: ReadonlySet<string>;
  /** What is held over its place by so much along z (putting together), with a chain line down from the first. */
  readonly held?: Held | null;
  /** Words for the whole picture, for those who do not see it. */
  readonly label: string;
}
