// The sheet of one arbor, post, stud or pipe: stepped, with everything that sits on it, heights from its foot end.
import { PROUD_MM, sineBarMm, type ArborFigures } from "../../../geometry/index.ts";
import { cautionsFor, joinDangers } from "../cautions.ts";
import { checkBar } from "../dimension.ts";
import type { Draft } from "../draft.ts";
import type { Table } from "../drawing.ts";
import { hatch, line, type Page, polyline, rectangle, text, view } from "../page.ts";
import { type Placed, spreadUpright } from "../spread.ts";
import { ROW, ruled } from "../table.ts";
import { fixed, scaleFor, scaleWritten, short } from "../words.ts";

export function arborDraft(a: ArborFigures): Draft {
  const word = { arbor: "Arbor", post: "Post", stud: "Stud", pipe: "Pipe" }[a.what];
  const dangers = a.seats.flatMap((s) => joinDangers(s.seat.says.split(", ")[1]));
  const tables = tablesOf(a);
  return {
    id: `arbor-${a.id}`, number: a.id, title: `${word} ${a.id}`, kind: "arbor",
    subtitle: [a.name, a.ridesOn ? `on ${a.ridesOn}` : null, `foot at z ${fixed(a.footZ, 2)} over the inner face of the back plate`].filter(Boolean).join(", "),
    document: "arbor sheet, for turning", shows: a, tables,
    cautions: cautionsFor("turning", ...(a.squares.length > 0 ? ["saw"] as const : []), ...(a.material === "brass" ? ["brass"] as const : []), ...dangers),
    draw: (next) => {
      const page = next(), { left, right, top } = page.room;
      const widest = Math.max(a.diameter, ...a.seats.map((s) => 2 * s.radius), ...a.pins.map((p) => 2 * (p.radius + p.diameter / 2)));
      const tall = Math.max(30, top - page.room.bottom - tables.reduce((sum, t) => sum + 17 + t.rows.length * ROW, 0) - 74);
      const scale = scaleFor(Math.max(a.length / (right - left - 30), widest / tall), 1, 20, true);
      const y = top - 34 - (widest / 2) * scale, x = (left + right) / 2 - (a.length * scale) / 2;
      drawArbor(page, a, x, y, scale, widest);
      checkBar(page, left, y - (widest / 2) * scale - 38);
      let at = { page, y: y - (widest / 2) * scale - 42 };
      for (const table of tables) at = ruled(at, next, table);
      return scaleWritten(scale);
    },
  };
}

function drawArbor(page: Page, a: ArborFigures, x: number, y: number, scale: number, widest: number): void {
  view(page, "arbor", x, y, scale);
  const u = (mm: number): number => x + mm * scale, half = (widest / 2) * scale;
  for (const s of a.seats) seat(page, s, a, x, y, scale);
  for (const p of a.pins) rectangle(page, u(p.from), y + (p.radius - p.diameter / 2) * scale, u(p.from + p.length), y + (p.radius + p.diameter / 2) * scale, "narrow");
  const above = a.steps.flatMap((s) => [u(s.from), y + (s.diameter / 2) * scale, u(s.to), y + (s.diameter / 2) * scale]);
  const below = [...a.steps].reverse().flatMap((s) => [u(s.to), y - (s.diameter / 2) * scale, u(s.from), y - (s.diameter / 2) * scale]);
  polyline(page, [...above, ...below], true);
  for (const s of a.steps.slice(1)) {
    const r = (Math.max(s.diameter, a.steps[a.steps.indexOf(s) - 1]!.diameter) / 2) * scale;
    line(page, u(s.from), y - r, u(s.from), y + r, "wide");
  }
  if (a.bore > 0) bore(page, a, x, y, scale);
  for (const q of a.squares) square(page, q, a, x, y, scale);
  line(page, x - 6, y, u(a.length) + 6, y, "chain");
  spreadUpright(page, heights(a, x, y, scale), y + half + 12, page.room.left + 3, page.room.right - 3);
  spreadUpright(page, diameters(a, x, y, scale), y - half - 12, page.room.left + 3, page.room.right - 3);
  text(page, page.room.left, y + half + 8, "0 at the foot", { face: "italic", layer: "dimension", within: Math.max(8, x - page.room.left - 3) });
}

/** What sits on it, in narrow lines; wheels and collets hatched above the axis as if cut. */
function seat(page: Page, s: ArborFigures["seats"][number], a: ArborFigures, x: number, y: number, scale: number): void {
  const x0 = x + s.from * scale, x1 = x + s.to * scale, r = s.radius * scale, inner = Math.min(r, (Math.max(s.seat.diameter, a.diameter) / 2) * scale);
  rectangle(page, x0, y - r, x1, y + r, "narrow");
  if (s.kind !== "pinion" && r > inner) hatch(page, [[x0, y + inner, x1, y + inner, x1, y + r, x0, y + r]], s.kind === "collet" ? 135 : 45, 1.2);
}

function bore(page: Page, a: ArborFigures, x: number, y: number, scale: number): void {
  const r = (a.bore / 2) * scale;
  for (const side of [1, -1]) line(page, x, y + side * r, x + a.length * scale, y + side * r, "dashed");
}

/** Two crossed narrow lines mark a flat surface (ISO 128-3). */
function square(page: Page, q: ArborFigures["squares"][number], a: ArborFigures, x: number, y: number, scale: number): void {
  const atHead = q.from + q.to > a.length, x0 = x + q.from * scale, x1 = x + q.to * scale;
  const h0 = ((atHead ? q.wide : q.narrow) / 2) * scale, h1 = ((atHead ? q.narrow : q.wide) / 2) * scale;
  polyline(page, [x0, y - h0, x1, y - h1, x1, y + h1, x0, y + h0], true);
  line(page, x0, y - h0, x1, y + h1);
  line(page, x0, y + h0, x1, y - h1);
}

