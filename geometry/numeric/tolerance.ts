// The named tolerances of the kernel: each with its unit and its reason. No other file writes a bare small number.

/** mm. Two axes nearer than this are one axis ("in line"): far under any drill, far over rounding. */
export const SAME_AXIS_MM = 1e-6;
/** mm. Centre distances that differ by more are a finding: the resolution of a good milling machine's scale. */
export const DISTANCE_MM = 0.005;
/** mm. Heights nearer than this touch, so a shoulder drawn on a face is not a shared height. */
export const TOUCH_MM = 1e-9;
/** mm. Largest distance between a drawn chord and the true curve, unless a caller asks for another. */
export const CHORD_MM = 0.01;
/** mm. How near the followed outlines of two things are brought to their true least gap. */
export const GAP_MM = 0.001;
/** mm. Chords of a round edge that is followed: half of what a gap is true to. */
export const FOLLOWED_CHORD_MM = 0.0005;
/** Of a wheel's radius. An outline repeats from tooth to tooth when it does so to rounding. */
export const REPEAT_RATIO = 1e-9;
/** mm. Figures nearer than this to a limit stand at it: far under any measurement, far over the rounding of sums of lengths. */
export const AT_LIMIT_MM = 1e-9;
/** mm. Boxes of the broad phase are grown by this much more than they need, so that rounding never hides a pair. */
export const BROAD_SLACK_MM = 1e-6;
/** Degrees. A drift nearer than this to a division stands at it: far under any reading, far over rounding. */
export const AT_LIMIT_DEG = 1e-9;
/** mm. Steps along a motion are never finer, so that following always ends: a hundredth of what a gap is true to. */
export const FOLLOW_MM = 1e-5;
/** turns. An interval of phases is widened by this, so that rounding never hides a meeting: 1e-9 of a turn is 1e-6 mm at 150 mm. */
export const PHASE_PAD_TURNS = 1e-9;
/** mm. A piece of a tooth's profile shorter than this is left out: far under any tooth, far over rounding. */
export const SLIVER_MM = 1e-9;
/** mm. No outline is asked for finer than this, so that the number of its points stays bounded. */
export const FINEST_CHORD_MM = 1e-6;
/** Pitches. Teeth that miss the middle of a space by less come out even: rounding, far under any backlash. */
export const PHASE_PITCHES = 1e-9;
/** mm². A triangle of less is none: its height is lost in single precision. */
export const FLAT_MM_SQ = 1e-9;
/** mm. An arbor that is tried by hand rests on a computed distance when it comes so near: the feel of a stop, far under a tooth. */
export const SNAP_MM = 0.15;
/** mm. A drag has arrived when its next step would be shorter: far under any drawing, far over rounding. */
export const ARRIVED_MM = 1e-5;
/** Modules along the driven's pitch circle. Teeth nearer than this to touching share the drive: far under what brass yields by, far over rounding. */
export const BEARING_MODULES = 1e-9;
/** Modules between two flanks that are drawn as touching: what places between the phases looked at may be out by. */
export const DRAWN_APART_MODULES = 0.006;
/** Modules along the driven's pitch circle. Teeth that chords between a flank's nodes put farther back than this cannot bear: some six times the rise of such a chord. */
export const CHOOSING_MODULES = 0.02;
/** Radians. Flanks that lean against one another by less are tangent; the rate there is then right to about as much. */
export const TANGENT_RAD = 1e-11;
/** Radians. The same where only the lead is asked, which then falls short of the greatest by far less than rounding in mm. */
export const LEAD_TANGENT_RAD = 1e-7;
/** Of a radius. A point so near a circle lies on it: some hundred roundings, and a hundred times finer than any figure needs. */
export const ON_CIRCLE_RATIO = 2e-14;
/** mm. How near the limits of a pair's distance are brought: far finer than a hole can be drilled. */
export const WINDOW_MM = 1e-7;
/** mm. Points of an outline nearer than this are drawn as one: single precision tells no more apart at a plate's width. */
export const JOINED_MM = 1e-5;
/** mm. How far beside a boundary it is asked what lies there, and the shortest piece of one: far under a drawing's line, far over rounding. */
export const BESIDE_MM = 1e-6;
/** Of a quotient of products of counts. Floats propose within so much more than is asked; far over the rounding of one product and one quotient. */
export const QUOTIENT_RATIO = 1e-12;
/** mm. A pillar that ends so near a plate's face carries it: no drawing leaves more between them by rounding. */
export const SEATED_MM = 0.5;
/** Days. How near the time is brought at which a pointer is first a division out: a minute and a half. */
export const FIRST_OUT_DAYS = 1e-3;
/** Divisions of a dial. A mark nearer than this to a whole number of them is one: rounding, far under any line. */
export const WHOLE_DIVISIONS = 1e-9;
