// The flat figure that a part is cut to, taken from its own closed mesh: the edges of its lowest face as loops, x and y
// in mm about the part's axis, metal on the left (the outside anticlockwise, holes clockwise).
import type { Mesh } from "../../../geometry/index.ts";
import { lowestOf } from "./stl.ts";

export function faceLoops({ positions, indices, weld }: Mesh): Float64Array[] {
  const low = lowestOf(positions), places = new Map<number, readonly [number, number]>(), next = new Map<number, number>();
  const edges = new Map<string, readonly [number, number]>();
  for (let t = 0; t < indices.length; t += 3) {
    const corners = [indices[t]!, indices[t + 1]!, indices[t + 2]!];
    if (corners.some((v) => positions[3 * v + 2] !== low)) continue;
    for (const v of corners) places.set(weld[v]!, [positions[3 * v]!, positions[3 * v + 1]!]);
    for (let k = 0; k < 3; k++) {
      const a = weld[corners[k]!]!, b = weld[corners[(k + 1) % 3]!]!;
      // Two triangles of the face share an edge that is no edge of the face.
      if (!edges.delete(`${b} ${a}`)) edges.set(`${a} ${b}`, [a, b]);
    }
  }
  // Seen from below the face has its metal on the left; from above it is run the other way.
  for (const [a, b] of edges.values()) next.set(b, a);
  return loopsOf(next).map((loop) => Float64Array.from(loop.flatMap((corner) => [...places.get(corner)!])));
}

function loopsOf(next: Map<number, number>): number[][] {
  const loops: number[][] = [];
  for (const first of [...next.keys()]) {
    const loop: number[] = [];
    for (let at: number | undefined = first; at !== undefined && next.has(at);) {
      const then: number = next.get(at)!;
      next.delete(at);
      loop.push(at);
      at = then;
    }
    if (loop.length > 2) loops.push(loop);
  }
  return loops;
}
