// A sheet before it is numbered: what it shows, and how that is drawn on pages of a given size.
import type { Drawing, PaperSize, SheetKind, Table } from "./drawing.ts";
import { PAPER } from "./drawing.ts";
import { frame, roomOf } from "./frame.ts";
import { frameOf, newPage, type Page } from "./page.ts";

export interface Draft {
  readonly id: string;
  /** What stands after the instrument's letters in the drawing number: a part's id, or what no id can be, from a stroke on. */
  readonly number: string;
  readonly title: string;
  readonly kind: SheetKind;
  /** One line under the title's head, in words. */
  readonly subtitle: string;
  /** What kind of document it is: "wheel sheet, for cutting". */
  readonly document: string;
  /** "DIAL SIDE" and the like, or nothing. */
  readonly side?: string;
  /** All figures that the drawing is made from, and nothing else: the mark is made of them. */
  readonly shows: unknown;
  readonly tables: readonly Table[];
  readonly cautions: readonly string[];
  /** Draws its pages; `next` gives a fresh one. Gives the scale that stands in the title block. */
  readonly draw: (next: () => Page) => string;
}

export interface Issue {
  readonly size: PaperSize;
  readonly owner: string;
  readonly issued: string;
  readonly drawn: string;
  readonly mark: string;
  readonly place: number;
  readonly of: number;
  /** In how many places the instrument fouls. */
  readonly fouls: number;
}

export function drawn(draft: Draft, issue: Issue): Drawing[] {
  const { size } = issue, pages: Page[] = [];
  const notes = { cautions: draft.cautions, fouls: issue.fouls };
  const scale = draft.draw(() => {
    const page = newPage(size, roomOf(size, notes));
    pages.push(page);
    return page;
  });
  return pages.map((page, i) => {
    const titleBlock = {
      owner: issue.owner, title: draft.title, subtitle: draft.subtitle, number: `${initials(issue.owner)}${draft.number.startsWith("/") ? "" : "-"}${draft.number}`, mark: issue.mark, issued: issue.issued,
      sheet: `${issue.place} of ${issue.of}${pages.length > 1 ? `, page ${i + 1} of ${pages.length}` : ""}`,
      scale, document: draft.document, drawn: issue.drawn, unless: "mm, ±0.05, edges broken 0.1",
    };
    frame(page, titleBlock, draft.side ?? "", notes);
    return { size, ...PAPER[size], frame: frameOf(size), titleBlock, views: page.views, entities: page.entities };
  });
}

const initials = (name: string): string => [...name.matchAll(/\b[A-Za-z]/g)].map((m) => m[0].toUpperCase()).join("").slice(0, 3) || "I";
