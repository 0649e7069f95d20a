// What moves as one in plan: arbors in line, with all that rides on them, and the centre distances between such groups
// that engaged pairs ask for. Groups with an arbor that is steady, or whose hole is made, stand.
import type { Movement } from "../movement.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import { layoutIn } from "../train/layout.ts";
import { axesOf } from "./axes.ts";
import type { Place } from "./circles.ts";
import { rootsOf, spansOf } from "./roots.ts";

/** An instrument in plan: groups of roots that move as one, and the distances between them. */
export interface Plan {
  /** By arbor. */
  readonly groupOf: readonly number[];
  /** By group: where it stands, its roots, and why it cannot move or null. */
  readonly centres: readonly Place[];
  readonly roots: readonly (readonly number[])[];
  readonly anchors: readonly (string | null)[];
  readonly links: readonly Link[];
  readonly linksOf: readonly (readonly Link[])[];
}

/** |centre a + shift − centre b| should be `computed` (mm). */
export interface Link {
  readonly a: number;
  readonly b: number;
  readonly computed: number;
  readonly shiftX: number;
  readonly shiftY: number;
}

export function planOf(movement: Movement): Plan {
  const { instrument, arbors } = movement;
  const layout = layoutIn(movement);
  const roots = rootsOf(instrument, layout);
  const { axisOf } = axesOf(instrument, layout, arbors);
  const groupByAxis = new Map<number, number>();
  const members: number[][] = [], centres: Place[] = [];
  const groupOf = arbors.map((_, i) => {
    const root = roots.rootOf[i];
    const group = groupByAxis.get(axisOf[root]) ?? centres.length;
    if (group === centres.length) {
      groupByAxis.set(axisOf[root], group);
      centres.push({ x: arbors[root].x, y: arbors[root].y });
      members.push([]);
    }
    if (!members[group].includes(root)) members[group].push(root);
    return group;
  });
  const anchors = centres.map((): string | null => null);
  arbors.forEach(({ id, arbor }, i) => {
    if (arbor.steady) anchors[groupOf[i]] ??= `Arbor ${id} is steady`;
    else if (arbor.measured) anchors[groupOf[i]] ??= `Arbor ${id} stands where its hole came`;
  });
  const computed = movement.engagements.map((e) => e.computed);
  const links: Link[] = [];
  const linksOf: Link[][] = centres.map(() => []);
  for (const span of spansOf(instrument, layout, roots, computed)) {
    const a = groupOf[span.a], b = groupOf[span.b];
    const link = {
      a, b, computed: span.distance,
      shiftX: span.shiftX + arbors[span.a].x - centres[a].x - arbors[span.b].x + centres[b].x,
      shiftY: span.shiftY + arbors[span.a].y - centres[a].y - arbors[span.b].y + centres[b].y,
    };
    if (a === b || linksOf[a].some((l) => l.a === a && l.b === b && sameShift(l, link))) continue;
    links.push(link);
    linksOf[a].push(link);
    linksOf[b].push(link);
  }
  return { groupOf, centres, roots: members, anchors, links, linksOf };
}

const sameShift = (one: Link, other: Link): boolean =>
  Math.hypot(one.shiftX - other.shiftX, one.shiftY - other.shiftY) <= SAME_AXIS_MM;
