// One tooth and its neighbours at a large scale, and the whole wheel at full size in silhouette where it is drawn larger.
import { crossingOutlines, toothOutline, type WheelFigures } from "../../../geometry/index.ts";
import { arc, fill, hatch, outlineOn, type Page, polyline, text, view } from "../page.ts";
import { scaleFor, scaleWritten } from "../words.ts";
import { onArms } from "./wheel-face.ts";

const CHORD_MM = 0.002, HEIGHT = 30;

export function drawTooth(page: Page, w: WheelFigures, x: number, top: number, width: number, enlarged: boolean): void {
  if (w.kind === "lantern") return;
  const room = enlarged && w.blankDiameter <= 36 ? width - w.blankDiameter - 6 : width;
  tooth(page, w, x, top, room);
  if (room === width || w.teeth.internal) return;
  const r = w.blankDiameter / 2, cx = x + width - r - 1, cy = top - 5 - r;
  text(page, x + width - 1, top - 3, "full size", { face: "italic", align: "right", layer: "dimension" });
  const at = view(page, "full size", cx, cy, 1), up = (mx: number, my: number) => at(-my, mx);
  const loops = [outlineOn(up, toothOutline(w.teeth, 0.02)), ...(w.crossings ? crossingOutlines(w.crossings, w.rootDiameter / 2, 0.02) : []).map((o) => outlineOn(onArms(w, up), o))];
  const bore = Array.from({ length: 32 }, (_, i) => [cx + (w.seat.diameter / 2) * Math.cos((i * Math.PI) / 16), cy + (w.seat.diameter / 2) * Math.sin((i * Math.PI) / 16)]).flat();
  fill(page, w.seat.diameter > 0 ? [...loops, bore] : loops);
}

function tooth(page: Page, w: WheelFigures, x: number, top: number, room: number): void {
  const pitchRad = (2 * Math.PI) / w.count, middle = w.pitchDiameter / 2, shownRad = Math.min(1.5, 0.9 * Math.PI / pitchRad) * pitchRad;
  const scale = scaleFor(Math.max(2 * middle * Math.sin(shownRad), (w.depthOfCut * room) / 15), room, 50);
  const base = Math.min(w.blankDiameter, w.rootDiameter) / 2 - 0.9 * w.teeth.module;
  const cx = x + room / 2, cy = top - (w.teeth.internal ? HEIGHT + 6 : HEIGHT) + 2 - base * Math.cos(shownRad) * scale;
  text(page, x, top - 3, `One tooth, ${scaleWritten(scale)}`, { face: "italic", layer: "dimension" });
  const at = view(page, "tooth", cx, cy, scale), up = (mx: number, my: number) => at(-my, mx);
  const outline = toothOutline(w.teeth, CHORD_MM);
  const points: { readonly a: number; readonly p: readonly [number, number] }[] = [];
  for (let i = 0; i < outline.length; i += 2) {
    const a = Math.atan2(outline[i + 1]!, outline[i]!);
    if (Math.abs(a) < shownRad) points.push({ a, p: up(outline[i]!, outline[i + 1]!) });
  }
  points.sort((p, q) => q.a - p.a);
  const edge = points.flatMap(({ p }) => [...p]);
  polyline(page, edge, false);
  const floor = w.teeth.internal ? Math.max(w.blankDiameter, w.rootDiameter) / 2 + 0.9 * w.teeth.module : base;
  const along = Array.from({ length: 17 }, (_, i) => up(floor * Math.cos(-shownRad + (i * shownRad) / 8), floor * Math.sin(-shownRad + (i * shownRad) / 8)));
  hatch(page, [[...edge, ...along.flat()]]);
  arc(page, cx, cy, middle * scale, 90 - (shownRad * 180) / Math.PI, 90 + (shownRad * 180) / Math.PI, "chain");
}
