// How far each toothed part is turned on its arbor so that, with the input at 0, a tooth of every driver stands in the
// middle of a space of its driven on the line of centres. Exact rates then keep them so at every turn. A part may be
// fixed on its arbor at any angle, so only a ring that closes through the same parts can fail to come out even.
import { TAU, wrapRad } from "../numeric/angle.ts";
import { PHASE_PITCHES } from "../numeric/tolerance.ts";
import { countOf, type ToothedPart } from "../instrument.ts";
import type { Movement, WorkedEngagement } from "../movement.ts";

/** rad by part id, anticlockwise: where the tooth stands that is on +x in the part's own outline, the input at 0. */
export function toothPhases(movement: Movement): ReadonlyMap<string, number> {
  const graph = graphOf(movement);
  const phase = new Float64Array(graph.counts.length);
  const closing = followTree(graph, phase, new Set());
  if (closing.some((e) => Math.abs(missPitches(graph, e, phase)) > PHASE_PITCHES)) {
    const ringed = ringedParts(graph);
    shareOut(graph, phase, ringed);
    followTree(graph, phase, ringed);
  }
  return new Map(graph.ids.map((id, i) => [id, wrapRad(phase[i]) % (TAU / graph.counts[i])]));
}

interface Edge {
  readonly a: number;
  readonly b: number;
  /** rad: direction in which the teeth of each meet. */
  readonly aRad: number;
  readonly bRad: number;
  /** +1: outside teeth, which pass the line of centres contrary to angle on b; −1: b is an annulus. */
  readonly sign: 1 | -1;
}

interface Graph {
  readonly ids: readonly string[];
  readonly counts: readonly number[];
  readonly edges: readonly Edge[];
  readonly near: readonly (readonly Edge[])[];
}

function graphOf(movement: Movement): Graph {
  const ids: string[] = [], counts: number[] = [], index = new Map<string, number>();
  const node = (part: ToothedPart): number => {
    const known = index.get(part.id);
    if (known !== undefined) return known;
    index.set(part.id, ids.length);
    counts.push(countOf(part));
    return ids.push(part.id) - 1;
  };
  for (const arbor of movement.instrument.arbors)
    for (const part of arbor.parts) if (part.kind === "wheel" || part.kind === "pinion" || part.kind === "lantern") node(part);
  const edges = movement.engagements.map((e) => edgeOf(movement, e, node(e.driver), node(e.driven)));
  const near: Edge[][] = ids.map(() => []);
  for (const e of edges) { near[e.a].push(e); near[e.b].push(e); }
  return { ids, counts, edges, near };
}

function edgeOf(movement: Movement, e: WorkedEngagement, driver: number, driven: number): Edge {
  const from = movement.arbors[e.driverArbor], to = movement.arbors[e.drivenArbor];
  const ahead = Math.atan2(to.y - from.y, to.x - from.x);
  // Within an annulus both meet on the side away from its centre.
  if (isAnnulus(e.driven)) return { a: driver, b: driven, aRad: ahead + Math.PI, bRad: ahead + Math.PI, sign: -1 };
  if (isAnnulus(e.driver)) return { a: driven, b: driver, aRad: ahead, bRad: ahead, sign: -1 };
  return { a: driver, b: driven, aRad: ahead, bRad: ahead + Math.PI, sign: 1 };
}

const isAnnulus = (part: ToothedPart): boolean => part.kind !== "lantern" && part.internal === true;

/** Sets every part but the settled ones from the one it is reached from; gives the engagements that close rings. */
function followTree(graph: Graph, phase: Float64Array, settled: ReadonlySet<number>): readonly Edge[] {
  const reached = new Set(settled), used = new Set<Edge>(), closing: Edge[] = [];
  const follow = (queue: number[]): void => {
    for (const at of queue)
      for (const e of graph.near[at]) {
        if (used.has(e)) continue;
        used.add(e);
        const other = e.a === at ? e.b : e.a;
        if (reached.has(other)) { closing.push(e); continue; }
        reached.add(other);
        phase[other] += ((other === e.a ? 1 : e.sign) * missPitches(graph, e, phase) * TAU) / graph.counts[other];
        queue.push(other);
      }
  };
  follow([...settled]);
  for (let root = 0; root < graph.ids.length; root++)
    if (!reached.has(root)) { reached.add(root); follow([root]); }
  return closing;
}

/** Pitches, −½ … ½, by which a tooth of a stands past the middle of a space of b. */
function missPitches(graph: Graph, e: Edge, phase: Float64Array): number {
  const u = ((e.aRad - phase[e.a]) * graph.counts[e.a]) / TAU, v = ((e.bRad - phase[e.b]) * graph.counts[e.b]) / TAU;
  const past = u + e.sign * v - 0.5;
  return past - Math.round(past);
}

/** Parts on rings, or between two of them: what is left when loose ends are taken off again and again. */
function ringedParts(graph: Graph): ReadonlySet<number> {
  const ends = graph.near.map((n) => n.length), left = new Set(ends.keys());
  const loose = [...left].filter((p) => ends[p] < 2);
  for (const p of loose) {
    left.delete(p);
    for (const e of graph.near[p]) {
      const other = e.a === p ? e.b : e.a;
      if (left.has(other) && --ends[other] === 1) loose.push(other);
    }
  }
  return left;
}

/** What a ring is out by is shared among its engagements (least squares, by relaxation). */
function shareOut(graph: Graph, phase: Float64Array, ringed: ReadonlySet<number>): void {
  for (let sweep = 0; sweep < RELAXING_SWEEPS; sweep++)
    for (const p of ringed) {
      const own = graph.near[p].filter((e) => ringed.has(e.a) && ringed.has(e.b));
      let sum = 0;
      for (const e of own) sum += (p === e.a ? 1 : e.sign) * missPitches(graph, e, phase);
      phase[p] += ((sum / own.length) * TAU) / graph.counts[p];
    }
}

/** Enough that what a ring of a dozen wheels is out by is shared to a thousandth. */
const RELAXING_SWEEPS = 400;
