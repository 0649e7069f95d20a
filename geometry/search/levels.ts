// A movement as a stack: what moves up and down between two plates as levels, what must lie over what as lifts, and the
// pairs of which either may be the upper as choices. Lengths in mm; level 0 is the upper face of the back plate, level 1
// the lower face of the front plate. What lies beyond the front plate's lower face goes with it, what lies under the back
// plate stays.
import { thicknessOf, type Cylinder, type Thing } from "../bodies/thing.ts";
import { isExempt, sceneOf, type Scene } from "../clearance/gaps.ts";
import { judgeMoving } from "../clearance/moving.ts";
import { heightClear, planClear, relationOf } from "../clearance/pair.ts";
import { severityOf } from "../clearance/severity.ts";
import { facesOverlap } from "../depth/face.ts";
import { MAY_SHARE_HEIGHT } from "../examine/stack.ts";
import { isPossible, type Lift, type Stack } from "../heights/least.ts";
import type { Arbor, Part, Plate } from "../instrument.ts";
import { unevenOf } from "../motion/uneven.ts";
import type { Movement } from "../movement.ts";
import { TOUCH_MM } from "../numeric/tolerance.ts";

/** A height that goes with a level: so much above it. */
export interface End { readonly level: number; readonly off: number }

export interface Levels {
  /** z of the back plate's upper face and of the front plate's lower. */
  readonly base: number;
  readonly top: number;
  readonly stack: Stack;
  /** Lower face of every part, ends of every arbor (by its index). */
  readonly parts: ReadonlyMap<string, End>;
  readonly feet: readonly End[];
  readonly heads: readonly End[];
  /** By arbor whose foot is free: how far its lowest part is drawn above it, to be kept. */
  readonly below: readonly number[];
  /** Pairs too near in plan that no height can part. */
  readonly beyond: readonly (readonly [string, string])[];
}

/** Null where there are no two plates, one over the other. */
export function levelsOf(movement: Movement): Levels | null {
  const frame = framePlates(movement);
  if (frame === null) return null;
  const base = frame.back.z + frame.back.thickness, top = frame.front.z;
  const span: Span = { base, top, ends: (z) => endIn(z, base, top) };
  let count = 2;
  const fresh = () => count++;
  const parts = partEnds(movement, span, fresh);
  const feet = movement.arbors.map(({ arbor }) => armEnd(movement, arbor, "foot", span, fresh));
  const heads = movement.arbors.map(({ arbor }, i) => armEnd(movement, arbor, "head", span, fresh, feet[i]));
  const below = movement.arbors.map(({ arbor }) => lowestOf(arbor) - arbor.foot);
  const lifts = [...withinArbors(movement, parts, feet, heads, span), ...inGear(movement, parts)];
  const must: Stack = { levels: count, lifts, choices: [] };
  const { choices, beyond } = apartOf(movement, must, { parts, feet, heads, span });
  const settled = choices.filter((c) => c.length === 1).map((c) => c[0]);
  return { base, top, parts, feet, heads, below, beyond, stack: { levels: count, lifts: [...lifts, ...settled], choices: choices.filter((c) => c.length > 1) } };
}

interface Span { readonly base: number; readonly top: number; readonly ends: (z: number) => End | null }

const endIn = (z: number, base: number, top: number): End | null =>
  z <= base + TOUCH_MM ? { level: 0, off: z - base } : z >= top - TOUCH_MM ? { level: 1, off: z - top } : null;

/** The plates between which arbors run: the highest that feet run in, and the lowest that heads run in over it; else the two lowest. */
function framePlates(movement: Movement): { back: Plate; front: Plate } | null {
  const plates = [...movement.instrument.frame.plates].sort((a, b) => a.z - b.z);
  const both = movement.arbors.flatMap(({ arbor: { pivots } }) => (pivots?.foot && pivots.head && pivots.foot.plate !== pivots.head.plate ? [pivots] : []));
  const back = plates.filter((p) => both.some((v) => v.foot?.plate === p.id)).at(0) ?? plates[0];
  const front = plates.find((p) => p !== back && p.z >= (back?.z ?? 0) + (back?.thickness ?? 0) && (both.length === 0 || both.some((v) => v.head?.plate === p.id)));
  return back === undefined || front === undefined ? null : { back, front };
}

