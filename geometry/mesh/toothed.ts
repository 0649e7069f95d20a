// Wheels, pinions, annuli and lanterns about their own axis, one tooth (or trundle) on +x. Lengths in mm.
import { countOf, type Lantern, type Pinion, type Wheel } from "../instrument.ts";
import { circleOutline, placed, reversed, signedAreaMmSq, type Outline } from "../planar/outline.ts";
import { crossingOutlines } from "../teeth/crossings.ts";
import { formOf, rootRadius } from "../teeth/forms.ts";
import type { Teeth } from "../teeth/teeth.ts";
import { boreOutline } from "./holes.ts";
import { flatOf, flatOfToothed } from "./flat.ts";
import { roundOf } from "./lathe.ts";
import { joined, type Mesh } from "./mesh.ts";
import { prism, prismOf } from "./prism.ts";

/** A wheel, pinion or annulus with its bore and crossings; `armsRad`: how far the first arm stands past the tooth on +x. */
export function toothedMesh(part: Wheel | Pinion, teeth: Teeth, boreMm: number, armsRad: number, chordMm: number): Mesh {
  const outline = formOf(teeth).outline(teeth, chordMm);
  const top = part.z + part.thickness;
  if (teeth.internal) {
    const outside = circleOutline(annulusRadius(part, teeth), chordMm);
    return prismOf(flatOf({ outside, holes: [reversed(outline)] }), part.z, top);
  }
  const crossed = part.kind === "wheel" ? part.crossings : undefined;
  // An opening so small that chords cannot show it is left out.
  const crossings = crossed === undefined ? []
    : crossingOutlines(crossed, rootRadius(teeth), chordMm).filter((o) => -signedAreaMmSq(o) > chordMm * chordMm)
      .map((o) => (armsRad === 0 ? o : placed(o, armsRad, 0, 0)));
  const bore = crossed !== undefined && crossings.length > 0 && boreMm > crossed.hub / 2 - 2 * chordMm ? []
    : boreOutline(outline, boreMm, chordMm);
  return prismOf(flatOfToothed(outline, countOf(part), [...bore, ...crossings]), part.z, top);
}

/** Half the outside diameter; never so little that no rim would be left outside the roots. */
const annulusRadius = (part: Wheel | Pinion, teeth: Teeth): number =>
  Math.max((part.outsideDiameter ?? 0) / 2, rootRadius(teeth) + LEAST_RIM_MODULES * teeth.module);

/** Modules of metal drawn outside the roots of an annulus whose outside diameter is absent or would cut into them. */
const LEAST_RIM_MODULES = 0.25;

/** Two shrouds, and the trundles from one to the other. */
export function lanternMesh(part: Lantern, teeth: Teeth, boreMm: number, chordMm: number): Mesh {
  const pitchMm = (teeth.module * teeth.count) / 2, trundleMm = teeth.trundleDiameter / 2;
  const shroudMm = part.shroudDiameter === undefined ? pitchMm + trundleMm : part.shroudDiameter / 2;
  const shroudThickness = Math.min(SHROUD_SHARE * part.thickness, teeth.module);
  const low = part.z + shroudThickness, high = part.z + part.thickness - shroudThickness;
  const trundle = (i: number): Outline => {
    const a = (2 * Math.PI * i) / teeth.count;
    return circleOutline(trundleMm, chordMm, pitchMm * Math.cos(a), pitchMm * Math.sin(a));
  };
  return joined([
    roundOf(shroudMm, boreMm, part.z, low, chordMm),
    ...Array.from({ length: teeth.count }, (_, i) => prism({ outside: trundle(i), holes: [] }, low, high)),
    roundOf(shroudMm, boreMm, high, part.z + part.thickness, chordMm),
  ]);
}

/** Of a lantern's thickness, each shroud; but no more than a module. */
const SHROUD_SHARE = 0.15;
