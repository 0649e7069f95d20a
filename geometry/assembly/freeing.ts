// The least change that frees what is trapped. Through a plate: the opening that would let one side pass, or the parts
// that would have to come off. In a closed ring: the one arbor without which there is none, and the one part whose coming
// off, or whose change of level with its neighbour, opens it. Lengths in mm.
import { radiusOf, thingsOf, partThing, type Thing } from "../bodies/thing.ts";
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

/** What would break up a group of arbors that must go in together into fewer than three at a time; `everything`: the things of the movement. */
export function freedRing(movement: Movement, group: readonly number[], everything: readonly Thing[] = thingsOf(movement)): RingFreed {
  const place = new Map(group.map((arbor, i) => [arbor, i]));
  const things = everything.filter((t) => place.has(t.arbor));
  const arrows = (without: string | null) => arrowsBetween(things.filter((t) => t.id !== without), (t) => place.get(t.arbor) ?? -1, group.length);
  const all = arrows(null);
  const opens = (before: readonly Before[]) => orderOfEntry(group.length, before).every((g) => g.length < RING_OF);
  // Whatever opens the group must break each knot in it, so one small knot says what is worth trying.
  const knot = knotOf(all), tied = new Set(knot.flatMap((b) => [b.first, b.then])), ends = new Set(knot.flatMap((b) => [b.under, b.over])), inKnot = new Set(knot);
  const cock = group.filter((_, i) => tied.has(i) && opens(all.filter((b) => b.first !== i && b.then !== i)));
  const parts = group.flatMap((i) => movement.arbors[i].arbor.parts).filter((part) => ends.has(part.id));
  const swap = all.find((b) => inKnot.has(b) && isPart(movement, b.under) && isPart(movement, b.over) && opens(all.map((o) => (o === b ? turned(b) : o))));
  return {
    cock: cock.sort((a, b) => movement.arbors[a].arbor.parts.length - movement.arbors[b].arbor.parts.length).map((i) => movement.arbors[i].id),
    split: parts.map((p) => p.id).filter((id) => opens(arrows(id))),
    swap: swap ? [swap.under, swap.over] : null,
  };
}

const isPart = (movement: Movement, id: string): boolean => movement.partIndex.has(id);
const turned = (b: Before): Before => ({ first: b.then, then: b.first, under: b.over, over: b.under });

/** A few of the arrows that by themselves hold three or more together: a way round through three, or two there and back that share one. None: nothing is held. */
function knotOf(all: readonly Before[]): readonly Before[] {
  const from = new Map<number, Before[]>();
  for (const b of all) from.set(b.first, [...from.get(b.first) ?? [], b]);
  const start = all.find((b) => wayTo(from, b.then, new Set([b.first])) !== null);
  if (start === undefined) return [];
  const round = [start, ...wayTo(from, start.then, new Set([start.first])) ?? []];
  if (round.length > 2) return round;
  // There and back between two: a third hangs on one of them, and comes back to one of them.
  const two = new Set([start.first, start.then]);
  for (const out of [...two].flatMap((v) => from.get(v) ?? [])) {
    const back = two.has(out.then) ? null : wayTo(from, out.then, two);
    if (back !== null) return [...round, out, ...back];
  }
  return round;
}

/** The fewest arrows from one to any of several; null where there is no way. */
function wayTo(from: ReadonlyMap<number, readonly Before[]>, start: number, ends: ReadonlySet<number>): Before[] | null {
  const by = new Map<number, Before | null>([[start, null]]);
  for (const v of by.keys()) {
    if (ends.has(v)) {
      const way: Before[] = [];
      for (let b = by.get(v) ?? null; b !== null; b = by.get(b.first) ?? null) way.unshift(b);
      return way;
    }
    for (const b of from.get(v) ?? []) if (!by.has(b.then)) by.set(b.then, b);
  }
  return null;
}
