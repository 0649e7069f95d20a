// Every figure that a wheel, pinion or lantern is made from, as its sheet gives them. Lengths in mm, angles in degrees.
import { countOf, isToothed, type Crossings, type ToothedPart } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { toothPhases } from "../motion/tooth-phases.ts";
import { toNumber } from "../numeric/ratio.ts";
import { toRad } from "../numeric/angle.ts";
import { signedAreaMmSq } from "../planar/outline.ts";
import { crossingOutlines, openingRadii } from "../teeth/crossings.ts";
import { drawnTipRadius, pitchRadius, rootRadius, toothOutline } from "../teeth/forms.ts";
import type { Teeth } from "../teeth/teeth.ts";
import type { Window } from "../depth/window.ts";
import { type Card, cardOf } from "./card.ts";
import { cutterFor, type Wanted } from "./cutters.ts";
import { massG, materialOf } from "./metal.ts";
import { type Seat, seatOf } from "./seats.ts";
import { overPins, type Pins, type Span, spanOf } from "./span.ts";

export interface WheelFigures {
  readonly id: string;
  readonly name: string | null;
  readonly kind: ToothedPart["kind"];
  readonly arbor: string;
  readonly teeth: Teeth;
  readonly count: number;
  readonly pitchDiameter: number;
  /** Turned to this before cutting; an annulus: bored to it. Limits are mm from it. */
  readonly blankDiameter: number;
  readonly blankLimits: { readonly lower: number; readonly upper: number };
  readonly rootDiameter: number;
  readonly depthOfCut: number;
  /** Annulus and lantern: outside of the ring, of the shrouds. */
  readonly outsideDiameter: number | null;
  readonly thickness: number;
  readonly seat: Seat;
  readonly crossings: CrossingFigures | null;
  readonly span: Span | null;
  readonly pins: Pins | null;
  readonly cutter: Wanted;
  readonly mates: readonly Mate[];
  /** Half the total indicated, and departure of the face at the rim. */
  readonly runoutRound: number;
  readonly runoutFlat: number;
  readonly material: string;
  readonly massG: number | null;
  readonly sense: "as the crank" | "against the crank" | "does not turn" | "not driven";
  readonly card: Card;
  /** Wheels that are cut alike, this one left out. */
  readonly alike: readonly string[];
}

export interface CrossingFigures extends Crossings {
  /** Radii for marking out: edges of the openings and their corners. */
  readonly outer: number;
  readonly inner: number;
  readonly corner: number;
  /** A hole in the middle of each opening to thread the saw through. */
  readonly sawRadius: number;
  readonly sawDiameter: number;
  /** Teeth from one arm to the next. */
  readonly teethApart: number;
  /** Degrees, anticlockwise, from a tooth to the middle of the first arm, less than from one tooth to the next. 0: the arm stands on the tooth. */
  readonly pastTooth: number;
}

export interface Mate {
  readonly id: string;
  readonly count: number;
  readonly arbor: string;
  readonly distance: number;
  readonly computed: number | null;
  /** How far from the distance it may stand and meet the practice; null where no distance does. */
  readonly lower: number | null;
  readonly upper: number | null;
}

/** Of a saw-entry hole, where the opening has room for it (common practice). */
const SAW_HOLE_MM = 1.5;
const CHORD_MM = 0.01;

/** `windows`: of every engagement of the movement, in its order. */
export function wheelFigures(movement: Movement, partId: string, windows: readonly Window[]): WheelFigures | null {
  const place = movement.partIndex.get(partId), teeth = movement.teeth.get(partId);
  if (place === undefined || teeth === undefined) return null;
  const worked = movement.arbors[place.arbor], part = worked.arbor.parts[place.part];
  if (!isToothed(part)) return null;
  const { practice, instrument } = movement, seat = seatOf(worked.arbor, part), material = materialOf(part);
  const tip = drawnTipRadius(teeth), root = rootRadius(teeth), crossings = crossingsOf(movement, part, root);
  return {
    id: partId, name: part.name ?? null, kind: part.kind, arbor: worked.id, teeth, count: countOf(part),
    pitchDiameter: 2 * pitchRadius(teeth), blankDiameter: 2 * tip, blankLimits: blankLimits(teeth), rootDiameter: 2 * root, depthOfCut: Math.abs(tip - root),
    outsideDiameter: outsideOf(part), thickness: part.thickness, seat, crossings,
    span: spanOf(teeth), pins: overPins(teeth), cutter: cutterFor(teeth, instrument.cutters ?? []), mates: matesOf(movement, partId, windows),
    runoutRound: practice.runout, runoutFlat: practice.wobble, material,
    massG: massG(areaMmSq(part, teeth, seat.diameter, crossings, root) * part.thickness, material),
    sense: senseOf(movement, place.arbor), card: cardOf(countOf(part), instrument.division), alike: alikeOf(movement, part, teeth),
  };
}

