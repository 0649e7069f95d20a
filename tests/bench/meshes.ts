// Meshes: our closed meshes with normals against three.js's ExtrudeGeometry, on the same outlines at the same chord error.
import { ExtrudeGeometry, Path, Shape, Vector2 } from "three";
import { flatOf, flatOfToothed } from "../../geometry/mesh/flat.ts";
import { volumeMmCu } from "../../geometry/mesh/measures.ts";
import type { Mesh } from "../../geometry/mesh/mesh.ts";
import { prismOf } from "../../geometry/mesh/prism.ts";
import { circleOutline, reversed, type Outline } from "../../geometry/planar/outline.ts";
import { crossingOutlines } from "../../geometry/teeth/crossings.ts";
import { formOf, rootRadius } from "../../geometry/teeth/forms.ts";
import type { Teeth } from "../../geometry/teeth/teeth.ts";

export interface MeshBench {
  readonly name: string;
  /** ms for one wheel: the median of paired rounds. */
  readonly oursMs: number;
  readonly peerMs: number;
  readonly times: number;
  readonly points: number;
  readonly triangles: number;
  /** Sum of all volumes, mm³: the same on every run, and the peer's within 1e-5 of it. */
  readonly checksum: number;
}

/** Wheels of many counts and forms, each meshed by both in turn, round about. */
export function benchMeshes(rounds = 15): readonly MeshBench[] {
  return [
    bench("crossed wheels of 48 to 144 teeth, involute", [48, 60, 72, 96, 120, 144].map((n) => wheelOf(n, "involute", true)), rounds),
    bench("plain wheels of 30 to 80 teeth, cycloidal", [30, 40, 60, 80].map((n) => wheelOf(n, "cycloidal", false)), rounds),
    bench("pinions of 6 to 12 leaves, cycloidal", [6, 7, 8, 10, 12].map((n) => pinionOf(n)), rounds),
  ];
}

interface Blank { readonly outline: Outline; readonly holes: readonly Outline[]; readonly count: number }

const CHORD_MM = 0.01;

function teethOf(count: number, form: "involute" | "cycloidal", role: "wheel" | "pinion"): Teeth {
  return {
    form, role, count, module: 0.8, pressureAngleDeg: 20, shift: 0, thinning: 0.05, topping: 0, internal: false, trundleDiameter: 0,
    addendumFactor: null, mateCount: null, lanternMate: null, measuredTipRadius: null,
  };
}

function wheelOf(count: number, form: "involute" | "cycloidal", crossed: boolean): Blank {
  const teeth = teethOf(count, form, "wheel");
  const holes = [reversed(circleOutline(2, CHORD_MM))];
  if (crossed) holes.push(...crossingOutlines({ arms: 5, rim: 2.4, arm: 2.4, hub: 8 }, rootRadius(teeth), CHORD_MM));
  return { outline: formOf(teeth).outline(teeth, CHORD_MM), holes, count };
}

function pinionOf(count: number): Blank {
  const teeth = teethOf(count, "cycloidal", "pinion");
  return { outline: formOf(teeth).outline(teeth, CHORD_MM), holes: [reversed(circleOutline(0.5 * rootRadius(teeth), CHORD_MM))], count };
}

function bench(name: string, blanks: readonly Blank[], rounds: number): MeshBench {
  const shapes = blanks.map(shapeOf);
  const ours: number[] = [], peers: number[] = [];
  let checksum = 0, peerVolume = 0, triangles = 0;
  for (let round = -3; round < rounds; round++) {
    const start = performance.now();
    const meshes = blanks.map((b) => prismOf(flatOfToothed(b.outline, b.count, b.holes), 0, 2));
    const between = performance.now();
    const extruded = shapes.map((s) => new ExtrudeGeometry(s, { depth: 2, bevelEnabled: false, curveSegments: 1 }));
    const end = performance.now();
    if (round < 0) continue;
    ours.push((between - start) / blanks.length);
    peers.push((end - between) / blanks.length);
    checksum = meshes.reduce((sum, m) => sum + volumeMmCu(m), 0);
    triangles = meshes.reduce((sum, m) => sum + m.indices.length / 3, 0);
    peerVolume = extruded.reduce((sum, g) => sum + volumeOfSoup(g.getAttribute("position").array), 0);
    for (const g of extruded) g.dispose();
  }
  const whole = blanks.map((b) => prismOf(flatOf({ outside: b.outline, holes: b.holes }), 0, 2)).reduce((sum, m) => sum + volumeMmCu(m), 0);
  for (const other of [peerVolume, whole])
    if (Math.abs(other - checksum) > 1e-5 * checksum) throw new Error(`${name}: ${checksum} mm³ by one way and ${other} by another`);
  const points = blanks.reduce((sum, b) => sum + b.outline.length / 2 + b.holes.reduce((h, o) => h + o.length / 2, 0), 0);
  return { name, oursMs: median(ours), peerMs: median(peers), times: median(peers.map((p, i) => p / (ours[i] ?? 1))), points, triangles, checksum };
}

function shapeOf({ outline, holes }: Blank): Shape {
  const points = (o: Outline) => Array.from({ length: o.length / 2 }, (_, i) => new Vector2(o[2 * i], o[2 * i + 1]));
  const shape = new Shape(points(outline));
  shape.holes = holes.map((h) => new Path(points(h)));
  return shape;
}

function volumeOfSoup(p: ArrayLike<number>): number {
  const mesh: Mesh = {
    positions: Float32Array.from(p), normals: new Float32Array(p.length), indices: Uint32Array.from({ length: p.length / 3 }, (_, i) => i),
    weld: new Uint32Array(p.length / 3), corners: 0, euler: 0,
  };
  return volumeMmCu(mesh);
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
