// The least change that frees what is trapped. Through a plate: the opening that would let one side pass, or the parts
// that would have to come off. In a closed ring: the one arbor without which there is none, and the one part whose coming
// off, or whose change of level with its neighbour, opens it. Lengths in mm.
import { radiusOf, thingsOf, partThing } from "../bodies/thing.ts";
import { axisOf } from "../bodies/axis.ts";
import type { Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { arrowsBetween, orderOfEntry, type Before } from "./before.ts";
import { comesOff, type Through } from "./through.ts";

/** Three or more that must go in together are a trial of patience; two are not. */
export const RING_OF = 3;

export interface ThroughFreed {
  /** Least diameter of opening that lets the parts of one side pass. */
  readonly opening: number;
  /** Least parts that would have to be held by screw, pin or square, all on one side. */
  readonly loosen: readonly string[];
}

export function freedThrough(movement: Movement, arbor: number, { below, above }: Through): ThroughFreed {
  const axis = axisOf(movement, arbor), { parts } = movement.arbors[arbor].arbor;
  const widest = (side: readonly Part[]) => Math.max(...side.map((p) => radiusOf(partThing(movement, arbor, parts.indexOf(p), axis))));
  const fast = (side: readonly Part[]) => side.filter((p) => !comesOff(p)).map((p) => p.id);
  const [low, high] = [fast(below), fast(above)];
  return { opening: 2 * Math.min(widest(below), widest(above)), loosen: high.length <= low.length ? high : low };
}

export interface RingFreed {
  /** Arbors any one of which, in a cock of its own, leaves no such ring; fewest parts first. */
  readonly cock: readonly string[];
  /** Parts any one of which, made to come off, opens it. */
  readonly split: readonly string[];
  /** Two parts that, if they changed levels, would open it. */
  readonly swap: readonly [string, string] | null;
}

/** What would break up a group of arbors that must go in together into fewer than three at a time. */
export function freedRing(movement: Movement, group: readonly number[]): RingFreed {
  const place = new Map(group.map((arbor, i) => [arbor, i]));
  const things = thingsOf(movement).filter((t) => place.has(t.arbor));
  const arrows = (without: string | null) => arrowsBetween(things.filter((t) => t.id !== without), (t) => place.get(t.arbor) ?? -1, group.length);
  const all = arrows(null);
  const opens = (before: readonly Before[]) => orderOfEntry(group.length, before).every((g) => g.length < RING_OF);
  const cock = group.filter((_, i) => opens(all.filter((b) => b.first !== i && b.then !== i)));
  const parts = group.flatMap((i) => movement.arbors[i].arbor.parts);
  const swap = all.find((b) => isPart(movement, b.under) && isPart(movement, b.over) && opens(all.map((o) => (o === b ? turned(b) : o))));
  return {
    cock: cock.sort((a, b) => movement.arbors[a].arbor.parts.length - movement.arbors[b].arbor.parts.length).map((i) => movement.arbors[i].id),
    split: parts.map((p) => p.id).filter((id) => opens(arrows(id))),
    swap: swap ? [swap.under, swap.over] : null,
  };
}

const isPart = (movement: Movement, id: string): boolean => movement.partIndex.has(id);
const turned = (b: Before): Before => ({ first: b.then, then: b.first, under: b.over, over: b.under });