/** A blank may come out small by 0.08 modules, at least 0.02; an annulus large (common practice). */
function blankLimits({ module, internal }: Teeth): WheelFigures["blankLimits"] {
  const away = Math.max(0.02, Math.round(8 * module) / 100);
  return internal ? { lower: 0, upper: away } : { lower: -away, upper: 0 };
}

function outsideOf(part: ToothedPart): number | null {
  if (part.kind === "lantern") return part.shroudDiameter ?? null;
  return part.internal === true ? part.outsideDiameter ?? null : null;
}

function crossingsOf(movement: Movement, part: ToothedPart, root: number): CrossingFigures | null {
  const crossings = part.kind === "wheel" ? part.crossings : undefined;
  const radii = crossings && openingRadii(crossings, root);
  if (!crossings || !radii) return null;
  const sawRadius = (radii.outer + radii.inner) / 2;
  // Within the opening at its middle: between its edges, and between the two arms.
  const room = Math.min(radii.outer - radii.inner, 2 * sawRadius * Math.sin(Math.PI / crossings.arms) - crossings.arm);
  const sawDiameter = Math.min(SAW_HOLE_MM, Math.floor(5 * room) / 10);
  return { ...crossings, ...radii, sawRadius, sawDiameter: Math.max(0, sawDiameter), teethApart: countOf(part) / crossings.arms, pastTooth: pastToothOf(movement, part, crossings) };
}

/** Where the file says how the arms stand, what is left beside how its teeth do; else the arm stands on a tooth. */
function pastToothOf(movement: Movement, part: ToothedPart, { angle }: Crossings): number {
  if (angle === undefined) return 0;
  const pitch = 360 / countOf(part), past = angle - ((toothPhases(movement).get(part.id) ?? 0) * 180) / Math.PI;
  return past - Math.floor(past / pitch + 1e-9) * pitch;
}

function matesOf(movement: Movement, partId: string, windows: readonly Window[]): Mate[] {
  return movement.engagements.flatMap((e, i) => {
    if (e.driver.id !== partId && e.driven.id !== partId) return [];
    const drives = e.driver.id === partId, mate = drives ? e.driven : e.driver;
    const { nearestWanted, farthestWanted } = windows[i];
    return [{
      id: mate.id, count: countOf(mate), arbor: movement.arbors[drives ? e.drivenArbor : e.driverArbor].id, distance: e.distance, computed: e.computed,
      lower: nearestWanted === null ? null : nearestWanted - e.distance, upper: farthestWanted === null ? null : farthestWanted - e.distance,
    }];
  });
}

/** Of the metal seen from above, with bore and crossings out. A lantern: of its trundles and, for a third of its height, its shrouds. */
function areaMmSq(part: ToothedPart, teeth: Teeth, boreMm: number, crossings: CrossingFigures | null, root: number): number {
  const round = (diameter: number) => (Math.PI * diameter ** 2) / 4;
  if (part.kind === "lantern") {
    const shroud = round(part.shroudDiameter ?? 2 * drawnTipRadius(teeth)) - round(boreMm);
    return 0.3 * shroud + 0.7 * teeth.count * round(teeth.trundleDiameter);
  }
  const outline = Math.abs(signedAreaMmSq(toothOutline(teeth, CHORD_MM)));
  if (teeth.internal) return Math.max(0, round(part.outsideDiameter ?? 2 * root) - outline);
  const openings = crossings ? crossingOutlines(crossings, root, CHORD_MM).reduce((sum, o) => sum + Math.abs(signedAreaMmSq(o)), 0) : 0;
  return Math.max(0, outline - round(boreMm) - openings);
}

function senseOf(movement: Movement, arbor: number): WheelFigures["sense"] {
  const { rate } = movement.arbors[arbor];
  if (rate === null) return "not driven";
  const turns = toNumber(rate);
  return turns === 0 ? "does not turn" : turns > 0 ? "as the crank" : "against the crank";
}

/** Blanks of one size, count and thickness can be cut in one setting. */
function alikeOf(movement: Movement, part: ToothedPart, teeth: Teeth): string[] {
  return movement.arbors.flatMap((a) => a.arbor.parts).filter(isToothed).filter((other) => {
    const theirs = movement.teeth.get(other.id);
    return other.id !== part.id && theirs !== undefined && other.kind === part.kind && other.thickness === part.thickness
      && JSON.stringify(theirs) === JSON.stringify(teeth);
  }).map((other) => other.id);
}

/** Height of a slip under a 100 mm sine bar that tilts work by so many degrees. */
export const sineBarMm = (angleDeg: number): number => 100 * Math.sin(toRad(angleDeg));
