// The types of an instrument: plain, readonly data with nothing computed in it. Lengths in millimetres, angles in
// degrees, time in mean solar days. Right-handed axes; z = 0 is the inner face of the back plate and +z points to the
// dial side; angles run from +x, anticlockwise seen from the dial side. Field by field this is the instrument file.

export type ToothForm = "involute" | "cycloidal" | "straight";
export type Sense = "clockwise" | "anticlockwise";

export interface Instrument {
  readonly endshake: 1;
  readonly name: string;
  readonly notes?: string;
  readonly practice?: Partial<Practice>;
  readonly gearing?: Partial<Gearing>;
  readonly frame: Frame;
  readonly arbors: readonly Arbor[];
  readonly engagements: readonly Engagement[];
  readonly couplings?: readonly Coupling[];
  readonly input: Input;
  readonly displays?: readonly Display[];
  readonly dials?: readonly Dial[];
  readonly cutters?: readonly Cutter[];
  readonly division?: Division;
  readonly dayBook?: readonly DayBookEntry[];
}

/** What was done to it and when; in the file only where the maker wishes. Nothing of it is examined. */
export interface DayBookEntry {
  /** Date and time, as 2026-01-13T12:00:00.000Z. */
  readonly at: string;
  readonly says: string;
}

/** The maker's own allowances. Millimetres unless a field says otherwise. */
export interface Practice {
  /** Least clear air in plan, after run-out and sideshake. */
  readonly planGap: number;
  /** Least clear air in height, after endshake and wobble. */
  readonly faceGap: number;
  /** Freedom of an arbor along its length, where its pivots do not settle it. */
  readonly endshake: number;
  /** Pivot hole diameter less pivot diameter. */
  readonly sideshake: number;
  /** Distance from the centre of a toothed part to the axis it turns on. */
  readonly runout: number;
  /** Greatest departure of a face from true at its own rim, to either side. */
  readonly wobble: number;
  /** Least and most wanted backlash along the pitch circle, in modules. */
  readonly backlash: readonly [number, number];
  /** Least wanted from tip to root at the deepest, in modules. */
  readonly tipClearance: number;
  /** Least overlap of two engaged faces at the worst of both shakes, in modules. */
  readonly faceOverlap: number;
  /** Bore of a pipe less the diameter it rides on. */
  readonly pipeShake: number;
  /** Least metal between a pivot hole and the edge of its plate. */
  readonly edge: number;
  /** Most lost motion at a pointer, in divisions of its own dial. */
  readonly lostMotion: number;
}

export interface Gearing {
  readonly form: ToothForm;
  /** Millimetres. */
  readonly module: number;
  /** Degrees. */
  readonly pressureAngle: number;
  /** Modules; involute and straight teeth only. */
  readonly thinning: number;
}

export interface Frame {
  readonly plates: readonly Plate[];
  readonly pillars: readonly Pillar[];
  readonly case?: Case;
}

export type PlateOutline =
  | { readonly circle: { readonly diameter: number; readonly x?: number; readonly y?: number } }
  | { readonly rectangle: { readonly width: number; readonly height: number; readonly x?: number; readonly y?: number } }
  | { readonly polygon: readonly (readonly [number, number])[] };

export interface Plate {
  readonly id: string;
  readonly name?: string;
  /** Height of the lower face. */
  readonly z: number;
  readonly thickness: number;
  readonly outline: PlateOutline;
  readonly openings?: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
}

export interface Pillar {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  readonly from: number;
  readonly to: number;
}

/** A round bowl or drum about the z axis; `floor` is the z of its inside bottom, which is as thick as `wall`. */
export interface Case {
  readonly insideDiameter: number;
  readonly floor: number;
  readonly rim: number;
  readonly wall: number;
}

export interface Pivot {
  readonly diameter: number;
  readonly length: number;
  /** Id of the plate it runs in. */
  readonly plate: string;
}

/** Turns on another arbor. `radius` 0: a pipe round it. Above 0: a stud carried round by it at `angle` (input at 0). */
export interface Rides {
  readonly on: string;
  readonly radius: number;
  readonly angle: number;
}

export interface Arbor {
  readonly id: string;
  readonly name?: string;
  /** Both absent: not planted yet. */
  readonly x?: number;
  readonly y?: number;
  readonly steady?: boolean;
  readonly fixed?: boolean;
  readonly diameter: number;
  /** Extreme ends in z, pivots included. */
  readonly foot: number;
  readonly head: number;
  readonly pivots?: { readonly foot?: Pivot; readonly head?: Pivot };
  readonly endshake?: number;
  readonly sideshake?: number;
  readonly rides?: Rides;
  readonly bore?: number;
  readonly parts: readonly Part[];
  readonly measured?: { readonly x: number; readonly y: number };
}

