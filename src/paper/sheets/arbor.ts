// The sheet of one arbor, post, stud or pipe: stepped, with everything that sits on it, heights from its foot end.
import { PROUD_MM, sineBarMm, type ArborFigures } from "../../../geometry/index.ts";
import { cautionsFor, joinDangers } from "../cautions.ts";
import { checkBar, levelDimension } from "../dimension.ts";
import type { Draft } from "../draft.ts";
import type { Table } from "../drawing.ts";
import { textWidthMm } from "../lettering.ts";
import { hatch, line, type Page, polyline, rectangle, text, view } from "../page.ts";
import { type Placed, spreadUpright } from "../spread.ts";
import { ruled, ruledHeight } from "../table.ts";
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
      const over = KNEE + longest(heights(a, AT_REST)), under = KNEE + longest(diameters(a, AT_REST));
      const room = Math.max(30, top - page.room.bottom - tables.reduce((sum, t) => sum + ruledHeight(t), 0) - over - under - BAR);
      const scale = scaleFor(Math.max(a.length / (right - left - 48), thickest(a) / room), 1, 20, true);
      const half = Math.min(room / 2, Math.max((widest(a) / 2) * scale, a.pivots.some((p) => p.gap !== null) ? plateHalf(a) * scale + SHAKE_ROOM : 0));
      const v: Standing = { x: (left + right) / 2 - (a.length * scale) / 2, y: top - over - half, scale, half };
      drawArbor(page, a, v);
      checkBar(page, left, v.y - half - under - 2);
      let at = { page, y: v.y - half - under - BAR };
      for (const table of tables) at = ruled(at, next, table);
      return scaleWritten(scale);
    },
  };
}

/** mm of paper: from the drawing to the figures that are led from it, and for the bar under them. */
const KNEE = 13, BAR = 5;
const longest = (placed: readonly Placed[]): number => placed.reduce((most, p) => Math.max(most, textWidthMm(p.words, 2.5, "figures")), 0);

/** Where its foot stands on the paper, and how far either side of its axis there is room: what is wider is broken off. */
interface Standing { readonly x: number; readonly y: number; readonly scale: number; readonly half: number }

const AT_REST: Standing = { x: 0, y: 0, scale: 1, half: Infinity };

const pinsReach = (a: ArborFigures): number => Math.max(0, ...a.pins.map((p) => 2 * (p.radius + p.diameter / 2)));
const widest = (a: ArborFigures): number => Math.max(a.diameter, pinsReach(a), ...a.seats.map((s) => 2 * s.radius));
/** What must be seen whole across: the arbor itself, its collets and pins. */
const thickest = (a: ArborFigures): number => Math.max(pinsReach(a), ...a.steps.map((s) => s.diameter), ...a.collets.map((c) => c.diameter), ...a.pivots.map(() => 2 * plateHalf(a)));

function drawArbor(page: Page, a: ArborFigures, v: Standing): void {
  const { x, y, scale, half } = v, u = (mm: number): number => x + mm * scale;
  view(page, "arbor", x, y, scale);
  for (const s of a.seats) seat(page, s, a, v);
  for (const p of a.pins) rectangle(page, u(p.from), y + (p.radius - p.diameter / 2) * scale, u(p.from + p.length), y + (p.radius + p.diameter / 2) * scale, "narrow");
  const above = a.steps.flatMap((s) => [u(s.from), y + (s.diameter / 2) * scale, u(s.to), y + (s.diameter / 2) * scale]);
  const below = [...a.steps].reverse().flatMap((s) => [u(s.to), y - (s.diameter / 2) * scale, u(s.from), y - (s.diameter / 2) * scale]);
  polyline(page, [...above, ...below], true);
  for (const s of a.steps.slice(1)) {
    const r = (Math.max(s.diameter, a.steps[a.steps.indexOf(s) - 1]!.diameter) / 2) * scale;
    line(page, u(s.from), y - r, u(s.from), y + r, "wide");
  }
  for (const p of a.pivots) plateAt(page, p, plateHalf(a) * scale, v);
  if (a.bore > 0) bore(page, a, v);
  for (const q of a.squares) square(page, q, a, v);
  line(page, x - 6, y, u(a.length) + 6, y, "chain");
  spreadUpright(page, heights(a, v), y + half + KNEE - 2, page.room.left + 3, page.room.right - 3);
  spreadUpright(page, diameters(a, v), y - half - KNEE + 2, page.room.left + 3, page.room.right - 3);
  text(page, page.room.left, y + half + 8, "0 at the foot", { face: "italic", layer: "dimension", within: Math.max(8, x - page.room.left - 3) });
}

/** mm of paper: under a plate, for the dimension of its endshake. */
const SHAKE_ROOM = 9;

/** mm of metal that is drawn of a plate, each side of the axis. */
const plateHalf = (a: ArborFigures): number => a.diameter / 2 + 2.5;

/** The plate in which a pivot runs, as an adjacent part (double-dot chain, ISO 128-2), and the endshake between it and the shoulder. */
function plateAt(page: Page, p: ArborFigures["pivots"][number], half: number, { x, y, scale }: Standing): void {
  if (p.plateFrom === null || p.plateTo === null || p.gap === null) return;
  const x0 = x + p.plateFrom * scale, x1 = x + p.plateTo * scale, hole = (p.hole / 2) * scale, head = p.end === "head";
  for (const side of [1, -1]) rectangle(page, x0, y + side * hole, x1, y + side * half, "double-dot chain");
  // Its figures stand beyond the arbor's end, clear of what is led from the pivot.
  const face = head ? x0 : x1, shoulder = x + p.shoulder * scale;
  levelDimension(page, shoulder, y - half, face, y - half, y - half - 4, fixed(p.gap, 3), head ? "right" : "left", Math.max(4, p.length * scale + 2));
}

