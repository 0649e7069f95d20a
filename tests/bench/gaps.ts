// Every pair nearer than wanted at 60 arbors: ours, from the instrument to all findings, against three-mesh-bvh on the
// drawn meshes of the same instrument (meshes and trees built, pairs whose boxes are near, closest points). Every pair
// that the meshes find too near must be among ours.
import { Box3, BufferAttribute, BufferGeometry, Matrix4 } from "three";
import { MeshBVH } from "three-mesh-bvh";
import { gapsOf, isExempt, sceneOf, type Scene } from "../../geometry/clearance/gaps.ts";
import { examine } from "../../geometry/examine/sheet.ts";
import { meshOf } from "../../geometry/mesh/things.ts";
import { workOut } from "../../geometry/workout.ts";
import type { Instrument } from "../../geometry/instrument.ts";
import { generated } from "../fixtures/generated.ts";
import { figure, medianMs, table } from "./measure.ts";

const ARBORS = 60;

export function benchGaps(): string {
  const instrument = generated(ARBORS);
  const ours = medianMs(20, () => examine(workOut(instrument)));
  const start = performance.now();
  const near = nearByMeshes(instrument);
  const peer = performance.now() - start;
  const scene = sceneOf(workOut(instrument));
  const found = new Set(gapsOf(scene).pairs.map((p) => [p.a.id, p.b.id].sort().join(" ")));
  const missed = near.filter((pair) => !found.has(pair));
  if (missed.length > 0) throw new Error(`the meshes find pairs too near that are not among ours: ${missed.join(", ")}`);
  return table(`Gaps of ${ARBORS} arbors, ${scene.things.length} things`, [
    ["ours ms", "three-mesh-bvh ms", "times", "pairs of the meshes", "missed", "pairs of ours (swept, at the worst)"],
    [figure(ours), figure(peer), `${figure(peer / ours)} ×`, `${near.length}`, `${missed.length}`, `${found.size}`],
  ]);
}

interface Drawn { readonly geometry: BufferGeometry; readonly tree: MeshBVH; readonly place: Matrix4; readonly box: Box3 }

/** Pairs whose drawn metal is nearer than both ways want, which no shake could excuse. */
function nearByMeshes(instrument: Instrument): string[] {
  const movement = workOut(instrument), scene = sceneOf(movement);
  const wantedMm = Math.min(movement.practice.planGap, movement.practice.faceGap);
  const drawn = scene.things.map((_, i) => drawnOf(scene, i));
  const near: string[] = [];
  for (let i = 0; i < drawn.length; i++)
    for (let j = i + 1; j < drawn.length; j++) {
      const a = drawn[i], b = drawn[j], ta = scene.things[i], tb = scene.things[j];
      if (a === undefined || b === undefined || ta === undefined || tb === undefined) continue;
      if (ta.body === tb.body || isExempt(scene, i, j) || !a.box.clone().expandByScalar(wantedMm).intersectsBox(b.box)) continue;
      if (distanceMm(a, b, wantedMm) < wantedMm) near.push([ta.id, tb.id].sort().join(" "));
    }
  return near;
}

function distanceMm(a: Drawn, b: Drawn, wantedMm: number): number {
  const toA = a.place.clone().invert().multiply(b.place);
  if (a.tree.intersectsGeometry(b.geometry, toA)) return 0;
  return a.tree.closestPointToGeometry(b.geometry, toA, undefined, undefined, 0, wantedMm)?.distance ?? Infinity;
}

function drawnOf({ movement, things }: Scene, i: number): Drawn {
  const thing = things[i];
  const mesh = thing && meshOf(movement, thing.id);
  if (!thing || !mesh) throw new Error(`there is no mesh of ${thing?.id}`);
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(mesh.positions, 3));
  geometry.setIndex(new BufferAttribute(mesh.indices, 1));
  const tree = new MeshBVH(geometry);
  geometry.boundsTree = tree;
  const inFrame = thing.kind === "plate" || thing.kind === "case";
  const place = inFrame ? new Matrix4() : new Matrix4().makeTranslation(thing.axis.atRest.x, thing.axis.atRest.y, 0);
  geometry.computeBoundingBox();
  return { geometry, tree, place, box: (geometry.boundingBox ?? new Box3()).clone().applyMatrix4(place) };
}
