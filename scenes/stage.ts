// What the frame loop of one movement view shares: mutable, never React state. The scene hangs its groups here, the marks
// their drawing; hands and frames read the props last rendered.
import type { Group, Mesh, PerspectiveCamera } from "three";
import { createEye, type Eye } from "./eye/eye.ts";
import { standingView, type Bound, type Vec } from "./eye/view.ts";
import type { MovementViewProps, Standing } from "./props.ts";

export interface Size { readonly width: number; readonly height: number }

/** Where everything stands in this frame, for what is drawn over the picture; a new object each frame. */
export interface Frame {
  readonly camera: PerspectiveCamera;
  readonly size: Size;
  /** x, y (mm), turned (rad) for each arbor, stride `POSE_STRIDE`; owned by the frame loop. */
  readonly poses: Float64Array;
  /** mm along z, for each arbor. */
  readonly raised: Float64Array;
  /** mm along z by which what hangs over its place hangs there now. */
  readonly held: number;
}

export interface Stage {
  props: MovementViewProps;
  readonly eye: Eye;
  /** The view it was sent to and has not been turned from. */
  standing: Standing | null;
  /** The place it was sent to see instead, until it is turned from it. */
  place: { readonly at: Vec; readonly way: "plan" | "height" | undefined } | null;
  bound: Bound;
  size: Size;
  /** By index of the arbor. */
  readonly groups: (Group | null)[];
  /** By id of the thing. */
  readonly meshes: Map<string, Mesh>;
  /** Chapter rings by display, and the index of the arbor that carries each round (null: the frame). */
  readonly rings: Map<string, { readonly mesh: Mesh; readonly carrier: number | null }>;
  frame: Frame | null;
  /** Draws letters and the finding's mark over the picture. */
  drawMarks: ((frame: Frame) => void) | null;
  /** Asks for one more frame. */
  redraw: () => void;
  /** The view or the lifting changed in this frame. */
  seen: () => void;
  /** Called when the view has come to rest. */
  rested: (() => void) | null;
}

export function createStage(props: MovementViewProps): Stage {
  const bound = { x: 0, y: 0, radiusMm: 20, lowMm: 0, highMm: 20 };
  return {
    props,
    eye: createEye(standingView("quarter", bound, 1)),
    standing: "quarter",
    place: null,
    bound,
    size: { width: 1, height: 1 },
    groups: [], meshes: new Map(), rings: new Map(),
    frame: null, drawMarks: null, redraw: () => {}, seen: () => {}, rested: null,
  };
}