/** What sits on it, in narrow lines; wheels and collets hatched above the axis as if cut. Broken off where there is no room for its rim. */
function seat(page: Page, s: ArborFigures["seats"][number], a: ArborFigures, v: Standing): void {
  const x0 = v.x + s.from * v.scale, x1 = v.x + s.to * v.scale, r = shownOf(s.radius, v), inner = Math.min(r, (Math.max(s.seat.diameter, a.diameter) / 2) * v.scale);
  if (r === s.radius * v.scale) rectangle(page, x0, v.y - r, x1, v.y + r, "narrow");
  else {
    for (const x of [x0, x1]) line(page, x, v.y - r, x, v.y + r);
    for (const side of [1, -1]) broken(page, x0, x1, v.y + side * r);
  }
  if (s.kind !== "pinion" && r > inner) hatch(page, [[x0, v.y + inner, x1, v.y + inner, x1, v.y + r, x0, v.y + r]], s.kind === "collet" ? 135 : 45, 1.2);
}

/** mm of paper from the axis to where it ends or is broken off. */
const shownOf = (radius: number, { scale, half }: Standing): number => Math.min(radius * scale, half - 1);

/** A narrow line with a zigzag (ISO 128-2, 01.1). */
function broken(page: Page, x0: number, x1: number, y: number): void {
  const m = (x0 + x1) / 2;
  polyline(page, [x0 - 1, y, m - 0.7, y, m - 0.35, y + 1, m + 0.35, y - 1, m + 0.7, y, x1 + 1, y], false, "narrow");
}

function bore(page: Page, a: ArborFigures, { x, y, scale }: Standing): void {
  const r = (a.bore / 2) * scale;
  for (const side of [1, -1]) line(page, x, y + side * r, x + a.length * scale, y + side * r, "dashed");
}

/** Two crossed narrow lines mark a flat surface (ISO 128-3). */
function square(page: Page, q: ArborFigures["squares"][number], a: ArborFigures, { x, y, scale }: Standing): void {
  const atHead = q.from + q.to > a.length, x0 = x + q.from * scale, x1 = x + q.to * scale;
  const h0 = ((atHead ? q.wide : q.narrow) / 2) * scale, h1 = ((atHead ? q.narrow : q.wide) / 2) * scale;
  polyline(page, [x0, y - h0, x1, y - h1, x1, y + h1, x0, y + h0], true);
  line(page, x0, y - h0, x1, y + h1);
  line(page, x0, y + h0, x1, y - h1);
}

function heights(a: ArborFigures, v: Standing): Placed[] {
  const places = new Map<string, Placed>();
  const put = (mm: number, radius: number) => {
    const words = fixed(mm, 2), before = places.get(words);
    places.set(words, { x: v.x + mm * v.scale, from: Math.max(before?.from ?? -Infinity, v.y + shownOf(radius, v)), words });
  };
  put(0, a.steps[0] ? a.steps[0].diameter / 2 : 0);
  for (const s of a.steps) put(s.to, s.diameter / 2);
  for (const s of a.seats) { put(s.from, s.radius); put(s.to, s.radius); }
  for (const q of a.squares) { put(q.from, a.diameter / 2); put(q.to, a.diameter / 2); }
  return [...places.values()];
}

/** Each step once, each part by its letter. */
function diameters(a: ArborFigures, v: Standing): Placed[] {
  const { x, y, scale } = v;
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
    ...a.seats.map((s) => ({ x: x + ((s.from + s.to) / 2) * scale, from: y - shownOf(s.radius, v), words: s.id })),
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
      ...(a.what === "post" ? [] : [
        ["endshake as drawn", "", "", "", `${fixed(a.shake.gap, 3)}: ${fixed(a.shake.up, 3)} up, ${fixed(a.shake.down, 3)} down`],
        [`for ${fixed(a.shake.wanted, 2)} of endshake`, "", "", "", washerSays(a.shake)],
      ]),
    ],
  };
}

/** mm: thinner washers are not made (common practice). */
const THINNEST_MM = 0.02;

/** What leaves the wanted endshake. */
export function washerSays({ washer, washerBore }: ArborFigures["shake"]): string {
  if (washer < -THINNEST_MM) return `${fixed(-washer, 3)} off a shoulder`;
  return washer < THINNEST_MM ? "no washer wanted" : `washer ${fixed(washer, 3)} thick, bore ${fixed(washerBore, 2)}`;
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
      id: `${a.id}-squares`, title: "Squares", columns: ["part", "wide", "narrow", "taper a side", "file off", "set by", "a flat at"],
      rows: a.squares.map((q) => [q.id, fixed(q.wide, 2), fixed(q.narrow, 3), `${short(q.taper)}°`, `${fixed(q.filedWide, 2)} to ${fixed(q.filedNarrow, 3)}`, `${fixed(sineBarMm(q.taper), 3)} under a 100 mm bar`, q.angle === null ? "any" : `${fixed(q.angle, 2)}°`]),
    },
    {
      id: `${a.id}-pins`, title: "Pins", columns: ["part", "ø", "long", "on radius", "at", "from", "material"],
      rows: a.pins.map((p) => [p.id, fixed(p.diameter, 2), fixed(p.length, 2), fixed(p.radius, 3), `${fixed(p.angle, 2)}°`, fixed(p.from, 2), p.material]),
    },
  ];
}
