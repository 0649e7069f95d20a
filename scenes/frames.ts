// One frame of the movement: the eye, the lifting, every arbor in its place, the light, the marks. Runs in the frame
// loop and touches no React state. Angles in radians, lengths in mm.
import { Euler, Matrix4, Vector3, type DirectionalLight, type PerspectiveCamera, type Scene } from "three";
import { poseInto, POSE_STRIDE, type Motion, type Movement } from "../geometry/index.ts";
import { eyeOf, FIELD_RAD, type View } from "./eye/view.ts";
import type { Lifts } from "./solids/lift.ts";
import type { Stage } from "./stage.ts";

const LIFT_MS = 300;
/** From where the sun shines: upper left, from behind what is looked at. */
const SUN = new Vector3(-0.42, 0.3, 1).normalize();

/** From the dial side and the edge the light comes from over the dial; leaning on to the back it comes round. */
const LEAN_FROM = (85 * Math.PI) / 180, LEAN_OVER = (50 * Math.PI) / 180;

/** How the room stands: it goes round with the eye, as if the movement were turned in the hand under one light. */
export function roomTurn(view: Pick<View, "azimuthRad" | "tiltRad">, out: Euler): Euler {
  const share = Math.min(1, Math.max(0, (view.tiltRad - LEAN_FROM) / LEAN_OVER));
  return out.set(Math.PI * share * share * (3 - 2 * share), 0, view.azimuthRad, "ZXY");
}

export function placeCamera(camera: PerspectiveCamera, view: View, aspect: number): void {
  const [x, y, z] = eyeOf(view);
  camera.position.set(x, y, z);
  // Rz(azimuth)·Rx(tilt): square on to the dial at 0, so no direction is singular.
  camera.rotation.set(view.tiltRad, 0, view.azimuthRad, "ZXY");
  camera.fov = (FIELD_RAD * 180) / Math.PI;
  camera.aspect = aspect;
  camera.near = Math.max(0.5, 0.02 * view.distanceMm);
  camera.far = 12 * view.distanceMm + 4000;
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}

/** An easing share that follows what it is set to. */
export function createEasing(first: number, durationMs: number) {
  let from = first, to = first, startMs: number | null = null;
  return {
    /** Where it is at this moment, and whether it is still on its way. */
    at(wanted: number, nowMs: number, still: boolean): { share: number; going: boolean } {
      if (still) [from, to, startMs] = [wanted, wanted, null];
      const now = current(nowMs);
      if (wanted !== to) [from, to, startMs] = [now, wanted, nowMs];
      const share = current(nowMs);
      return { share, going: share !== to };
    },
  };
  function current(nowMs: number): number {
    const t = startMs === null ? 1 : Math.min(1, (nowMs - startMs) / durationMs);
    return t >= 1 ? to : from + (to - from) * t * t * (3 - 2 * t);
  }
}

/** What moves, worked out when the movement changes. */
export interface Posed {
  readonly movement: Movement;
  readonly motion: Motion;
  readonly lifts: Lifts;
}

export function createFrames(stage: Stage) {
  const lifting = createEasing(stage.props.lift, LIFT_MS);
  let poses = new Float64Array(0), raised = new Float64Array(0), drawn = "", heldParts: readonly string[] = [];
  const turn = new Euler(), matrix = new Matrix4();

  /** True while another frame is wanted. */
  return function frame(nowMs: number, { movement, motion, lifts }: Posed, scene: Scene, camera: PerspectiveCamera, sun: DirectionalLight | null): boolean {
    const { props, eye, size } = stage;
    const gliding = eye.step(nowMs);
    const view = eye.view();
    placeCamera(camera, view, size.width / Math.max(1, size.height));
    const { share: lifted, going } = lifting.at(props.lift, nowMs, props.stillMotion);
    const count = movement.arbors.length;
    if (raised.length !== count) [poses, raised] = [new Float64Array(POSE_STRIDE * count), new Float64Array(count)];
    poseInto(poses, motion, props.turns.get());
    for (let i = 0; i < count; i++) {
      raised[i] = lifted * (lifts.arbors[i] ?? 0) + heldBy(stage, movement.arbors[i]?.id);
      const group = stage.groups[i];
      group?.position.set(poses[POSE_STRIDE * i], poses[POSE_STRIDE * i + 1], raised[i]);
      group?.rotation.set(0, 0, poses[POSE_STRIDE * i + 2]);
    }
    heldParts = holdParts(stage, movement, heldParts);
    for (const [id, up] of lifts.plates) {
      const mesh = stage.meshes.get(id);
      if (mesh) mesh.position.z = lifted * up + heldBy(stage, id);
    }
    const over = lifted * Math.max(0, ...lifts.plates.values());
    for (const { mesh, carrier } of stage.rings.values()) {
      mesh.position.z = over;
      if (carrier === null) continue;
      mesh.position.set(poses[POSE_STRIDE * carrier], poses[POSE_STRIDE * carrier + 1], over);
      mesh.rotation.set(0, 0, poses[POSE_STRIDE * carrier + 2]);
    }
    scene.environmentRotation.copy(roomTurn(view, turn));
    if (sun) shine(sun, matrix.makeRotationFromEuler(turn), stage);
    stage.frame = { camera, size, poses, raised, held: heldBy(stage, props.held?.id) };
    stage.drawMarks?.(stage.frame);
    const now = `${eye.changes()} ${lifted}`;
    if (now !== drawn) stage.seen();
    drawn = now;
    return gliding || going;
  };
}

/** mm that a thing is held over its place in this frame. */
function heldBy({ props: { held } }: Stage, id: string | undefined): number {
  if (!held || id === undefined || (held.id !== id && !held.with?.includes(id))) return 0;
  return held.by * (held.height?.get() ?? 1);
}

/** Parts held over their places apart from their arbors; what was held and is not any more stands on its arbor again. */
function holdParts(stage: Stage, { partIndex }: Movement, before: readonly string[]): readonly string[] {
  const { held } = stage.props;
  const parts = held ? [held.id, ...held.with ?? []].filter((id) => partIndex.has(id)) : [];
  for (const id of new Set([...before, ...parts])) {
    const mesh = stage.meshes.get(id);
    if (mesh) mesh.position.z = heldBy(stage, id);
  }
  return parts;
}

function shine(sun: DirectionalLight, turned: Matrix4, { bound }: Stage): void {
  const reach = Math.hypot(bound.radiusMm, (bound.highMm - bound.lowMm) / 2) * 1.05;
  sun.target.position.set(bound.x, bound.y, (bound.lowMm + bound.highMm) / 2);
  sun.target.updateMatrixWorld();
  sun.position.copy(SUN).applyMatrix4(turned).multiplyScalar(3 * reach).add(sun.target.position);
  const box = sun.shadow.camera;
  if (box.right !== reach) {
    Object.assign(box, { left: -reach, right: reach, top: reach, bottom: -reach, near: reach, far: 5 * reach });
    box.updateProjectionMatrix();
  }
}
