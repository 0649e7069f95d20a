// The general arrangement, the calliper (plan) and the developed elevation.
import { boxOf, type Column, type Movement, type Pillar, type PlanThing, type Plate, type WorkedEngagement } from "../../../geometry/index.ts";
import { levelDimension } from "../dimension.ts";
import type { Draft } from "../draft.ts";
import type { Table } from "../drawing.ts";
import { type Lettered, letterPlaces } from "../lettered.ts";
import { type Box, circle, cross, hatch, line, type Page, type Point, rectangle, text, view } from "../page.ts";
import { plateOutline } from "../plate-outline.ts";
import { ruled } from "../table.ts";
import { fixed, scaleFor, scaleWritten } from "../words.ts";

/** What plans and elevations are drawn from. */
export interface Layout {
  readonly things: readonly PlanThing[];
  readonly plates: readonly Plate[];
  readonly pillars: readonly Pillar[];
  readonly centres: readonly { readonly a: Point; readonly b: Point; readonly id: string; readonly distance: number }[];
}

export function layoutOf(movement: Movement, things: readonly PlanThing[]): Layout {
  const { plates, pillars } = movement.instrument.frame, at = (i: number): Point => [movement.arbors[i]!.x, movement.arbors[i]!.y];
  const centres = movement.engagements.map((e: WorkedEngagement) => ({ a: at(e.driverArbor), b: at(e.drivenArbor), id: e.id, distance: e.distance }));
  return { things, plates, pillars, centres };
}

const TOOTHED = new Set(["wheel", "pinion", "lantern"]);

export function calliperDraft(l: Layout): Draft {
  const round = l.things.filter((t) => t.kind === "arbor" || t.pitch > 0);
  const shows = { plates: l.plates, pillars: l.pillars, centres: l.centres, round: round.map(({ cylinders: _, ...t }) => t) };
  const tables = [planTable(round), distances(l)].filter((t) => t.rows.length > 0);
  return {
    id: "calliper", number: "/PLAN", title: "Calliper (plan)", kind: "calliper", subtitle: "tip circles, pitch circles and lines of centres", document: "plan of planting", side: "DIAL SIDE", shows, tables, cautions: [],
    draw: (next) => {
      const page = next(), scale = plan(page, l, page.room, false);
      let at = fresh(next);
      for (const table of tables) at = ruled(at, next, table);
      return scaleWritten(scale);
    },
  };
}

export function generalDraft(l: Layout): Draft {
  const tables = [letters(l)];
  return {
    id: "general", number: "/GA", title: "General arrangement", kind: "general", subtitle: "everything that is swept, with part letters", document: "general arrangement", side: "DIAL SIDE",
    shows: { plates: l.plates, pillars: l.pillars, things: l.things }, tables, cautions: [],
    draw: (next) => {
      const page = next(), scale = plan(page, l, page.room, true);
      ruled(fresh(next), next, letters(l));
      return scaleWritten(scale);
    },
  };
}

const fresh = (next: () => Page): { page: Page; y: number } => {
  const page = next();
  return { page, y: page.room.top };
};

