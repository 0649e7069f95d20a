// Lists of the whole: parts, stock to buy, cutters, the train with its errors, and the setting-up table. mm, g, °C.
import { countOf, isToothed } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { motionOf } from "../motion/motion.ts";
import { readingAt } from "../motion/reading.ts";
import { toNumber, writeRatio } from "../numeric/ratio.ts";
import type { Window } from "../depth/window.ts";
import { arborFigures, barFor } from "./arbor.ts";
import { cutterFor } from "./cutters.ts";
import { joinHeat, suggestedHeats, type JoinHeat } from "./heats.ts";
import { massG, materialOf, stockOf } from "./metal.ts";
import { isPiece, pieceFigures } from "./pieces.ts";
import { plateFigures } from "./plate.ts";
import { wheelFigures } from "./wheel.ts";

export interface ListedPart {
  readonly id: string;
  readonly what: string;
  readonly name: string | null;
  readonly on: string | null;
  readonly material: string;
  readonly massG: number | null;
  readonly stock: string;
}

export function partsList(movement: Movement, windows: readonly Window[]): ListedPart[] {
  const { frame } = movement.instrument;
  const plates = frame.plates.map((p): ListedPart => {
    const figures = plateFigures(movement, p.id, windows);
    return { id: p.id, what: "plate", name: p.name ?? null, on: null, material: "brass", massG: figures?.massG ?? null, stock: `sheet ${p.thickness}` };
  });
  const pillars = frame.pillars.map((p): ListedPart => ({
    id: p.id, what: "pillar", name: null, on: null, material: "brass", massG: massG((Math.PI / 4) * p.diameter ** 2 * (p.to - p.from), "brass"), stock: `bar ø${barFor(p.diameter + 0.5)} × ${Math.ceil(p.to - p.from + 6)}`,
  }));
  return [...plates, ...pillars, ...movement.arbors.flatMap((a, i) => {
    const figures = arborFigures(movement, i);
    const own: ListedPart = { id: a.id, what: figures.what, name: figures.name, on: figures.ridesOn, material: figures.material, massG: figures.massG, stock: `bar ø${figures.stock.diameter} × ${figures.stock.length}` };
    return [own, ...a.arbor.parts.map((p): ListedPart => {
      const material = materialOf(p), common = { id: p.id, what: p.kind, name: p.name ?? null, on: a.id, material };
      if (isToothed(p)) {
        const w = wheelFigures(movement, p.id, windows);
        const across = w ? Math.max(w.blankDiameter, w.outsideDiameter ?? 0) : 0;
        return { ...common, massG: w?.massG ?? null, stock: p.kind === "wheel" ? `sheet ${p.thickness}, ${Math.ceil(across + 3)} square` : `bar ø${barFor(across + 0.5)} × ${Math.ceil(p.thickness + 3)}` };
      }
      if (isPiece(p)) {
        const across = "diameter" in p ? p.diameter : p.length + ("tail" in p ? p.tail : p.width / 2);
        return { ...common, massG: pieceFigures(movement, p.id)?.massG ?? null, stock: "diameter" in p ? `sheet ${p.thickness}, ${Math.ceil(across + 3)} square` : `sheet ${p.thickness}, ${Math.ceil(across + 3)} × ${Math.ceil(p.width + 2)}` };
      }
      if (p.kind === "square") return { ...common, massG: null, stock: "filed on the arbor" };
      return { ...common, massG: massG((Math.PI / 4) * p.diameter ** 2 * p.thickness, material), stock: `bar ø${barFor(p.diameter)} × ${Math.ceil(p.thickness + 3)}` };
    })];
  })];
}

export interface StockLine { readonly material: string; readonly stock: string; readonly length: number | null; readonly pieces: number; readonly massG: number }

