// Lantern pinions: round trundles between two shrouds, their axes on the pitch circle.
import { circleOutline, placed, type Outline } from "../planar/outline.ts";
import { pitchRadius, workingDistance } from "./distance.ts";
import { arcPiece } from "./profile.ts";
import type { FormOfTooth, Teeth } from "./teeth.ts";

export const LANTERN: FormOfTooth = {
  name: "lantern",
  doesNotCover: [
    "A lantern as the driver meets its wheel before the line of centres; the wheel's tooth is made for the wheel driving.",
    "Trundles are taken as fixed; rollers on pins are not.",
  ],
  tipRadius: (teeth) => pitchRadius(teeth) + teeth.trundleDiameter / 2,
  rootRadius: (teeth) => Math.max(0, pitchRadius(teeth) - teeth.trundleDiameter / 2),
  workingDistance,
  profile: (teeth) => {
    const pitch = pitchRadius(teeth), radius = teeth.trundleDiameter / 2;
    return {
      pieces: [arcPiece("flank", { x: pitch, y: 0 }, radius, -Math.PI, 0, 1)],
      joined: false, leastRadius: Math.abs(pitch - radius), greatestRadius: pitch + radius,
    };
  },
  outline: (teeth, chordMm) => circleOutline(LANTERN.tipRadius(teeth), chordMm),
};

/** The section between the shrouds: one circle for each trundle, the first on +x. */
export function trundleOutlines(teeth: Teeth, chordMm: number): readonly Outline[] {
  const first = circleOutline(teeth.trundleDiameter / 2, chordMm, pitchRadius(teeth), 0);
  return Array.from({ length: teeth.count }, (_, i) => placed(first, (2 * Math.PI * i) / teeth.count, 0, 0));
}
