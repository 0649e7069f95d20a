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
  /** The gravest that the examiner says of its depth, or of teeth that do not agree. */
  readonly severity: Severity;
  readonly unequal: boolean;
}

export function engagementRows(movement: Movement, sheet: Sheet): readonly EngagementRow[] {
  return movement.engagements.flatMap((e) => {
    const row = sheet.engagements.find((r) => r.id === e.id);
    if (!row) return [];
    const { driver, driven } = e.engagement;
    const said = sheet.findings.filter((f) => (f.code === "depth" || f.code === "unequal") && f.between[0] === driver && f.between[1] === driven);
    return [{
      ...row, driver, driven, distance: e.distance, computed: e.computed,
      driverArbor: movement.arbors[e.driverArbor]?.id ?? "", drivenArbor: movement.arbors[e.drivenArbor]?.id ?? "",
      severity: said.some((f) => f.severity === "foul") ? "foul" : said.length > 0 ? "tight" : "free",
      unequal: said.some((f) => f.code === "unequal"),
    } satisfies EngagementRow];
  });
}

export interface DepthWord {
  readonly word: "right" | "deep" | "shallow" | "lets go" | "unequal";
  readonly severity: Severity;
}

export function depthOf(movement: Movement, row: EngagementRow): DepthWord {
  if (row.severity === "free") return { word: "right", severity: "free" };
  if (row.unequal) return { word: "unequal", severity: row.severity };
  if (row.contactRatio !== null && row.contactRatio < 1) return { word: "lets go", severity: row.severity };
  return { word: nearer(movement, row) ? "deep" : "shallow", severity: row.severity };
}

/** mm. Nearer to its computed distance than this, a pair is deep or shallow by its thinning, not by its distance. */
const AT_COMPUTED_MM = 0.005;

/** Whether the teeth stand farther into one another than they should; inside an annulus that is farther out. */
function nearer(movement: Movement, { driver, driven, distance, computed, backlash }: EngagementRow): boolean {
  const teeth = [driver, driven].map((id) => movement.teeth.get(id));
  const off = computed === null ? 0 : distance - computed;
  if (Math.abs(off) > AT_COMPUTED_MM) return teeth.some((t) => t?.internal === true) ? off > 0 : off < 0;
  const [least, most] = movement.practice.backlash;
  return backlash === null || backlash < ((least + most) / 2) * (teeth[0]?.module ?? 1);
}
