// "I have already spoiled this": the ways out of what fouls, given what is made. For every foul the changes that could cure
// it are carried out and examined; those are kept after which it is gone and nothing is found that was not there before,
// the cheapest first by what must be made otherwise. Then one after another the cheapest ways, until nothing fouls or no
// way is left. Lengths in mm.
import { sceneOf, type Scene } from "../clearance/gaps.ts";
import { judge } from "../clearance/pair.ts";
import { examine } from "../examine/sheet.ts";
import { applied } from "../examine/applied.ts";
import { remediesFor } from "../examine/remedies.ts";
import type { Finding, Remedy, Severity, Sheet } from "../finding.ts";
import type { Instrument } from "../instrument.ts";
import type { Movement, WorkedEngagement } from "../movement.ts";
import { workOut } from "../workout.ts";
import { boredTo, heatsSwapped, partAt, raisedBy, smaller, thicker, thinner, type Change, type Work } from "./changes.ts";
import { findPlaces } from "./places.ts";
import { alike, depthed, eased, recounted, topped } from "./teeth.ts";

export interface WayOut extends Change {
  /** What it costs, by what must be made otherwise; only good for comparing. */
  readonly cost: number;
  readonly counts: Sheet["counts"];
}

export interface WaysOut {
  readonly finding: Finding;
  /** The cheapest first; none where none was found. */
  readonly ways: readonly WayOut[];
}

export interface AllWaysOut {
  /** By foul, the gravest first. */
  readonly fouls: readonly WaysOut[];
  /** The cheapest found, one after another, and the instrument after them all. */
  readonly inTurn: readonly WayOut[];
  readonly instrument: Instrument;
  readonly counts: Sheet["counts"];
}

export interface WaysStep {
  /** From 0 to 1. */
  readonly done: number;
  readonly best: AllWaysOut;
}

/** What making something otherwise costs: a figure drawn, a part set, a hole drilled, a piece turned, teeth cut, a wheel divided anew. */
const COST: Record<Work, number> = { drawing: 1, setting: 2, hole: 3, turning: 4, cutting: 7, count: 10 };
/** Fouls looked at, and ways kept for each. */
const MOST_FOULS = 12, MOST_WAYS = 5;
/** Beginnings of a search for places, where nothing simpler helps. */
const TRIES = 4;

/** Step by step, the last step done. */
export function* searchWaysOut(instrument: Instrument): Generator<WaysStep, AllWaysOut, void> {
  const movement = workOut(instrument), sheet = examine(movement, { thorough: true });
  const fouls = sheet.findings.filter((f) => f.severity === "foul").slice(0, MOST_FOULS);
  const found: WaysOut[] = [];
  let best: AllWaysOut = { fouls: found, inTurn: [], instrument, counts: sheet.counts };
  for (const finding of fouls) {
    found.push({ finding, ways: waysFor(movement, sheet, finding) });
    best = { ...best, fouls: [...found] };
    yield { done: found.length / (2 * fouls.length), best };
  }
  for (let turn = 0; turn < fouls.length; turn++) {
    const way = cheapestNow(workOut(best.instrument));
    if (way === null) break;
    best = { ...best, inTurn: [...best.inTurn, way], instrument: way.instrument, counts: way.counts };
    yield { done: 0.5 + (turn + 1) / (2 * fouls.length), best };
  }
  yield { done: 1, best };
  return best;
}

/** The whole search at once. */
export function waysOut(movement: Movement): AllWaysOut {
  const search = searchWaysOut(movement.instrument);
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
}

/** The cheapest way out of the gravest foul that has one. */
function cheapestNow(movement: Movement): WayOut | null {
  const sheet = examine(movement, { thorough: true });
  for (const finding of sheet.findings) {
    if (finding.severity !== "foul") break;
    const [way] = waysFor(movement, sheet, finding);
    if (way !== undefined) return way;
  }
  return null;
}

function waysFor(movement: Movement, sheet: Sheet, finding: Finding): WayOut[] {
  const before = new Map(sheet.findings.map((f) => [keyOf(f), f.severity]));
  const tried = (changes: readonly Change[]) => changes.flatMap((change) => {
    const worked = workOut(change.instrument), after = examine(worked);
    if (!cures(movement, worked, finding, before, after)) return [];
    return [{ ...change, counts: after.counts, cost: change.remade.reduce((sum, r) => sum + COST[r.work], 0) }];
  });
  const simple = tried(changesFor(movement, finding));
  const ways = simple.length > 0 || !["gap", "edge", "pivot", "distance", "depth"].includes(finding.code) ? simple : tried(plantedAnew(movement));
  return ways.sort((a, b) => a.cost - b.cost).slice(0, MOST_WAYS);
}

