// A tapered square on an arbor, the part on it, and the cotter through the slot that draws it home. Lengths in mm, angles in
// degrees, tapers as so much a side. Source: plane geometry; a cotter tapers 1 in 48 along one edge (common practice).
import { toRad } from "../numeric/angle.ts";

export interface CotterFigures {
  readonly across: number;
  readonly taper: number;
  readonly squareLength: number;
  /** Over flats at its narrow end. */
  readonly narrow: number;
  readonly slotWidth: number;
  readonly slotHeight: number;
  /** Cotter: as thick as the slot is wide, its edges this high at the ends. */
  readonly thick: number;
  readonly highSmall: number;
  readonly highLarge: number;
  readonly length: number;
  /** 1 in so many. */
  readonly cotterTaper: number;
  /** What is left for drawing home: the slot's height over the small end of the cotter. */
  readonly drawsUp: number;
  /** How far along the arbor the part moves for each 0.01 mm that its square is filed too wide or too narrow over flats. */
  readonly homePerHundredth: number;
  /** How far the cotter must go on to take up that. */
  readonly cotterPerHundredth: number;
  /** Turning play at the flats, degrees, where the square is loose by 0.01 mm over flats. */
  readonly playDeg: number;
}

const COTTER_TAPER = 48;
/** Of the slot's height, what the small end is less than it. */
const ENTRY = 0.25;

export function cotterFigures(across: number, taper: number, squareLength: number, slot: { readonly width: number; readonly height: number }): CotterFigures {
  const length = Math.max(2.5 * across, COTTER_TAPER * 0.02 * slot.height), rise = length / COTTER_TAPER;
  const highSmall = Math.max(0.5 * slot.height, slot.height - ENTRY * rise - rise / 2), perHundredth = homeMm(0.01, taper);
  return {
    across, taper, squareLength, narrow: Math.max(0.1 * across, across - 2 * squareLength * Math.tan(toRad(Math.min(80, Math.max(0, taper))))), slotWidth: slot.width, slotHeight: slot.height, thick: slot.width, highSmall, highLarge: highSmall + rise, length, cotterTaper: COTTER_TAPER,
    drawsUp: slot.height - highSmall, homePerHundredth: perHundredth, cotterPerHundredth: perHundredth * COTTER_TAPER, playDeg: squarePlayDeg(across, 0.01),
  };
}

/** How far a square hole that is wider by so much over flats goes up a square that tapers so much a side. */
export const homeMm = (widerMm: number, taperDeg: number): number => (taperDeg > 0 ? widerMm / (2 * Math.tan(toRad(taperDeg))) : 0);

/** How far a cotter of 1 in `taper` goes on to move what it bears on by so much. */
export const cotterTravelMm = (movedMm: number, taper: number): number => movedMm * taper;

/** Each way, a square hole can turn on a square that is narrower by `looseMm` over flats: until corners of the one meet flats of the other. */
export function squarePlayDeg(across: number, looseMm: number): number {
  const hole = across + looseMm;
  if (!(looseMm > 0)) return 0;
  // A square of half-diagonal d turned by φ reaches d cos(45° − φ) toward a flat.
  const reach = hole / (across * Math.SQRT2);
  return reach >= 1 ? 45 : 45 - (180 / Math.PI) * Math.acos(reach);
}

/** The washer that leaves the wanted endshake in a gap. */
export const washerMm = (gapMm: number, wantedMm: number): number => gapMm - wantedMm;
