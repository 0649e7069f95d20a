// The whole movement as binary glTF 2.0 (Khronos glTF 2.0 specification, chapters 3 and 4): a node for every arbor with
// its parts under it, by name, standing as with the input at 0, and an animation that turns the input. glTF counts in
// metres with y upward: one node at the root turns mm with z upward into that.
import { meshOf, type Metal, meshTextOf, type Mesh, motionOf, type Movement, poseInto, POSE_STRIDE, thingsOf, type Thing, toothPhases } from "../../../geometry/index.ts";
import { steady } from "./file.ts";
import { boundsOf } from "./three-mf.ts";

/** Seconds for one turn of the input. */
const TURN_S = 12;
/** Between two keys no arbor turns by more (so that the shorter way round is the way it went), and the most keys there are. */
const KEY_RAD = 1.2, MOST_KEYS = 3000, LEAST_KEYS = 60;

const METALS: Readonly<Record<Metal, readonly [number, number, number]>> = { "brass": [0.73, 0.53, 0.2], "steel": [0.52, 0.53, 0.55], "blued steel": [0.04, 0.07, 0.24] };
const FLOAT = 5126, UINT = 5125, ARRAY = 34962, ELEMENTS = 34963;

type Json = Record<string, unknown>;
interface Out { readonly chunks: Uint8Array[]; size: number; readonly bufferViews: Json[]; readonly accessors: Json[] }

export function movementGlb(movement: Movement, words: readonly string[]): Uint8Array {
  const out: Out = { chunks: [], size: 0, bufferViews: [], accessors: [] };
  const nodes: Json[] = [{ name: movement.instrument.name, scale: [0.001, 0.001, 0.001], rotation: [-Math.SQRT1_2, 0, 0, Math.SQRT1_2], children: [] }];
  const meshes: Json[] = [], meshAt = new Map<string, number>(), phases = toothPhases(movement), things = thingsOf(movement);
  const arborNode = movement.arbors.map((a) => nodes.push({ name: `arbor ${a.id}`, children: [] }) - 1);
  const under = (parent: number, child: number): void => { (nodes[parent]!.children as number[]).push(child); };
  for (const node of arborNode) under(0, node);
  for (const thing of things) {
    const mesh = meshOf(movement, thing.id);
    if (!mesh) continue;
    const text = `${meshTextOf(movement, thing.id)} ${thing.metal}`;
    if (!meshAt.has(text)) meshAt.set(text, meshes.push(meshJson(out, mesh, thing)) - 1);
    const node: Json = { name: `${thing.kind} ${thing.id}`, mesh: meshAt.get(text), ...(thing.material === null ? {} : { extras: { material: thing.material } }) };
    const phase = phases.get(thing.id) ?? 0;
    if (phase !== 0) node.rotation = aboutZ(phase);
    if (thing.arbor === null && (thing.x !== 0 || thing.y !== 0)) node.translation = [steady(thing.x), steady(thing.y), 0];
    under(thing.arbor === null ? 0 : arborNode[thing.arbor]!, nodes.push(node) - 1);
  }
  const animations = turning(out, movement, nodes, arborNode);
  const json = {
    asset: { version: "2.0", generator: "Endshake", ...(words.length > 0 ? { extras: { says: words.join(" ") } } : {}) },
    scene: 0, scenes: [{ name: movement.instrument.name, nodes: [0] }], nodes, meshes,
    materials: Object.entries(METALS).map(([name, [r, g, b]]) => ({ name, pbrMetallicRoughness: { baseColorFactor: [r, g, b, 1], metallicFactor: 1, roughnessFactor: 0.4 } })),
    ...(animations.length > 0 ? { animations } : {}),
    accessors: out.accessors, bufferViews: out.bufferViews, buffers: [{ byteLength: out.size }],
  };
  for (const node of nodes) if ((node.children as number[] | undefined)?.length === 0) delete node.children;
  return packed(new TextEncoder().encode(JSON.stringify(json)), out);
}

function meshJson(out: Out, drawn: Mesh, thing: Thing): Json {
  const mesh = { ...drawn, positions: drawn.positions.map(steady), normals: drawn.normals.map(steady) };
  const [min, max] = boundsOf(mesh), count = mesh.positions.length / 3;
  const position = accessor(out, mesh.positions, { componentType: FLOAT, count, type: "VEC3", min, max }, ARRAY);
  const normal = accessor(out, mesh.normals, { componentType: FLOAT, count, type: "VEC3" }, ARRAY);
  const indices = accessor(out, mesh.indices, { componentType: UINT, count: mesh.indices.length, type: "SCALAR" }, ELEMENTS);
  return { name: `${thing.kind} ${thing.id}`, primitives: [{ attributes: { POSITION: position, NORMAL: normal }, indices, material: Object.keys(METALS).indexOf(thing.metal) }] };
}

