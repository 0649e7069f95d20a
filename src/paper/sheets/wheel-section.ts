// A wheel cut through on A–A. Teeth and arms are not hatched, the roots are wide lines (ISO 2203, ISO 128-3).
import type { WheelFigures } from "../../../geometry/index.ts";
import { levelDimension, uprightDimension } from "../dimension.ts";
import { textWidthMm } from "../lettering.ts";
import { hatch, line, type Page, rectangle, text, view } from "../page.ts";
import { fixed } from "../words.ts";

/** mm of paper that the section itself takes. */
export const sectionWidth = (w: WheelFigures, scale: number): number => w.thickness * scale;

/** `x`: its left face. */
export function drawSection(page: Page, w: WheelFigures, x: number, y: number, scale: number): void {
  view(page, "section", x, y, scale);
  const x1 = x + w.thickness * scale, outer = outerRadius(w) * scale, bore = (w.teeth.internal ? w.blankDiameter / 2 : w.seat.diameter / 2) * scale;
  const root = (w.rootDiameter / 2) * scale, pitch = (w.pitchDiameter / 2) * scale, lantern = w.kind === "lantern";
  rectangle(page, x, y - outer, x1, y + outer);
  const c = w.crossings, metal = w.teeth.internal || lantern ? outer : root;
  for (const side of [1, -1]) {
    const band = (r0: number, r1: number) => hatch(page, [[x, y + side * r0, x1, y + side * r0, x1, y + side * r1, x, y + side * r1]]);
    if (w.teeth.internal) band(root, outer);
    else if (c) { band(bore, c.inner * scale); band(c.outer * scale, root); } else if (metal > bore) band(bore, metal);
    if (!lantern) line(page, x, y + side * root, x1, y + side * root, "wide");
    line(page, x - 3, y + side * pitch, x1 + 3, y + side * pitch, "chain");
    if (bore > 0) line(page, x, y + side * bore, x1, y + side * bore, "wide");
    if (c) for (const r of [c.inner, c.outer]) line(page, x, y + side * r * scale, x1, y + side * r * scale, "wide");
  }
  line(page, x - 4, y, x1 + 4, y, "chain");
  levelDimension(page, x, y + outer, x1, y + outer, y + outer + 6, `${fixed(w.thickness, 2)}`);
  const letters = diameters(w);
  letters.forEach(([what, diameter], i) => {
    // Small ones leave their word out rather than write it over the lines of the others.
    const words = textWidthMm(what, 2.5, "figures") + 1 <= diameter * scale ? what : what.split(" ")[0]!;
    uprightDimension(page, x1, y - (diameter / 2) * scale, x1, y + (diameter / 2) * scale, x1 + 9 + 7.5 * i, words);
  });
  if (bore > 0 && !w.teeth.internal) uprightDimension(page, x, y - bore, x, y + bore, x - 8, `ø${fixed(w.seat.diameter, 2)}`);
  text(page, (x + x1) / 2, y - outer - 7, "Section A–A", { face: "italic", align: "middle", layer: "dimension" });
}

/** Smallest nearest to the metal, so that no line crosses another. */
function diameters(w: WheelFigures): (readonly [string, number])[] {
  const all: (readonly [string, number])[] = w.kind === "lantern"
    ? [[`ø${fixed(w.pitchDiameter, 3)}`, w.pitchDiameter], [`ø${fixed(w.outsideDiameter ?? w.blankDiameter, 2)}`, w.outsideDiameter ?? w.blankDiameter]]
    : [[`ø${fixed(w.rootDiameter, 2)} root`, w.rootDiameter], [`ø${fixed(w.pitchDiameter, 3)} pitch`, w.pitchDiameter], [`ø${fixed(w.blankDiameter, 2)}`, w.blankDiameter],
      ...(w.outsideDiameter === null ? [] : [[`ø${fixed(w.outsideDiameter, 2)}`, w.outsideDiameter] as const])];
  return all.sort((a, b) => a[1] - b[1]);
}

const outerRadius = (w: WheelFigures): number => Math.max(w.blankDiameter, w.outsideDiameter ?? 0, w.teeth.internal ? w.rootDiameter : 0) / 2;