/** Plan of everything; with `all`, not only teeth. */
function plan(page: Page, l: Layout, room: Box, all: boolean): number {
  const box = reach(l), scale = scaleFor(Math.max((box.right - box.left) / (room.right - room.left - 14), (box.top - box.bottom) / (room.top - room.bottom - 24)), 1, 5, true);
  const at = view(page, "plan", (room.left + room.right) / 2 - ((box.left + box.right) / 2) * scale, (room.top + room.bottom) / 2 + 2 - ((box.top + box.bottom) / 2) * scale, scale);
  for (const p of l.plates) plateOutline(page, p.outline, at, scale);
  for (const p of l.pillars) {
    const [x, y] = at(p.x, p.y), r = (p.diameter / 2) * scale;
    circle(page, x, y, r);
    hatch(page, [ring(x, y, r)], 45, 1.2);
  }
  for (const t of l.things) {
    if (t.kind !== "arbor" && !all && t.pitch === 0) continue;
    const [x, y] = at(t.x, t.y);
    circle(page, x, y, t.radius * scale, "narrow");
    if (t.inner > 0 && t.pitch > 0) circle(page, x, y, t.inner * scale, "narrow");
    if (t.pitch > 0) circle(page, x, y, t.pitch * scale, "chain");
  }
  if (!all) for (const c of l.centres) line(page, ...at(...c.a), ...at(...c.b), "chain", "dimension");
  const places = l.things.filter((t) => t.kind === "arbor");
  for (const t of places) cross(page, ...at(t.x, t.y), t.radius * scale + 2);
  const named = new Map<string, Lettered>();
  for (const t of places) {
    const [x, y] = at(t.x, t.y), key = `${x.toFixed(3)} ${y.toFixed(3)}`, before = named.get(key);
    named.set(key, { x, y, radius: Math.max(before?.radius ?? 0, t.radius * scale), words: before ? `${before.words} ${t.arbor}` : t.arbor });
  }
  const pillars = l.pillars.map((p) => ({ x: at(p.x, p.y)[0], y: at(p.x, p.y)[1], radius: (p.diameter / 2) * scale, words: p.id }));
  letterPlaces(page, [...named.values(), ...pillars], room);
  const [x0, y0] = at(box.left, box.bottom), [x1] = at(box.right, 0);
  if (all) levelDimension(page, x0, y0, x1, y0, y0 - 6, fixed(box.right - box.left, 2));
  return scale;
}

function reach(l: Layout): Box {
  const boxes = [...l.plates.map((p) => boxOf(p.outline)), ...l.things.map((t) => ({ left: t.x - t.radius, right: t.x + t.radius, bottom: t.y - t.radius, top: t.y + t.radius }))];
  const of = (pick: (b: Box) => number, best: (...v: number[]) => number): number => boxes.map(pick).reduce((a, b) => best(a, b));
  if (boxes.length === 0) return { left: -10, right: 10, bottom: -10, top: 10 };
  return { left: of((b) => b.left, Math.min), right: of((b) => b.right, Math.max), bottom: of((b) => b.bottom, Math.min), top: of((b) => b.top, Math.max) };
}

const ring = (x: number, y: number, r: number): number[] => Array.from({ length: 36 }, (_, i) => [x + r * Math.cos((i * Math.PI) / 18), y + r * Math.sin((i * Math.PI) / 18)]).flat();

const planTable = (things: readonly PlanThing[]): Table => ({
  id: "calliper-circles", title: "Circles", columns: ["part", "on", "x", "y", "teeth", "pitch ø", "tip ø"],
  rows: things.filter((t) => t.pitch > 0).map((t) => [t.id, t.arbor, fixed(t.x, 3), fixed(t.y, 3), t.count, fixed(2 * t.pitch, 3), fixed(2 * (t.inner > 0 ? t.inner : t.radius), 2)]),
});

const distances = (l: Layout): Table => ({
  id: "calliper-centres", title: "Lines of centres", columns: ["pair", "distance"], rows: l.centres.map((c) => [c.id, fixed(c.distance, 3)]),
});

/** Every letter, what it is and where it stands in height. */
const letters = (l: Layout): Table => ({
  id: "general-letters", title: "Part letters", columns: ["part", "what", "on", "from z", "to z", "sweeps ø"],
  rows: l.things.map((t) => [t.id, t.kind, t.arbor, fixed(Math.min(...t.cylinders.map((c) => c.z0)), 2), fixed(Math.max(...t.cylinders.map((c) => c.z1)), 2), fixed(2 * t.radius, 2)]),
});

/** By arbor. */
export type Shakes = readonly { readonly id: string; readonly up: number; readonly down: number }[];

export function elevationDraft(columns: readonly Column[], l: Layout, shakes: Shakes): Draft {
  const table: Table = {
    id: "elevation-heights", title: "Heights over the inner face of the back plate, and endshakes", columns: ["part", "what", "from", "to", "up", "down"],
    rows: columns.flatMap((c) => c.things).map((t) => {
      const s = shakes.find((k) => k.id === t.arbor);
      return [t.id, t.kind, fixed(Math.min(...t.cylinders.map((k) => k.z0)), 2), fixed(Math.max(...t.cylinders.map((k) => k.z1)), 2), s ? fixed(s.up, 3) : "", s ? fixed(s.down, 3) : ""];
    }),
  };
  return {
    id: "elevation", number: "/ELEV", title: "Developed elevation", kind: "elevation", subtitle: "arbors in a row at true distance; under each its endshake", document: "developed elevation",
    shows: { columns, plates: l.plates, shakes }, tables: [table], cautions: [],
    draw: (next) => {
      const scale = elevation(next, columns, l, shakes);
      ruled(fresh(next), next, table);
      return scaleWritten(scale);
    },
  };
}

