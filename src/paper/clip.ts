// What is seen of a drawing through a rectangle, for templates that take several leaves. Curves become chords where they
// are cut; what lies wholly inside stays as it is.
import type { Entity, LineKind } from "./drawing.ts";
import type { Box } from "./page.ts";
import { textBox } from "./lettered.ts";

const STEPS = 180;

export function clipped(entities: readonly Entity[], window: Box): Entity[] {
  return entities.flatMap((e): Entity[] => {
    if (e.kind === "text") return inside([textBox(e).left, textBox(e).bottom, textBox(e).right, textBox(e).top], window) ? [e] : [];
    if (e.kind === "line") return segments([e.x1, e.y1, e.x2, e.y2], window, e.line, e.layer);
    if (e.kind === "polyline") return inside(e.points, window) ? [e] : segments(e.closed ? [...e.points, e.points[0]!, e.points[1]!] : e.points, window, e.line, e.layer);
    if (e.kind !== "circle" && e.kind !== "arc") return [e];
    if (inside([e.x - e.radius, e.y - e.radius, e.x + e.radius, e.y + e.radius], window)) return [e];
    const from = e.kind === "arc" ? e.from : 0, to = e.kind === "arc" ? e.to : 360;
    const points = Array.from({ length: STEPS + 1 }, (_, i) => ((from + ((to - from) * i) / STEPS) * Math.PI) / 180).flatMap((a) => [e.x + e.radius * Math.cos(a), e.y + e.radius * Math.sin(a)]);
    return segments(points, window, e.line, e.layer);
  });
}

function inside(points: readonly number[], { left, right, bottom, top }: Box): boolean {
  return points.every((v, i) => (i % 2 === 0 ? v >= left && v <= right : v >= bottom && v <= top));
}

/** Runs of a chain of points that lie in the window. */
function segments(points: readonly number[], window: Box, line: LineKind, layer: Entity["layer"]): Entity[] {
  const runs: number[][] = [];
  for (let i = 0; i + 3 < points.length; i += 2) {
    const cut = clip(points[i]!, points[i + 1]!, points[i + 2]!, points[i + 3]!, window);
    if (cut === null) continue;
    const last = runs.at(-1);
    if (last && last.at(-2) === cut[0] && last.at(-1) === cut[1]) last.push(cut[2], cut[3]);
    else runs.push([...cut]);
  }
  return runs.map((run) => ({ kind: "polyline", layer, line, points: run, closed: false }));
}

/** Source: Y.-D. Liang, B. Barsky, A new concept and method for line clipping (1984). */
function clip(x1: number, y1: number, x2: number, y2: number, w: Box): readonly [number, number, number, number] | null {
  let t0 = 0, t1 = 1;
  const dx = x2 - x1, dy = y2 - y1;
  for (const [p, q] of [[-dx, x1 - w.left], [dx, w.right - x1], [-dy, y1 - w.bottom], [dy, w.top - y1]] as const) {
    if (p === 0) { if (q < 0) return null; continue; }
    if (p < 0) t0 = Math.max(t0, q / p);
    else t1 = Math.min(t1, q / p);
  }
  if (t0 >= t1) return null;
  const at = (t: number): readonly [number, number] => (t === 0 ? [x1, y1] : t === 1 ? [x2, y2] : [x1 + t * dx, y1 + t * dy]);
  return [...at(t0), ...at(t1)];
}
