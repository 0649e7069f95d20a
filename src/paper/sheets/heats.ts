// The order of heats: a ladder for each arbor on which a join is made hot, and under them every join in a table.
import type { HeatLadder, HeatLine, Rung } from "../../../geometry/index.ts";
import { cautionsFor, joinDangers } from "../cautions.ts";
import { arrow } from "../dimension.ts";
import type { Draft } from "../draft.ts";
import type { Table } from "../drawing.ts";
import { brokenInto, textWidthMm } from "../lettering.ts";
import { fill, hatch, line, type Page, rectangle, text, view } from "../page.ts";
import { spread } from "../spread.ts";
import { ruledWithSource } from "../table.ts";

export function heatsDraft(heats: readonly HeatLine[], ladders: readonly HeatLadder[]): Draft {
  const table: Table = {
    id: "heats", title: "Joins, arbor by arbor", columns: ["arbor", "order", "part", "join", "heated to °C", "undone at °C", "spoils least"],
    rows: heats.flatMap((h) => h.joins.map((j, i) => [h.arbor, j.order ?? "", j.part, j.by, j.heatedTo ?? "cold", j.undoneAt ?? "", i === 0 ? h.suggested.join(" ") : ""])),
    source: "EN ISO 9453 and 17672 (from memory); maker’s data for adhesive",
  };
  return {
    id: "heats", number: "/HEAT", title: "Order of heats", kind: "heats", subtitle: "hottest first; nothing later may reach what holds already", document: "order of joining", shows: { heats, ladders }, tables: [table],
    cautions: cautionsFor(...new Set(heats.flatMap((h) => h.joins.flatMap((j) => joinDangers(j.by))))),
    draw: (next) => {
      const at = ladders.length === 0 ? fresh(next()) : drawLadders(next, ladders);
      ruledWithSource(at, next, table);
      return "–";
    },
  };
}

const fresh = (page: Page): { page: Page; y: number } => ({ page, y: page.room.top });

/** mm: a ladder with the name of its arbor over it, the rule between two, its scale of degrees, and what is said under it. */
const WIDE = 52, TALL = 46, NAME = 6, AXIS = 9, SAYS = 3.8, APART = 4, LETTERS = 3.6;

function drawLadders(next: () => Page, ladders: readonly HeatLadder[]): { page: Page; y: number } {
  let page = next(), { y } = fresh(page);
  const { left, right } = page.room, perRow = Math.max(1, Math.floor((right - left + APART) / (WIDE + APART))), wide = (right - left + APART) / perRow - APART;
  text(page, left, y - 4, "Heats left to right, degrees Celsius upward; a band from where a join lets go to where it flows.", { face: "italic", within: right - left });
  y -= 7;
  for (let i = 0; i < ladders.length; i += perRow) {
    const row = ladders.slice(i, i + perRow), says = row.map((l) => saysOf(l, wide)), tall = TALL + SAYS * Math.max(...says.map((s) => s.length)) + 3;
    if (y - tall < page.room.bottom) { page = next(); y = page.room.top; }
    row.forEach((l, k) => drawLadder(page, l, left + k * (wide + APART), y, wide, says[k]!));
    y -= tall;
  }
  return { page, y: y - 4 };
}

interface Said { readonly words: string; readonly foul: boolean }

function saysOf({ limits, suggested }: HeatLadder, wide: number): Said[] {
  const lines = limits.flatMap((l) => brokenInto(`${l.says}.`, wide, 2.5, "roman").map((words): Said => ({ words, foul: l.pair.marginK <= 0 })));
  return limits.length === 0 ? [] : [...lines, ...brokenInto(`Better: ${suggested.map((j) => j.part).join(", then ")}.`, wide, 2.5, "italic").map((words) => ({ words, foul: false }))];
}

function drawLadder(page: Page, l: HeatLadder, x0: number, top: number, wide: number, says: readonly Said[]): void {
  const base = top - TALL + 6, tall = TALL - NAME - 6 - 5, x = (across: number): number => x0 + AXIS + across * (wide - AXIS), y = (celsius: number): number => base + (celsius / l.topC) * tall;
  view(page, `heats ${l.arbor}`, x0 + AXIS, base, tall / l.topC);
  text(page, x0, top - 4.2, l.arbor, { face: "strong", height: 3.5 });
  line(page, x0 + AXIS, base, x0 + AXIS, y(l.topC), "narrow");
  line(page, x0 + AXIS, base, x0 + wide, base, "narrow");
  for (const celsius of l.degrees) {
    line(page, x0 + AXIS - 1.2, y(celsius), x0 + AXIS, y(celsius), "narrow");
    text(page, x0 + AXIS - 2, y(celsius) - 0.9, String(celsius), { face: "figures", height: 1.8, align: "right" });
  }
  const each = (wide - AXIS) / l.heats.length;
  for (const { order, across } of l.heats) {
    text(page, x(across), base - 4, order === null ? "any" : String(order), { face: "figures", align: "middle" });
    drawRungs(page, l.rungs.filter((r) => r.across === across), x(across), y, each);
  }
  for (const { from, to, bearsC, heatC } of l.limits) {
    line(page, x(from), y(bearsC), x(to), y(bearsC), "dashed");
    line(page, x(to), y(bearsC), x(to), y(heatC), "narrow");
    if (y(heatC) - y(bearsC) > 2.6) arrow(page, x(to), y(heatC), Math.PI / 2);
  }
  says.forEach(({ words, foul }, i) => text(page, x0, top - TALL - 3.2 - SAYS * i, words, { face: foul ? "roman" : "italic", ink: foul ? "foul" : "ink", within: wide }));
}

/** One heat: a hatched band for what flows, a wide line for what is made cold, their names over them as near as they go without touching. */
function drawRungs(page: Page, rungs: readonly Rung[], x: number, y: (celsius: number) => number, each: number): void {
  const half = Math.min(8, each / 2 - 0.6), room = each - 0.8, sorted = [...rungs].sort((a, b) => a.highC - b.highC);
  for (const r of sorted) {
    const low = y(r.lowC), high = Math.max(y(r.highC), low + (r.highC > r.lowC ? 1 : 0));
    if (high > low) {
      rectangle(page, x - half, low, x + half, high);
      hatch(page, [[x - half, low, x + half, low, x + half, high, x - half, high]], 45, 0.9);
    } else line(page, x - half, low, x + half, low, "wide");
  }
  const lines = sorted.flatMap((r) => brokenInto(wordsOf(r), room, 2.5, "roman").reverse().map((words, k) => ({ r, words, wanted: y(r.highC) + 1.8 + LETTERS * k })));
  const levels = spread(lines.map((l) => l.wanted), LETTERS, -Infinity, Infinity);
  lines.forEach(({ r, words }, i) => {
    const width = Math.min(room, textWidthMm(words, 2.5, "roman")), level = levels[i]!;
    if (sorted.some((o) => o !== r && y(o.highC) > level - 0.6 && y(o.lowC) < level + 3)) fill(page, [[x - width / 2, level - 0.6, x + width / 2, level - 0.6, x + width / 2, level + 2.7, x - width / 2, level + 2.7]], "paper");
    text(page, x, level, words, { align: "middle", within: room });
  });
}

/** Parts, and by what they are joined where that is the same for all of them. */
function wordsOf({ joins }: Rung): string {
  const by = new Set(joins.map((j) => j.by)), parts = joins.map((j) => j.part).join(" ");
  return by.size === 1 ? `${parts} ${joins[0]!.by}` : parts;
}
