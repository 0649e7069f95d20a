// The public face of the kernel: what may be used from outside, each name with what it is for. It works in Node, in a
// worker and in a page alike.

// Numbers that stay exact.
/** Exact ratios: making, writing and leaving exactness. */
export { decimalRatio, ratio, toNumber, writeRatio, type Ratio } from "./numeric/ratio.ts";

// Finding numbers, and dividing.
/** Every train of so many engagements within an error of a wanted ratio; as a whole, or step by step with progress. */
export { findTrains, largestOf, searchTrains, teethTotal, type FoundTrain, type FoundTrains, type TrainSearch } from "./numbers/trains.ts";
/** Continued fractions, convergents and the mediant tree. */
export { continuedFraction, convergents, mediantPath, primeFactors, type MediantStep } from "./numbers/fractions.ts";
/** How a dividing head gives a count: plain, compound, differential. */
export { canDivide, divide, ORDINARY_HEAD, type Dividing, type Head } from "./numbers/dividing.ts";

// What an instrument is.
/** An instrument as its file says it, field by field. */
export type {
  Arbor, Case, Coupling, Crossings, Cutter, Display, Division, Engagement, Frame, Gearing, Input, Instrument, Join, Part, PartKind,
  Pillar, Pivot, Plate, PlateOutline, Practice, Rides, Sense, ToothedPart, ToothForm,
} from "./instrument.ts";
/** Defaults of practice and gearing, and the small questions asked of an instrument everywhere. */
export { countOf, engagementId, GEARING, gearingOf, isToothed, PRACTICE, practiceOf } from "./instrument.ts";

// Toothed parts.
/** Every toothed part with its defaults filled in, by part id. */
export { teethOf } from "./teeth/toothing.ts";
/** Radii of a toothed part and the distance at which two of them work (mm). */
export { drawnTipRadius, pitchRadius, rootRadius, tipRadiusOf, workingDistance } from "./teeth/forms.ts";
/** A clock wheel's theoretical addendum for its pinion or lantern, in modules. */
export { lanternGreatestAddendum, theoreticalAddendum } from "./teeth/addendum.ts";
export type { FormOfTooth, Teeth } from "./teeth/teeth.ts";
export type { Piece, PieceName, Profile, ProfilePoint } from "./teeth/profile.ts";

// Depth and lost motion.
/** How deep engaged pairs stand: backlash, contact ratio, clearance, at the distance as it stands and at the worst. */
export { depthOf, depthsOf, type Depth } from "./depth/depth.ts";
/** Overlap of two engaged faces, as drawn and at the worst of both shakes (mm). */
export { faceOverlapOf, type FaceOverlap } from "./depth/face.ts";
/** Lost motion at a display's pointer (degrees). */
export { lostMotionOf } from "./depth/lost-motion.ts";