export interface Join {
  readonly by: "soft solder" | "silver solder" | "adhesive" | "rivet" | "press" | "screw" | "pin" | "square";
  readonly order?: number;
  /** Degrees Celsius. */
  readonly solidus?: number;
  readonly liquidus?: number;
}

interface PartBase {
  readonly id: string;
  /** Height of the lower face. */
  readonly z: number;
  readonly thickness: number;
  readonly name?: string;
  readonly join?: Join;
  readonly material?: string;
  /** The part in the hand: every check uses these in place of the drawn or usual figures. */
  readonly measured?: {
    readonly tipDiameter?: number;
    readonly thickness?: number;
    readonly runout?: number;
    readonly wobble?: number;
  };
}

interface Toothing {
  readonly module?: number;
  readonly form?: ToothForm;
  readonly pressureAngle?: number;
  /** Profile shift in modules; positive moves teeth outward from their own axis, on an annulus too. */
  readonly shift?: number;
  /** Modules: how much thinner the teeth are than half the pitch. */
  readonly thinning?: number;
  /** Modules: how much the tip is cut short. */
  readonly topping?: number;
  /** Modules, involute only: depth of the spaces below the pitch circle, 1.25 where absent; fine-pitch practice cuts 1.4. */
  readonly dedendum?: number;
  readonly internal?: boolean;
  readonly outsideDiameter?: number;
}

export interface Crossings {
  readonly arms: number;
  readonly rim: number;
  readonly arm: number;
  readonly hub: number;
  /** Degrees: where the middle of the first arm stands with the input at 0. Absent: not told, and the wheel is taken as solid. */
  readonly angle?: number;
}

export interface Wheel extends PartBase, Toothing {
  readonly kind: "wheel";
  readonly teeth: number;
  readonly crossings?: Crossings;
}
export interface Pinion extends PartBase, Toothing {
  readonly kind: "pinion";
  readonly leaves: number;
}
export interface Lantern extends PartBase {
  readonly kind: "lantern";
  readonly trundles: number;
  readonly trundleDiameter: number;
  readonly module?: number;
  readonly shroudDiameter?: number;
}
export interface Collet extends PartBase {
  readonly kind: "collet";
  readonly diameter: number;
}
export interface Pointer extends PartBase {
  readonly kind: "pointer";
  readonly length: number;
  readonly tail: number;
  readonly width: number;
  readonly angle: number;
}
export interface Disc extends PartBase {
  readonly kind: "disc";
  readonly diameter: number;
  readonly windows?: readonly { readonly radius: number; readonly angle: number; readonly diameter: number }[];
}
export interface Pin extends PartBase {
  readonly kind: "pin";
  readonly radius: number;
  readonly angle: number;
  readonly diameter: number;
}
export interface Slot extends PartBase {
  readonly kind: "slot";
  readonly diameter: number;
  readonly radius: number;
  readonly angle: number;
  readonly length: number;
  readonly width: number;
}
export interface Arm extends PartBase {
  readonly kind: "arm";
  readonly length: number;
  readonly width: number;
  readonly angle: number;
}
export interface Ratchet extends PartBase {
  readonly kind: "ratchet";
  readonly teeth: number;
  readonly diameter: number;
  readonly depth: number;
}
export interface Square extends PartBase {
  readonly kind: "square";
  readonly across: number;
  /** Degrees on each side. */
  readonly taper: number;
  readonly slot?: { readonly width: number; readonly height: number };
  /** Degrees: where the middle of a flat stands with the input at 0. Absent: not told, and the square is taken as round over its corners. */
  readonly angle?: number;
}

export type Part =
  | Wheel | Pinion | Lantern | Collet | Pointer | Disc | Pin | Slot | Arm | Ratchet | Square;
export type PartKind = Part["kind"];
/** The parts that can be engaged with one another. */
export type ToothedPart = Wheel | Pinion | Lantern;

export interface Engagement {
  readonly id?: string;
  readonly driver: string;
  readonly driven: string;
  /** Millimetres added to the computed centre distance. */
  readonly ease?: number;
}

export type Coupling =
  | { readonly kind: "pin and slot"; readonly driver: string; readonly driven: string }
  /** `pawl`: an arm on the arbor `on` that swings about it into the ratchet's teeth. */
  | { readonly kind: "click"; readonly ratchet: string; readonly on: string; readonly passes: Sense; readonly pawl?: string }
  | { readonly kind: "friction"; readonly between: readonly [string, string] };