/** Sets every arbor as it stands at 0, and gives the animation of those that move: none where the input turns nothing. */
function turning(out: Out, movement: Movement, nodes: readonly Json[], arborNode: readonly number[]): Json[] {
  const motion = motionOf(movement), n = movement.arbors.length;
  const fastest = motion.rate.reduce((most, rate) => Math.max(most, Math.abs(rate)), 0);
  // A train too fast for so many keys is shown through less than a turn.
  const keysATurn = Math.max(LEAST_KEYS, Math.ceil((fastest * 2 * Math.PI) / KEY_RAD)), keys = Math.min(MOST_KEYS, keysATurn), turns = keys / keysATurn;
  const poses = Array.from({ length: keys + 1 }, (_, k) => {
    const pose = new Float64Array(POSE_STRIDE * n);
    poseInto(pose, motion, (turns * k) / keys);
    return pose;
  });
  const samplers: Json[] = [], channels: Json[] = [];
  let times: number | null = null;
  const add = (node: number, path: string, values: readonly (readonly number[])[], type: string): void => {
    times ??= accessor(out, Float32Array.from(poses, (_, k) => (TURN_S * turns * k) / keys), { componentType: FLOAT, count: keys + 1, type: "SCALAR", min: [0], max: [Math.fround(TURN_S * turns)] });
    const output = accessor(out, Float32Array.from(values.flat()), { componentType: FLOAT, count: keys + 1, type });
    channels.push({ sampler: samplers.push({ input: times, output, interpolation: "LINEAR" }) - 1, target: { node, path } });
  };
  for (let i = 0; i < n; i++) {
    const o = POSE_STRIDE * i, at = poses.map((p) => [steady(p[o]!), steady(p[o + 1]!), 0]), angles = unwrapped(poses.map((p) => p[o + 2]!)), node = arborNode[i]!;
    nodes[node]!.translation = at[0];
    if (at.some(([x, y]) => x !== at[0]![0] || y !== at[0]![1])) add(node, "translation", at, "VEC3");
    if (angles.some((a) => steady(a - angles[0]!) !== 0)) add(node, "rotation", angles.map(aboutZ), "VEC4");
  }
  return channels.length === 0 ? [] : [{ name: "turning", channels, samplers }];
}

/** Without the jump from a whole turn to none, so that half angles run on. */
function unwrapped(angles: readonly number[]): number[] {
  let over = 0;
  return angles.map((a, k) => {
    const before = angles[k - 1] ?? a;
    over += a - before > Math.PI ? -2 * Math.PI : before - a > Math.PI ? 2 * Math.PI : 0;
    return a + over;
  });
}

const aboutZ = (rad: number): number[] => [0, 0, steady(Math.sin(rad / 2)), steady(Math.cos(rad / 2))];

function accessor(out: Out, data: Float32Array | Uint32Array, says: Json, target?: number): number {
  out.bufferViews.push({ buffer: 0, byteOffset: out.size, byteLength: data.byteLength, ...(target === undefined ? {} : { target }) });
  out.chunks.push(littleEndian(data));
  out.size += data.byteLength;
  return out.accessors.push({ bufferView: out.bufferViews.length - 1, ...says }) - 1;
}

function littleEndian(data: Float32Array | Uint32Array): Uint8Array {
  const view = new DataView(new ArrayBuffer(data.byteLength));
  if (data instanceof Float32Array) data.forEach((v, i) => view.setFloat32(4 * i, v, true));
  else data.forEach((v, i) => view.setUint32(4 * i, v, true));
  return new Uint8Array(view.buffer);
}

/** Head of 12 bytes, then the two chunks, each filled up to whole fours: the words with spaces. */
function packed(json: Uint8Array, { chunks, size }: Out): Uint8Array {
  const words = Math.ceil(json.length / 4) * 4, bytes = new Uint8Array(12 + 8 + words + 8 + size), view = new DataView(bytes.buffer);
  [0x46546c67, 2, bytes.length, words, 0x4e4f534a].forEach((v, i) => view.setUint32(4 * i, v, true));
  bytes.fill(0x20, 20, 20 + words).set(json, 20);
  view.setUint32(20 + words, size, true);
  view.setUint32(24 + words, 0x004e4942, true);
  let at = 28 + words;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
