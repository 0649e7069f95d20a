// What the examiner says: findings and the sheet they stand on. Field names are those of the sheet's JSON.

export type Severity = "foul" | "tight" | "free";

export type FindingCode =
  | "gap" | "stack" | "depth" | "unequal" | "distance" | "reverted" | "undercut" | "run-off" | "idle" | "bind"
  | "sense" | "drift" | "lost-motion" | "pivot" | "edge" | "pipe" | "pin" | "entry" | "heat" | "dividing";

export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** Ids of what quarrels; an arbor's bare body, a pillar and a plate go by their own ids, the case by `case`. */
  readonly between: readonly string[];
  /** The way that decides a gap. */
  readonly way?: "plan" | "height";
  /** mm: as drawn, at the worst of the shakes, and wanted. */
  readonly gap?: number;
  readonly worst?: number;
  readonly wanted?: number;
  readonly at?: { readonly x: number; readonly y: number; readonly z: number };
  /** Where it shows only at certain turns of the input. */
  readonly when?: When | null;
  /** One plain sentence for the maker. */
  readonly says: string;
  readonly remedies: readonly Remedy[];
}

export interface When {
  readonly turns: number;
  readonly nearest: { readonly turns: number; readonly gap: number };
  /** Least turns of the input after which the two stand to one another as before, exact. */
  readonly every: string;
  readonly lostMotion: boolean;
}

/** A cure that has been tried: `move` an arbor in plan `by` x and y, or a part in height `by` z (mm). */
export interface Remedy {
  readonly says: string;
  readonly move: string;
  readonly by: { readonly x: number; readonly y: number } | { readonly z: number };
  /** Arbors that must follow so that all stay in gear; absent where none must. */
  readonly with?: readonly { readonly move: string; readonly by: { readonly x: number; readonly y: number } }[];
}

export interface Sheet {
  readonly endshake: 1;
  readonly name: string;
  readonly arbors: readonly {
    readonly id: string; readonly x: number; readonly y: number; readonly planted: "file" | "solved" | "open";
    readonly rate: string | null; readonly days: number | null; readonly up: number; readonly down: number;
  }[];
  readonly engagements: readonly {
    readonly id: string; readonly distance: number; readonly computed: number | null;
    readonly backlash: number | null; readonly contactRatio: number | null; readonly faceOverlap: number;
  }[];
  readonly displays: readonly {
    readonly id: string; readonly rate: string | null; readonly days: number | null; readonly wanted: number | null;
    readonly degreesPerYear: number | null; readonly yearsToOneDegree: number | null;
    readonly sense: "clockwise" | "anticlockwise" | null; readonly lostMotion: number | null;
  }[];
  /** Gravest first; `free` ones only where they were asked for. */
  readonly findings: readonly Finding[];
  /** Order in which arbors go in; those of one list go in together. */
  readonly assembly: readonly (readonly string[])[];
  readonly counts: { readonly foul: number; readonly tight: number; readonly free: number };
}
