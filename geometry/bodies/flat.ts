// The true outline of a thing in plan, about its own axis and as drawn with the input at 0. Lengths in mm.
import earcut from "earcut";
import { toRad } from "../numeric/angle.ts";
import type { Disc, Part, PlateOutline, Slot, Wheel } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { FOLLOWED_CHORD_MM } from "../numeric/tolerance.ts";
import { bar, disc, hollowOf, type Convex, type Flat, type Hollow } from "../planar/apart.ts";
import { placed } from "../planar/outline.ts";
import { crossingOutlines } from "../teeth/crossings.ts";
import { rootRadius } from "../teeth/forms.ts";
import { drawnToHold, lostAtPawl, pawlOf, restsAt, swungOutline } from "./pawl.ts";
import { cornersOf } from "./plate.ts";
import type { Cylinder, Thing } from "./thing.ts";

/** The outline of a thing at one of its cylinders. */
export function flatOf(movement: Movement, thing: Thing, cylinder: Cylinder): Flat {
  if (thing.plate !== null) return plateFlat(thing.plate.outline, thing.plate.openings ?? []);
  const part = thing.part >= 0 ? movement.arbors[thing.arbor].arbor.parts[thing.part] : null;
  const special = part && (part.kind === "wheel" ? crossedFlat(movement, part, cylinder) : pawlFlat(movement, part) ?? partFlat(part));
  if (special) return special;
  const hole: Hollow[] = cylinder.inner > 0 ? [{ kind: "round", x: 0, y: 0, radius: cylinder.inner }] : [];
  return { outside: [disc(cylinder.radius)], hollows: hole };
}

/** Whether turning about its own axis changes nothing. */
export const isRound = (flat: Flat): boolean =>
  flat.outside.every(isDiscAbout)
  && flat.hollows.every((h) => h.kind === "round" && h.x === 0 && h.y === 0);

/** Farthest from its axis that anything of it reaches that is not round about it: what turning moves. */
export function flatReach(flat: Flat): number {
  let reach = 0;
  for (const p of flat.outside) if (!isDiscAbout(p)) reach = Math.max(reach, farthest(p.corners) + p.radius);
  for (const h of flat.hollows) reach = Math.max(reach, h.kind === "outline" ? farthest(h.outline) : h.x === 0 && h.y === 0 ? 0 : Math.hypot(h.x, h.y) + h.radius);
  return reach;
}

/** Farthest that anything of it reaches from its axis, round or not. */
export const wholeReach = ({ outside }: Flat): number => outside.reduce((reach, p) => Math.max(reach, farthest(p.corners) + p.radius), 0);

const isDiscAbout = (p: Convex): boolean => p.corners.length === 2 && p.corners[0] === 0 && p.corners[1] === 0;

function farthest(corners: Float64Array): number {
  let reach = 0;
  for (let i = 0; i < corners.length; i += 2) reach = Math.max(reach, Math.hypot(corners[i], corners[i + 1]));
  return reach;
}

/** Parts whose outline is not the circle that they sweep; null for those that are round. */
function partFlat(part: Part): Flat | null {
  switch (part.kind) {
    case "pin": return solid(disc(part.diameter / 2, ...polar(part.radius, part.angle)));
    case "pointer": return solid(bar(-part.tail, part.length, part.width, toRad(part.angle)));
    case "arm": return solid(bar(0, part.length, part.width, toRad(part.angle)));
    case "disc": return { outside: [disc(part.diameter / 2)], hollows: windowsOf(part) };
    case "slot": return { outside: [disc(part.diameter / 2)], hollows: [slotHollow(part)] };
    case "square": return part.angle === undefined ? null : solid(bar(-part.across / 2, part.across / 2, part.across, toRad(part.angle)));
    default: return null;
  }
}

/** A disc over the tips with the openings between its arms, where the file tells how the arms stand; else null. */
function crossedFlat(movement: Movement, { id, crossings }: Wheel, { radius, inner }: Cylinder): Flat | null {
  const teeth = movement.teeth.get(id);
  if (crossings?.angle === undefined || teeth === undefined || inner > 0) return null;
  const rad = toRad(crossings.angle);
  return { outside: [disc(radius)], hollows: crossingOutlines(crossings, rootRadius(teeth), FOLLOWED_CHORD_MM).map((o) => hollowOf(placed(o, rad, 0, 0))) };
}

/** What a pawl sweeps from the root of its ratchet's teeth to over their tips, at the worst; null where it never comes to them. */
function pawlFlat(movement: Movement, part: Part): Flat | null {
  const pawl = part.kind === "arm" ? pawlOf(movement, part.id) : null;
  if (pawl === null || restsAt(pawl) === null || !drawnToHold(pawl)) return null;
  return solid(swungOutline(pawl, lostAtPawl(movement, pawl)));
}

const windowsOf = (part: Disc): Hollow[] => (part.windows ?? []).map((w) => {
  const [x, y] = polar(w.radius, w.angle);
  return { kind: "round", x, y, radius: w.diameter / 2 };
});

function slotHollow(part: Slot): Hollow {
  const { corners } = bar(part.radius - part.length / 2, part.radius + part.length / 2, part.width, toRad(part.angle));
  return hollowOf(corners);
}

function plateFlat(outline: PlateOutline, openings: readonly { x: number; y: number; diameter: number }[]): Flat {
  const outside = piecesOf(outline);
  const whole = outside.length > 1 ? { outline: Float64Array.from((cornersOf(outline) ?? []).flat()) } : {};
  return { outside, ...whole, hollows: openings.map((o) => ({ kind: "round", x: o.x, y: o.y, radius: o.diameter / 2 })) };
}

function piecesOf(outline: PlateOutline): Convex[] {
  if ("circle" in outline) return [disc(outline.circle.diameter / 2, outline.circle.x ?? 0, outline.circle.y ?? 0)];
  const corners = anticlockwise((cornersOf(outline) ?? []).flat());
  if (isConvex(corners)) return [{ corners: Float64Array.from(corners), radius: 0 }];
  const triangles = earcut(corners);
  return Array.from({ length: triangles.length / 3 }, (_, t) => {
    const at = [0, 1, 2].flatMap((k) => { const v = triangles[3 * t + k]; return [corners[2 * v], corners[2 * v + 1]]; });
    return { corners: Float64Array.from(anticlockwise(at)), radius: 0 };
  });
}

function anticlockwise(corners: number[]): number[] {
  let twice = 0;
  for (let i = 0, j = corners.length - 2; i < corners.length; j = i, i += 2) twice += corners[j] * corners[i + 1] - corners[i] * corners[j + 1];
  if (twice >= 0) return corners;
  return Array.from({ length: corners.length }, (_, i) => corners[corners.length - 2 - (i - (i % 2)) + (i % 2)]);
}

function isConvex(corners: readonly number[]): boolean {
  const n = corners.length;
  for (let i = 0; i < n; i += 2) {
    const [ax, ay, bx, by, cx, cy] = [0, 1, 2, 3, 4, 5].map((k) => corners[(i + k) % n]);
    if ((bx - ax) * (cy - by) - (by - ay) * (cx - bx) < 0) return false;
  }
  return true;
}

const solid = (outside: Convex): Flat => ({ outside: [outside], hollows: [] });
const polar = (radius: number, angleDeg: number): [number, number] => [radius * Math.cos(toRad(angleDeg)), radius * Math.sin(toRad(angleDeg))];
