// The sheet of one wheel, pinion or lantern: drawn by the conventions of ISO 2203, with the figures to cut it by and its
// dividing card.
import type { WheelFigures } from "../../../geometry/index.ts";
import { cautionsFor, joinDangers } from "../cautions.ts";
import { checkBar } from "../dimension.ts";
import type { Draft } from "../draft.ts";
import type { Page } from "../page.ts";
import { figuresTable, ROW, ruled } from "../table.ts";
import { fixed, scaleFor, scaleWritten, short, signed } from "../words.ts";
import { card, cardHeight, checksTable } from "./dividing-card.ts";
import { drawFace } from "./wheel-face.ts";
import { drawSection, sectionWidth } from "./wheel-section.ts";
import { drawTooth } from "./wheel-tooth.ts";

export function wheelDraft(w: WheelFigures): Draft {
  const word = { wheel: "Wheel", pinion: "Pinion", lantern: "Lantern" }[w.kind];
  const rows = whatToCut(w);
  return {
    id: `${w.kind}-${w.id}`, number: w.id, title: `${word} ${w.id}`, kind: w.kind === "wheel" ? "wheel" : "pinion",
    subtitle: `${w.name ? `${w.name}, ` : ""}${w.count} ${{ wheel: "teeth", pinion: "leaves", lantern: "trundles" }[w.kind]}, on arbor ${w.arbor}`,
    document: "wheel sheet, for cutting", side: "DIAL SIDE", shows: w,
    tables: [
      { id: `${w.id}-figures`, title: `What to cut, ${w.id}`, columns: ["figure", "value"], rows },
      ...(w.card.checks.length > 0 ? [checksTable(w)] : []),
    ],
    cautions: cautionsFor("turning", "brass", ...(w.crossings ? ["saw"] as const : []), ...joinDangers(w.seat.says.split(", ")[1])),
    draw: (next) => drawSheet(w, rows, next),
  };
}

function drawSheet(w: WheelFigures, rows: readonly (readonly [string, string])[], next: () => Page): string {
  const page = next(), { left, right, top, bottom } = page.room, broad = right - left > 300;
  const half = broad ? (right - left) / 2 : right - left;
  const tableLeft = broad ? left + half + 4 : left, column = ((broad ? half - 4 : half) - 8) / 2;
  const tableHeight = Math.max(6 + rows.length * ROW + 10, cardHeight(w.card) + 44);
  const drawingBottom = broad ? bottom + 12 : bottom + tableHeight;
  const extra = sectionWidth(w, 1);
  const across = 2 * reachOf(w), widest = half - 72, tall = top - drawingBottom - 22;
  const scale = scaleFor(across, Math.min(widest, tall), Math.max(1, 30 / Math.max(extra, 0.1)), true);
  const y = (top + drawingBottom) / 2 + 1, x = left + 26 + (across * scale) / 2;
  const sectionX = Math.min(x + (across * scale) / 2 + 40, left + half - 32 - w.thickness * scale);
  drawFace(page, w, x, y, scale, { left, right: Math.min(x + (across * scale) / 2 + 20, sectionX - 20), top: top - 4, bottom: drawingBottom + 4 });
  drawSection(page, w, sectionX, y, scale);
  const tablesTop = broad ? top : drawingBottom;
  figuresTable(page, tableLeft, tablesTop, column, "What to cut", rows);
  const under = card(page, w, tableLeft + column + 8, tablesTop, column);
  drawTooth(page, w, tableLeft + column + 8, under - 3, column, scale > 1);
  checkBar(page, tableLeft, bottom + 3.5);
  if (w.card.checks.length > MOST_ON_CARD) {
    const more = next();
    ruled({ page: more, y: more.room.top }, next, checksTable(w));
  }
  return scaleWritten(scale);
}

/** More checks than this stand on a page of their own. */
export const MOST_ON_CARD = 30;

const reachOf = (w: WheelFigures): number => Math.max(w.blankDiameter, w.outsideDiameter ?? 0, w.teeth.internal ? w.rootDiameter : 0) / 2;

