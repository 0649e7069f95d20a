// The movement drawn apart in the order in which it goes together: each step lifted above the one before, seen from the
// front and a little from above. What lies nearer hides what lies farther.
import { boxOf, type Pillar, type PlanThing, type Plate } from "../../../geometry/index.ts";
import type { Draft } from "../draft.ts";
import { fill, type Page, polyline, text, view } from "../page.ts";
import { spread } from "../spread.ts";
import { scaleFor, scaleWritten } from "../words.ts";
import type { StepLine } from "./lists.ts";

export interface Apart {
  readonly steps: readonly StepLine[];
  readonly base: string | null;
  readonly things: readonly PlanThing[];
  readonly plates: readonly Plate[];
  readonly pillars: readonly Pillar[];
  /** Outlines about their arbor of what is not round about it: hands, arms, pins. */
  readonly shapes: readonly { readonly id: string; readonly corners: readonly (readonly [number, number])[] }[];
}

/** How much of the depth of a thing is seen as height. */
const TILT = 0.32;

interface Solid { readonly x: number; readonly y: number; readonly corners: readonly (readonly [number, number])[]; readonly z0: number; readonly z1: number; readonly step: number }

export function explodedDraft(a: Apart): Draft {
  const shows = { ...a, steps: a.steps.map((s) => s.ids) };
  return {
    id: "exploded", number: "/APART", title: "Drawn apart", kind: "assembly", subtitle: "each step above the one before", document: "exploded view", shows, tables: [], cautions: [],
    draw: (next) => {
      const page = next(), solids = solidsOf(a), groups = a.steps.length + 1, { left, right, top, bottom } = page.room;
      const flat = (s: Solid): readonly number[] => s.corners.map(([, y]) => TILT * (s.y + y));
      const low = Math.min(...solids.map((s) => s.z0 + Math.min(...flat(s)))), high = Math.max(...solids.map((s) => s.z1 + Math.max(...flat(s))));
      const xs = solids.flatMap((s) => s.corners.map(([x]) => s.x + x)), wide = Math.max(...xs) - Math.min(...xs);
      const lift = Math.max(4, (high - low) * 0.28), tall = high - low + lift * (groups - 1);
      const scale = scaleFor(Math.max(wide / (right - left - 36), tall / (top - bottom - 8)), 1, 2, true);
      const x = (left + right) / 2 - 14 - ((Math.max(...xs) + Math.min(...xs)) / 2) * scale, y = (top + bottom) / 2 - (tall * scale) / 2 - low * scale;
      view(page, "drawn apart", x, y, scale);
      const order = [...solids].sort((p, q) => p.step - q.step || q.y - p.y || p.z0 - q.z0);
      for (const s of order) drawSolid(page, s, x, y + s.step * lift * scale, scale);
      const levels = spread(a.steps.map((_, i) => y + ((i + 1) * lift + middleOf(solids, i + 1)) * scale), 5, bottom + 2, top - 4);
      a.steps.forEach((s, i) => text(page, right, levels[i]!, `${i + 1}  ${s.ids.slice(0, 4).join(" ")}`, { face: "figures", align: "right", layer: "dimension", within: 34 }));
      return scaleWritten(scale);
    },
  };
}

function middleOf(solids: readonly Solid[], step: number): number {
  const zs = solids.filter((s) => s.step === step).flatMap((s) => [s.z0, s.z1]);
  return zs.length > 0 ? (Math.min(...zs) + Math.max(...zs)) / 2 : 0;
}

function solidsOf(a: Apart): Solid[] {
  const stepOf = (id: string): number => a.steps.findIndex((s) => s.ids.includes(id)) + 1;
  const round = (r: number): (readonly [number, number])[] => Array.from({ length: 40 }, (_, i) => [r * Math.cos((i * Math.PI) / 20), r * Math.sin((i * Math.PI) / 20)] as const);
  const things = a.things.flatMap((t) => t.cylinders.map((c): Solid => ({ x: t.x, y: t.y, corners: a.shapes.find((s) => s.id === t.id)?.corners ?? round(c.radius), z0: c.z0, z1: c.z1, step: stepOf(t.id) || stepOf(t.arbor) })));
  const plates = a.plates.map((p): Solid => {
    const box = boxOf(p.outline), x = (box.left + box.right) / 2, y = (box.bottom + box.top) / 2, w = (box.right - box.left) / 2, h = (box.top - box.bottom) / 2;
    const corners = "circle" in p.outline ? round(w) : "polygon" in p.outline ? p.outline.polygon.map(([px, py]) => [px - x, py - y] as const) : ([[-w, -h], [w, -h], [w, h], [-w, h]] as const);
    return { x, y, corners, z0: p.z, z1: p.z + p.thickness, step: p.id === a.base ? 0 : stepOf(p.id) };
  });
  const pillars = a.pillars.map((p): Solid => ({ x: p.x, y: p.y, corners: round(p.diameter / 2), z0: p.from, z1: p.to, step: 0 }));
  return [...plates, ...pillars, ...things];
}

/** The top as it is, and the outline that it and its lower face cover together. */
function drawSolid(page: Page, s: Solid, x: number, y: number, scale: number): void {
  const at = (z: number) => s.corners.map(([cx, cy]) => [x + (s.x + cx) * scale, y + (z + TILT * (s.y + cy)) * scale] as const);
  const top = at(s.z1), hull = hullOf([...at(s.z0), ...top]).flat();
  fill(page, [hull], "paper", "part");
  polyline(page, hull, true, "narrow");
  polyline(page, top.flatMap((p) => [...p]), true, "narrow");
}

/** Source: A. M. Andrew, Another efficient algorithm for convex hulls in two dimensions (1979). */
function hullOf(points: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const half = (list: readonly (readonly [number, number])[]) => {
    const kept: (readonly [number, number])[] = [];
    for (const p of list) {
      while (kept.length > 1) {
        const a = kept[kept.length - 2]!, b = kept[kept.length - 1]!;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        kept.pop();
      }
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}
