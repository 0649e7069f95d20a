// `gap`: two things on different bodies that come too near. The figures are those of geometry/clearance; here they get
// their words and their place.
import { ownReach } from "../bodies/axis.ts";
import { radiusOf, type Thing, type ThingKind } from "../bodies/thing.ts";
import { allGapsOf, gapsOf, type JudgedPair, type Scene } from "../clearance/gaps.ts";
import { judgeMoving, type Meeting, type MovingVerdict } from "../clearance/moving.ts";
import { placeOf } from "../clearance/where.ts";
import type { Depth } from "../depth/depth.ts";
import { playBetween, type Ways, waysOf } from "../depth/lost-motion.ts";
import type { Finding, When } from "../finding.ts";
import { unevenOf } from "../motion/uneven.ts";
import type { Movement } from "../movement.ts";
import { toRad } from "../numeric/angle.ts";
import { rootRadius } from "../teeth/forms.ts";
import { mm } from "./engaged.ts";
import { capital, nameOf } from "./words.ts";

export interface GapFindings {
  readonly findings: readonly Finding[];
  /** Pairs that were examined and are free, listed or not. */
  readonly free: number;
}

/** What tells how far an arbor can turn with the input held. */
interface Play { readonly depths: readonly Depth[]; readonly ways: Ways }

type FollowedPair = Omit<JudgedPair, "verdict"> & { readonly verdict: MovingVerdict };

/** Findings without remedies, the free ones too where they are asked for; up to a turn of the input. Gives the part of the pairs that is done. */
export function* gapFindings(scene: Scene, all: boolean, depths: readonly Depth[], untilTurns: number): Generator<number, GapFindings, void> {
  const { pairs, examined } = all ? allGapsOf(scene) : gapsOf(scene);
  const uneven = unevenOf(scene.movement), play: Play = { depths, ways: waysOf(scene.movement) };
  const findings: Finding[] = [];
  for (const [i, pair] of pairs.entries()) {
    const verdict = judgeMoving(scene.movement, uneven, pair.a, pair.b, untilTurns);
    if (all || verdict.severity !== "free") findings.push(gapFinding(scene.movement, { ...pair, verdict }, play));
    yield (i + 1) / pairs.length;
  }
  return { findings, free: examined - findings.filter((f) => f.severity !== "free").length };
}

function gapFinding(movement: Movement, { a, b, verdict }: FollowedPair, play: Play): Finding {
  const [first, second] = inOrder(a, b);
  const { severity, way, gap, worst, wanted, meeting } = verdict;
  const at = placeOf(a, b, verdict.cylinders);
  return {
    code: "gap", severity, between: [first.id, second.id], way, gap, worst, wanted, at: meeting === null ? at : { ...at, ...meeting.place },
    when: meeting === null ? null : whenOf(movement, a, b, meeting, play),
    says: wordsOf(nameOf(movement, first), nameOf(movement, second), verdict) + untoldArms(movement, first, second, verdict), remedies: [],
  };
}

/** That a crossed wheel was taken as solid, where the other reaches in under its rim and the file does not say how its arms stand. */
function untoldArms(movement: Movement, a: Thing, b: Thing, { severity, plan }: MovingVerdict): string {
  const wheel = [a, b].find((t) => {
    const part = movement.arbors[t.arbor]?.arbor.parts[t.part];
    const teeth = part && movement.teeth.get(part.id);
    return part?.kind === "wheel" && part.crossings !== undefined && part.crossings.angle === undefined && teeth !== undefined
      && radiusOf(t) + plan.gap < rootRadius(teeth) - part.crossings.rim;
  });
  return severity === "free" || wheel === undefined ? "" : `; ${wheel.id} is taken as solid: give its crossings an angle and its arms are followed`;
}

const RANK: Partial<Record<ThingKind, number>> = { arbor: 1, pillar: 2, plate: 3, case: 4 };

/** Parts first, then bare arbors, pillars, plates and the case; of one sort by id. So the order of the file plays no part. */
function inOrder(a: Thing, b: Thing): [Thing, Thing] {
  const rank = (RANK[a.kind] ?? 0) - (RANK[b.kind] ?? 0);
  return rank < 0 || (rank === 0 && a.id < b.id) ? [a, b] : [b, a];
}

function wordsOf(first: string, second: string, verdict: MovingVerdict): string {
  const { meeting, proved } = verdict, pair = capital(first);
  if (meeting !== null) return meetingWords(pair, second, verdict, meeting);
  if (!proved) return `${sweptWords(pair, second, verdict)}; as swept solids: their true outlines could not be followed to the end`;
  return sweptWords(pair, second, verdict);
}

function sweptWords(pair: string, second: string, { severity, way, gap, worst, wanted }: MovingVerdict): string {
  const inWay = way === "plan" ? "in plan" : "in height";
  if (severity === "free") return `${pair} clears ${second} by ${mm(worst)} ${inWay} at the worst`;
  if (severity === "tight") return `${pair} clears ${second} by only ${mm(worst)} ${inWay} at the worst, ${mm(wanted)} is wanted`;
  if (gap < 0) return `${pair} fouls ${second} by ${mm(-gap)} ${inWay}`;
  return `${pair} can foul ${second} by ${mm(-worst)} ${inWay} at the worst of the shakes, ${mm(gap)} clear as drawn`;
}

function meetingWords(pair: string, second: string, { severity, gap, worst, wanted }: MovingVerdict, { turns, every }: Meeting): string {
  const often = `first at turn ${turns.toFixed(2)}, and again every ${every === "1" ? "turn" : `${every} turns`}`;
  if (severity === "tight") return `${pair} comes within ${mm(worst)} of ${second} at the worst, ${mm(wanted)} is wanted; ${often}`;
  return gap < 0 ? `${pair} meets ${second}, ${mm(-gap)} deep, ${often}` : `${pair} can meet ${second} at the worst of the shakes, ${often}`;
}

function whenOf(movement: Movement, a: Thing, b: Thing, { turns, nearest, every, shortAtRest }: Meeting, play: Play): When {
  const playMm = playOf(movement, a, play) + playOf(movement, b, play);
  return { turns, nearest, every, lostMotion: playMm >= shortAtRest };
}

/** mm by which lost motion alone lets the farthest of a thing move with the input held: its own arbor's, and its carriers'. */
function playOf(movement: Movement, thing: Thing, { depths, ways }: Play): number {
  if (thing.arbor < 0) return 0;
  const { chain } = movement.arbors[thing.arbor];
  const reaches = [[thing.arbor, radiusOf(thing)], ...chain.map((on) => [on, ownReach(thing.axis).greatest])];
  return reaches.reduce((sum, [arbor, reachMm]) => sum + toRad(playBetween(movement, arbor, null, depths, ways) ?? 0) * reachMm, 0);
}