/** Parts that are fast on one another (a collet at its wheel, a pin and its slot) share a level; what is not between the plates goes with one. */
function partEnds(movement: Movement, span: Span, fresh: () => number): Map<string, End> {
  const ends = new Map<string, End>();
  for (const cluster of clustersOf(movement)) {
    const outside = cluster.map((p) => (p.z >= span.top - TOUCH_MM || p.z + thicknessOf(p) > span.top + TOUCH_MM ? 1 : p.z < span.base - TOUCH_MM ? 0 : -1));
    const level = outside.includes(1) ? 1 : outside.includes(0) ? 0 : fresh();
    const from = level === 1 ? span.top : level === 0 ? span.base : Math.min(...cluster.map((p) => p.z));
    for (const p of cluster) ends.set(p.id, { level, off: p.z - from });
  }
  return ends;
}

function clustersOf(movement: Movement): Part[][] {
  const clusterOf = new Map<string, Part[]>();
  const join = (a: Part, b: Part) => {
    const one = clusterOf.get(a.id) as Part[], other = clusterOf.get(b.id) as Part[];
    if (one === other) return;
    one.push(...other);
    for (const p of other) clusterOf.set(p.id, one);
  };
  for (const { arbor } of movement.arbors) for (const p of arbor.parts) clusterOf.set(p.id, [p]);
  for (const { arbor: { parts } } of movement.arbors)
    parts.forEach((a, i) => parts.slice(i + 1).forEach((b) => {
      if ((MAY_SHARE_HEIGHT.includes(a.kind) || MAY_SHARE_HEIGHT.includes(b.kind)) && touch(a, b)) join(a, b);
    }));
  for (const c of movement.instrument.couplings ?? []) {
    const [pin, slot] = c.kind === "pin and slot" ? [partOf(movement, c.driver), partOf(movement, c.driven)] : [];
    if (pin !== undefined && slot !== undefined) join(pin, slot);
  }
  return [...new Set(clusterOf.values())];
}

function partOf(movement: Movement, id: string): Part | undefined {
  const at = movement.partIndex.get(id);
  return at === undefined ? undefined : movement.arbors[at.arbor].arbor.parts[at.part];
}

const touch = (a: Part, b: Part): boolean => a.z <= b.z + thicknessOf(b) + TOUCH_MM && b.z <= a.z + thicknessOf(a) + TOUCH_MM;

/** An end goes with the plate that its pivot runs in or that it reaches; one between the plates is a level of its own, or, without parts, goes with the other end. */
function armEnd(movement: Movement, arbor: Arbor, which: "foot" | "head", span: Span, fresh: () => number, other?: End): End {
  const z = arbor[which], pivot = arbor.pivots?.[which];
  const plate = pivot && movement.instrument.frame.plates.find((p) => p.id === pivot.plate);
  if (plate !== undefined) return plate.z >= span.top - TOUCH_MM ? { level: 1, off: z - span.top } : { level: 0, off: z - span.base };
  const reached = span.ends(z);
  if (reached !== null) return reached;
  if (arbor.parts.length > 0) return { level: fresh(), off: 0 };
  return other === undefined ? { level: 0, off: z - span.base } : { level: other.level, off: other.off + z - arbor.foot };
}

const lowestOf = (arbor: Arbor): number => arbor.parts.reduce((least, p) => Math.min(least, p.z), Infinity);
const highestOf = (arbor: Arbor): number => arbor.parts.reduce((most, p) => Math.max(most, p.z + thicknessOf(p)), -Infinity);

