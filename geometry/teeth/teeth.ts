// Toothed parts with every default filled in, and the one interface that every tooth form gives. A form knows nothing
// of where a wheel stands. Lengths in mm, angles in degrees unless a name says Rad.
import type { Outline } from "../planar/outline.ts";

export interface Teeth {
  readonly form: "involute" | "cycloidal" | "straight" | "lantern";
  /** A pinion's leaves are shaped otherwise than a wheel's teeth in clock gearing. */
  readonly role: "wheel" | "pinion";
  readonly count: number;
  readonly module: number;
  readonly pressureAngleDeg: number;
  /** Modules. */
  readonly shift: number;
  readonly thinning: number;
  readonly topping: number;
  readonly internal: boolean;
  /** mm; lanterns only, else 0. */
  readonly trundleDiameter: number;
  /** Clock wheels: the theoretical addendum factor f for the engaged pinion (the greatest, if several); lanterns' wheels and wheels that engage none: null. */
  readonly addendumFactor: number | null;
  /** A clock wheel that engages a lantern: its trundle diameter and count (the tooth is made for it), else null. */
  readonly lanternMate: { readonly trundleDiameter: number; readonly count: number } | null;
}

export interface FormOfTooth {
  readonly name: Teeth["form"];
  /** One plain sentence each: what this form does not cover. */
  readonly doesNotCover: readonly string[];
  /** mm, drawn (a measured tip diameter is applied by `tipRadiusOf`). Annulus: the hole. */
  tipRadius(teeth: Teeth): number;
  /** mm. */
  rootRadius(teeth: Teeth): number;
  /** mm; module × count / 2. */
  pitchRadius(teeth: Teeth): number;
  /** mm between centres at which two of them work, without ease; null where there is none (said in words by the caller). */
  workingDistance(driver: Teeth, driven: Teeth): number | null;
  /** The closed outline of all teeth about the origin, anticlockwise, the middle of one tooth on +x; chords within chordMm of the curve. */
  outline(teeth: Teeth, chordMm: number): Outline;
}
