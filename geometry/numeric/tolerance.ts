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
