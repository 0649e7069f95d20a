// The sheets of a plate, cock or bridge: its outline and numbered holes with their table, and templates at full size.
import { boxOf, type PlateFigures } from "../../../geometry/index.ts";
import { cautionsFor } from "../cautions.ts";
import { clipped } from "../clip.ts";
import { checkBar, levelDimension, uprightDimension } from "../dimension.ts";
import type { Draft } from "../draft.ts";
import type { Table } from "../drawing.ts";
import { letterPlaces } from "../lettered.ts";
import { circle, cross, line, type Page, type Point, text, view } from "../page.ts";
import { plateOutline } from "../plate-outline.ts";
import { ruled, ruledHeight } from "../table.ts";
import { fixed, scaleFor, scaleWritten, signed } from "../words.ts";

export function plateDraft(p: PlateFigures): Draft {
  const tables = [holeTable(p), centreTable(p)].filter((t) => t.rows.length > 0);
  return {
    id: `plate-${p.id}`, number: p.id, title: p.name ?? `Plate ${p.id}`, kind: "plate",
    subtitle: `${p.material}, ${fixed(p.thickness, 2)} thick, lower face at z ${fixed(p.z, 2)}${p.massG === null ? "" : `, ${fixed(p.massG, 0)} g`}`,
    document: "plate, with hole table", side: "DIAL SIDE", shows: p, tables, cautions: cautionsFor("turning", "brass", "saw"),
    draw: (next) => {
      const page = next(), { left, right, top, bottom } = page.room, box = boxOf(p.outline), beside = "circle" in p.outline ? 6 : 34;
      const scaleOver = (low: number): number => scaleFor(Math.max((box.right - box.left) / (right - left - beside), (box.top - box.bottom) / (top - low - 34)), 1, 5, true);
      // Tables stand under the drawing where it is none the smaller for it.
      const needs = tables.reduce((sum, t) => sum + ruledHeight(t), 0), scale = scaleOver(bottom), own = top - bottom - needs > 60 && scaleOver(bottom + needs) === scale ? needs : 0, low = bottom + own;
      const x = (left + right) / 2 + (beside > 6 ? 6 : 0) - ((box.left + box.right) / 2) * scale, y = (top + low) / 2 + 6 - ((box.top + box.bottom) / 2) * scale;
      drawPlate(page, p, view(page, "plate", x, y, scale), scale);
      text(page, left, low + 1, "x to the right and y upward, from one datum for all plates", { face: "italic", layer: "dimension" });
      let at = own > 0 ? { page, y: low } : begin(next);
      for (const table of tables) at = ruled(at, next, table);
      return scaleWritten(scale);
    },
  };
}

const begin = (next: () => Page): { page: Page; y: number } => {
  const page = next();
  return { page, y: page.room.top };
};

function drawPlate(page: Page, p: PlateFigures, at: (x: number, y: number) => Point, scale: number): void {
  const { room } = page, box = boxOf(p.outline), [x0, y0] = at(0, 0);
  plateOutline(page, p.outline, at, scale);
  for (const h of p.holes) {
    const [x, y] = at(h.x, h.y), radius = (h.diameter / 2) * scale;
    circle(page, x, y, radius, radius < 1 ? "narrow" : "wide");
    cross(page, x, y, radius + 2);
  }
  datum(page, x0, y0);
  const [l, b] = at(box.left, box.bottom), [r, t] = at(box.right, box.top);
  const round = "circle" in p.outline ? "ø" : "";
  levelDimension(page, l, round ? (b + t) / 2 : b, r, round ? (b + t) / 2 : b, b - 9, `${round}${fixed(box.right - box.left, 2)}`);
  if (!round) uprightDimension(page, l, b, l, t, l - 8, fixed(box.top - box.bottom, 2));
  letterPlaces(page, p.holes.map((h) => ({ x: at(h.x, h.y)[0], y: at(h.x, h.y)[1], radius: (h.diameter / 2) * scale, words: String(h.number) })).sort((a, b) => a.radius - b.radius), room, { face: "figures" });
  text(page, room.left, room.top - 5, "Numbers are those of the hole table.", { face: "italic", layer: "dimension" });
}

