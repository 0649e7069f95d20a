// Small pictures of a movement from one fixed view, drawn flat: every thing as the cylinders that it sweeps, from the
// lowest up. Enough to know a step by; the movement beside it shows the true solids. Pixels, y downwards.
import { sweptThings, type Movement, type SweptThing } from "../../../geometry/index.ts";

export interface Solid { readonly x: number; readonly y: number; readonly z0: number; readonly z1: number; readonly radius: number; readonly tone: Tone; readonly id: string; readonly arbor: string | null }
export type Tone = "brass" | "steel" | "plate";

const TURN = (-24 * Math.PI) / 180;
/** How much a circle is flattened, and how much a height is shortened. */
const FLAT = 0.42, TALL = 0.9;

/** Everything that is drawn, lowest first and far before near. */
export function solidsOf(movement: Movement): Solid[] {
  const steel = new Set(movement.instrument.arbors.flatMap((a) => a.parts.filter((p) => p.kind === "pinion" || p.kind === "pointer" || /steel/.test(p.material ?? "")).map((p) => p.id)));
  const solids = sweptThings(movement).flatMap((t): Solid[] => {
    const { x, y } = middleOf(movement, t), arbor = movement.arbors[t.arbor]?.id ?? null;
    if (t.kind === "case") return [];
    const tone: Tone = t.kind === "plate" ? "plate" : t.kind === "arbor" || steel.has(t.id) ? "steel" : "brass";
    const pointer = t.kind === "pointer" ? 0.25 : 1;
    return t.cylinders.map((c) => ({ x, y, z0: c.z0, z1: c.z1, radius: pointer * (t.plate ? plateRadius(movement, t.id) : c.radius), tone, id: t.id, arbor }));
  });
  return solids.sort((a, b) => a.z0 - b.z0 || depthOf(b) - depthOf(a));
}

export interface Frame { readonly scale: number; readonly x: number; readonly y: number }

/** So that all of them, and what hangs over them, fit. */
export function frameOf(solids: readonly Solid[], width: number, height: number): Frame {
  let left = Infinity, right = -Infinity, top = Infinity, bottom = -Infinity;
  for (const s of solids) {
    const [x, y0] = place(s.x, s.y, s.z0), [, y1] = place(s.x, s.y, s.z1);
    left = Math.min(left, x - s.radius);
    right = Math.max(right, x + s.radius);
    top = Math.min(top, y1 - s.radius * FLAT);
    bottom = Math.max(bottom, y0 + s.radius * FLAT);
  }
  const scale = 0.94 * Math.min(width / Math.max(1, right - left), height / Math.max(1, bottom - top));
  return { scale, x: width / 2 - (scale * (left + right)) / 2, y: height / 2 - (scale * (top + bottom)) / 2 };
}

export interface Colours { readonly edge: string; readonly fill: Readonly<Record<Tone, string>>; readonly top: Readonly<Record<Tone, string>> }

export function paint(context: CanvasRenderingContext2D, solids: readonly Solid[], frame: Frame, colours: Colours, hidden: ReadonlySet<string>, raised: (solid: Solid) => number): void {
  const lifted = solids.filter((s) => raised(s) !== 0);
  for (const s of [...solids.filter((s) => raised(s) === 0), ...lifted]) {
    if (hidden.has(s.id) || (s.arbor !== null && hidden.has(s.arbor))) continue;
    const up = raised(s), [x, low] = onPage(frame, s.x, s.y, s.z0 + up), [, high] = onPage(frame, s.x, s.y, s.z1 + up);
    const a = Math.max(0.5, s.radius * frame.scale), b = a * FLAT;
    context.lineWidth = 0.6;
    context.strokeStyle = colours.edge;
    context.fillStyle = colours.fill[s.tone];
    context.beginPath();
    context.ellipse(x, low, a, b, 0, 0, Math.PI);
    context.ellipse(x, high, a, b, 0, Math.PI, 0);
    context.closePath();
    context.fill();
    if (a > 2) context.stroke();
    context.fillStyle = colours.top[s.tone];
    context.beginPath();
    context.ellipse(x, high, a, b, 0, 0, 2 * Math.PI);
    context.fill();
    if (a > 2) context.stroke();
  }
}

function place(x: number, y: number, z: number): [number, number] {
  const across = x * Math.cos(TURN) - y * Math.sin(TURN), away = x * Math.sin(TURN) + y * Math.cos(TURN);
  return [across, -away * FLAT - z * TALL];
}
function onPage({ scale, x, y }: Frame, ...at: [number, number, number]): [number, number] {
  const [across, down] = place(...at);
  return [x + scale * across, y + scale * down];
}
const depthOf = (s: Solid): number => s.x * Math.sin(TURN) + s.y * Math.cos(TURN);

function middleOf(movement: Movement, { plate, axis }: SweptThing): { x: number; y: number } {
  if (!plate) return axis.atRest;
  const outline = movement.instrument.frame.plates.find((p) => p.id === plate.id)?.outline;
  return outline && "circle" in outline ? { x: outline.circle.x ?? 0, y: outline.circle.y ?? 0 } : boxMiddle(corners(movement, plate.id));
}

function plateRadius(movement: Movement, id: string): number {
  const outline = movement.instrument.frame.plates.find((p) => p.id === id)?.outline;
  if (outline && "circle" in outline) return outline.circle.diameter / 2;
  const at = corners(movement, id), m = boxMiddle(at);
  return Math.max(0, ...at.map(([x, y]) => Math.hypot(x - m.x, y - m.y))) * 0.85;
}

function corners(movement: Movement, id: string): readonly (readonly [number, number])[] {
  const outline = movement.instrument.frame.plates.find((p) => p.id === id)?.outline;
  if (!outline || "circle" in outline) return [];
  if ("polygon" in outline) return outline.polygon;
  const { width, height, x = 0, y = 0 } = outline.rectangle;
  return [[x - width / 2, y - height / 2], [x + width / 2, y + height / 2]];
}

function boxMiddle(at: readonly (readonly [number, number])[]): { x: number; y: number } {
  const xs = at.map((c) => c[0]), ys = at.map((c) => c[1]);
  return at.length === 0 ? { x: 0, y: 0 } : { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
}
