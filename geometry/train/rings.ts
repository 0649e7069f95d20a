// Closed rings of wheels on one carrier. Going round one way and the other, a wheel must come out at the same rate
// against the carrier; where it does not, none of the ring can turn against it. The shortest such ring is named.
import { ONE, type Ratio } from "../numeric/ratio.ts";
import { sameRatio, scaled } from "./exact.ts";

/** rate of b = rate of a × p / q, both against the carrier. */
export interface Edge {
  readonly a: number;
  readonly b: number;
  readonly p: number;
  readonly q: number;
}

export interface Ring {
  /** Indices of edges, in rising order. */
  readonly edges: readonly number[];
  readonly nodes: readonly number[];
}

export interface Rings {
  readonly rings: readonly Ring[];
  /** Edges that need no equation: implied by the others, contradicting them, or of a named ring. */
  readonly spare: ReadonlySet<number>;
}

/** So many rings of one cluster are named, from so many starting points each; past that the maker has enough to mend. */
const MOST_RINGS = 24, MOST_STARTS = 24;
/** Edges looked at for one ring, and for all of a cluster, before that: the time of a hopeless tangle stays bounded. */
const LOOKS_FOR_ONE = 40_000, LOOKS_FOR_ALL = 400_000;

export function ringsOf(edges: readonly Edge[]): Rings {
  const near = new Map<number, number[]>();
  edges.forEach((e, i) => {
    for (const v of e.a === e.b ? [e.a] : [e.a, e.b]) {
      const list = near.get(v);
      if (list === undefined) near.set(v, [i]);
      else list.push(i);
    }
  });
  const spare = new Set<number>();
  const rings: Ring[] = [];
  const done = new Set<number>();
  for (const start of near.keys()) {
    if (done.has(start)) continue;
    const tree = spanning(edges, near, start, spare, false);
    for (const v of tree.order) done.add(v);
    if (tree.closing.length > 0) judge(edges, near, start, rings, spare);
  }
  return { rings, spare };
}

/** One cluster that closes on itself: names its contradicting rings and sets its spare edges aside. */
function judge(edges: readonly Edge[], near: ReadonlyMap<number, readonly number[]>, start: number, rings: Ring[], spare: Set<number>): void {
  const before = rings.length;
  const locked = new Set<number>();
  const contrary = new Set<number>();
  const most = Math.max(1, Math.min(MOST_RINGS, Math.floor(LOOKS_FOR_ALL / (LOOKS_FOR_ONE + edges.length))));
  for (let found = 0; found < most; found++) {
    const tree = spanning(edges, near, start, contrary, true);
    const wrong = tree.closing.filter((i) => !agrees(edges[i], tree)
      && !(locked.has(edges[i].a) && locked.has(edges[i].b)));
    if (wrong.length === 0) break;
    const ring = shortest(edges, near, wrong, contrary);
    rings.push(ring);
    for (const v of ring.nodes) locked.add(v);
    contrary.add(ring.edges[ring.edges.length - 1]);
  }
  for (const i of contrary) spare.add(i);
  for (const i of spanning(edges, near, start, spare, false).closing) spare.add(i);
  for (const ring of rings.slice(before)) for (const i of ring.edges) spare.add(i);
}

interface Tree {
  readonly order: readonly number[];
  /** The edge by which each node was reached (−1 at the start), its depth and its rate for 1 at the start. */
  readonly by: ReadonlyMap<number, number>;
  readonly depth: ReadonlyMap<number, number>;
  readonly weight: ReadonlyMap<number, Ratio>;
  readonly closing: readonly number[];
}

function spanning(edges: readonly Edge[], near: ReadonlyMap<number, readonly number[]>, start: number, without: ReadonlySet<number>, weighed: boolean): Tree {
  const order = [start], closing: number[] = [];
  const by = new Map([[start, -1]]), depth = new Map([[start, 0]]), weight = new Map([[start, ONE]]);
  const used = new Set<number>();
  for (const v of order) {
    for (const i of near.get(v) ?? []) {
      if (used.has(i) || without.has(i)) continue;
      used.add(i);
      const { a, b, p, q } = edges[i];
      const to = a === v ? b : a;
      if (by.has(to)) { closing.push(i); continue; }
      order.push(to);
      by.set(to, i);
      depth.set(to, (depth.get(v) as number) + 1);
      if (weighed) weight.set(to, a === v ? scaled(weight.get(v) as Ratio, p, q) : scaled(weight.get(v) as Ratio, q, p));
    }
  }
  return { order, by, depth, weight, closing };
}

const agrees = (e: Edge, tree: Tree): boolean =>
  sameRatio(scaled(tree.weight.get(e.a) as Ratio, e.p, e.q), tree.weight.get(e.b) as Ratio);

function shortest(edges: readonly Edge[], near: ReadonlyMap<number, readonly number[]>, wrong: readonly number[], without: ReadonlySet<number>): Ring {
  const most = Math.max(1, Math.min(MOST_STARTS, Math.floor(LOOKS_FOR_ONE / edges.length)));
  const starts = [...new Set(wrong.flatMap((i) => [edges[i].a, edges[i].b]))].slice(0, most);
  let best: Ring | null = null;
  for (const start of starts) {
    const tree = spanning(edges, near, start, without, true);
    for (const i of tree.closing) {
      if (agrees(edges[i], tree)) continue;
      const ring = ringBy(edges, tree, i);
      if (best === null || ring.edges.length < best.edges.length) best = ring;
    }
  }
  return best as Ring;
}

/** The ring that an edge closes in a tree. */
function ringBy(edges: readonly Edge[], tree: Tree, closing: number): Ring {
  const ring = [closing], nodes = new Set([edges[closing].a, edges[closing].b]);
  let { a, b } = edges[closing];
  while (a !== b) {
    const deeper = (tree.depth.get(a) as number) >= (tree.depth.get(b) as number) ? a : b;
    const i = tree.by.get(deeper) as number;
    const up = edges[i].a === deeper ? edges[i].b : edges[i].a;
    ring.push(i);
    nodes.add(up);
    if (deeper === a) a = up; else b = up;
  }
  return { edges: ring.sort((x, y) => x - y), nodes: [...nodes] };
}
