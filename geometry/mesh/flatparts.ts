// Parts that are one flat outline: collets, discs, slot discs, ratchets, pins, pointers, arms. About their arbor's axis,
// at the angle at which they are drawn with the input at 0. Lengths in mm.
import type { Arm, Collet, Disc, Pin, Pointer, Ratchet, Sense, Slot } from "../instrument.ts";
import { toRad } from "../numeric/angle.ts";
import { circleOutline, circleSteps, placed, reversed, type Outline } from "../planar/outline.ts";
import { armOutline, handOutline } from "./hand.ts";
import { boreOutline, clearHoles, depthInside } from "./holes.ts";
import { roundOf } from "./lathe.ts";
import type { Mesh } from "./mesh.ts";
import { prism } from "./prism.ts";

export type FlatPart = Collet | Disc | Slot | Ratchet | Pin | Pointer | Arm;

/** `passes`: the way round in which a ratchet's click lets it pass. */
export function flatPartMesh(part: FlatPart, boreMm: number, passes: Sense, chordMm: number): Mesh {
  if (part.kind === "collet") return roundOf(part.diameter / 2, boreMm, part.z, part.z + part.thickness, chordMm);
  return prism(regionOf(part, boreMm, passes, chordMm), part.z, part.z + part.thickness);
}

function regionOf(part: Exclude<FlatPart, Collet>, boreMm: number, passes: Sense, chordMm: number): { outside: Outline; holes: readonly Outline[] } {
  const turn = (outside: Outline, deg: number): Outline => placed(outside, toRad(deg), 0, 0);
  const bored = (outside: Outline) => ({ outside, holes: boreOutline(outside, boreMm, chordMm) });
  switch (part.kind) {
    case "disc": return { outside: circleOutline(part.diameter / 2, chordMm), holes: discHoles(part, boreMm, chordMm) };
    case "slot": return { outside: circleOutline(part.diameter / 2, chordMm), holes: slotHoles(part, boreMm, chordMm) };
    case "ratchet": return bored(ratchetOutline(part, passes));
    case "pointer": return bored(turn(handOutline(part.length, part.tail, part.width, chordMm), part.angle));
    case "arm": return bored(turn(armOutline(part.length, part.width, chordMm), part.angle));
    case "pin": {
      const a = toRad(part.angle);
      return { outside: circleOutline(part.diameter / 2, chordMm, part.radius * Math.cos(a), part.radius * Math.sin(a)), holes: [] };
    }
  }
}

/** The bore first: a window that would run into it is left out. */
function discHoles(part: Disc, boreMm: number, chordMm: number): readonly Outline[] {
  const edge = circleOutline(part.diameter / 2, chordMm), bore = boreOutline(edge, boreMm, chordMm);
  const windows = (part.windows ?? []).map((w) => {
    const a = toRad(w.angle);
    return { x: w.radius * Math.cos(a), y: w.radius * Math.sin(a), radius: w.diameter / 2 };
  }).filter((w) => bore.length === 0 || Math.hypot(w.x, w.y) > boreMm + w.radius + chordMm);
  return [...bore, ...clearHoles(edge, windows, chordMm)];
}

/** The slot is cut first: a bore that would run into it is left out, as is a slot that breaks the disc's edge. */
function slotHoles(part: Slot, boreMm: number, chordMm: number): readonly Outline[] {
  const radius = part.diameter / 2, half = part.length / 2;
  const slot = placed(slotOutline(part.length, part.width, chordMm), toRad(part.angle), 0, 0);
  const a = toRad(part.angle);
  const there = placed(slot, 0, part.radius * Math.cos(a), part.radius * Math.sin(a));
  const bore = boreOutline(circleOutline(radius, chordMm), boreMm, chordMm);
  if (Math.abs(part.radius) + half > radius - chordMm) return bore;
  const clear = depthInside(there, 0, 0) < -boreMm - chordMm;
  return [reversed(there), ...(clear ? bore : [])];
}

/** A slot with round ends about its middle, along x, `length` from end to end. */
export function slotOutline(lengthMm: number, widthMm: number, chordMm: number): Outline {
  const radius = Math.min(widthMm, lengthMm) / 2, straight = lengthMm / 2 - radius;
  if (straight <= chordMm) return circleOutline(lengthMm / 2, chordMm);
  const steps = Math.ceil(circleSteps(radius, chordMm) / 2);
  const out = new Float64Array(4 * (steps + 1));
  for (let end = 0, at = 0; end < 2; end++)
    for (let i = 0; i <= steps; i++) {
      const a = Math.PI * (end - 0.5 + i / steps);
      out[at++] = (end === 0 ? straight : -straight) + radius * Math.cos(a);
      out[at++] = radius * Math.sin(a);
    }
  return out;
}

/** Teeth that rise slowly and fall steeply; the slow side meets the click where the ratchet may pass. */
export function ratchetOutline(part: Ratchet, passes: Sense): Outline {
  const n = part.teeth, tip = part.diameter / 2, root = Math.max(tip - part.depth, 0.1 * tip);
  const pitchRad = (2 * Math.PI) / n, rakeRad = RATCHET_RAKE * pitchRad;
  // The foot of the steep face stands a little under its tip, so that a click is drawn in; but within the slow rise.
  const within = tip * (Math.sin(pitchRad + rakeRad) - Math.sin(rakeRad)) > root * Math.sin(pitchRad);
  const out = new Float64Array(4 * n);
  for (let i = 0; i < n; i++) {
    put(out, 2 * i, tip, i * pitchRad);
    put(out, 2 * i + 1, root, i * pitchRad - (within ? rakeRad : 0));
  }
  return passes === "clockwise" ? out : reversed(out.map((v, i) => (i % 2 === 1 ? -v : v)));
}

/** Of a tooth's pitch: how far the foot of the steep face stands behind its tip. */
const RATCHET_RAKE = 0.06;

function put(out: Outline, point: number, radiusMm: number, angleRad: number): void {
  out[2 * point] = radiusMm * Math.cos(angleRad);
  out[2 * point + 1] = radiusMm * Math.sin(angleRad);
}
