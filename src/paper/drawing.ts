// One page of paper as plain data: everything that is printed or exported is drawn in this. Millimetres on the paper,
// origin at its lower left corner, y upward. Line kinds and widths by ISO 128-2, sizes by ISO 5457, lettering heights
// (of a capital letter) by ISO 3098.

export type PaperSize = "A4" | "A3" | "Letter";

/** mm, width by height: A4 and Letter stand, A3 lies (ISO 5457). */
export const PAPER: Readonly<Record<PaperSize, { readonly width: number; readonly height: number }>> = {
  A4: { width: 210, height: 297 }, A3: { width: 420, height: 297 }, Letter: { width: 215.9, height: 279.4 },
};

export type LineKind = "wide" | "narrow" | "chain" | "double-dot chain" | "dashed";

/** Width and dashes in mm (ISO 128-2: two widths, 1 : 2); chain lines are printed in a second ink where there is one. */
export const PENS: Readonly<Record<LineKind, { readonly width: number; readonly dashes: readonly number[]; readonly ink: Ink }>> = {
  "wide": { width: 0.5, dashes: [], ink: "ink" },
  "narrow": { width: 0.25, dashes: [], ink: "ink" },
  "chain": { width: 0.25, dashes: [6, 1, 0.8, 1], ink: "brass" },
  "double-dot chain": { width: 0.25, dashes: [6, 0.8, 0.8, 0.8, 0.8, 0.8], ink: "ink" },
  "dashed": { width: 0.25, dashes: [2.4, 0.9], ink: "ink" },
};
export const HATCH_WIDTH_MM = 0.18;

/** `paper` hides what lies behind it. */
export type Ink = "ink" | "brass" | "foul" | "paper";
export const INKS: Readonly<Record<Ink, string>> = { ink: "#1f2d36", brass: "#85591a", foul: "#b4380f", paper: "#ffffff" };

/** What an entity belongs to: the part as drawn, its figures, the words beside it, a ruled table, the frame of the sheet. */
export type Layer = "part" | "dimension" | "note" | "table" | "frame";

export type LetterHeight = 1.8 | 2.5 | 3.5 | 5;
/** `figures` and `strong` are of one width a letter, so that columns of figures stand true. */
export type Face = "roman" | "italic" | "figures" | "strong";

export type Entity =
  | { readonly kind: "line"; readonly layer: Layer; readonly line: LineKind; readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }
  /** Interleaved x, y. */
  | { readonly kind: "polyline"; readonly layer: Layer; readonly line: LineKind; readonly points: readonly number[]; readonly closed: boolean }
  /** Degrees, anticlockwise from `from` to `to`. */
  | { readonly kind: "arc"; readonly layer: Layer; readonly line: LineKind; readonly x: number; readonly y: number; readonly radius: number; readonly from: number; readonly to: number }
  | { readonly kind: "circle"; readonly layer: Layer; readonly line: LineKind; readonly x: number; readonly y: number; readonly radius: number }
  /** x, y: the end or middle of its base line that `align` says; `turn` degrees anticlockwise about that point. `width` is the room it takes, whatever the font. */
  | {
    readonly kind: "text"; readonly layer: Layer; readonly ink: Ink; readonly x: number; readonly y: number; readonly text: string; readonly height: LetterHeight;
    readonly face: Face; readonly align: "left" | "middle" | "right"; readonly turn: number; readonly width: number;
  }
  /** Closed loops, inside by the even-odd rule; `hatchLines` gives the lines. */
  | { readonly kind: "hatch"; readonly layer: Layer; readonly loops: readonly (readonly number[])[]; readonly angle: number; readonly spacing: number }
  /** Filled solid: arrow heads and silhouettes. */
  | { readonly kind: "fill"; readonly layer: Layer; readonly ink: Ink; readonly loops: readonly (readonly number[])[] };

export type TextEntity = Extract<Entity, { kind: "text" }>;