/** Parts stay between the plates and within their own arbor, and one over another where they may not share height. */
function withinArbors(movement: Movement, parts: ReadonlyMap<string, End>, feet: readonly End[], heads: readonly End[], span: Span): Lift[] {
  const lifts: Lift[] = [];
  const add = (over: End, under: End, by: number) => { if (over.level !== under.level) lifts.push({ over: over.level, under: under.level, by: under.off + by - over.off }); };
  movement.arbors.forEach(({ arbor }, i) => {
    const foot = arbor.foot + (arbor.pivots?.foot?.length ?? 0), head = arbor.head - (arbor.pivots?.head?.length ?? 0);
    const footEnd = { ...feet[i], off: feet[i].off + foot - arbor.foot }, headEnd = { ...heads[i], off: heads[i].off + head - arbor.head };
    const under = feet[i].level > 1 ? Math.max(0, lowestOf(arbor) - foot) : 0, over = heads[i].level > 1 ? Math.max(0, head - highestOf(arbor)) : 0;
    if (feet[i].level > 1) add(feet[i], { level: 0, off: 0 }, 0);
    if (heads[i].level > 1) add({ level: 1, off: 0 }, heads[i], 0);
    for (const p of arbor.parts) {
      const end = parts.get(p.id) as End, upper = { ...end, off: end.off + thicknessOf(p) };
      if (end.level > 1) {
        add(end, { level: 0, off: 0 }, 0);
        add({ level: 1, off: 0 }, upper, 0);
      }
      if (p.z >= foot - TOUCH_MM) add(end, footEnd, under);
      if (p.z + thicknessOf(p) <= head + TOUCH_MM) add(headEnd, upper, over);
    }
  });
  if (span.top > span.base) lifts.push({ over: 1, under: 0, by: 0 });
  return lifts;
}

/** Engaged faces overlap as wanted at the worst of their shakes, as far as the thinner is thick enough. */
function inGear(movement: Movement, parts: ReadonlyMap<string, End>): Lift[] {
  return movement.engagements.flatMap(({ driver, driven, driverArbor, drivenArbor }) => {
    const a = parts.get(driver.id) as End, b = parts.get(driven.id) as End;
    if (a.level === b.level) return [];
    const module = Math.min(movement.teeth.get(driver.id)?.module ?? 1, movement.teeth.get(driven.id)?.module ?? 1);
    const wanted = Math.min(movement.practice.faceOverlap * module, thicknessOf(driver), thicknessOf(driven));
    // With one far over the other the worst overlap tells what the shakes lose that way.
    const lost = (zA: number, zB: number) => {
      const { drawn, worst } = facesOverlap(movement, driverArbor, { ...driver, z: zA }, drivenArbor, { ...driven, z: zB });
      return drawn - worst;
    };
    return [
      { over: b.level, under: a.level, by: a.off - b.off - thicknessOf(driven) + wanted + lost(FAR_MM, 0) },
      { over: a.level, under: b.level, by: b.off - a.off - thicknessOf(driver) + wanted + lost(0, FAR_MM) },
    ];
  });
}

/** Farther than any two faces shake, near enough not to cost a figure. */
const FAR_MM = 4096;

interface Ends { readonly parts: ReadonlyMap<string, End>; readonly feet: readonly End[]; readonly heads: readonly End[]; readonly span: Span }

function apartOf(movement: Movement, must: Stack, ends: Ends): { choices: Lift[][]; beyond: [string, string][] } {
  const scene = sceneOf(movement), uneven = unevenOf(movement);
  const choices = stacksOf(movement, ends.parts), beyond: [string, string][] = [];
  scene.things.forEach((a, i) => {
    for (let j = i + 1; j < scene.things.length; j++) {
      const b = scene.things[j];
      if (a.body === b.body || isExempt(scene, i, j)) continue;
      const mine = pairChoices(scene, ends, a, b);
      if (mine.length === 0) continue;
      const possible = mine.map((c) => c.filter((lift) => lift.over !== lift.under ? isPossible(must, lift) : lift.by <= TOUCH_MM));
      if (possible.some((c) => c.length === 0)) { beyond.push([a.id, b.id]); continue; }
      if (mayBeFollowed(a, b)) {
        const verdict = judgeMoving(movement, uneven, a, b);
        if (verdict.severity === "free" && verdict.way === "plan") continue;
      }
      choices.push(...possible.filter((c) => !c.some((lift) => lift.over === lift.under)));
    }
  });
  return { choices, beyond };
}

