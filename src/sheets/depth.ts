// How an engaged pair stands, in one word: deep, right, shallow, or it lets go. The figures and the limits are the
// examiner's; this only names them.
import type { Movement, Severity, Sheet } from "../../geometry/index.ts";

export interface EngagementRow {
  readonly id: string;
  readonly driver: string;
  readonly driven: string;
  readonly driverArbor: string;
  readonly drivenArbor: string;
  readonly distance: number;
  readonly computed: number | null;
  readonly backlash: number | null;
  readonly contactRatio: number | null;
  readonly faceOverlap: number;
  /** The gravest that the examiner says of its depth. */
  readonly severity: Severity;
}

export function engagementRows(movement: Movement, sheet: Sheet): readonly EngagementRow[] {
  return movement.engagements.flatMap((e) => {
    const row = sheet.engagements.find((r) => r.id === e.id);
    if (!row) return [];
    const { driver, driven } = e.engagement;
    const said = sheet.findings.filter((f) => f.code === "depth" && f.between[0] === driver && f.between[1] === driven);
    return [{
      ...row, driver, driven, distance: e.distance, computed: e.computed,
      driverArbor: movement.arbors[e.driverArbor]?.id ?? "", drivenArbor: movement.arbors[e.drivenArbor]?.id ?? "",
      severity: said.some((f) => f.severity === "foul") ? "foul" : said.length > 0 ? "tight" : "free",
    } satisfies EngagementRow];
  });
}

export interface DepthWord {
  readonly word: "right" | "deep" | "shallow" | "lets go" | "not known";
  readonly severity: Severity;
}

export function depthOf(movement: Movement, row: EngagementRow): DepthWord {
  if (row.severity === "free") return { word: row.backlash === null ? "not known" : "right", severity: "free" };
  if (row.contactRatio !== null && row.contactRatio < 1) return { word: "lets go", severity: row.severity };
  return { word: nearer(movement, row) ? "deep" : "shallow", severity: row.severity };
}

/** Whether the teeth stand farther into one another than they were computed for; inside an annulus that is farther out. */
function nearer(movement: Movement, { driver, driven, distance, computed }: EngagementRow): boolean {
  const inside = [driver, driven].some((id) => movement.teeth.get(id)?.internal === true);
  if (computed === null) return true;
  return inside ? distance > computed : distance < computed;
}
