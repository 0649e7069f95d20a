// Where the rest of the kernel finds the tooth forms: radii, working distance, profile and outline of any toothed part.
// A new form is one file that gives a FormOfTooth, and one line here.
import type { ToothedPart } from "../instrument.ts";
import type { Outline } from "../planar/outline.ts";
import { ANNULUS } from "./annulus.ts";
import { CYCLOIDAL } from "./cycloidal.ts";
import { INVOLUTE } from "./involute.ts";
import { LANTERN } from "./lantern.ts";
import type { Profile } from "./profile.ts";
import { STRAIGHT } from "./straight.ts";
import type { FormOfTooth, Teeth } from "./teeth.ts";

export { pitchRadius, workingDistance } from "./distance.ts";
export { trundleOutlines } from "./lantern.ts";

const FORMS: Readonly<Record<Teeth["form"], FormOfTooth>> =
  { involute: INVOLUTE, cycloidal: CYCLOIDAL, straight: STRAIGHT, lantern: LANTERN };

/** The form that a part's teeth are drawn by; an annulus is involute whatever its form says. */
export const formOf = (teeth: Teeth): FormOfTooth => (teeth.internal ? ANNULUS : FORMS[teeth.form]);

/** mm. What a part sweeps with its teeth: measured where it is measured, a lantern by its shrouds where they are given. */
export function tipRadiusOf(part: ToothedPart, teeth: Teeth): number {
  if (part.measured?.tipDiameter !== undefined) return part.measured.tipDiameter / 2;
  if (part.kind === "lantern" && part.shroudDiameter !== undefined) return part.shroudDiameter / 2;
  return drawnTipRadius(teeth);
}

/** mm, as drawn. An annulus: the hole. */
export const drawnTipRadius = (teeth: Teeth): number => formOf(teeth).tipRadius(teeth);

/** mm. The bottom of a space; an annulus: its greatest radius; a lantern: the innermost of its trundles. */
export const rootRadius = (teeth: Teeth): number => formOf(teeth).rootRadius(teeth);

/** Half a tooth, from the middle of a space to the middle of the tooth on +x, as smooth pieces. */
export const profileOf = (teeth: Teeth): Profile => formOf(teeth).profile(teeth);

/** All teeth about the origin, anticlockwise, the middle of one on +x. */
export const toothOutline = (teeth: Teeth, chordMm: number): Outline => formOf(teeth).outline(teeth, chordMm);
