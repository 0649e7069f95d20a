// Every figure that an arbor, post or pipe is turned from, and what sits on it. Heights along it are from its foot end, in
// mm; `footZ` says where that stands over the inner face of the back plate. Angles in degrees.
import { isToothed, type Arbor, type Collet, type Part, type Square } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { toRad } from "../numeric/angle.ts";
import { drawnTipRadius } from "../teeth/forms.ts";
import { washerMm } from "./cotter.ts";
import { bandFrom, type Step, stepsOf } from "./turned.ts";
import { massG } from "./metal.ts";
import { arborDiameterAt, carriedBy, PROUD_MM, type Seat, seatOf, spigotMm } from "./seats.ts";

export interface ArborFigures {
  readonly id: string;
  readonly name: string | null;
  readonly what: "arbor" | "post" | "stud" | "pipe";
  readonly diameter: number;
  readonly length: number;
  readonly footZ: number;
  /** 0: solid. */
  readonly bore: number;
  readonly ridesOn: string | null;
  readonly steps: readonly Step[];
  readonly pivots: readonly PivotFigures[];
  readonly seats: readonly SeatFigures[];
  readonly collets: readonly ColletFigures[];
  readonly squares: readonly SquareFigures[];
  readonly pins: readonly { readonly id: string; readonly radius: number; readonly angle: number; readonly diameter: number; readonly length: number; readonly from: number; readonly material: string }[];
  readonly shake: EndshakeFigures;
  readonly material: string;
  readonly massG: number | null;
  readonly stock: { readonly diameter: number; readonly length: number };
}

export interface PivotFigures {
  readonly end: "foot" | "head";
  readonly plate: string;
  readonly diameter: number;
  readonly length: number;
  readonly hole: number;
  /** Of its shoulder, from the foot end. */
  readonly shoulder: number;
  /** The faces of its plate, from the foot end; null where the file has no such plate. */
  readonly plateFrom: number | null;
  readonly plateTo: number | null;
  /** Between shoulder and plate as drawn; below 0 where they stand in one another. */
  readonly gap: number | null;
}

export interface EndshakeFigures {
  readonly up: number;
  readonly down: number;
  /** Both ways together. */
  readonly gap: number;
  readonly wanted: number;
  /** Thickness of the washer under a shoulder that leaves the wanted endshake; below 0: so much is to be turned off a shoulder. */
  readonly washer: number;
  /** What the washer is turned to: over the thinner pivot, no wider than the arbor. */
  readonly washerBore: number;
}

export interface SeatFigures {
  readonly id: string;
  readonly kind: Part["kind"];
  readonly from: number;
  readonly to: number;
  /** Half of what it sweeps, for drawing. */
  readonly radius: number;
  readonly seat: Seat;
}

export interface ColletFigures {
  readonly id: string;
  readonly diameter: number;
  readonly length: number;
  readonly bore: string;
  readonly carries: string | null;
  /** Left at full diameter on the side that the wheel comes against, and the spigot through it, its rivet included; 0 where it carries nothing. */
  readonly shoulder: number;
  readonly spigotDiameter: number;
  readonly spigotLength: number;
  readonly material: string;
}

export interface SquareFigures {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** Over flats, at its wide inner end and at its narrow outer one. */
  readonly wide: number;
  readonly narrow: number;
  readonly taper: number;
  /** Filed off each side of the round, inner and outer. */
  readonly filedWide: number;
  readonly filedNarrow: number;
  readonly slot: { readonly width: number; readonly height: number } | null;
  /** Degrees from +x to the middle of a flat, input at 0; null: any. */
  readonly angle: number | null;
}

export function arborFigures(movement: Movement, index: number): ArborFigures {
  const worked = movement.arbors[index], { arbor } = worked;
  const ridden = arbor.rides && movement.arbors[movement.arborIndex.get(arbor.rides.on) ?? -1]?.arbor;
  const bore = arbor.bore ?? (arbor.rides?.radius === 0 && ridden ? ridden.diameter + movement.practice.pipeShake : 0);
  const what = bore > 0 ? "pipe" : arbor.rides ? "stud" : arbor.fixed ? "post" : "arbor";
  const steps = stepsOf(arbor), material = what === "pipe" ? "brass" : "steel";
  const squares = arbor.parts.filter((p) => p.kind === "square");
  return {
    id: arbor.id, name: arbor.name ?? null, what, diameter: arbor.diameter, length: arbor.head - arbor.foot, footZ: arbor.foot, bore, ridesOn: arbor.rides?.on ?? null,
    steps, pivots: pivotsOf(movement, arbor, worked.ownSideshake), seats: arbor.parts.filter((p) => p.kind !== "square" && p.kind !== "pin").map((p) => seatFigures(movement, arbor, p)),
    collets: arbor.parts.filter((p) => p.kind === "collet").map((c) => colletFigures(arbor, c)), squares: squares.map((s) => squareFigures(arbor, s)),
    pins: arbor.parts.filter((p) => p.kind === "pin").map((p) => ({
      id: p.id, radius: p.radius, angle: p.angle, diameter: p.diameter, length: p.thickness, from: p.z - arbor.foot, material: p.material ?? "steel",
    })),
    shake: endshakeOf(movement, arbor, worked.ownShake), material, massG: massG(volumeMmCu(steps, bore), material), stock: stockFor(steps, arbor, what === "pipe"),
  };
}

