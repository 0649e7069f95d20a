// The dividing card on a wheel's sheet: the setting, and where the crank stands at every tenth tooth.
import type { Card, WheelFigures } from "../../../geometry/index.ts";
import type { Table } from "../drawing.ts";
import { brokenInto } from "../lettering.ts";
import { line, type Page, text } from "../page.ts";
import { heading } from "../table.ts";
import { fixed, short } from "../words.ts";

const CHECK = 4.2, IN_COLUMN = 10, COLUMNS = 3, MOST = IN_COLUMN * COLUMNS;

export function cardHeight(card: Card): number {
  const checks = card.checks.length > MOST ? 0 : Math.ceil(card.checks.length / columnsOf(card)) + 1;
  return 6 + 3 * CHECK + checks * CHECK + 9;
}

const columnsOf = (card: Card): number => Math.min(COLUMNS, Math.max(1, Math.ceil(card.checks.length / IN_COLUMN)));

/** Gives the y under it. */
export function card(page: Page, { card: c }: WheelFigures, x: number, top: number, width: number): number {
  let y = heading(page, x, top, width, "Dividing card", c.own ? `head ${c.ratio} : 1` : `ordinary head ${c.ratio} : 1`);
  for (const [label, value] of settingWords(c)) {
    y -= CHECK;
    const labelWidth = text(page, x + 1, y + 0.6, label, { layer: "table" });
    text(page, x + width - 1, y + 0.6, value, { layer: "table", face: label === "Each tooth" ? "strong" : "figures", align: "right", within: width - labelWidth - 4 });
  }
  y -= 1.2;
  line(page, x, y, x + width, y, "narrow", "table");
  if (c.checks.length > 0 && c.checks.length <= MOST) y = checks(page, c, x, y, width);
  for (const words of brokenInto(oppositeWords(c), width - 2, 2.5, "italic")) {
    y -= CHECK;
    text(page, x + 1, y - 0.4, words, { face: "italic", layer: "table" });
  }
  return y - 3;
}

function checks(page: Page, c: Card, x: number, top: number, width: number): number {
  const columns = columnsOf(c), each = width / columns, rows = Math.ceil(c.checks.length / columns);
  for (let k = 0; k < columns; k++) {
    const x0 = x + k * each, stops = [0.26, 0.58, 0.97].map((u) => x0 + u * each);
    const put = (y: number, cells: readonly string[], face: "italic" | "figures" | "strong") =>
      cells.forEach((cell, i) => text(page, stops[i]!, y, cell, { face, layer: "table", align: "right", within: each * 0.36 }));
    put(top - CHECK + 0.8, ["tooth", "turns", "holes"], "italic");
    c.checks.slice(k * rows, (k + 1) * rows).forEach((check, i) => {
      const plain = check.tooth === c.count || 2 * check.tooth === c.count;
      put(top - (i + 2) * CHECK + 0.8, [String(check.tooth), String(check.turns), check.holes.map((h) => short(h)).join(" ")], plain ? "strong" : "figures");
    });
  }
  const y = top - (rows + 1) * CHECK;
  line(page, x, y, x + width, y, "narrow", "table");
  return y;
}

function settingWords({ setting, or, way, count }: Card): (readonly [string, string])[] {
  if (setting === null) return [["This head does not give", `${count}`]];
  if ("a" in setting) {
    const holes = (s: { readonly circle: number; readonly holes: number }) => `${s.holes < 0 ? "back" : "on"} ${Math.abs(s.holes)} of ${s.circle}`;
    return [["Each tooth", turnsAnd(setting.turns, `${holes(setting.a)}, ${holes(setting.b)}`)], ["on two circles of one plate", "compound"]];
  }
  const each = (s: { readonly turns: number; readonly holes: number; readonly circle: number }) =>
    s.holes === 0 ? `${s.turns} ${s.turns === 1 ? "turn" : "turns"}, on ${s.circle}` : turnsAnd(s.turns, `${s.holes} of ${s.circle}`);
  const rows: (readonly [string, string])[] = [["Each tooth", each(setting)]];
  if (way === "differential" && "gears" in setting) {
    const [a, b, cc, d] = setting.gears;
    rows.push([`Set for ${setting.settingFor}, gears`, cc === undefined ? `${a} : ${b}` : `${a} : ${b}, ${cc} : ${d}`]);
    rows.push(["The plate moves", Number(setting.ratio.s) > 0 ? "with the crank" : "against the crank"]);
  } else if (or) rows.push(["or", each(or)]);
  return rows;
}

const turnsAnd = (turns: number, holes: string): string => (turns === 0 ? holes : `${turns} ${turns === 1 ? "turn" : "turns"} + ${holes}`);

function oppositeWords({ count, opposite, checks: all }: Card): string {
  const where = count % 2 === 0 ? `Tooth ${opposite} stands opposite tooth ${count}.` : `The space after tooth ${Math.floor(opposite)} stands opposite tooth ${count}.`;
  return all.length > MOST ? `${where} Checks on the next page.` : where;
}

export function checksTable({ id, card: c }: WheelFigures): Table {
  const two = c.setting !== null && "a" in c.setting;
  const on = c.setting === null ? [] : "a" in c.setting ? [`holes of ${c.setting.a.circle}`, `holes of ${c.setting.b.circle}`] : [`holes of ${c.setting.circle}`];
  return {
    id: `${id}-dividing`, title: `Dividing card, ${id}: ${c.count}, ${c.way}`, columns: ["after tooth", two ? "whole turns counted" : "turns", ...on],
    rows: c.checks.map((check) => [check.tooth, check.turns, ...check.holes.map((h) => Number(fixed(h, 0).replace("−", "-")))]),
  };
}
