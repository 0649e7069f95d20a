// Measuring teeth: the span over several of them, and the distance over two pins. Outside involute teeth only. mm.
// Source: the usual gear handbooks' formulas (Elements of Metric Gear Technology, section 10); thinning takes its thickness
// off along the base circle.
import { toRad } from "../numeric/angle.ts";
import { inv, inverseInv } from "../teeth/involute-function.ts";
import type { Teeth } from "../teeth/teeth.ts";

export interface Span { readonly over: number; readonly mm: number }
export interface Pins { readonly diameter: number; readonly mm: number }

const isMeasured = (t: Teeth): boolean => t.form === "involute" && !t.internal;

/** W = m cos α (π(k − ½) + z inv α − thinning) + 2xm sin α; null for teeth that have no span. */
export function spanOf(teeth: Teeth, over = usualSpan(teeth)): Span | null {
  if (!isMeasured(teeth) || over < 2 || over >= teeth.count) return null;
  const { module: m, count: z, shift, thinning } = teeth, a = toRad(teeth.pressureAngleDeg);
  return { over, mm: m * Math.cos(a) * (Math.PI * (over - 0.5) + z * inv(a) - thinning) + 2 * shift * m * Math.sin(a) };
}

/** So many teeth that the jaws touch near the pitch circle; no fewer than 2. */
export function usualSpan({ count: z, shift, pressureAngleDeg }: Teeth): number {
  const a = toRad(pressureAngleDeg);
  const atMiddle = Math.acos(Math.min(1, (z * Math.cos(a)) / Math.max(1e-9, z + 2 * shift)));
  return Math.max(2, Math.ceil((z * atMiddle) / Math.PI - 1e-9));
}

/** mm: the pin of about 1.728 modules that comes in steps of 0.05. */
export const usualPin = (moduleMm: number): number => Math.max(0.1, Math.round(1.728 * moduleMm * 20) / 20);

/** Over two pins: inv φ = d/(mz cos α) − (π + 2·thinning)/(2z) + inv α + 2x tan α/z. */
export function overPins(teeth: Teeth, diameter = usualPin(teeth.module)): Pins | null {
  if (!isMeasured(teeth)) return null;
  const { module: m, count: z, shift, thinning } = teeth, a = toRad(teeth.pressureAngleDeg);
  const base = m * z * Math.cos(a);
  const phi = inverseInv(diameter / base - (Math.PI / 2 + thinning) / z + inv(a) + (2 * shift * Math.tan(a)) / z);
  if (phi === null) return null;
  const between = base / Math.cos(phi);
  return { diameter, mm: (z % 2 === 0 ? between : between * Math.cos(Math.PI / (2 * z))) + diameter };
}
