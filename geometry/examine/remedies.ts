// Remedies for gaps: the least moves that cure a finding, each tried before it is offered. Their number and their cost
// are bounded: only the gravest findings of a sheet get them.
import type { Scene } from "../clearance/gaps.ts";
import { gapsOf, sceneOf } from "../clearance/gaps.ts";
import type { Finding, Remedy } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { workOut } from "../workout.ts";
import { mm } from "./engaged.ts";
import { liftsFor, type Lift } from "./lift.ts";
import { pullFor } from "./pull.ts";
import { slidesFor, type Slide } from "./slide.ts";
import { arborName, partName } from "./words.ts";
import { applied } from "./applied.ts";

/** How many findings of a sheet get remedies; where places are left open each trial plants anew, so fewer. */
const MOST = 12, MOST_IF_OPEN = 3;
const MOST_EACH = 3;

/** The findings, those of the gravest gaps with remedies; `thorough`: also such as make other arbors follow. */
export function withRemedies(scene: Scene, findings: readonly Finding[], thorough: boolean): Finding[] {
  let left = isOpen(scene.movement) ? MOST_IF_OPEN : MOST;
  return findings.map((finding) => {
    if (finding.code !== "gap" || finding.severity === "free" || left === 0) return finding;
    left--;
    return { ...finding, remedies: remediesIn(scene, finding, thorough) };
  });
}

/** Moves that cure one gap finding, the least first. */
export const remediesFor = (movement: Movement, finding: Finding): Remedy[] => remediesIn(sceneOf(movement), finding, true);

function remediesIn(scene: Scene, finding: Finding, thorough: boolean): Remedy[] {
  const [i, j] = finding.between.map((id) => scene.things.findIndex((t) => t.id === id));
  if (i === undefined || j === undefined || i < 0 || j < 0) return [];
  const { movement } = scene;
  const slides = slidesFor(scene, i, j), lifts = liftsFor(scene, i, j);
  const pulls = thorough && slides.length + lifts.length === 0 ? pullFor(scene, i, j) : [];
  const least = [
    ...[...slides, ...pulls].map((s) => ({ far: Math.hypot(s.by.x, s.by.y), remedy: slideRemedy(movement, s) })),
    ...lifts.map((l) => ({ far: Math.abs(l.by), remedy: liftRemedy(l) })),
  ].sort((a, b) => a.far - b.far).slice(0, MOST_EACH).map((r) => r.remedy);
  return isOpen(movement) ? least.filter((r) => curesWhenPlantedAnew(scene, finding, r)) : least;
}

/** Some places are left to the solver, which may choose otherwise once something was moved. */
const isOpen = (movement: Movement): boolean => movement.arbors.some((a) => a.planted !== "file");

function curesWhenPlantedAnew(scene: Scene, finding: Finding, remedy: Remedy): boolean {
  const name = (a: string, b: string) => [a, b].sort().join(" ");
  const before = new Set(gapsOf(scene).pairs.filter((p) => p.verdict.severity === "foul").map((p) => name(p.a.id, p.b.id)));
  const after = gapsOf(sceneOf(workOut(applied(scene.movement, remedy)))).pairs;
  const cured = name(finding.between[0], finding.between[1]);
  return after.every((p) => name(p.a.id, p.b.id) !== cured && (p.verdict.severity !== "foul" || before.has(name(p.a.id, p.b.id))));
}

function slideRemedy(movement: Movement, { arbor, by, inGear, followers }: Slide): Remedy {
  const idOf = (index: number) => movement.arbors[index].id;
  const far = mm(Math.hypot(by.x, by.y));
  const how = !inGear ? "aside" : followers.length === 0 ? "on its arc, in gear" : `in gear, ${followers.map((f) => idOf(f.arbor)).join(", ")} following`;
  const rest = followers.map((f) => ({ move: idOf(f.arbor), by: f.by }));
  return {
    says: `Move ${arborName(movement.arbors[arbor].arbor)} ${far} ${how}`, move: idOf(arbor), by: { x: by.x, y: by.y },
    ...(rest.length === 0 ? {} : { with: rest }),
  };
}

const liftRemedy = ({ part, by }: Lift): Remedy =>
  ({ says: `${by > 0 ? "Raise" : "Lower"} ${partName(part)} by ${mm(Math.abs(by))}`, move: part.id, by: { z: by } });