function pivotsOf(movement: Movement, arbor: Arbor, sideshake: number): PivotFigures[] {
  const length = arbor.head - arbor.foot;
  return (["foot", "head"] as const).flatMap((end): PivotFigures[] => {
    const pivot = arbor.pivots?.[end], plate = movement.instrument.frame.plates.find((p) => p.id === pivot?.plate);
    if (!pivot) return [];
    const shoulder = end === "foot" ? pivot.length : length - pivot.length, from = plate ? plate.z - arbor.foot : null, to = plate ? plate.z + plate.thickness - arbor.foot : null;
    const gap = from === null || to === null ? null : end === "foot" ? shoulder - to : from - shoulder;
    return [{ end, plate: pivot.plate, diameter: pivot.diameter, length: pivot.length, hole: pivot.diameter + sideshake, shoulder, plateFrom: from, plateTo: to, gap }];
  });
}

/** mm: a washer goes easily over its pivot (common practice). */
const WASHER_EASE_MM = 0.1;

function endshakeOf(movement: Movement, arbor: Arbor, { up, down }: { readonly up: number; readonly down: number }): EndshakeFigures {
  const gap = up + down, wanted = arbor.endshake ?? movement.practice.endshake, pivots = [arbor.pivots?.foot, arbor.pivots?.head].filter((p) => p !== undefined);
  const over = pivots.length > 0 ? Math.min(...pivots.map((p) => p.diameter)) : arbor.diameter;
  return { up, down, gap, wanted, washer: washerMm(gap, wanted), washerBore: over + WASHER_EASE_MM };
}

function seatFigures(movement: Movement, arbor: Arbor, part: Part): SeatFigures {
  return { id: part.id, kind: part.kind, ...bandFrom(arbor.foot, part), radius: radiusOf(movement, part), seat: seatOf(arbor, part) };
}

function radiusOf(movement: Movement, part: Part): number {
  const teeth = movement.teeth.get(part.id);
  if (isToothed(part) && teeth) return part.kind === "lantern" ? (part.shroudDiameter ?? 2 * drawnTipRadius(teeth)) / 2 : part.internal ? (part.outsideDiameter ?? 2 * drawnTipRadius(teeth)) / 2 : drawnTipRadius(teeth);
  if (part.kind === "pointer" || part.kind === "arm") return part.width / 2;
  return "diameter" in part ? part.diameter / 2 : 0;
}

/** The shoulder lies on the side where the collet reaches farther out from the middle of what it carries. */
function colletFigures(arbor: Arbor, collet: Collet): ColletFigures {
  const carried = carriedBy(arbor, collet), common = { id: collet.id, diameter: collet.diameter, length: collet.thickness, bore: seatOf(arbor, collet).says, material: collet.material ?? "brass" };
  if (carried === null) return { ...common, carries: null, shoulder: 0, spigotDiameter: 0, spigotLength: 0 };
  const below = carried.z - collet.z, above = collet.z + collet.thickness - carried.z - carried.thickness;
  return { ...common, carries: carried.id, shoulder: Math.max(0, below, above), spigotDiameter: spigotMm(arbor, collet, carried), spigotLength: carried.thickness + PROUD_MM };
}

function squareFigures(arbor: Arbor, square: Square): SquareFigures {
  const narrow = Math.max(0.1 * square.across, square.across - 2 * square.thickness * Math.tan(toRad(Math.min(80, Math.max(0, square.taper)))));
  const round = arborDiameterAt(arbor, square);
  return {
    id: square.id, ...bandFrom(arbor.foot, square), wide: square.across, narrow, taper: square.taper,
    filedWide: Math.max(0, (round - square.across) / 2), filedNarrow: Math.max(0, (round - narrow) / 2), slot: square.slot ?? null, angle: square.angle ?? null,
  };
}

function volumeMmCu(steps: readonly Step[], bore: number): number {
  return steps.reduce((sum, s) => sum + (Math.PI / 4) * (s.diameter ** 2 - bore ** 2) * (s.to - s.from), 0);
}

/** Bar of ground steel comes in these diameters; a pipe is turned from brass bar a millimetre over (common practice). */
const BARS = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 25, 30, 35, 40, 45, 50, 60, 70, 80, 100];
/** mm: to face both ends and hold it by (common practice). */
const ENDS_MM = 6;

function stockFor(steps: readonly Step[], arbor: Arbor, pipe: boolean): ArborFigures["stock"] {
  const widest = steps.reduce((most, s) => Math.max(most, s.diameter), 0);
  return { diameter: barFor(pipe ? widest + 1 : widest), length: Math.ceil(arbor.head - arbor.foot + ENDS_MM) };
}

/** The next bar that is thick enough. */
export const barFor = (diameter: number): number => BARS.find((bar) => bar >= diameter - 1e-9) ?? Math.ceil(diameter);
