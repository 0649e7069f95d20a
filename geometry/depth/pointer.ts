// The error at a pointer, cause by cause: what makes it read false, how much in degrees, in divisions of its own dial and
// in the time that it shows, the greatest first. All to either side of the true reading, but drift, which grows.
import type { Movement, WorkedDisplay } from "../movement.ts";
import { toDeg, toRad } from "../numeric/angle.ts";
import { type Depth, depthsOf } from "./depth.ts";
import { lostMotionOf } from "./lost-motion.ts";
import { wanderOf, type Wander } from "./wander.ts";

/** How the dial is made and read. */
export interface HowRead {
  /** Degrees aside from square on, from which it is read. */
  readonly eye: number;
  /** mm from the face of the dial to the pointer. */
  readonly gap: number;
  /** mm by which the dial's centre may stand off the arbor. */
  readonly offCentre: number;
  /** Over which the drift is counted. */
  readonly years: number;
}

/** Common practice: read from 30° aside, the pointer 2 mm over the dial, the dial pinned within a quarter of a millimetre. */
export const HOW_READ: HowRead = { eye: 30, gap: 2, offCentre: 0.25, years: 1 };

export type CauseName = "drift" | "wander" | "lost motion" | "dial off centre" | "parallax";

export interface Cause {
  readonly cause: CauseName;
  readonly degrees: number;
  readonly divisions: number;
  /** Of what the display shows; null where it does not turn. */
  readonly days: number | null;
}

export interface PointerError {
  readonly display: string;
  /** Greatest first; one without a figure (no pointer on the arbor, nothing wanted, a backlash unknown) is left out. */
  readonly causes: readonly Cause[];
  readonly wander: Wander | null;
  /** mm from the centre to the pointer's tip; null where the arbor carries none. */
  readonly radius: number | null;
}

export function pointerErrors(movement: Movement, how: HowRead = HOW_READ, depths: readonly Depth[] = depthsOf(movement)): PointerError[] {
  return movement.displays.map((display, i) => {
    const wander = wanderOf(movement, i, depths), radius = tipRadius(movement, display);
    const degrees: Record<CauseName, number | null> = {
      "drift": display.degreesPerYear === null ? null : Math.abs(display.degreesPerYear) * how.years,
      "wander": wander?.most ?? null,
      "lost motion": lostMotionOf(movement, i, depths),
      "dial off centre": radius === null ? null : toDeg(Math.asin(Math.min(1, Math.abs(how.offCentre) / radius))),
      "parallax": radius === null ? null : toDeg(Math.atan(Math.abs(how.gap) * Math.tan(toRad(Math.min(MOST_ASIDE_DEG, Math.abs(how.eye)))) / radius)),
    };
    const causes = (Object.keys(degrees) as CauseName[]).flatMap((cause) => {
      const value = degrees[cause];
      return value === null ? [] : [causeOf(cause, value, display)];
    });
    return { display: display.id, causes: causes.sort((a, b) => b.degrees - a.degrees), wander, radius };
  });
}

/** Farther aside no dial can be read. */
const MOST_ASIDE_DEG = 85;

const causeOf = (cause: CauseName, degrees: number, { divisions, days }: WorkedDisplay): Cause =>
  ({ cause, degrees, divisions: (degrees * divisions) / 360, days: days === null ? null : (degrees * days) / 360 });

/** The longest pointer on the display's arbor. */
function tipRadius(movement: Movement, { arbor }: WorkedDisplay): number | null {
  const lengths = movement.arbors[arbor].arbor.parts.flatMap((p) => (p.kind === "pointer" ? [p.length] : []));
  return lengths.length > 0 ? Math.max(...lengths) : null;
}
