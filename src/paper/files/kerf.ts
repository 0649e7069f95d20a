// An outline moved out of the metal by half of what a cut takes away (kerf), so that the part comes out to size. mm.
// Every edge is moved along its normal and neighbours are met again; an edge that has turned about was swallowed, and
// its neighbours meet instead. Round an outward corner the path goes in short steps, so that no spike is left.

interface Edge {
  /** A point on it before it is moved, and its direction (unit). */
  readonly x: number; readonly y: number; readonly dx: number; readonly dy: number;
}

/** Radians of one step round an outward corner. */
const STEP_RAD = 0.35;

/** Metal lies on the left of the loop: its outside grows, a hole in it shrinks. Null where the cut is wider than the hole. */
export function movedOut(loop: Float64Array, byMm: number): Float64Array | null {
  if (byMm === 0) return loop;
  let edges = edgesOf(loop, byMm);
  for (;;) {
    if (edges.length < 3) return null;
    const points = edges.map((e, i) => meeting(edges[(i + edges.length - 1) % edges.length]!, e, byMm));
    const kept = edges.filter((e, i) => {
      const a = points[i]!, b = points[(i + 1) % points.length]!;
      return (b[0] - a[0]) * e.dx + (b[1] - a[1]) * e.dy > 0;
    });
    if (kept.length === edges.length) return Float64Array.from(points.flat());
    edges = kept;
  }
}

function edgesOf(loop: Float64Array, byMm: number): Edge[] {
  const found: Edge[] = [], n = loop.length / 2;
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n, x = loop[2 * i]!, y = loop[2 * i + 1]!;
    const lx = loop[2 * j]! - x, ly = loop[2 * j + 1]! - y, length = Math.hypot(lx, ly);
    if (length > 0) found.push({ x, y, dx: lx / length, dy: ly / length });
  }
  return found.flatMap((e, i) => [...roundCorner(found[(i + found.length - 1) % found.length]!, e, byMm), e]);
}

/** Steps between two edges where the metal's corner points into the path. */
function roundCorner(before: Edge, after: Edge, byMm: number): Edge[] {
  const turn = Math.atan2(before.dx * after.dy - before.dy * after.dx, before.dx * after.dx + before.dy * after.dy) * Math.sign(byMm);
  const steps = Math.floor(turn / STEP_RAD), from = Math.atan2(before.dy, before.dx);
  return Array.from({ length: Math.max(0, steps) }, (_, k) => {
    const a = from + (Math.sign(byMm) * turn * (k + 1)) / (steps + 1);
    return { x: after.x, y: after.y, dx: Math.cos(a), dy: Math.sin(a) };
  });
}

/** Where two edges meet when both are moved to their right. */
function meeting(a: Edge, b: Edge, byMm: number): readonly [number, number] {
  const cross = a.dx * b.dy - a.dy * b.dx;
  const ax = a.x + byMm * a.dy, ay = a.y - byMm * a.dx, bx = b.x + byMm * b.dy, by = b.y - byMm * b.dx;
  if (Math.abs(cross) < 1e-9) return [bx, by];
  const t = ((bx - ax) * b.dy - (by - ay) * b.dx) / cross;
  return [ax + t * a.dx, ay + t * a.dy];
}