function heights(a: ArborFigures, x: number, y: number, scale: number): Placed[] {
  const places = new Map<string, Placed>();
  const put = (mm: number, radius: number) => {
    const words = fixed(mm, 2), before = places.get(words);
    places.set(words, { x: x + mm * scale, from: Math.max(before?.from ?? -Infinity, y + radius * scale), words });
  };
  put(0, a.steps[0] ? a.steps[0].diameter / 2 : 0);
  for (const s of a.steps) put(s.to, s.diameter / 2);
  for (const s of a.seats) { put(s.from, s.radius); put(s.to, s.radius); }
  for (const q of a.squares) { put(q.from, a.diameter / 2); put(q.to, a.diameter / 2); }
  return [...places.values()];
}

/** Each step once, each part by its letter. */
function diameters(a: ArborFigures, x: number, y: number, scale: number): Placed[] {
  const free = (from: number, to: number, diameter: number, words: string): Placed => {
    // Led from where nothing wider hides it, if there is such a place.
    const cuts = [from, to, ...a.seats.flatMap((s) => [s.from, s.to])].filter((c) => c >= from && c <= to).sort((p, q) => p - q);
    const gaps = cuts.slice(1).map((c, i) => [cuts[i]!, c] as const).filter(([p, q]) => !a.seats.some((s) => s.from < q - 1e-6 && s.to > p + 1e-6 && s.radius > diameter / 2));
    const [p, q] = gaps.sort((m, n) => n[1] - n[0] - (m[1] - m[0]))[0] ?? [from, to];
    return { x: x + ((p + q) / 2) * scale, from: y - (diameter / 2) * scale, words };
  };
  return [
    ...a.steps.map((s) => free(s.from, s.to, s.diameter, `ø${fixed(s.diameter, 2)}`)),
    ...(a.bore > 0 ? [{ x: x + a.length * scale * 0.98, from: y - (a.bore / 2) * scale, words: `bore ø${fixed(a.bore, 2)}` }] : []),
    ...a.seats.map((s) => ({ x: x + ((s.from + s.to) / 2) * scale, from: y - s.radius * scale, words: s.id })),
  ];
}

function tablesOf(a: ArborFigures): Table[] {
  return [turning(a), sitting(a), ...details(a)].filter((t) => t.rows.length > 0);
}

function turning(a: ArborFigures): Table {
  return {
    id: `${a.id}-turning`, title: "To be turned", columns: ["what", "from", "to", "ø", "limits, fit"],
    rows: [
      ...a.steps.map((s) => {
        const pivot = s.what === "pivot" ? a.pivots.find((p) => (p.end === "foot") === (s.from === 0)) : undefined;
        return [pivot ? `pivot in ${pivot.plate}` : "body", fixed(s.from, 2), fixed(s.to, 2), fixed(s.diameter, 2), pivot ? `0/−0.006; hole ${fixed(pivot.hole, 2)}` : "h6"];
      }),
      ...(a.bore > 0 ? [[`bore, to turn on ${a.ridesOn ?? "its arbor"}`, fixed(0, 2), fixed(a.length, 2), fixed(a.bore, 2), "H7, eased in the middle"]] : []),
      [`stock: ${a.material} bar ø${short(a.stock.diameter)}, ${a.stock.length} long`, "", "", "", a.massG === null ? "" : `${fixed(a.massG, 1)} g when done`],
      ["endshake where it is drawn", "", "", "", `${fixed(a.shake.up, 3)} up, ${fixed(a.shake.down, 3)} down`],
    ],
  };
}

const sitting = (a: ArborFigures): Table => ({
  id: `${a.id}-parts`, title: "What sits where", columns: ["part", "what", "from", "to", "bore and fit"],
  rows: [...a.seats].sort((p, q) => p.from - q.from).map((s) => [s.id, s.kind, fixed(s.from, 2), fixed(s.to, 2), s.seat.collet ? `${s.seat.says}, on ${s.seat.collet}` : s.seat.says]),
});

function details(a: ArborFigures): Table[] {
  return [
    {
      id: `${a.id}-collets`, title: "Collets and washers", columns: ["part", "ø", "long", "shoulder", "spigot ø", "spigot", "carries"],
      rows: a.collets.map((c) => [c.id, fixed(c.diameter, 2), fixed(c.length, 2), c.carries ? fixed(c.shoulder, 2) : "", c.carries ? fixed(c.spigotDiameter, 2) : "", c.carries ? `${fixed(c.spigotLength, 2)}` : "", c.carries ?? "nothing"]),
      source: `a spigot stands ${PROUD_MM} proud, to be spread (common practice)`,
    },
    {
      id: `${a.id}-squares`, title: "Squares", columns: ["part", "wide", "narrow", "taper a side", "file off", "set by"],
      rows: a.squares.map((q) => [q.faces === null ? q.id : `${q.id}, flat at ${short(q.faces)}°`, fixed(q.wide, 2), fixed(q.narrow, 3), `${short(q.taper)}°`, `${fixed(q.filedWide, 2)} to ${fixed(q.filedNarrow, 3)}`, `${fixed(sineBarMm(q.taper), 3)} under a 100 mm bar`]),
    },
    {
      id: `${a.id}-pins`, title: "Pins", columns: ["part", "ø", "long", "on radius", "at", "from", "material"],
      rows: a.pins.map((p) => [p.id, fixed(p.diameter, 2), fixed(p.length, 2), fixed(p.radius, 3), `${fixed(p.angle, 2)}°`, fixed(p.from, 2), p.material]),
    },
  ];
}
