// The depthing sheet: one engagement magnified, with the window of its distance, its figures and how it runs, beside the
// same pair at its computed distance; and all engagements, worst first. It turns with the crank, and follows a drag live.
import { useMemo, useState } from "react";
import { findingKey } from "../../state/actions.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import type { State } from "../../state/state.ts";
import { type EngagementRow, engagementRows } from "../depth.ts";
import { arborOf } from "../words.tsx";
import "./depthing.css";
import { Engagements } from "./Engagements.tsx";
import { Pair } from "./Pair.tsx";

/** What was picked in the list, and what else was chosen at that time: a later choice elsewhere leads away from it. */
interface Picked { readonly id: string; readonly finding: string | null }

export function Depthing() {
  const worked = useNow((s) => s.worked);
  const [chosen, finding, drag, units] = [useNow((s) => s.chosen), useNow((s) => s.finding), useNow((s) => s.drag), useNow((s) => s.units)];
  const { choose } = useActions();
  const [picked, setPicked] = useState<Picked | null>(null);
  const rows = useMemo(() => (worked ? engagementRows(worked.movement, worked.sheet) : []), [worked]);
  if (!worked) return null;
  const { movement } = worked;
  const here = shown(rows, worked, { chosen: arborOf(movement, chosen), finding, drag }, picked);
  const index = movement.engagements.findIndex((e) => e.id === here?.id);
  const pick = (row: EngagementRow) => { setPicked({ id: row.id, finding }); choose(row.driven); };
  const list = <Engagements movement={movement} rows={rows} here={here} units={units} onPick={pick} />;
  if (movement.engagements.length === 0) return <p className="note">Nothing is engaged yet: engage two toothed parts, and this sheet depths them.</p>;
  // Before the examiner has come there is no row to show.
  if (!here || index < 0) return <p className="note">Being examined.</p>;
  return <Pair key={here.id} movement={movement} index={index} row={here} units={units} inHand={drag !== null}>{list}</Pair>;
}

const GRAVITY = { foul: 0, tight: 1, free: 2 } as const;

/** The pair that is meant: one of the arbor in hand; else the one picked; else the finding's; else the chosen arbor's; else the worst. */
function shown(
  rows: readonly EngagementRow[], { sheet }: NonNullable<State["worked"]>,
  { chosen, finding, drag }: { readonly chosen: string | null } & Pick<State, "finding" | "drag">, picked: Picked | null,
): EngagementRow | null {
  const of = (arbor: string) => (r: EngagementRow) => r.drivenArbor === arbor || r.driverArbor === arbor;
  const own = rows.find((r) => r.id === picked?.id && picked.finding === finding) ?? null;
  const about = sheet.findings.find((f) => findingKey(f) === finding);
  const found = rows.find((r) => r.driver === about?.between[0] && r.driven === about.between[1]) ?? null;
  const worst = [...rows].sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]);
  const meant = [own, found].filter((r) => r !== null);
  if (drag && !meant.some(of(drag.arbor))) {
    const carried = worst.find(of(drag.arbor));
    if (carried) return carried;
  }
  const fits = (r: EngagementRow) => chosen === null || of(chosen)(r);
  return meant.find(fits) ?? (chosen === null ? undefined : worst.find(of(chosen))) ?? meant[0] ?? worst[0] ?? null;
}
