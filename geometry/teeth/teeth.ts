// Toothed parts with every default filled in, and the one interface that every tooth form gives. A form knows nothing
// of where a wheel stands. Lengths in mm, angles in degrees unless a name says Rad.
import type { Outline } from "../planar/outline.ts";
import type { Profile } from "./profile.ts";

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
  /** Modules; involute teeth only. Absent: 1.25, the rack of ISO 53. */
  readonly dedendum?: number;
  readonly internal: boolean;
  /** mm; lanterns only, else 0. */
  readonly trundleDiameter: number;
  /** Clock wheels: the theoretical addendum factor f for the engaged pinion (the greatest, if several); lanterns' wheels
   *  and wheels that engage none: null. Clock pinions: the greatest f of the wheels they engage, or null. */
  readonly addendumFactor: number | null;
  /** Clock wheels: leaves of the engaged pinion that `addendumFactor` belongs to. Clock pinions: teeth of the smallest
   *  wheel engaged. Else null. */
  readonly mateCount: number | null;
  /** A clock wheel that engages lanterns and no pinion: the lantern its tooth is made for (the one of most trundles), else null. */
  readonly lanternMate: { readonly trundleDiameter: number; readonly count: number } | null;
  /** mm; the tip as measured on the part in the hand, else null. Outlines end there, or where the flanks meet before. */
  readonly measuredTipRadius: number | null;
}

export interface FormOfTooth {
  readonly name: Teeth["form"];
  /** One plain sentence each: what this form does not cover. */
  readonly doesNotCover: readonly string[];
  /** mm, drawn (a measured tip diameter is applied by `tipRadiusOf`). Annulus: the hole. */
  tipRadius(teeth: Teeth): number;
  /** mm; never under 0. */
  rootRadius(teeth: Teeth): number;
  /** mm between centres at which a part of this form works with a mate, without ease; null where there is no such distance. */
  workingDistance(driver: Teeth, driven: Teeth): number | null;
  /** Half a tooth as smooth pieces, from the middle of a space to the middle of the tooth: what outlines are sampled from. */
  profile(teeth: Teeth): Profile;
  /** The closed outline of all teeth about the origin, anticlockwise, the middle of one tooth on +x; chords within
   *  chordMm of the curve. A lantern: the circle its trundles lie in, as its shrouds show it (its trundles: `trundleOutlines`). */
  outline(teeth: Teeth, chordMm: number): Outline;
}
