// The movement drawn apart in the order in which it goes together: each step over the one before, what goes in from behind
// under the plate, chain lines from each to where it goes. What lies nearer hides what lies farther.
import { meshTextOf, type Movement, type PuttingTogether, thingsOf } from "../../../geometry/index.ts";
import { drawPrism, type Eye, extentOf, HEIGHT, nearestLast, onPaper } from "../axonometric.ts";
import type { Draft } from "../draft.ts";
import { textWidthMm } from "../lettering.ts";
import { line, type Page, text, view } from "../page.ts";
import { spread } from "../spread.ts";
import { scaleFor, scaleWritten } from "../words.ts";
import { type Piece, piecesOf } from "./apart.ts";

export function explodedDraft(movement: Movement, together: PuttingTogether): Draft {
  const things = thingsOf(movement).filter((t) => t.kind !== "case").map((t) => ({ id: t.id, x: t.x, y: t.y, shape: JSON.parse(meshTextOf(movement, t.id)) as unknown }));
  return {
    id: "exploded", number: "/APART", title: "Drawn apart", kind: "assembly", subtitle: "each step over the one before, on the lines along which it goes in", document: "exploded view, axonometric",
    shows: { base: together.base, steps: together.steps.map((s) => [s.ids, s.lift < 0]), things }, tables: [], cautions: [],
    draw: (next) => {
      const page = next(), apart = liftedOf(piecesOf(movement, together), together, page);
      view(page, "drawn apart", apart.eye.x, apart.eye.y, apart.eye.scale);
      const levels = [...new Set(apart.pieces.map((p) => p.level))].sort((a, b) => a - b);
      letters(page, apart, together);
      for (const level of levels) {
        for (const p of nearestLast(apart.pieces.filter((q) => q.level === level))) drawPrism(page, p, apart.eye);
        for (const l of linesFrom(apart.pieces, level)) line(page, ...onPaper(apart.eye, l.x, l.y, l.from), ...onPaper(apart.eye, l.x, l.y, l.to), "chain");
      }
      return scaleWritten(apart.eye.scale);
    },
  };
}

interface Lifted extends Piece {
  /** Steps over the bench; below 0 for what goes in from behind. */
  readonly level: number;
}
interface Apart { readonly pieces: readonly Lifted[]; readonly eye: Eye }

/** mm of paper kept for the letters, and air between two steps, mm of metal: as much as there is room for. */
const LETTERS = 36, LEAST_AIR = 7, MOST_AIR = 40;

function liftedOf(pieces: readonly Piece[], { steps }: PuttingTogether, page: Page): Apart {
  let up = 0, down = 0;
  const levels = [0, ...steps.map((s) => (s.lift < 0 ? --down : ++up))];
  const { left, right, bottom, top } = page.room, wide = right - left - LETTERS, tall = top - bottom - 6;
  const raised = (air: number): Lifted[] => pieces.map((p) => ({ ...p, level: levels[p.step]!, z0: p.z0 + air * levels[p.step]!, z1: p.z1 + air * levels[p.step]! }));
  const extent = (lifted: readonly Lifted[]) => lifted.map(extentOf).reduce((a, b) => ({ left: Math.min(a.left, b.left), right: Math.max(a.right, b.right), bottom: Math.min(a.bottom, b.bottom), top: Math.max(a.top, b.top) }));
  const least = extent(raised(LEAST_AIR)), scale = scaleFor(Math.max((least.right - least.left) / wide, (least.top - least.bottom) / tall), 1, 5, true);
  const spare = (tall / scale - (least.top - least.bottom)) / (HEIGHT * Math.max(1, up - down)), lifted = raised(Math.min(MOST_AIR, LEAST_AIR + Math.max(0, spare))), e = extent(lifted);
  return { pieces: lifted, eye: { scale, x: left + wide / 2 - ((e.left + e.right) / 2) * scale, y: (bottom + top) / 2 - ((e.bottom + e.top) / 2) * scale } };
}

/** From the tops of what a level has on an axis up to what comes next on it: of plates, where they have a hole there. */
function linesFrom(pieces: readonly Lifted[], level: number): { readonly x: number; readonly y: number; readonly from: number; readonly to: number }[] {
  const axes = new Map(pieces.filter((p) => p.kind !== "plate").map((p) => [`${p.x.toFixed(3)} ${p.y.toFixed(3)}`, p] as const));
  return [...axes.values()].flatMap(({ x, y }) => {
    const on = pieces.filter((p) => (p.kind === "plate" ? hasHole(p, x, y) : Math.hypot(p.x - x, p.y - y) < 1e-3));
    const here = on.filter((p) => p.level === level), over = on.filter((p) => p.level > level);
    if (here.length === 0 || over.length === 0) return [];
    const from = here.reduce((most, p) => Math.max(most, p.z1), -Infinity), next = over.reduce((least, p) => Math.min(least, p.level), Infinity);
    const to = over.filter((p) => p.level === next).reduce((least, p) => Math.min(least, p.z0), Infinity);
    return to > from ? [{ x, y, from, to }] : [];
  });
}

function hasHole(plate: Lifted, x: number, y: number): boolean {
  return plate.loops.slice(1).some((loop) => {
    let inside = false;
    for (let i = 0, j = loop.length - 2; i < loop.length; j = i, i += 2) {
      const ay = loop[j + 1]!, by = loop[i + 1]!;
      if (ay > y !== by > y && x < loop[j]! + ((y - ay) / (by - ay)) * (loop[i]! - loop[j]!)) inside = !inside;
    }
    return inside;
  });
}

/** Each step's number and what goes in, led to it; drawn first, so that what stands before a line hides it. */
function letters(page: Page, { pieces, eye }: Apart, { steps }: PuttingTogether): void {
  const { right, bottom, top } = page.room;
  const items = steps.map((s, i) => {
    const own = pieces.filter((p) => p.step === i + 1).map(extentOf), words = `${i + 1}  ${s.ids.slice(0, 5).join(" ")}${s.ids.length > 5 ? " …" : ""}`;
    const low = Math.min(...own.map((e) => e.bottom)), high = Math.max(...own.map((e) => e.top)), widest = [...own].sort((a, b) => b.right - a.right)[0];
    return { words, own: own.length > 0, level: eye.y + (eye.scale * (low + high)) / 2, x: widest ? eye.x + eye.scale * widest.right : right, y: widest ? eye.y + (eye.scale * (widest.bottom + widest.top)) / 2 : 0 };
  }).filter((s) => s.own).sort((a, b) => a.level - b.level);
  const levels = spread(items.map((s) => s.level), 5, bottom + 2, top - 4);
  items.forEach(({ words, x, y }, i) => {
    const width = Math.min(LETTERS - 4, textWidthMm(words, 2.5, "figures"));
    line(page, x + 0.8, y, right - width - 1.5, levels[i]! + 1.2, "narrow", "dimension");
    text(page, right, levels[i]!, words, { face: "figures", align: "right", layer: "dimension", within: LETTERS - 4 });
  });
}
