// A closed mesh as a binary STL: 80 bytes of words, a count, 50 bytes a triangle, little-endian. STL names no unit; the
// words say that these are mm. The part stands about its own axis with its lowest point at height 0.
import type { Mesh } from "../../../geometry/index.ts";
import { steady } from "./file.ts";

const HEAD_BYTES = 80, TRIANGLE_BYTES = 50;

export function meshStl({ positions, indices }: Mesh, words: string): Uint8Array {
  const count = indices.length / 3, bytes = new Uint8Array(HEAD_BYTES + 4 + TRIANGLE_BYTES * count), view = new DataView(bytes.buffer);
  bytes.set(new TextEncoder().encode(words.normalize("NFKD").replace(/[^ -~]/g, "")).subarray(0, HEAD_BYTES));
  view.setUint32(HEAD_BYTES, count, true);
  const low = lowestOf(positions);
  const corner = (i: number): readonly [number, number, number] => {
    const at = 3 * indices[i]!;
    return [steady(positions[at]!), steady(positions[at + 1]!), steady(positions[at + 2]! - low)];
  };
  for (let t = 0, at = HEAD_BYTES + 4; t < count; t++, at += TRIANGLE_BYTES) {
    const corners = [corner(3 * t), corner(3 * t + 1), corner(3 * t + 2)] as const;
    [normalOf(...corners), ...corners].flat().forEach((v, k) => view.setFloat32(at + 4 * k, steady(v), true));
  }
  return bytes;
}

/** mm. */
export function lowestOf(positions: Float32Array): number {
  let low = Infinity;
  for (let i = 2; i < positions.length; i += 3) low = Math.min(low, positions[i]!);
  return Number.isFinite(low) ? low : 0;
}

type Corner = readonly [number, number, number];

function normalOf(a: Corner, b: Corner, c: Corner): Corner {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]], [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const n = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] as const, length = Math.hypot(...n) || 1;
  return [n[0] / length, n[1] / length, n[2] / length];
}
