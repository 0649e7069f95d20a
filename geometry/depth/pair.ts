// One engaged pair taken out of its movement: both sets of teeth with the parts in the hand, the distance as it stands,
// and how much nearer and farther run-out and sideshake let it come. Lengths in mm.
import { type Engagement, isToothed, type Part } from "../instrument.ts";
import type { Movement, WorkedEngagement } from "../movement.ts";
import { drawnTipRadius, rootRadius, tipRadiusOf } from "../teeth/forms.ts";
import type { Teeth } from "../teeth/teeth.ts";
import type { InvolutePair } from "./involute.ts";

export interface Pair {
  readonly driver: Side;
  readonly driven: Side;
  readonly annulus: "driver" | "driven" | null;
  /** The driven's; both have the same where they agree. */
  readonly moduleMm: number;
  readonly distanceMm: number;
  /** With ease; null where the teeth have no working distance. */
  readonly computedMm: number | null;
  /** Both run-outs together. */
  readonly runoutMm: number;
  /** Half of both sideshakes; what both axes share by riding on the same arbor is left out. */
  readonly sideshakeMm: number;
  /** They do not agree in module, form or pressure angle. */
  readonly isUnequal: boolean;
  /** Why the two cannot work at any distance, in words; null where they can. */
  readonly fault: string | null;
}

export interface Side {
  readonly id: string;
  readonly teeth: Teeth;
  readonly tipRadiusMm: number;
  /** −Infinity: no root. */
  readonly rootRadiusMm: number;
  readonly runoutMm: number;
}

export function pairOf(movement: Movement, index: number): Pair {
  const e = movement.engagements[index];
  const driver = sideOf(movement, e.engagement, "driver"), driven = sideOf(movement, e.engagement, "driven");
  return {
    driver, driven,
    annulus: driven.teeth.internal ? "driven" : driver.teeth.internal ? "driver" : null,
    moduleMm: driven.teeth.module,
    distanceMm: e.distance,
    computedMm: e.computed,
    runoutMm: driver.runoutMm + driven.runoutMm,
    sideshakeMm: sideshakeBetween(movement, e) / 2,
    isUnequal: disagreementOf(driver.teeth, driven.teeth) !== null,
    fault: faultOf(driver.teeth, driven.teeth, e.computed),
  };
}

/** What two engaged sets of teeth do not agree in, in words; null where they agree. */
export function disagreementOf(a: Teeth, b: Teeth): string | null {
  if (a.module !== b.module) return `module ${a.module} against ${b.module}`;
  if (a.form === "lantern" || b.form === "lantern") return null;
  if (a.form !== b.form) return `${a.form} teeth against ${b.form}`;
  // Clock teeth have no pressure angle of their own, so a figure that stands there is not judged.
  if (a.form !== "cycloidal" && a.pressureAngleDeg !== b.pressureAngleDeg)
    return `pressure angle ${a.pressureAngleDeg}° against ${b.pressureAngleDeg}°`;
  return null;
}

/** mm by which deep is reached from the distance as it stands, by both run-outs and half of both sideshakes. */
export const shakeOf = (pair: Pair): number => pair.runoutMm + pair.sideshakeMm;

/** The distance moved so far to the deep side: nearer, or for an annulus farther; negative to the shallow side. */
export const deeperBy = (pair: Pair, mm: number, from = pair.distanceMm): number =>
  pair.annulus ? from + mm : from - mm;

/** The least from a tip to the other's root on the line of centres. */
export function tipToRootMm(pair: Pair, distanceMm: number): number {
  const { driver, driven } = pair;
  if (!pair.annulus)
    return distanceMm - Math.max(driver.tipRadiusMm + driven.rootRadiusMm, driven.tipRadiusMm + driver.rootRadiusMm);
  const [ring, pinion] = pair.annulus === "driven" ? [driven, driver] : [driver, driven];
  return Math.min(ring.rootRadiusMm - pinion.tipRadiusMm, ring.tipRadiusMm - pinion.rootRadiusMm) - distanceMm;
}

/** The driven's share of the distance: the radius at which its arc is counted. */
export function workingRadiusMm(pair: Pair, distanceMm: number): number {
  const z1 = pair.driver.teeth.count, z2 = pair.driven.teeth.count;
  const counts = pair.annulus ? Math.abs(z2 - z1) : z1 + z2;
  return counts === 0 ? 0 : (distanceMm * z2) / counts;
}

/** The pair for the closed formulas, or null where either is not an involute. */
export function involutePairOf(pair: Pair): InvolutePair | null {
  const { driver, driven } = pair;
  if (driver.teeth.form !== "involute" || driven.teeth.form !== "involute") return null;
  const [first, second] = pair.annulus === "driver" ? [driven, driver] : [driver, driven];
  return {
    moduleMm: pair.moduleMm, pressureAngleDeg: driven.teeth.pressureAngleDeg, internal: pair.annulus !== null,
    first: gearOf(first), second: gearOf(second),
  };
}

/** A toothed part's distance from its centre to the axis it turns on: measured, else the practice's. */
const runoutOf = (movement: Movement, part: Part): number =>
  isToothed(part) ? (part.measured?.runout ?? movement.practice.runout) : 0;

/** Arbors that only one of two axes rides on, itself included: what both share moves them together. */
export function unsharedArbors(movement: Movement, a: number, b: number): readonly [readonly number[], readonly number[]] {
  const ofA = [a, ...movement.arbors[a].chain], ofB = [b, ...movement.arbors[b].chain];
  return [ofA.filter((i) => !ofB.includes(i)), ofB.filter((i) => !ofA.includes(i))];
}

const gearOf = ({ teeth, tipRadiusMm }: Side) =>
  ({ count: teeth.count, shift: teeth.shift, thinning: teeth.thinning, tipRadiusMm });

function sideOf(movement: Movement, engagement: Engagement, which: "driver" | "driven"): Side {
  const id = engagement[which];
  const at = movement.partIndex.get(id), teeth = movement.teeth.get(id);
  if (!at || !teeth) throw new Error(`an engaged part with teeth was expected, not ${id}`);
  const part = movement.arbors[at.arbor].arbor.parts[at.part];
  // A wheel runs between a lantern's shrouds, with its trundles; and there is no bottom for its tips to meet.
  const runoutMm = runoutOf(movement, part);
  if (!isToothed(part) || part.kind === "lantern") return { id, teeth, runoutMm, tipRadiusMm: drawnTipRadius(teeth), rootRadiusMm: -Infinity };
  return { id, teeth, runoutMm, tipRadiusMm: tipRadiusOf(part, teeth), rootRadiusMm: rootRadius(teeth) };
}

function sideshakeBetween(movement: Movement, e: WorkedEngagement): number {
  const [a, b] = unsharedArbors(movement, e.driverArbor, e.drivenArbor);
  return [...a, ...b].reduce((sum, i) => sum + movement.arbors[i].ownSideshake, 0);
}

function faultOf(driver: Teeth, driven: Teeth, computed: number | null): string | null {
  const disagreement = disagreementOf(driver, driven);
  if (disagreement) return `they do not agree: ${disagreement}`;
  if (driver.internal && driven.internal) return "two annuli cannot work together";
  if (driver.form === "lantern" && driven.form === "lantern") return "two lanterns cannot work together";
  const [ring, pinion] = driven.internal ? [driven, driver] : [driver, driven];
  if (ring.internal && ring.count <= pinion.count) return "the annulus is no larger than its pinion";
  return computed === null ? "with these shifts there is no working distance" : null;
}
