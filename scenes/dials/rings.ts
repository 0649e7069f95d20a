// Which chapter rings a movement shows: every ring of its dials, lying just under the lowest of the pointers read on them.
// Drawn only: the examiner knows nothing of them. Lengths in mm.
import { facesBy, type Face, type FaceRing, type Laws, type Movement, pointerOf, type PointerPart } from "../../geometry/index.ts";

export interface Ring extends Pick<FaceRing, "carrier" | "insideMm" | "outsideMm" | "marks" | "letters"> {
  readonly id: string;
  /** Id of the display that it is read by, or null: it is for the eye only. */
  readonly display: string | null;
  /** Index of the arbor of that display, or null. */
  readonly arbor: number | null;
  readonly x: number;
  readonly y: number;
  /** Lower face. */
  readonly z: number;
  readonly thickness: number;
  /** Openings of the dial that lie in it: their middle and breadth in parts of a turn, clockwise from the top. */
  readonly windows: readonly Window[];
}
export interface Window { readonly turn: number; readonly breadth: number; readonly fromMm: number; readonly toMm: number }

const SAME_AXIS_MM = 0.01;
const THICKNESS_MM = 0.8;
const UNDER_POINTER_MM = 0.5;
/** Each a little over the one before, so that no two share a face. */
const APART_MM = 0.03;

export const NO_LAWS: Laws = () => [];

/** Whether a ring's marks follow a law, which must be fetched. */
export const followsLaw = ({ instrument }: Movement): boolean => instrument.dials?.some((d) => d.rings.some((r) => r.marks === undefined && r.follows !== undefined)) ?? false;

export function ringsOf(movement: Movement, laws: Laws = NO_LAWS): Ring[] {
  const rings: Ring[] = [], said = movement.instrument.dials !== undefined;
  for (const face of facesBy(movement, laws)) {
    const shown = face.rings.filter((ring) => stands(movement, ring) && (said || pointerFor(movement, ring) !== null));
    const height = heightOf(movement, face, shown);
    if (height === null) continue;
    shown.forEach(({ display, carrier, insideMm, outsideMm, marks, letters }, k) => {
      const read = display === null ? null : movement.displays[display] ?? null;
      rings.push({
        id: `${face.id} ring ${k + 1}`, display: read?.id ?? null, arbor: read?.arbor ?? null, carrier, insideMm, outsideMm, marks, letters,
        x: face.x, y: face.y, z: height + APART_MM * rings.length, thickness: THICKNESS_MM,
        windows: carrier === null ? windowsIn(face, insideMm, outsideMm) : [],
      });
    });
  }
  return rings;
}

/** As far as they lie in the ring. */
function windowsIn({ apertures }: Face, insideMm: number, outsideMm: number): Window[] {
  return apertures.flatMap(({ radius, angle, width, height }) => {
    const fromMm = Math.max(insideMm, radius - height / 2), toMm = Math.min(outsideMm, radius + height / 2), turn = (90 - angle) / 360;
    return toMm > fromMm ? [{ turn: turn - Math.floor(turn), breadth: width / 360, fromMm, toMm }] : [];
  });
}

/** A ring read by an arbor that is carried about has no place in the frame. */
const stands = (movement: Movement, { display }: FaceRing): boolean => display === null || movement.arbors[movement.displays[display]?.arbor ?? -1]?.carrier === null;

const pointerFor = (movement: Movement, { display }: FaceRing): PointerPart | null => (display === null ? null : pointerOf(movement, display));

/** Under the lowest pointer of its axis and of its rings; where there is none, on the highest plate; null: there is neither. */
function heightOf(movement: Movement, face: Face, rings: readonly FaceRing[]): number | null {
  if (rings.length === 0) return null;
  const onAxis = movement.displays.flatMap(({ arbor }, i) => (isAt(movement.arbors[arbor], face) ? pointerOf(movement, i) ?? [] : []));
  const pointers = [...onAxis, ...rings.flatMap((ring) => pointerFor(movement, ring) ?? [])], { plates } = movement.instrument.frame;
  if (pointers.length === 0) return plates.length === 0 ? null : Math.max(...plates.map((p) => p.z + p.thickness));
  const under = Math.min(...pointers.map((p) => p.z)) - UNDER_POINTER_MM - THICKNESS_MM;
  return Math.max(under, plateUnder(movement, under + THICKNESS_MM));
}

const isAt = (arbor: Movement["arbors"][number] | undefined, { x, y }: Face): boolean =>
  arbor !== undefined && arbor.carrier === null && Math.hypot(arbor.x - x, arbor.y - y) < SAME_AXIS_MM;

/** Top of the highest plate that would reach into a ring whose upper face is at z: the ring then lies on it. */
function plateUnder(movement: Movement, z: number): number {
  return Math.max(-Infinity, ...movement.instrument.frame.plates
    .filter((p) => p.z < z && p.z + p.thickness < z + UNDER_POINTER_MM + 0.01).map((p) => p.z + p.thickness));
}