const keyOf = (f: Finding): string => `${f.code} ${f.between.join(" ")}`;
const RANK: Record<Severity, number> = { free: 0, tight: 1, foul: 2 };

/** The finding is gone, nothing stands worse than it did, and nothing that is shown turns otherwise. */
function cures(movement: Movement, worked: Movement, finding: Finding, before: ReadonlyMap<string, Severity>, after: Sheet): boolean {
  const own = keyOf(finding);
  if (after.findings.some((f) => keyOf(f) === own || RANK[f.severity] > RANK[before.get(keyOf(f)) ?? "free"])) return false;
  return worked.displays.every((d, i) => d.wanted !== null || String(d.rate) === String(movement.displays[i].rate));
}

function changesFor(movement: Movement, finding: Finding): Change[] {
  const remedies = finding.code === "gap" ? remediesFor(movement, finding) : finding.remedies;
  const moves = remedies.map((r) => moved(movement, r));
  const pair = engagementOf(movement, finding);
  switch (finding.code) {
    case "gap": return [...moves, ...gapChanges(movement, finding)];
    case "stack": return [...moves, ...stackChanges(movement, finding)];
    case "depth": return [...moves, ...(pair === null ? [] : [...depthed(movement, pair), ...recounted(movement, pair)])];
    case "run-off": return [...moves, ...(pair === null ? [] : runOffChanges(movement, finding, pair))];
    case "unequal": return [...moves, ...(pair === null ? [] : alike(movement, pair))];
    case "reverted": return [...moves, ...revertedChanges(movement, finding)];
    case "pipe": return [...moves, ...pipeChanges(movement, finding)];
    case "heat": return [...moves, ...heatChanges(movement, finding)];
    case "pivot": return [...moves, ...pivotChanges(movement, finding)];
    default: return moves;
  }
}

/** A remedy as a change: a part is set at another height, or holes are drilled elsewhere. */
function moved(movement: Movement, remedy: Remedy): Change {
  const work = "z" in remedy.by ? "setting" as const : "hole" as const;
  const remade = [remedy.move, ...(remedy.with ?? []).map((f) => f.move)].map((id) => ({ id, work }));
  return { says: remedy.says, instrument: onlyMoved(movement, applied(movement, remedy), new Set(remade.map((r) => r.id))), remade };
}

/** Places that were left to the solver stay with it. */
function onlyMoved({ instrument }: Movement, changed: Instrument, ids: ReadonlySet<string>): Instrument {
  return { ...changed, arbors: changed.arbors.map((a, i) => (ids.has(a.id) ? a : { ...instrument.arbors[i], parts: a.parts })) };
}

const engagementOf = (movement: Movement, { between: [a, b] }: Finding): WorkedEngagement | null =>
  movement.engagements.find((e) => e.driver.id === a && e.driven.id === b) ?? null;

/** What lacks in plan or in height taken off the one or the other, or other counts on a wheel that is in the way. */
function gapChanges(movement: Movement, finding: Finding): Change[] {
  const scene = sceneOf(movement), lacks = lacking(scene, finding);
  if (lacks === null) return [];
  return finding.between.flatMap((id) => {
    const at = partAt(movement, id);
    if (at === null) return [];
    const pairs = movement.engagements.filter((e) => e.driver.id === id || e.driven.id === id);
    return [
      ...smaller(movement, at.arbor, at.part, 2 * lacks.plan), ...thinner(movement, at.part, lacks.height),
      ...topped(movement, at.part, lacks.plan), ...pairs.flatMap((e) => recounted(movement, e)),
    ];
  });
}

function lacking({ movement, things }: Scene, { between }: Finding): { plan: number; height: number } | null {
  const [a, b] = between.map((id) => things.find((t) => t.id === id));
  if (a === undefined || b === undefined) return null;
  const { plan, height } = judge(movement, a, b);
  const { planGap, faceGap } = movement.practice;
  return { plan: planGap - plan.worst, height: faceGap - height.worst };
}

