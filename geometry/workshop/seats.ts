// Where parts sit on their arbors: what each is bored to, how the bore fits by the way it is joined, and which collet a
// wheel is mounted on. Lengths in mm. Source: fits by ISO 286-2; gaps for solder 0.05 to 0.13 a side and for retaining
// compound 0.02 to 0.06 on the diameter (common practice); a riveted spigot stands 0.3 proud (common practice).
import type { Arbor, Collet, Join, Part } from "../instrument.ts";
import { holeLimits, shaftLimits } from "./fits.ts";

/** How far a spigot stands out of what is riveted on it. */
export const PROUD_MM = 0.3;

export interface Seat {
  /** Nominal diameter of the bore; 0: the part has none (a pin, a square). */
  readonly diameter: number;
  /** Limits of bore and seat, mm from the nominal diameter; null where no table reaches. */
  readonly bore: { readonly lower: number; readonly upper: number } | null;
  readonly shaft: { readonly lower: number; readonly upper: number } | null;
  /** In words: "5 H7, soft solder". */
  readonly says: string;
  /** The collet that it is mounted on, or null: the arbor itself. */
  readonly collet: string | null;
}

/** The wheel or other flat part that a collet carries: of those it overlaps in height, the first of the file. */
export const carriedBy = (arbor: Arbor, collet: Collet): Part | null =>
  arbor.parts.find((p) => p.id !== collet.id && MOUNTED.has(p.kind) && overlap(p, collet)) ?? null;

const MOUNTED = new Set<Part["kind"]>(["wheel", "ratchet", "disc", "slot", "arm", "pointer"]);

/** Of the spigot on which a collet carries: half way between the arbor and its own outside, to a tenth. */
export const spigotMm = (arbor: Arbor, collet: Collet, at: Part): number =>
  Math.round(5 * (arborDiameterAt(arbor, at) + Math.max(collet.diameter, arborDiameterAt(arbor, at)))) / 10;

export function seatOf(arbor: Arbor, part: Part): Seat {
  if (part.kind === "pin" || part.kind === "square") return { diameter: 0, bore: null, shaft: null, says: "none", collet: null };
  const collet = MOUNTED.has(part.kind) ? arbor.parts.find((p): p is Collet => p.kind === "collet" && carriedBy(arbor, p)?.id === part.id) : undefined;
  const diameter = collet ? spigotMm(arbor, collet, part) : arborDiameterAt(arbor, part);
  const { bore, shaft, sign } = fitFor(part.join?.by, diameter);
  const by = part.join ? `, ${part.join.by}` : "";
  return { diameter, bore, shaft, says: `${written(diameter)} ${sign}${by}`, collet: collet?.id ?? null };
}

/** Of the arbor where the part is: the widest of body and pivots there. */
export function arborDiameterAt(arbor: Arbor, { z, thickness }: Part): number {
  const foot = arbor.pivots?.foot, head = arbor.pivots?.head, top = z + thickness;
  const low = arbor.foot + (foot?.length ?? 0), high = arbor.head - (head?.length ?? 0);
  return Math.max(z < high && top > low ? arbor.diameter : 0, foot && z < low ? foot.diameter : 0, head && top > high ? head.diameter : 0) || arbor.diameter;
}

/** Bore and seat by the way of joining. */
function fitFor(by: Join["by"] | undefined, diameter: number): Pick<Seat, "bore" | "shaft"> & { readonly sign: string } {
  if (by === "soft solder" || by === "silver solder") return { bore: { lower: 0.1, upper: 0.2 }, shaft: micrometres(shaftLimits("h6", diameter)), sign: "+0.20/+0.10" };
  if (by === "adhesive") return { bore: { lower: 0.02, upper: 0.06 }, shaft: micrometres(shaftLimits("h6", diameter)), sign: "+0.06/+0.02" };
  const shaft = by === "press" ? "p6" : "h6";
  return { bore: micrometres(holeLimits("H7", diameter)), shaft: micrometres(shaftLimits(shaft, diameter)), sign: `H7/${shaft}` };
}

const micrometres = (limits: { lower: number; upper: number } | null): Seat["bore"] => limits && { lower: limits.lower / 1000, upper: limits.upper / 1000 };
const overlap = (a: Part, b: Part): boolean => a.z < b.z + b.thickness && b.z < a.z + a.thickness;
const written = (mm: number): string => String(Number(mm.toFixed(3)));
