// What the worker does for the Workshop: an instrument in, the list of its sheets out, and those of them that are wanted,
// drawn.
import { examine, type Instrument, workOut } from "../../geometry/index.ts";
import type { PlanSheet } from "../paper/drawing.ts";
import { listOf, type PlanOptions } from "../paper/plans.ts";
import { drawingSvg } from "../paper/svg.ts";

export interface Drawing {
  readonly kind: "sheets";
  readonly instrument: Instrument;
  readonly how: PlanOptions;
  /** In how many places it fouls; null: not known yet. */
  readonly fouls: number | null;
  /** Ids of the sheets to draw; where none of them is there, the first sheet. */
  readonly wanted: readonly string[];
}

export type ListedSheet = Pick<PlanSheet, "id" | "title" | "kind" | "mark" | "stale">;

export interface DrawnSheet extends ListedSheet {
  readonly cautions: readonly string[];
  readonly scale: string;
  /** Each as SVG, in true millimetres. */
  readonly pages: readonly string[];
}

export interface Drawn {
  readonly list: readonly ListedSheet[];
  readonly sheets: readonly DrawnSheet[];
  readonly fouls: number;
}

/** `told`: how much of it is drawn, 0 to 1. */
export function drawn({ instrument, how, fouls: known, wanted }: Drawing, told: (done: number) => void): Drawn {
  const movement = workOut(instrument), fouls = known ?? examine(movement).counts.foul, list = listOf(movement, how, fouls);
  const asked = list.filter((l) => wanted.includes(l.id)), chosen = asked.length > 0 ? asked : list.slice(0, 1);
  const sheets = chosen.map(({ draw }, i): DrawnSheet => {
    const { pages, tables: _, ...sheet } = draw();
    told((i + 1) / chosen.length);
    return { ...sheet, scale: pages[0]?.titleBlock.scale ?? "", pages: pages.map(drawingSvg) };
  });
  return { list: list.map(({ draw: _, ...listed }) => listed), sheets, fouls };
}