/** One turn of `arbor` stands for `days` days. */
export interface Input {
  readonly arbor: string;
  readonly days: number;
  readonly sense: Sense;
}

export interface Display {
  readonly id: string;
  readonly name: string;
  readonly arbor: string;
  /** Wanted period of one turn as read on its dial. */
  readonly days?: number;
  readonly sense?: Sense;
  /** Marks in one turn; 360 where absent. */
  readonly divisions?: number;
  /** The arbor that carries the dial, where the dial turns too. */
  readonly against?: string;
  readonly shows?: string;
  /** The date at input 0. */
  readonly epoch?: string;
}

/** What the pointers are read against. Nothing of it is examined: it is drawn, printed and read. */
export interface Dial {
  readonly id: string;
  readonly name?: string;
  /** Its centre; where both are absent, that of the first arbor its rings are read by. */
  readonly x?: number;
  readonly y?: number;
  /** From the inside out, as a rule. */
  readonly rings: readonly DialRing[];
  readonly apertures?: readonly Aperture[];
}

export interface DialRing {
  /** Id of the display that it is read by; absent: it is for the eye only. */
  readonly display?: string;
  readonly name?: string;
  /** mm. */
  readonly insideDiameter: number;
  readonly outsideDiameter: number;
  /** Id of the arbor that carries it round; absent: as the display's `against`, else it stands. */
  readonly carrier?: string;
  /** Marks in one turn; absent: the display's. */
  readonly divisions?: number;
  /** Shorter marks between two divisions: so many parts. */
  readonly parts?: number;
  /** A numeral at every so many divisions; absent: so that at most 24 stand. */
  readonly every?: number;
  readonly numerals?: "arabic" | "roman" | "none";
  /** In place of numerals, evenly round from the 0 mark on. */
  readonly labels?: readonly string[];
  /** Where its 0 stands, degrees from +x; 90, the top, where absent. */
  readonly zero?: number;
  /** Which way it is numbered; absent: the display's `sense`, else clockwise. */
  readonly sense?: Sense;
  /** Marks that do not stand evenly, in place of divisions: degrees from the 0 mark the way it is numbered. */
  readonly marks?: readonly { readonly at: number; readonly label?: string }[];
  /** Marks that follow a law, in place of divisions. */
  readonly follows?: "calendar" | "calendar by the Sun" | "equation of time" | "height of the tide";
}

/** An opening in the dial through which a ring under it is seen: a window of an annulus. */
export interface Aperture {
  /** mm to its middle. */
  readonly radius: number;
  /** Degrees from +x, of its middle. */
  readonly angle: number;
  /** Degrees from side to side, and mm along the radius. */
  readonly width: number;
  readonly height: number;
}

export interface Cutter {
  readonly form: string;
  readonly module: number;
  readonly pressureAngle?: number;
  readonly from?: number;
  readonly to?: number;
}

export interface Division {
  readonly ratio: number;
  readonly circles: readonly number[] | readonly (readonly number[])[];
  readonly gears?: readonly number[];
}

export const PRACTICE: Practice = {
  planGap: 1, faceGap: 0.5, endshake: 0.15, sideshake: 0.03, runout: 0.015, wobble: 0.05,
  backlash: [0.05, 0.2], tipClearance: 0.1, faceOverlap: 1, pipeShake: 0.04, edge: 2, lostMotion: 0.5,
};

export const GEARING: Gearing = { form: "involute", module: 1, pressureAngle: 20, thinning: 0.05 };

/** The instrument's practice with every default filled in. */
export const practiceOf = (instrument: Instrument): Practice => ({ ...PRACTICE, ...instrument.practice });

/** The instrument's gearing with every default filled in. */
export const gearingOf = (instrument: Instrument): Gearing => ({ ...GEARING, ...instrument.gearing });

/** An engagement's own id, or `driver-driven`. */
export const engagementId = (e: Engagement): string => e.id ?? `${e.driver}-${e.driven}`;

/** Whether a part has teeth or trundles and so can be engaged. */
export const isToothed = (part: Part): part is ToothedPart =>
  part.kind === "wheel" || part.kind === "pinion" || part.kind === "lantern";

/** Teeth, leaves or trundles. */
export const countOf = (part: ToothedPart): number =>
  part.kind === "wheel" ? part.teeth : part.kind === "pinion" ? part.leaves : part.trundles;
