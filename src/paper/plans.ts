// The plans of an instrument: every sheet that its makers need, each drawn from figures of the kernel and marked by them.
import { examine, type Instrument, type Movement, workOut } from "../../geometry/index.ts";
import type { PaperSize, PlanSheet } from "./drawing.ts";
import { drawn, type Draft } from "./draft.ts";
import { draftsOf } from "./drafts.ts";
import { markOf } from "./mark.ts";

export interface PlanOptions {
  /** A4 where absent. */
  readonly size?: PaperSize;
  /** Date of issue as it is to be written; plans know no clock. */
  readonly issued?: string;
  readonly drawn?: string;
  /** Marks of sheets that were printed before, by sheet id. */
  readonly printed?: Readonly<Record<string, string>>;
}

/** A sheet in the list, drawn only when it is asked for. */
export interface Listed extends Pick<PlanSheet, "id" | "title" | "kind" | "mark" | "stale"> {
  readonly draw: () => PlanSheet;
}

/** Every sheet, drawn. */
export const plansOf = (instrument: Instrument, options: PlanOptions = {}): PlanSheet[] =>
  listOf(workOut(instrument), options).map((listed) => listed.draw());

/** Every sheet of a movement in the order of the plans, to be drawn one by one. `fouls`: in how many places, if that is known already. */
export function listOf(movement: Movement, options: PlanOptions = {}, fouls = examine(movement).counts.foul): Listed[] {
  const drafts = draftsOf(movement);
  return drafts.map((draft, i) => {
    const mark = markOf(draft.shows), stale = staleOf(draft, mark, options.printed);
    const common = { id: draft.id, title: draft.title, kind: draft.kind, mark, ...(stale === null ? {} : { stale }) };
    return {
      ...common,
      draw: () => ({
        ...common,
        pages: drawn(draft, {
          size: options.size ?? "A4", owner: movement.instrument.name, issued: options.issued ?? "", drawn: options.drawn ?? "by the maker",
          mark, place: i + 1, of: drafts.length, fouls,
        }),
        tables: draft.tables, cautions: draft.cautions,
      }),
    };
  });
}

function staleOf(draft: Draft, mark: string, printed: PlanOptions["printed"]): string | null {
  const before = printed?.[draft.id];
  return before === undefined || before === mark ? null : `${draft.title} has moved on: printed ${before}, now ${mark}`;
}