function stackChanges(movement: Movement, { between, gap = 0 }: Finding): Change[] {
  const [lower, upper] = between.map((id) => partAt(movement, id)?.part);
  if (lower === undefined || upper === undefined) return [];
  return [
    raisedBy(movement, upper, -gap), raisedBy(movement, lower, gap),
    ...thinner(movement, lower, -gap).slice(0, 1), ...thinner(movement, upper, -gap).slice(1),
  ];
}

/** Either face brought to the other, or made wide enough to reach it. */
function runOffChanges(movement: Movement, { worst = 0, wanted = 0 }: Finding, { driver, driven }: WorkedEngagement): Change[] {
  const lacks = wanted - worst;
  return [driver, driven].flatMap((p) => [raisedBy(movement, p, lacks), raisedBy(movement, p, -lacks), ...thicker(movement, p, lacks)]);
}

/** Every pair on the two axes eased to the distance of one of them. */
function revertedChanges(movement: Movement, { between }: Finding): Change[] {
  const pairs = movement.engagements.filter((e) => between.includes(e.id));
  return pairs.flatMap((to) => {
    if (to.computed === null) return [];
    let change: Change = { says: "", instrument: movement.instrument, remade: [] };
    for (const e of pairs) {
      if (e === to) continue;
      const [next] = eased({ ...movement, instrument: change.instrument }, e, to.computed);
      if (next === undefined) return [];
      change = { says: [change.says, next.says].filter((s) => s !== "").join(", "), instrument: next.instrument, remade: [...change.remade, ...next.remade] };
    }
    return [change];
  });
}

function pipeChanges(movement: Movement, { between: [pipe], wanted, gap }: Finding): Change[] {
  const worked = movement.arbors[movement.arborIndex.get(pipe) ?? -1];
  if (worked?.arbor.bore === undefined || wanted === undefined || gap === undefined) return [];
  return [boredTo(movement, worked.arbor, Math.round((worked.arbor.bore + wanted - gap) * 1e6) / 1e6)];
}

function heatChanges(movement: Movement, { between: [a, b] }: Finding): Change[] {
  const one = partAt(movement, a), other = partAt(movement, b);
  return one === null || other === null ? [] : heatsSwapped(movement, one.part, other.part);
}

/** Pivots that are too short, or shoulders that leave no endshake: pivots turned longer, the shoulders standing or drawn back. */
function pivotChanges(movement: Movement, { between: [id] }: Finding): Change[] {
  const worked = movement.arbors[movement.arborIndex.get(id) ?? -1];
  const { foot, head } = worked?.arbor.pivots ?? {};
  if (worked === undefined || foot === undefined || head === undefined) return [];
  const { arbor, ownShake } = worked, wanted = arbor.endshake ?? movement.practice.endshake;
  const lacks = Math.max(0, wanted - ownShake.up - ownShake.down), longer = worked.ownShake.up + worked.ownShake.down + lacks;
  const change = (says: string, by: Partial<typeof arbor>): Change =>
    ({ says, instrument: { ...movement.instrument, arbors: movement.instrument.arbors.map((a) => (a.id === id ? { ...a, ...by } : a)) }, remade: [{ id, work: "turning" }] });
  return [
    change(`Turn the shoulder at the foot of ${id} back`, { pivots: { foot: { ...foot, length: foot.length + lacks }, head } }),
    change(`Turn the shoulder at the head of ${id} back`, { pivots: { foot, head: { ...head, length: head.length + lacks } } }),
    change(`Make both pivots of ${id} longer`, {
      foot: arbor.foot - longer, head: arbor.head + longer,
      pivots: { foot: { ...foot, length: foot.length + longer }, head: { ...head, length: head.length + longer } },
    }),
  ];
}

/** All holes that are not made, planted anew. */
function plantedAnew(movement: Movement): Change[] {
  const found = findPlaces(movement.instrument, { tries: TRIES });
  const holes = workOut(found.instrument).arbors.filter((a, i) => Math.hypot(a.x - movement.arbors[i].x, a.y - movement.arbors[i].y) > 0 && a.chain.length === 0);
  if (holes.length === 0) return [];
  return [{ says: `Plant ${holes.map((a) => a.id).join(", ")} anew`, instrument: found.instrument, remade: holes.map((a) => ({ id: a.id, work: "hole" as const })) }];
}
