// Everything that depthing one pair tells: how it runs at a distance, between what distances it may stand, and in words
// what a maker would feel. Null, and said, is what cannot be worked out. Lengths in mm.
import type { Practice } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { toDeg } from "../numeric/angle.ts";
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";
import { type Contact, contactAt } from "./contact.ts";
import { type Cycle, cycleOf } from "./cycle.ts";
import { type Figures, figuresOf } from "./figures.ts";
import { flanksOf } from "./holding.ts";
import { involuteSpan } from "./involute.ts";
import { deeperBy, involutePairOf, type Pair, pairOf, tipToRootMm, workingRadiusMm } from "./pair.ts";
import { freeArcsOf } from "./phases.ts";
import { holeToleranceOf, type Window, windowOf } from "./window.ts";

export type State = "deep" | "right" | "shallow";

export interface Depthing {
  readonly id: string;
  readonly distance: number;
  readonly computed: number | null;
  /** By the maker's practice for backlash as it stands. */
  readonly state: State | null;
  /** mm along the driven's working pitch circle, with both run-outs. */
  readonly backlash: { readonly tightest: number | null; readonly slackest: number | null };
  readonly contactRatio: number | null;
  /** Pitches before (negative) and after the line of centres. */
  readonly contact: { readonly begins: number | null; readonly ends: number | null };
  /** The driven's rate over its mean, over one pitch. */
  readonly rate: { readonly least: number | null; readonly most: number | null };
  /** Arcminutes of the driven about its mean, over one pitch. */
  readonly lead: { readonly least: number | null; readonly most: number | null };
  /** Tip to root as it stands. */
  readonly tipClearance: number | null;
  readonly butting: boolean | null;
  readonly window: Window;
  readonly holeTolerance: number | null;
  readonly says: string;
}

/** A pair over one pitch, phase by phase, and round its whole cycle: what a depthing sheet draws. */
export interface Running {
  readonly contact: Contact | null;
  readonly cycle: Cycle | null;
}

/** Steps over one pitch of the driver. */
const PHASES = 240;

/** A pair of a movement depthed, at the distance as it stands or at another. */
export function depthingOf(movement: Movement, index: number, distanceMm = movement.engagements[index].distance): Depthing {
  const pair = { ...pairOf(movement, index), distanceMm };
  const figures = figuresOf(pair);
  return depthing(movement.engagements[index].id, pair, figures, movement.practice, windowOf(pair, movement.practice, figures));
}

/** How it runs there, in full. */
export function runningOf(movement: Movement, index: number, distanceMm = movement.engagements[index].distance): Running {
  const pair = { ...pairOf(movement, index), distanceMm };
  const figures = figuresOf(pair);
  return {
    contact: figures && contactAt(flanksOf(pair), distanceMm, PHASES),
    cycle: figures && cycleOf(pair, figures, distanceMm),
  };
}

function depthing(id: string, pair: Pair, figures: Figures | null, practice: Practice, window: Window): Depthing {
  const { distanceMm } = pair;
  const contact = figures && contactAt(flanksOf(pair), distanceMm, PHASES);
  const standing = figures && figures.standing(distanceMm);
  const state = standing && stateOf(pair, standing.countedModules, practice);
  const tipClearance = pair.fault === null ? finite(tipToRootMm(pair, distanceMm)) : null;
  const holeTolerance = holeToleranceOf(window, distanceMm);
  const lead = contact && Array.from(contact.leadRad, (rad) => 60 * toDeg(rad));
  return {
    id, distance: distanceMm, computed: pair.computedMm, state,
    backlash: backlashOf(pair, figures),
    contactRatio: standing && standing.contactRatio,
    contact: spanOf(pair, contact),
    rate: leastAndMost(contact && contact.rate), lead: leastAndMost(lead),
    tipClearance, butting: contact && contact.butting, window, holeTolerance,
    says: saysOf(pair, state, contact, tipClearance, window, holeTolerance),
  };
}

/** Deep and shallow where there is too little or too much backlash to meet the practice, or none to be had at all. */
function stateOf(pair: Pair, counted: number | null, { backlash: [least, most] }: Practice): State {
  if (counted === null) {
    const opening = pair.annulus ? (pair.computedMm ?? 0) - pair.distanceMm : pair.distanceMm - (pair.computedMm ?? 0);
    return opening < 0 ? "deep" : "shallow";
  }
  const rounding = AT_LIMIT_MM / pair.moduleMm;
  return counted < least - rounding ? "deep" : counted > most + rounding ? "shallow" : "right";
}

/** The least of the free arc where both run-outs bring the axes deeper, the most of it where they draw them apart. */
function backlashOf(pair: Pair, figures: Figures | null): Depthing["backlash"] {
  if (figures === null) return { tightest: null, slackest: null };
  const tight = deeperBy(pair, pair.runoutMm), slack = deeperBy(pair, -pair.runoutMm);
  if (involutePairOf(pair)) return { tightest: figures.backlashMm(tight), slackest: figures.backlashMm(slack) };
  const arcs = freeArcsOf(flanksOf(pair), PHASES).all(slack);
  return { tightest: figures.backlashMm(tight), slackest: arcs && arcs.reduce((a, b) => Math.max(a, b)) * workingRadiusMm(pair, slack) };
}

function spanOf(pair: Pair, contact: Contact | null): Depthing["contact"] {
  const involute = involutePairOf(pair);
  if (!involute || pair.fault !== null) return { begins: contact && contact.begins, ends: contact && contact.ends };
  const span = involuteSpan(involute, pair.distanceMm);
  if (span === null) return { begins: null, ends: null };
  const { byFirst, bySecond } = span;
  return pair.annulus === "driver" ? { begins: -byFirst, ends: bySecond } : { begins: -bySecond, ends: byFirst };
}

function leastAndMost(values: ArrayLike<number> | null): { least: number | null; most: number | null } {
  if (values === null) return { least: null, most: null };
  let least = Infinity, most = -Infinity;
  for (let i = 0; i < values.length; i++) {
    least = Math.min(least, values[i]);
    most = Math.max(most, values[i]);
  }
  return { least, most };
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

function saysOf(
  pair: Pair, state: State | null, contact: Contact | null, tipClearance: number | null, window: Window, holeTolerance: number | null,
): string {
  const names = `${pair.driver.id} and ${pair.driven.id}`;
  if (pair.fault !== null) return `${names} cannot work: ${pair.fault}`;
  if (contact === null && state === "deep") return `${names} stand too close at ${written(pair.distanceMm)} mm to touch as teeth`;
  if (contact === null) return `${names} do not reach one another at ${written(pair.distanceMm)} mm`;
  const how = [`${names} stand ${state === "right" ? "at a right depth" : state}`];
  if (contact.butting) how.push("a tip meets a tip instead of entering its space");
  if (tipClearance !== null && tipClearance <= 0) how.push("a tip meets a root");
  if (contact.ratio < 1) how.push("one tooth leaves before the next takes over");
  if (window.nearest === null) how.push("with these shakes no distance lets them work");
  else if (holeTolerance === null) how.push("with these shakes no distance meets the practice");
  else if (holeTolerance < 0) how.push(`${written(-holeTolerance)} mm outside what the practice allows`);
  else how.push(`the hole may stray ${written(holeTolerance)} mm`);
  return how.join("; ");
}

const written = (mm: number): string => String(Number(mm.toFixed(3)));
