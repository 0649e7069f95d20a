// From millimetres of the frame to pixels of the plan: x to the right, y up on the instrument and down on the page.
import type { Movement, PlateOutline } from "../../../geometry/index.ts";
import type { Size } from "./useSize.ts";

export interface Frame {
  /** Pixels a millimetre. */
  readonly k: number;
  readonly x: (mm: number) => number;
  readonly y: (mm: number) => number;
}

const EDGE_PX = 6;

/** Everything of the frame inside the drawing; where there is no plate, everything that is planted. */
export function fit(movement: Movement, size: Size): Frame {
  const { plates, case: housing } = movement.instrument.frame;
  const boxes = plates.map((p) => boxOf(p.outline));
  if (housing) boxes.push(square(housing.insideDiameter / 2));
  if (boxes.length === 0) boxes.push(square(Math.max(20, ...movement.arbors.map((a) => Math.hypot(a.x, a.y) + 20))));
  const [x0, y0] = [Math.min(...boxes.map((b) => b[0])), Math.min(...boxes.map((b) => b[1]))];
  const [x1, y1] = [Math.max(...boxes.map((b) => b[2])), Math.max(...boxes.map((b) => b[3]))];
  const k = Math.max(0.01, Math.min((size.width - 2 * EDGE_PX) / (x1 - x0), (size.height - 2 * EDGE_PX) / (y1 - y0)));
  return { k, x: (mm) => size.width / 2 + (mm - (x0 + x1) / 2) * k, y: (mm) => size.height / 2 - (mm - (y0 + y1) / 2) * k };
}

type Box = readonly [number, number, number, number];
const square = (half: number): Box => [-half, -half, half, half];

function boxOf(outline: PlateOutline): Box {
  if ("circle" in outline) {
    const { diameter, x = 0, y = 0 } = outline.circle;
    return [x - diameter / 2, y - diameter / 2, x + diameter / 2, y + diameter / 2];
  }
  if ("rectangle" in outline) {
    const { width, height, x = 0, y = 0 } = outline.rectangle;
    return [x - width / 2, y - height / 2, x + width / 2, y + height / 2];
  }
  const xs = outline.polygon.map((p) => p[0]), ys = outline.polygon.map((p) => p[1]);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** An outline as the path of an SVG. */
export function outlinePath(outline: PlateOutline, frame: Frame): string {
  if ("circle" in outline) {
    const { diameter, x = 0, y = 0 } = outline.circle;
    const r = (diameter / 2) * frame.k;
    return `M${frame.x(x) - r} ${frame.y(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
  }
  const [x0, y0, x1, y1] = boxOf(outline);
  const corners = "polygon" in outline ? outline.polygon : [[x0, y0], [x1, y0], [x1, y1], [x0, y1]] as const;
  return `M${corners.map(([x, y]) => `${frame.x(x)} ${frame.y(y)}`).join("L")}Z`;
}