/** Rows as they fit, one under the other; a wheel that would hide the one before stands clear of it. */
function elevation(next: () => Page, columns: readonly Column[], l: Layout, shakes: Shakes): number {
  let page = next();
  const { left, right } = page.room, zs = [...columns.flatMap((c) => c.things.flatMap((t) => t.cylinders.flatMap((k) => [k.z0, k.z1]))), ...l.plates.flatMap((p) => [p.z, p.z + p.thickness])];
  const z0 = Math.min(0, ...zs), z1 = Math.max(1, ...zs), widest = Math.max(...columns.map((c) => 2 * c.reach), 1);
  const scale = scaleFor(Math.max(widest / (right - left - 8), (z1 - z0) / ((page.room.top - page.room.bottom) / 2 - 16)), 1, 2, true);
  const rows: { c: Column; x: number }[][] = [];
  let x = Infinity;
  for (const c of columns) {
    const row = rows.at(-1), before = row?.at(-1);
    const at = before ? before.x + (c.apart ?? before.c.reach + c.reach + 3) * scale : Infinity;
    if (!row || at + c.reach * scale > right - 3) {
      x = left + 3 + c.reach * scale;
      rows.push([{ c, x }]);
    } else row.push({ c, x: (x = Math.max(at, left + 3 + c.reach * scale)) });
  }
  let y = page.room.top - 4;
  for (const row of rows) {
    const own = [...row.flatMap(({ c }) => c.things.flatMap((t) => t.cylinders.flatMap((k) => [k.z0, k.z1]))), ...l.plates.flatMap((p) => [p.z, p.z + p.thickness])];
    const low = Math.min(...own), tall = (Math.max(...own) - low) * scale + 19;
    if (y - tall < page.room.bottom) { page = next(); y = page.room.top - 4; }
    drawRow(page, row, l, shakes, y - tall + 19, low, scale);
    y -= tall;
  }
  return scale;
}

function drawRow(page: Page, row: readonly { readonly c: Column; readonly x: number }[], l: Layout, shakes: Shakes, base: number, z0: number, scale: number): void {
  const { left, right } = page.room, up = (z: number): number => base + (z - z0) * scale;
  view(page, "elevation", left, up(0), scale);
  for (const p of l.plates) {
    rectangle(page, left, up(p.z), right, up(p.z + p.thickness));
    hatch(page, [[left, up(p.z), right, up(p.z), right, up(p.z + p.thickness), left, up(p.z + p.thickness)]], 45, 2.2);
  }
  for (const { c, x } of row) {
    for (const t of c.things) for (const k of t.cylinders) {
      const r = k.radius * scale, metal = TOOTHED.has(t.kind) || t.kind === "collet" || t.kind === "disc";
      rectangle(page, x - r, up(k.z0), x + r, up(k.z1), t.kind === "arbor" ? "wide" : "narrow");
      if (metal && t.kind !== "pinion") hatch(page, [[x - r, up(k.z0), x + r, up(k.z0), x + r, up(k.z1), x - r, up(k.z1)]], t.kind === "collet" ? 135 : 45, 1);
    }
    const zs = c.things.flatMap((t) => t.cylinders.flatMap((k) => [k.z0, k.z1]));
    line(page, x, up(Math.min(...zs)) - 2, x, up(Math.max(...zs)) + 2, "chain");
    const room = Math.max(8, 2 * Math.min(...row.filter((o) => o.c !== c).map((o) => Math.abs(o.x - x) / 2), 16) - 1);
    text(page, x, base - 6.5, c.arbors.join(" "), { face: "strong", align: "middle", layer: "dimension", within: room });
    const shake = shakes.find((s) => s.id === c.arbors[0]);
    if (shake) text(page, x, base - 10.5, fixed(shake.up + shake.down, 2), { face: "figures", align: "middle", layer: "dimension", within: room });
  }
}
