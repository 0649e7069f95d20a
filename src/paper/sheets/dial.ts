// A dial at full size, to be laid on the metal and pricked through: every ring with its marks and letters, apertures, and the
// figures to divide it by; in as many leaves as it takes.
import type { Face, FaceRing } from "../../../geometry/index.ts";
import { cautionsFor } from "../cautions.ts";
import { clipped } from "../clip.ts";
import { checkBar } from "../dimension.ts";
import type { Draft } from "../draft.ts";
import type { LetterHeight, Table } from "../drawing.ts";
import { overlap, type Rect, textBox } from "../lettered.ts";
import { arc, circle, cross, line, type Page, text, view } from "../page.ts";
import { ruled, ruledHeight } from "../table.ts";
import { fixed } from "../words.ts";

/** Of a ring's breadth: its marks from the outer edge inward, by weight; and where its letters stand. */
const MARKS = [0.1, 0.2, 0.28], LETTERS = 0.42;

export function dialDraft(face: Face): Draft {
  const whole = [ringTable(face), apertureTable(face)].filter((t) => t.rows.length > 0);
  const marks = face.rings.map(markTable), uneven = marks.filter((t, i) => t.rows.length <= MOST_ROWS && !isEven(face.rings[i]!));
  return {
    id: `dial-${face.id}`, number: `/D-${face.id}`, title: face.name, kind: "dial", subtitle: `full size, centre at x ${fixed(face.x, 3)}, y ${fixed(face.y, 3)}`, document: "dial, full size", side: "DIAL SIDE",
    shows: face, tables: [...whole, ...marks], cautions: cautionsFor("acid", "brass"),
    draw: (next) => {
      let page = next();
      const { room } = page, tables = [...whole, ...uneven], wide = room.right - room.left - 4, tall = room.top - room.bottom - 10, n = Math.max(1, Math.ceil((2 * face.radiusMm) / Math.min(wide, tall) - 1e-9));
      // Its tables stand under it where there is room for both.
      const under = room.top - 2 * face.radiusMm - AROUND, together = n === 1 && under - room.bottom >= tables.reduce((sum, t) => sum + ruledHeight(t), BAR);
      for (let j = 0; j < n; j++) for (let i = 0; i < n; i++) {
        if (i + j > 0) page = next();
        const cx = (room.left + room.right) / 2, cy = together ? room.top - face.radiusMm - AROUND / 2 : (room.top + room.bottom) / 2 + 3, step = (2 * face.radiusMm) / n;
        drawDial(page, face, cx + face.radiusMm - step * (i + 0.5), cy - face.radiusMm + step * (j + 0.5));
        checkBar(page, room.left, room.bottom + 2.5);
      }
      let at = { page, y: under };
      if (!together) at = { page: next(), y: room.top };
      for (const table of tables) at = ruled(at, next, table);
      return "1 : 1";
    },
  };
}

/** mm above and under a dial; and what the bar takes. */
const AROUND = 16, BAR = 6;

/** Longer tables are given as files; the drawing itself has every mark. */
const MOST_ROWS = 60;

/** Marks stand evenly: their number says it all. */
function isEven({ marks }: FaceRing): boolean {
  const turns = marks.map((m) => m.turn).sort((a, b) => a - b), step = 1 / turns.length;
  return turns.every((t, i) => i === 0 || Math.abs(t - turns[i - 1]! - step) < 1e-9);
}

function drawDial(page: Page, face: Face, x: number, y: number): void {
  const inner: Page = { ...page, entities: [] };
  view(page, "dial", x, y, 1);
  const written: Rect[] = [];
  for (const ring of face.rings) drawRing(inner, ring, x, y, written);
  for (const a of face.apertures) {
    for (const r of [a.radius - a.height / 2, a.radius + a.height / 2]) arc(inner, x, y, r, a.angle - a.width / 2, a.angle + a.width / 2);
    for (const deg of [a.angle - a.width / 2, a.angle + a.width / 2]) {
      const c = Math.cos((deg * Math.PI) / 180), s = Math.sin((deg * Math.PI) / 180);
      line(inner, x + (a.radius - a.height / 2) * c, y + (a.radius - a.height / 2) * s, x + (a.radius + a.height / 2) * c, y + (a.radius + a.height / 2) * s, "wide");
    }
  }
  cross(inner, x, y, 4);
  page.entities.push(...clipped(inner.entities, { ...page.room, bottom: page.room.bottom + 6 }));
}

function drawRing(page: Page, ring: FaceRing, x: number, y: number, written: Rect[]): void {
  const band = ring.outsideMm - ring.insideMm;
  circle(page, x, y, ring.outsideMm);
  circle(page, x, y, ring.insideMm, "narrow");
  for (const m of ring.marks) {
    const s = Math.sin(2 * Math.PI * m.turn), c = Math.cos(2 * Math.PI * m.turn), from = ring.outsideMm - band * (MARKS[m.weight] ?? 0.1);
    line(page, x + from * s, y + from * c, x + ring.outsideMm * s, y + ring.outsideMm * c, m.weight === 2 ? "wide" : "narrow");
  }
  const height = ([5, 3.5, 2.5, 1.8] as const).find((h) => h <= 0.5 * band) as LetterHeight | undefined;
  if (height === undefined) return;
  const radius = ring.insideMm + LETTERS * band;
  for (const l of ring.letters) {
    const before = page.entities.length;
    const foot = radius - height / 2, a = 2 * Math.PI * l.turn;
    text(page, x + foot * Math.sin(a), y + foot * Math.cos(a), l.text, { height, align: "middle", turn: -360 * l.turn, layer: "part" });
    const put = page.entities[before], box = put?.kind === "text" ? textBox(put) : null;
    if (box === null) continue;
    if (written.some((w) => overlap(w, box))) page.entities.pop();
    else written.push(box);
  }
}

const ringTable = (face: Face): Table => ({
  id: `dial-${face.id}-rings`, title: "Rings, from the inside out", columns: ["ring", "inside ø", "outside ø", "marks", "letters", "0 stands at", "numbered"],
  rows: face.rings.map((r) => [r.name, fixed(2 * r.insideMm, 2), fixed(2 * r.outsideMm, 2), r.marks.length, r.letters.length, `${fixed(90 - 360 * r.zeroTurn, 3)}°`, r.clockwise ? "clockwise" : "anticlockwise"]),
});

const apertureTable = (face: Face): Table => ({
  id: `dial-${face.id}-apertures`, title: "Apertures", columns: ["middle on R", "at", "wide", "high"],
  rows: face.apertures.map((a) => [fixed(a.radius, 2), `${fixed(a.angle, 3)}°`, `${fixed(a.width, 3)}°`, fixed(a.height, 2)]),
});

/** Every mark, as an angle clockwise from the top. */
const markTable = (ring: FaceRing, i: number): Table => ({
  id: `ring-${i + 1}-marks`, title: `Marks of ring ${i + 1}, ${ring.name}: degrees clockwise from the top`, columns: ["mark", "at", "weight"],
  rows: ring.marks.map((m, k) => [k + 1, `${fixed(360 * m.turn, 4)}°`, ["part", "division", "numbered"][m.weight] ?? ""]),
});
