// Lines of sight: what is under a point of the picture, and what stands between the eye and a place. By rays on the
// meshes as they stand in the last frame; what is thinned or cut away is looked through.
import { Raycaster, Vector2, Vector3, type Material, type Mesh } from "three";
import type { Vec } from "./eye/view.ts";
import type { Stage } from "./stage.ts";

/** Things fainter than this are looked through. */
const FAINT = 0.5;
/** A place is to be seen with so much round it. */
const ROUND_PX = 16;
const ray = new Raycaster();
const ndc = new Vector2(), to = new Vector3();

export interface Met {
  readonly id: string;
  readonly point: Vec;
  readonly distanceMm: number;
}

/** The nearest thing under a point of the picture, in pixels from its upper left. */
export function metAt(stage: Stage, x: number, y: number): Met | null {
  if (!stage.frame) return null;
  aim(stage, x, y);
  return nearestFirst([...stage.meshes.values()])[0] ?? null;
}

/** The ray through a point of the picture. */
export function rayAt(stage: Stage, x: number, y: number): { origin: Vec; direction: Vec } | null {
  if (!stage.frame) return null;
  aim(stage, x, y);
  return { origin: ray.ray.origin.toArray(), direction: ray.ray.direction.toArray() };
}

/** Names of all that hides a place, or what is close about it, from the eye (dials too); `spared` may. */
export function hiding(stage: Stage, place: Vec, spared: ReadonlySet<string>): Set<string> {
  const found = new Set<string>();
  if (!stage.frame) return found;
  const { camera, size } = stage.frame;
  to.set(...place).project(camera);
  const at = { x: (0.5 + to.x / 2) * size.width, y: (0.5 - to.y / 2) * size.height };
  const reach = to.set(...place).distanceTo(camera.position);
  const meshes = [...stage.meshes.values(), ...[...stage.rings.values()].map((ring) => ring.mesh)];
  for (let i = 0; i < 9; i++) {
    const a = (Math.PI * i) / 4, r = i === 8 ? 0 : ROUND_PX;
    aim(stage, at.x + r * Math.cos(a), at.y + r * Math.sin(a));
    for (const met of nearestFirst(meshes)) if (met.distanceMm < 0.995 * reach && !spared.has(met.id)) found.add(met.id);
  }
  return found;
}

function aim({ frame }: Stage, x: number, y: number): void {
  if (!frame) return;
  ray.setFromCamera(ndc.set((2 * x) / frame.size.width - 1, 1 - (2 * y) / frame.size.height), frame.camera);
}

function nearestFirst(meshes: Mesh[]): Met[] {
  return ray.intersectObjects(meshes, false).flatMap(({ object, point, distance }) => {
    const { material } = object as Mesh;
    return seen(material as Material, point) ? [{ id: object.name, point: point.toArray(), distanceMm: distance }] : [];
  });
}

const seen = ({ visible, opacity, clippingPlanes }: Material, point: Vector3) =>
  visible && opacity >= FAINT && (clippingPlanes ?? []).every((plane) => plane.distanceToPoint(point) >= 0);