/** A view at a scale: the model's origin stands at x, y on the paper, and `scale` mm of paper are 1 mm of metal. */
export interface View {
  readonly name: string;
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface Drawing {
  readonly size: PaperSize;
  readonly width: number;
  readonly height: number;
  /** The frame within which everything but the centring marks lies. */
  readonly frame: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number };
  readonly titleBlock: TitleBlock;
  readonly views: readonly View[];
  readonly entities: readonly Entity[];
}

/** Data fields of ISO 7200 and what a maker wants beside them. */
export interface TitleBlock {
  readonly owner: string;
  readonly title: string;
  readonly subtitle: string;
  readonly number: string;
  readonly mark: string;
  readonly issued: string;
  readonly sheet: string;
  readonly scale: string;
  readonly document: string;
  readonly drawn: string;
  readonly unless: string;
}

export type SheetKind =
  | "general" | "calliper" | "elevation" | "train" | "wheel" | "pinion" | "arbor" | "plate" | "template" | "piece" | "ratchet" | "fit" | "housing"
  | "dial" | "hands" | "heats" | "assembly" | "parts" | "cutters" | "setting";

/** A table as data, for a file of figures. */
export interface Table {
  readonly id: string;
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
  /** Where its figures come from, where they are not the instrument's own. */
  readonly source?: string;
}

/** One sheet of the plans, of one page or several. */
export interface PlanSheet {
  readonly id: string;
  readonly title: string;
  readonly kind: SheetKind;
  /** Short mark of just what the sheet shows: it changes when that changes, and not otherwise. */
  readonly mark: string;
  readonly pages: readonly Drawing[];
  readonly tables: readonly Table[];
  readonly cautions: readonly string[];
  /** In words, where a mark was printed before and the instrument has moved on. */
  readonly stale?: string;
}

/** The lines of a hatch, as x1, y1, x2, y2: those parts of evenly spaced parallels that lie inside. */
export function hatchLines({ loops, angle, spacing }: Extract<Entity, { kind: "hatch" }>): readonly (readonly [number, number, number, number])[] {
  const a = (angle * Math.PI) / 180, c = Math.cos(a), s = Math.sin(a);
  // In axes turned with the hatch its lines lie level, at whole multiples of the spacing.
  const turned = loops.map((loop) => turnedBy(loop, c, -s));
  const ys = turned.flatMap((loop) => loop.filter((_, i) => i % 2 === 1));
  const first = Math.ceil(ys.reduce((least, y) => Math.min(least, y), Infinity) / spacing);
  const last = Math.floor(ys.reduce((most, y) => Math.max(most, y), -Infinity) / spacing);
  const lines: (readonly [number, number, number, number])[] = [];
  for (let k = first; k <= last; k++) {
    const y = (k + 1e-7) * spacing;
    const at = turned.flatMap((loop) => crossings(loop, y)).sort((p, q) => p - q);
    for (let i = 0; i + 1 < at.length; i += 2) {
      const x1 = at[i]!, x2 = at[i + 1]!;
      if (x2 - x1 > 0.05) lines.push([c * x1 - s * y, s * x1 + c * y, c * x2 - s * y, s * x2 + c * y]);
    }
  }
  return lines;
}

function turnedBy(loop: readonly number[], c: number, s: number): number[] {
  const out: number[] = [];
  for (let i = 0; i + 1 < loop.length; i += 2) out.push(c * loop[i]! - s * loop[i + 1]!, s * loop[i]! + c * loop[i + 1]!);
  return out;
}

function crossings(loop: readonly number[], y: number): number[] {
  const at: number[] = [];
  for (let i = 0, j = loop.length - 2; i < loop.length; j = i, i += 2) {
    const y0 = loop[j + 1]!, y1 = loop[i + 1]!;
    if (y0 > y !== y1 > y) at.push(loop[j]! + ((y - y0) / (y1 - y0)) * (loop[i]! - loop[j]!));
  }
  return at;
}