/** Bars of one material and diameter together, sheets of one thickness together; mass is that of the finished parts. */
export function stockList(parts: readonly ListedPart[]): StockLine[] {
  const lines = new Map<string, StockLine>();
  for (const part of parts) {
    const bar = /^bar (ø[\d.]+) × (\d+)$/.exec(part.stock), sheet = /^sheet ([\d.]+)/.exec(part.stock);
    if (!bar && !sheet) continue;
    const material = stockOf(part.material), stock = bar ? `bar ${bar[1]}` : `sheet ${sheet?.[1] ?? ""} thick`, key = `${material} ${stock}`;
    const before = lines.get(key) ?? { material, stock, length: bar ? 0 : null, pieces: 0, massG: 0 };
    lines.set(key, { ...before, length: before.length === null ? null : before.length + Number(bar?.[2] ?? 0), pieces: before.pieces + 1, massG: before.massG + (part.massG ?? 0) });
  }
  return [...lines.values()].sort((a, b) => (a.material + a.stock < b.material + b.stock ? -1 : 1));
}

export interface TrainLine {
  readonly id: string;
  readonly driver: string;
  readonly driverCount: number;
  readonly driven: string;
  readonly drivenCount: number;
  readonly distance: number;
  readonly rate: string;
  readonly days: number | null;
}

export const trainLines = (movement: Movement): TrainLine[] => movement.engagements.map((e) => {
  const rate = movement.arbors[e.drivenArbor].rate, turns = rate === null ? 0 : Math.abs(toNumber(rate));
  return {
    id: e.id, driver: e.driver.id, driverCount: countOf(e.driver), driven: e.driven.id, drivenCount: countOf(e.driven), distance: e.distance,
    rate: rate === null ? "not driven" : writeRatio(rate), days: turns > 0 ? movement.instrument.input.days / turns : null,
  };
});

export interface CutterLine { readonly form: string; readonly module: number; readonly says: string; readonly owned: boolean; readonly parts: readonly string[] }

export function cutterList(movement: Movement): CutterLine[] {
  const lines = new Map<string, CutterLine>();
  for (const part of movement.arbors.flatMap((a) => a.arbor.parts)) {
    const teeth = movement.teeth.get(part.id);
    if (!teeth || teeth.form === "lantern") continue;
    const wanted = cutterFor(teeth, movement.instrument.cutters ?? []), key = `${teeth.form} ${teeth.module} ${wanted.says}`;
    const before = lines.get(key) ?? { form: teeth.form, module: teeth.module, says: wanted.says, owned: wanted.owned !== null, parts: [] };
    lines.set(key, { ...before, parts: [...before.parts, part.id] });
  }
  return [...lines.values()].sort((a, b) => a.module - b.module || (a.says < b.says ? -1 : 1));
}

export interface SettingLine { readonly days: number; readonly turns: number; readonly readings: readonly number[] }

/** What every display shows at some turns of the input: at 0, after one, a week, a month and on to ten years, where they are whole turns. */
export function settingTable(movement: Movement): SettingLine[] {
  if (movement.displays.length === 0) return [];
  const { days } = movement.instrument.input, motion = motionOf(movement);
  return [0, 1, 7, 30, 100, 365, 1000, 3652].map((after) => {
    const turns = after / days;
    return { days: after, turns, readings: movement.displays.map((_, i) => readingAt(movement, i, turns, motion).value) };
  });
}

export interface HeatLine { readonly arbor: string; readonly joins: readonly JoinHeat[]; readonly suggested: readonly string[] }

/** Arbor by arbor: joins in the order of the file's own order, and the order that spoils least. */
export const heatTable = (movement: Movement): HeatLine[] => movement.arbors.flatMap(({ arbor }) => {
  const joins = arbor.parts.map(joinHeat).filter((j) => j !== null).sort((a, b) => (a.order ?? Infinity) - (b.order ?? Infinity));
  return joins.length === 0 ? [] : [{ arbor: arbor.id, joins, suggested: suggestedHeats(arbor).map((j) => j.part) }];
});