const mayBeFollowed = (a: Thing, b: Thing): boolean => [a, b].some((t) => ["pointer", "arm", "pin", "slot", "disc", "square"].includes(t.kind) || t.axis.swings.length > 0);

/** Of two parts of one arbor either is the upper, if they are on levels of their own and may not share height. */
function stacksOf(movement: Movement, parts: ReadonlyMap<string, End>): Lift[][] {
  return movement.arbors.flatMap(({ arbor }) => arbor.parts.flatMap((a, i) => arbor.parts.slice(i + 1).flatMap((b) => {
    const low = parts.get(a.id) as End, other = parts.get(b.id) as End;
    if (low.level === other.level || MAY_SHARE_HEIGHT.includes(a.kind) || MAY_SHARE_HEIGHT.includes(b.kind)) return [];
    return [[over(low, { ...other, off: other.off + thicknessOf(b) }, 0), over(other, { ...low, off: low.off + thicknessOf(a) }, 0)]];
  })));
}

const over = (upper: End, lower: End, by: number): Lift => ({ over: upper.level, under: lower.level, by: lower.off + by - upper.off });

/** For every two cylinders that are not free of one another in plan: the one over the other, or the other over it. */
function pairChoices({ movement }: Scene, ends: Ends, a: Thing, b: Thing): Lift[][] {
  const relation = relationOf(movement, a, b);
  const { planGap, faceGap } = movement.practice;
  const choices: Lift[][] = [];
  for (const ca of a.cylinders) for (const cb of b.cylinders) {
    if (severityOf(planClear(relation, ca, cb).worst, planGap) === "free") continue;
    const lost = (zA: number, zB: number) => {
      const { gap, worst } = heightClear(relation, { ...ca, z0: zA, z1: zA }, { ...cb, z0: zB, z1: zB });
      return Math.max(0, gap - worst);
    };
    const [lowA, highA] = endsOf(movement, ends, a, ca), [lowB, highB] = endsOf(movement, ends, b, cb);
    choices.push([over(lowA, highB, faceGap + lost(FAR_MM, 0)), over(lowB, highA, faceGap + lost(0, FAR_MM))]);
  }
  return choices;
}

/** What the lower and the upper face of a cylinder go with. */
function endsOf(movement: Movement, { parts, feet, heads, span }: Ends, thing: Thing, c: Cylinder): [End, End] {
  if (thing.part >= 0) {
    const low = parts.get(thing.id) as End;
    return [low, { ...low, off: low.off + c.z1 - c.z0 }];
  }
  if (thing.arbor >= 0) {
    const { arbor } = movement.arbors[thing.arbor], foot = feet[thing.arbor], head = heads[thing.arbor];
    const footTo = arbor.foot + (arbor.pivots?.foot?.length ?? 0);
    const at = (z: number): End => (z <= footTo ? { ...foot, off: foot.off + z - arbor.foot } : { ...head, off: head.off + z - arbor.head });
    return [at(c.z0), at(c.z1)];
  }
  const fixed = (z: number): End => (z >= span.top - TOUCH_MM && thing.kind !== "case" ? { level: 1, off: z - span.top } : { level: 0, off: z - span.base });
  const low = fixed(c.z0);
  return thing.kind === "plate" ? [low, { ...low, off: low.off + c.z1 - c.z0 }] : [low, fixed(c.z1)];
}
