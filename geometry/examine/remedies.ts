// Remedies for gaps: the least moves that cure a finding, each tried before it is offered. Their number and their cost
// are bounded: only the gravest findings of a sheet get them.
import type { Scene } from "../clearance/gaps.ts";
import { gapsOf, sceneOf } from "../clearance/gaps.ts";
import type { Finding, Remedy } from "../finding.ts";
import type { Instrument } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { workOut } from "../workout.ts";
import { mm } from "./engaged.ts";
import { liftsFor, type Lift } from "./lift.ts";
import { slidesFor, type Slide } from "./slide.ts";
import { arborName, partName } from "./words.ts";

/** How many findings of a sheet get remedies; where places are left open each trial plants anew, so fewer. */
const MOST = 12, MOST_IF_OPEN = 3;
const MOST_EACH = 3;

/** The findings, those of the gravest gaps with remedies. */
export function withRemedies(scene: Scene, findings: readonly Finding[]): Finding[] {
  let left = isOpen(scene.movement) ? MOST_IF_OPEN : MOST;
  return findings.map((finding) => {
    if (finding.code !== "gap" || finding.severity === "free" || left === 0) return finding;
    left--;
    return { ...finding, remedies: remediesIn(scene, finding) };
  });
}

/** Moves that cure one gap finding, the least first. */
export const remediesFor = (movement: Movement, finding: Finding): Remedy[] => remediesIn(sceneOf(movement), finding);

/** The instrument with a remedy carried out. */
export function applied(movement: Movement, { move, by }: Pick<Remedy, "move" | "by">): Instrument {
  const arbors = movement.arbors.map(({ arbor, x, y }) => {
    if (!("z" in by)) return arbor.id === move ? { ...arbor, x: x + by.x, y: y + by.y } : arbor;
    return { ...arbor, parts: arbor.parts.map((p) => (p.id === move ? { ...p, z: p.z + by.z } : p)) };
  });
  return { ...movement.instrument, arbors };
}

function remediesIn(scene: Scene, finding: Finding): Remedy[] {
  const [i, j] = finding.between.map((id) => scene.things.findIndex((t) => t.id === id));
  if (i === undefined || j === undefined || i < 0 || j < 0) return [];
  const { movement } = scene;
  const slides = slidesFor(scene, i, j).map((s) => ({ far: Math.hypot(s.by.x, s.by.y), remedy: slideRemedy(movement, s) }));
  const lifts = liftsFor(scene, i, j).map((l) => ({ far: Math.abs(l.by), remedy: liftRemedy(l) }));
  const least = [...slides, ...lifts].sort((a, b) => a.far - b.far).slice(0, MOST_EACH).map((r) => r.remedy);
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

function slideRemedy(movement: Movement, { arbor, by, inGear }: Slide): Remedy {
  const { arbor: moved } = movement.arbors[arbor];
  const far = mm(Math.hypot(by.x, by.y));
  return { says: `Move ${arborName(moved)} ${far}${inGear ? " on its arc, in gear" : " aside"}`, move: moved.id, by: { x: by.x, y: by.y } };
}

const liftRemedy = ({ part, by }: Lift): Remedy =>
  ({ says: `${by > 0 ? "Raise" : "Lower"} ${partName(part)} by ${mm(Math.abs(by))}`, move: part.id, by: { z: by } });
