// What planting decides and what only follows. A root is an arbor whose place is its own; every other arbor stands at a
// constant offset from one (input at 0). A span is a centre distance that one pair of engaged parts asks of two roots.
import type { Arbor, Instrument } from "../instrument.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { toRad } from "../numeric/angle.ts";
import { workingDistance } from "../teeth/forms.ts";
import type { Teeth } from "../teeth/teeth.ts";
import type { Layout } from "../train/layout.ts";
import type { Place } from "./circles.ts";

export interface Roots {
  /** By arbor: its root, and where it stands from there (mm). */
  readonly rootOf: readonly number[];
  readonly dx: readonly number[];
  readonly dy: readonly number[];
  /** By arbor: it has no place but for standing in line with the carrier of what it, or what it rides on, meshes with. */
  readonly inLine: readonly boolean[];
  /** By root: where the file puts it (by its own figures, else by those of the first that rides on it), or null. */
  readonly given: readonly (Place | null)[];
}

export interface Span {
  readonly engagement: number;
  readonly a: number;
  readonly b: number;
  /** mm */
  readonly distance: number;
  /** mm, |place of a + shift − place of b| = distance. */
  readonly shiftX: number;
  readonly shiftY: number;
}

/** mm by engagement: from teeth, module, shift and ease; null where the two have no working distance. */
export function computedDistances(instrument: Instrument, teeth: ReadonlyMap<string, Teeth>): (number | null)[] {
  return instrument.engagements.map((e) => {
    const driver = teeth.get(e.driver), driven = teeth.get(e.driven);
    const works = driver === undefined || driven === undefined ? null : workingDistance(driver, driven);
    return works === null || !Number.isFinite(works) ? null : works + (e.ease ?? 0);
  });
}

export function rootsOf(instrument: Instrument, layout: Layout): Roots {
  const count = instrument.arbors.length;
  const rootOf: number[] = [], dx: number[] = [], dy: number[] = [];
  for (let i = 0; i < count; i++) {
    let x = 0, y = 0, j = i;
    for (const on of layout.chains[i]) {
      const { rides, measured } = instrument.arbors[j];
      if (rides === undefined || measured !== undefined) break;
      x += rides.radius * Math.cos(toRad(rides.angle));
      y += rides.radius * Math.sin(toRad(rides.angle));
      j = on;
    }
    rootOf.push(j);
    dx.push(x);
    dy.push(y);
  }
  const given: (Place | null)[] = rootOf.map((root, i) => (root === i ? placeInFile(instrument.arbors[i]) : null));
  rootOf.forEach((root, i) => {
    const place = given[root] === null && root !== i ? placeInFile(instrument.arbors[i]) : null;
    if (place !== null) given[root] = { x: place.x - dx[i], y: place.y - dy[i] };
  });
  return withCentresInLine(instrument, layout, { rootOf, dx, dy, inLine: rootOf.map(() => false), given });
}

/** The distances asked of the roots, the first of those that ask the same two axes. */
export function spansOf(instrument: Instrument, layout: Layout, roots: Roots, computed: readonly (number | null)[]): Span[] {
  const spans: Span[] = [];
  const seen = new Map<string, Span[]>();
  instrument.engagements.forEach((e, engagement) => {
    const distance = computed[engagement];
    const one = layout.partIndex.get(e.driver)?.arbor, other = layout.partIndex.get(e.driven)?.arbor;
    if (distance === null || distance < 0 || one === undefined || other === undefined) return;
    const [i, j] = roots.rootOf[one] <= roots.rootOf[other] ? [one, other] : [other, one];
    const a = roots.rootOf[i], b = roots.rootOf[j];
    if (a === b || turningCarrier(instrument, layout, one) !== null || turningCarrier(instrument, layout, other) !== null) return;
    const span = { engagement, a, b, distance, shiftX: roots.dx[i] - roots.dx[j], shiftY: roots.dy[i] - roots.dy[j] };
    const key = `${a} ${b}`, same = seen.get(key);
    if (same?.some((s) => Math.hypot(s.shiftX - span.shiftX, s.shiftY - span.shiftY) <= SAME_AXIS_MM)) return;
    if (same === undefined) seen.set(key, [span]);
    else same.push(span);
    spans.push(span);
  });
  return spans;
}

/** What meshes with a carried wheel keeps its distance only in line with the carrier: there it stands if it has no place. */
function withCentresInLine(instrument: Instrument, layout: Layout, roots: Roots): Roots {
  const rootOf = [...roots.rootOf], dx = [...roots.dx], dy = [...roots.dy], inLine = [...roots.inLine];
  const join = (root: number, to: number, x: number, y: number) => {
    rootOf.forEach((r, i) => {
      if (r !== root) return;
      rootOf[i] = to;
      dx[i] += x;
      dy[i] += y;
      inLine[i] = true;
    });
  };
  for (const e of instrument.engagements) {
    const one = layout.partIndex.get(e.driver)?.arbor, other = layout.partIndex.get(e.driven)?.arbor;
    if (one === undefined || other === undefined) continue;
    for (const [carried, centre] of [[one, other], [other, one]]) {
      const carrier = turningCarrier(instrument, layout, carried);
      if (carrier === null || turningCarrier(instrument, layout, centre) !== null) continue;
      const a = rootOf[carrier], b = rootOf[centre];
      const x = dx[carrier] - dx[centre], y = dy[carrier] - dy[centre];
      if (a === b) continue;
      if (roots.given[b] === null) join(b, a, x, y);
      else if (roots.given[a] === null) join(a, b, -x, -y);
    }
  }
  return { rootOf, dx, dy, inLine, given: roots.given };
}

/** The carrier of an arbor, unless it is fixed in the frame and so carries nothing round. */
export function turningCarrier(instrument: Instrument, layout: Layout, arbor: number): number | null {
  for (let c = layout.carrier[arbor]; c !== null; c = layout.carrier[c]) if (instrument.arbors[c].fixed !== true) return c;
  return null;
}

function placeInFile({ measured, x, y }: Arbor): Place | null {
  if (measured !== undefined) return measured;
  return x === undefined || y === undefined ? null : { x, y };
}