/** The datum: two lines along x and y, longer than those of a hole. */
function datum(page: Page, x: number, y: number): void {
  line(page, x, y, x + 11, y, "narrow", "dimension");
  line(page, x, y, x, y + 11, "narrow", "dimension");
}

export const holeTable = (p: PlateFigures): Table => ({
  id: `${p.id}-holes`, title: "Holes", columns: ["no.", "x", "y", "ø", "what", "for", "may stray"],
  // Four places, so that distances solved back from the table are true to a thousandth.
  rows: p.holes.map((h) => [h.number, fixed(h.x, 4), fixed(h.y, 4), fixed(h.diameter, 2), h.what, h.of, h.within === null ? "" : h.within > 0 ? fixed(h.within, 3) : "outside"]),
});

const centreTable = (p: PlateFigures): Table => ({
  id: `${p.id}-centres`, title: "Between centres, for the depthing tool", columns: ["from", "to", "distance", "most", "least", "for"],
  rows: p.centres.map((c) => [c.a, c.b, fixed(c.distance, 3), c.upper === null ? "" : signed(c.upper, 3), c.lower === null ? "" : signed(c.lower, 3), c.engagement]),
});

/** The plate at full size, to be pasted on the metal and pricked through; in as many leaves as it takes. */
export function templateDraft(p: PlateFigures): Draft {
  return {
    id: `template-${p.id}`, number: `/T-${p.id}`, title: `${p.name ?? `Plate ${p.id}`}, template`, kind: "template", subtitle: "full size: measure both bars before it is used",
    document: "template, full size", side: "DIAL SIDE", shows: { name: p.name, outline: p.outline, holes: p.holes.map(({ x, y, diameter }) => ({ x, y, diameter })) }, tables: [], cautions: cautionsFor("turning", "brass", "saw"),
    draw: (next) => {
      const box = boxOf(p.outline);
      let page = next();
      const wide = page.room.right - page.room.left - 10, tall = page.room.top - page.room.bottom - 10;
      const columns = Math.ceil((box.right - box.left) / wide - 1e-9), rows = Math.ceil((box.top - box.bottom) / tall - 1e-9);
      for (let j = 0; j < rows; j++) for (let i = 0; i < columns; i++) {
        if (i + j > 0) page = next();
        leaf(page, p, box.left + ((box.right - box.left) * (i + 0.5)) / columns, box.bottom + ((box.top - box.bottom) * (j + 0.5)) / rows, columns * rows > 1 ? `leaf ${j * columns + i + 1} of ${columns * rows}` : "");
      }
      return "1 : 1";
    },
  };
}

function leaf(page: Page, p: PlateFigures, mx: number, my: number, which: string): void {
  const { left, right, bottom, top } = page.room, cx = (left + right) / 2 + 4, cy = (top + bottom) / 2 + 4;
  const at = view(page, `template ${which}`.trim(), cx - mx, cy - my, 1);
  const inner = { ...page, entities: [] as Page["entities"] };
  plateOutline(inner, p.outline, at, 1);
  for (const h of p.holes) {
    circle(inner, ...at(h.x, h.y), h.diameter / 2, h.diameter < 2 ? "narrow" : "wide");
    cross(inner, ...at(h.x, h.y), h.diameter / 2 + 2);
  }
  datum(inner, ...at(0, 0));
  const window = { left: left + 5, right, bottom: bottom + 7, top };
  page.entities.push(...clipped(inner.entities, window));
  const seen = p.holes.filter((h) => { const [x, y] = at(h.x, h.y); return x > window.left && x < window.right && y > window.bottom && y < window.top; });
  letterPlaces(page, seen.map((h) => ({ x: at(h.x, h.y)[0], y: at(h.x, h.y)[1], radius: h.diameter / 2, words: String(h.number) })), window, { face: "figures" });
  checkBar(page, left + 6, bottom + 2);
  checkBar(page, left + 2, bottom + 8, true);
  if (which) text(page, right, bottom + 1, which, { align: "right", layer: "dimension" });
}
