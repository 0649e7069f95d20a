// The examiner's sheet: everything that is found out about a movement, gravest first. Pure; the screen, the terminal and
// the JSON all show what this gives.
import { sceneOf } from "../clearance/gaps.ts";
import { depthsOf, type Depth } from "../depth/depth.ts";
import { faceOverlapOf } from "../depth/face.ts";
import { lostMotionOf, waysOf } from "../depth/lost-motion.ts";
import type { Finding, Severity, Sheet } from "../finding.ts";
import type { Movement, WorkedArbor } from "../movement.ts";
import { isZero, toNumber, writeRatio } from "../numeric/ratio.ts";
import { bindFindings } from "./bind.ts";
import { clickFindings } from "./click.ts";
import { depthFindings } from "./depth.ts";
import { driftFindings, senseFindings } from "./display.ts";
import { distanceFindings } from "./distance.ts";
import { dividingFindings } from "./dividing.ts";
import { edgeFindings } from "./edge.ts";
import { entryOf } from "./entry.ts";
import { gapFindings } from "./gap.ts";
import { heatFindings } from "./heat.ts";
import { idleFindings } from "./idle.ts";
import { lostMotionFindings } from "./lost-motion.ts";
import { gravestFirst } from "./order.ts";
import { pinFindings } from "./pin.ts";
import { pipeFindings } from "./pipe.ts";
import { pivotFindings } from "./pivot.ts";
import { withRemedies } from "./remedies.ts";
import { revertedFindings } from "./reverted.ts";
import { runOffFindings } from "./run-off.ts";
import { stackFindings } from "./stack.ts";
import { undercutFindings } from "./undercut.ts";
import { unequalFindings } from "./unequal.ts";

/** One file a code, each giving all that it examines, the free ones too. */
const FAMILIES: readonly ((movement: Movement, depths: readonly Depth[]) => readonly Finding[])[] = [
  stackFindings, depthFindings, unequalFindings, distanceFindings, revertedFindings, undercutFindings, runOffFindings,
  idleFindings, bindFindings, senseFindings, driftFindings, lostMotionFindings, pivotFindings, edgeFindings, pipeFindings,
  heatFindings, dividingFindings, pinFindings, clickFindings,
];

export interface HowToExamine {
  /** List what is free too. */
  readonly all?: boolean;
  /** Seek cures also where other arbors would have to follow; takes longer, nothing else differs. */
  readonly thorough?: boolean;
  /** Follow true outlines only up to this turn of the input: what comes later is free. */
  readonly until?: number;
}

/** Everything that is found out about a movement. */
export function examine(movement: Movement, how: HowToExamine = {}): Sheet {
  const steps = examineSteps(movement, how);
  for (let step = steps.next(); ; step = steps.next()) if (step.done === true) return step.value;
}

/** Likewise, giving between steps the part (0 to 1) of the pairs that is done. */
export function* examineSteps(movement: Movement, { all = false, thorough = false, until = Infinity }: HowToExamine = {}): Generator<number, Sheet, void> {
  const depths = depthsOf(movement);
  const scene = sceneOf(movement);
  const gaps = yield* gapFindings(scene, all, depths, until);
  const entry = entryOf(movement, scene.things);
  const others = [...FAMILIES.flatMap((family) => family(movement, depths)), ...entry.findings];
  const found = [...gaps.findings, ...others];
  const count = (severity: Severity) => found.filter((f) => f.severity === severity).length;
  const shown = found.filter((f) => all || f.severity !== "free").sort(gravestFirst);
  return {
    endshake: 1,
    name: movement.instrument.name,
    arbors: movement.arbors.map((a) => arborRow(a, movement.instrument.input.days)),
    engagements: engagementRows(movement, depths),
    displays: displayRows(movement, depths),
    findings: withRemedies(scene, shown, thorough),
    assembly: entry.assembly,
    counts: {
      foul: count("foul"), tight: count("tight"), free: gaps.free + others.filter((f) => f.severity === "free").length,
    },
  };
}

function arborRow({ id, x, y, planted, rate, shake }: WorkedArbor, inputDays: number): Sheet["arbors"][number] {
  const turns = rate === null || isZero(rate) ? null : Math.abs(toNumber(rate));
  return {
    id, x, y, planted, rate: rate === null ? null : writeRatio(rate), days: turns === null ? null : inputDays / turns,
    up: shake.up, down: shake.down,
  };
}

function engagementRows(movement: Movement, depths: readonly Depth[]): Sheet["engagements"] {
  return movement.engagements.map((e, i) => ({
    id: e.id, distance: e.distance, computed: e.computed, backlash: depths[i].backlash, contactRatio: depths[i].contactRatio,
    faceOverlap: faceOverlapOf(movement, i).worst,
  }));
}

function displayRows(movement: Movement, depths: readonly Depth[]): Sheet["displays"] {
  const ways = waysOf(movement);
  return movement.displays.map((d, i) => ({
    id: d.id, rate: d.rate === null ? null : writeRatio(d.rate), days: d.days, wanted: d.wanted,
    degreesPerYear: d.degreesPerYear, yearsToOneDegree: d.yearsToOneDegree, sense: d.sense,
    lostMotion: lostMotionOf(movement, i, depths, ways),
  }));
}
