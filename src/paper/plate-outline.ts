// Outlines of plates on a page.
import type { PlateOutline } from "../../geometry/index.ts";
import { circle, type Page, type Point, polyline } from "./page.ts";
import type { LineKind } from "./drawing.ts";

export function plateOutline(page: Page, outline: PlateOutline, at: (x: number, y: number) => Point, scale: number, kind: LineKind = "wide"): void {
  if ("circle" in outline) {
    const { diameter, x = 0, y = 0 } = outline.circle;
    circle(page, ...at(x, y), (diameter / 2) * scale, kind);
    return;
  }
  polyline(page, cornersOf(outline).flatMap(([x, y]) => [...at(x, y)]), true, kind);
}

function cornersOf(outline: Exclude<PlateOutline, { circle: unknown }>): readonly Point[] {
  if ("polygon" in outline) return outline.polygon;
  const { width, height, x = 0, y = 0 } = outline.rectangle;
  return [[x - width / 2, y - height / 2], [x + width / 2, y - height / 2], [x + width / 2, y + height / 2], [x - width / 2, y + height / 2]];
}
