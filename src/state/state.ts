// Every field of the screen's state, and how long each lives. One table says it, so that nothing is kept, undone or
// dropped by accident.
import type { Instrument, Movement } from "../../geometry/index.ts";
import type { Place } from "../commands/planting.ts";
import type { Fault } from "../document/index.ts";
import type { Book } from "./book.ts";
import type { History } from "./history.ts";
import type { Worked } from "./worked.ts";

/** Its distances kept, or free with the computed distance as a rest. */
export type DragWay = "in gear" | "trying the depth";
export type SheetName = "numbers" | "calliper" | "depthing" | "dials" | "together" | "making" | "workshop";
export type StandingView = "dial side" | "back side" | "edge" | "quarter";
export type Units = "mm" | "inch";
export type Look = "as the system" | "light" | "dark";

export interface Drag {
  readonly arbor: string;
  /** Where it was when it was taken up. */
  readonly from: Place;
  readonly places: ReadonlyMap<string, Place>;
  /** What holds it back, in words, or null. */
  readonly holds: string | null;
}

export interface Refusal {
  readonly file: string;
  readonly faults: readonly Fault[];
}

export interface State {
  readonly instrument: Instrument | null;
  readonly history: History;
  /** The name of the file it came from or goes to. */
  readonly file: string | null;
  /** The browser's own handle on that file, and when the file was last changed by us or read (ms). */
  readonly handle: { readonly file: FileSystemFileHandle; readonly changedMs: number } | null;
  /** What it is known by on the shelf of this browser. */
  readonly shelf: string | null;
  readonly book: Book;
  /** All that has been done is on the shelf. */
  readonly kept: boolean;
  /** Why it is not, in one sentence, where the browser refuses; null: nothing is wrong. */
  readonly notKept: string | null;
  /** Another tab has it in hand: what is done here goes to a copy. */
  readonly elsewhere: boolean;
  /** A newer build waits. */
  readonly newer: boolean;
  readonly sheet: SheetName;
  /** The id of the chosen thing: arbor, part, plate, pillar or `case`. */
  readonly chosen: string | null;
  /** The chosen finding, by what it says it is. */
  readonly finding: string | null;
  readonly way: DragWay;
  /** The Calliper has the wide layout, to plant an arbor on. */
  readonly planting: boolean;
  readonly units: Units;
  readonly look: Look;
  /** Single keys choose sheets. */
  readonly singleKeys: boolean;
  /** The standing view last asked for; a new object asks again. */
  readonly standing: { readonly view: StandingView; readonly nonce: number } | null;
  /** 0 to 1: how far the arbors are lifted apart, the frame cut away, the plates left to be seen. */
  readonly lift: number;
  readonly cut: number;
  readonly plates: number;
  readonly refusal: Refusal | null;
  readonly drag: Drag | null;
  /** The instrument as it would be with what is in hand in height, until it is kept or put back. */
  readonly trial: Instrument | null;
  /** What the movement shows instead, while a cure is looked at before it is taken. */
  readonly preview: Movement | null;
  /** One sentence for the maker in the head, until the next thing is done. */
  readonly saying: string | null;
  readonly worked: Worked | null;
}

/**
 * document: saved with the instrument and undone. work: survives a reload. choice: the maker's own, kept for every
 * instrument. session: until the page closes. transient: until the gesture ends. derived: worked out from the others.
 */
export type Life = "document" | "work" | "choice" | "session" | "transient" | "derived";

export const LIFE: { readonly [K in keyof State]: Life } = {
  instrument: "document", history: "work", file: "work", handle: "work", shelf: "work", book: "work", sheet: "work", chosen: "work",
  kept: "session", notKept: "session", elsewhere: "session", newer: "session",
  units: "choice", look: "choice", singleKeys: "choice",
  finding: "session", way: "session", planting: "session", standing: "session", lift: "session", cut: "session", plates: "session", refusal: "session",
  drag: "transient", trial: "transient", preview: "transient", saying: "transient",
  worked: "derived",
};