function whatToCut(w: WheelFigures): (readonly [string, string])[] {
  const { teeth } = w, lantern = w.kind === "lantern";
  const rows: (readonly [string, string] | null)[] = [
    [{ wheel: "Teeth", pinion: "Leaves", lantern: "Trundles" }[w.kind], String(w.count)],
    ["Module, form", `${short(teeth.module)}, ${teeth.form}${teeth.form === "cycloidal" || lantern ? "" : ` ${short(teeth.pressureAngleDeg)}°`}`],
    teeth.shift !== 0 ? ["Profile shift", `${signed(teeth.shift, 3)} modules`] : null,
    !lantern && teeth.form !== "cycloidal" ? ["Thinning", `${short(teeth.thinning)} modules`] : null,
    teeth.topping !== 0 ? ["Topping", `${signed(teeth.topping, 3)} modules`] : null,
    teeth.dedendum === undefined ? null : ["Dedendum", `${short(teeth.dedendum)} modules`],
    lantern ? ["Trundles of", `ø${fixed(teeth.trundleDiameter, 2)}`] : [teeth.internal ? "Bored for teeth" : "Blank diameter", `${fixed(w.blankDiameter, 2)} ${limits(w.blankLimits)}`],
    w.outsideDiameter === null ? null : [lantern ? "Shrouds" : "Outside diameter", `ø${fixed(w.outsideDiameter, 2)}`],
    [lantern ? "Trundle circle" : "Pitch diameter", fixed(w.pitchDiameter, 3)],
    lantern ? null : ["Root diameter", fixed(w.rootDiameter, 2)],
    lantern ? null : ["Depth of cut", fixed(w.depthOfCut, 3)],
    ["Cutter", w.cutter.says],
    lantern || teeth.internal ? null : ["Cutter owned", w.cutter.owned ? `yes, module ${short(w.cutter.owned.module)}` : "no"],
    w.span ? [`Span over ${w.span.over} teeth`, fixed(w.span.mm, 3)] : null,
    w.pins ? [`Over two pins ø${short(w.pins.diameter, 2)}`, fixed(w.pins.mm, 3)] : null,
    ["Thickness", `${fixed(w.thickness, 2)} ±0.03`],
    ["Bore and fit", teeth.internal ? "none: a ring" : w.seat.collet ? `${w.seat.says}, on ${w.seat.collet}` : w.seat.says],
    w.crossings ? ["Crossings", `${w.crossings.arms}, arm ${fixed(w.crossings.arm, 2)}, rim ${fixed(w.crossings.rim, 2)}`] : null,
    w.crossings?.angle !== undefined ? ["First arm", `at ${short(w.crossings.angle)}°, input at 0`] : null,
    w.crossings ? ["Marking out", `R${fixed(w.crossings.outer, 2)}, hub R${fixed(w.crossings.inner, 2)}, corners R${fixed(w.crossings.corner, 2)}`] : null,
    w.crossings ? ["Saw entry", `${w.crossings.arms} holes ø${fixed(w.crossings.sawDiameter, 1)} on R${fixed(w.crossings.sawRadius, 2)}`] : null,
    w.crossings && w.crossings.pastTooth > 0 ? ["First arm past a tooth", `${fixed(w.crossings.pastTooth, 3)}°`] : null,
    ["Run-out allowed", `${fixed(w.runoutRound, 3)} round, ${fixed(w.runoutFlat, 2)} flat`],
    ...w.mates.map((m) => [`With ${m.id} of ${m.count} at`, `${fixed(m.distance, 3)} ${m.lower === null || m.upper === null ? "no window" : `${signed(m.upper, 3)}/${signed(m.lower, 3)}`}`] as const),
    ["Sense", w.sense],
    ["Material, mass", `${w.material}${w.massG === null ? "" : `, ${fixed(w.massG, 1)} g`}`],
    ["Number off", w.alike.length > 0 ? `1; cut with ${w.alike.slice(0, 4).join(", ")}` : "1"],
  ];
  return rows.filter((row) => row !== null);
}

const limits = ({ lower, upper }: { readonly lower: number; readonly upper: number }): string => `${upper === 0 ? "0" : signed(upper, 2)}/${lower === 0 ? "0" : signed(lower, 2)}`;

