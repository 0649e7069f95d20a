// The teeth of a part about the place where it meets its mate, as the text of SVG paths about its own axis: the metal, and
// the line of its teeth alone. Only as many teeth as can be seen, one on +x; turning by a pitch brings the same picture.
import { rootRadius, type Teeth, toothOutline, trundleOutlines } from "../../../geometry/index.ts";

export interface Sector {
  /** Metal, to be filled by the even-odd rule. */
  readonly metal: string;
  /** The teeth's own edge. */
  readonly edge: string;
}

/** mm: finer than a line at the greatest magnification. */
const CHORD_MM = 0.001;
/** Modules of rim behind the teeth of an annulus. */
const RIM_MODULES = 3;

/** `reachMm`: how far from the line of centres teeth are to be seen. */
export function sectorOf(teeth: Teeth, reachMm: number): Sector {
  const half = teethWithin(teeth, reachMm);
  const isWhole = 2 * half + 1 >= teeth.count;
  if (teeth.form === "lantern") return trundles(teeth, isWhole ? teeth.count : half);
  const points = toothOutline(teeth, CHORD_MM), stride = points.length / teeth.count;
  const seen: number[] = [];
  for (let t = isWhole ? 0 : -half; t <= (isWhole ? teeth.count - 1 : half); t++) {
    const from = ((t + teeth.count) % teeth.count) * stride;
    for (let i = from; i < from + stride; i++) seen.push(points[i] ?? 0);
  }
  const line = pathThrough(seen);
  if (isWhole) return { metal: `${line}Z${teeth.internal ? circlePath(rimOf(teeth)) : ""}`, edge: `${line}Z` };
  return { metal: `${line}${teeth.internal ? rimBack(seen, rimOf(teeth)) : "L0 0"}Z`, edge: line };
}

/** Teeth to either side of the line of centres that come within reach, with one to spare. */
function teethWithin(teeth: Teeth, reachMm: number): number {
  const radius = (teeth.count * teeth.module) / 2;
  if (reachMm >= radius) return teeth.count;
  return Math.ceil((Math.asin(reachMm / radius) / (2 * Math.PI)) * teeth.count) + 1;
}

function trundles(teeth: Teeth, half: number): Sector {
  const all = trundleOutlines(teeth, CHORD_MM), edge: string[] = [];
  all.forEach((outline, i) => {
    if (i <= half || i >= teeth.count - half) edge.push(`${pathThrough(Array.from(outline))}Z`);
  });
  return { metal: edge.join(""), edge: edge.join("") };
}

const rimOf = (teeth: Teeth): number => rootRadius(teeth) + RIM_MODULES * teeth.module;

const circlePath = (radius: number): string => `M${radius} 0A${radius} ${radius} 0 1 1 ${-radius} 0A${radius} ${radius} 0 1 1 ${radius} 0Z`;

/** From the last point outward to the rim, and along it back to the first. */
function rimBack(points: readonly number[], radius: number): string {
  const place = (x: number, y: number) => {
    const scale = radius / Math.hypot(x, y);
    return `${written(x * scale)} ${written(y * scale)}`;
  };
  return `L${place(points.at(-2) ?? 1, points.at(-1) ?? 0)}A${radius} ${radius} 0 0 0 ${place(points[0] ?? 1, points[1] ?? 0)}`;
}

function pathThrough(points: readonly number[]): string {
  let text = "";
  for (let i = 0; i < points.length; i += 2) text += `${i === 0 ? "M" : "L"}${written(points[i] ?? 0)} ${written(points[i + 1] ?? 0)}`;
  return text;
}

/** To a ten-thousandth of a millimetre. */
const written = (mm: number): number => Math.round(mm * 1e4) / 1e4;
