// A round case made two ways: fabricated from a disc and a hoop, or turned from a casting. Every figure of both, side by
// side. Lengths in mm, masses in g. Source: bend and contraction as in allowances.ts; gaps for solder 0.05 to 0.15 a side,
// draft 1.5°, 2 mm to machine and 3 mm of floor at least (common practice).
import type { Case } from "../instrument.ts";
import { toRad } from "../numeric/angle.ts";
import { type CastMetal, CONTRACTION, neutral, patternMm } from "./allowances.ts";
import { massG } from "./metal.ts";

export interface HousingFigures {
  readonly insideDiameter: number;
  readonly outsideDiameter: number;
  readonly depth: number;
  readonly wall: number;
  readonly floor: number;
  readonly fabricated: Fabricated;
  readonly cast: Cast;
  /** The plate that closes it sits on the rim: outside of the case, with a step that enters by `entry`. */
  readonly plate: { readonly diameter: number; readonly step: number; readonly entry: number };
}

export interface Fabricated {
  /** Of the hoop, along its neutral line and with what the joint takes. */
  readonly neutralDiameter: number;
  readonly stripNet: number;
  readonly joint: number;
  readonly stripLength: number;
  readonly stripWidth: number;
  /** Left on the strip's width and the disc's diameter, to be trimmed when all is soldered. */
  readonly trim: number;
  readonly discDiameter: number;
  readonly discThickness: number;
  readonly solderGap: number;
  /** The disc drops into the hoop: its finished diameter, with the gap for solder each side. */
  readonly discFitted: number;
  readonly massG: number;
  readonly stockMassG: number;
}

export interface Cast {
  readonly metal: CastMetal;
  readonly contraction: number;
  readonly draft: number;
  readonly machining: number;
  /** Of the rough casting. */
  readonly castOutside: number;
  readonly castInside: number;
  readonly castDepth: number;
  readonly castFloor: number;
  /** Of the pattern: with contraction, and the mouth opened by the draft. */
  readonly patternOutside: number;
  readonly patternMouth: number;
  readonly patternInside: number;
  readonly patternDepth: number;
  readonly boss: { readonly diameter: number; readonly length: number };
  readonly spigot: { readonly diameter: number; readonly length: number };
  readonly finishedMassG: number;
  readonly castMassG: number;
  /** With runners, risers and what stays in the crucible. */
  readonly toMeltG: number;
}

const TRIM = 1, SOLDER_GAP = 0.1, MACHINING = 2, DRAFT_DEG = 1.5, LEAST_FLOOR = 3, TO_MELT = 1.6, STEP = 1;

export function housingFigures({ insideDiameter, floor, rim, wall }: Case): HousingFigures {
  const outsideDiameter = insideDiameter + 2 * wall, depth = rim - floor;
  return {
    insideDiameter, outsideDiameter, depth, wall, floor: wall, fabricated: fabricated(insideDiameter, depth, wall), cast: cast(insideDiameter, depth, wall),
    plate: { diameter: outsideDiameter, step: insideDiameter - 0.1, entry: STEP },
  };
}

function fabricated(inside: number, depth: number, wall: number): Fabricated {
  const neutralDiameter = inside + 2 * neutral(inside / 2, wall) * wall, stripNet = Math.PI * neutralDiameter;
  // A butt joint takes its own gap; filing the ends square takes a wall's thickness.
  const joint = wall - SOLDER_GAP, height = depth + wall, discFitted = inside - 2 * SOLDER_GAP;
  const metal = Math.PI * (inside + wall) * wall * height + (Math.PI / 4) * inside ** 2 * wall;
  const stock = (stripNet + joint) * (height + 2 * TRIM) * wall + (inside + 2 * TRIM) ** 2 * wall;
  return {
    neutralDiameter, stripNet, joint, stripLength: stripNet + joint, stripWidth: height + 2 * TRIM, trim: TRIM, discDiameter: inside + 2 * TRIM, discThickness: wall,
    solderGap: SOLDER_GAP, discFitted, massG: massG(metal, "brass") ?? 0, stockMassG: massG(stock, "brass") ?? 0,
  };
}

function cast(inside: number, depth: number, wall: number): Cast {
  const metal: CastMetal = "brass", castFloor = Math.max(LEAST_FLOOR, wall) + 2 * MACHINING, castOutside = inside + 2 * wall + 2 * MACHINING;
  const castInside = Math.max(0, inside - 2 * MACHINING), castDepth = depth + wall + 2 * MACHINING, open = 2 * castDepth * Math.tan(toRad(DRAFT_DEG));
  const boss = { diameter: Math.max(20, Math.round(castOutside / 4)), length: 20 }, spigot = { diameter: Math.max(30, Math.round(castOutside / 3)), length: 2 };
  const round = (diameter: number) => (Math.PI / 4) * diameter ** 2;
  const castVolume = round(castOutside) * castDepth - round(castInside) * (castDepth - castFloor) + round(boss.diameter) * boss.length + round(spigot.diameter) * spigot.length;
  const finished = round(inside + 2 * wall) * (depth + wall) - round(inside) * depth, castMassG = massG(castVolume, "brass") ?? 0;
  return {
    metal, contraction: CONTRACTION[metal], draft: DRAFT_DEG, machining: MACHINING, castOutside, castInside, castDepth, castFloor,
    patternOutside: patternMm(castOutside, metal), patternMouth: patternMm(castOutside, metal) + open, patternInside: patternMm(castInside, metal), patternDepth: patternMm(castDepth, metal),
    boss, spigot, finishedMassG: massG(finished, "brass") ?? 0, castMassG, toMeltG: castMassG * TO_MELT,
  };
}
