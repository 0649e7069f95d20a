// What a finding colours and where it is: the ids it names turned into things that are drawn, and a place for those
// findings that give none. Lengths in mm.
import { engagementId, type Finding, type Movement } from "../../geometry/index.ts";
import type { Vec } from "../eye/view.ts";

/** Ids of the things that a finding is about: an engagement stands for its two parts, a display for its arbor's pointer. */
export function thingsIn(finding: Finding, movement: Movement): string[] {
  return finding.between.flatMap((id) => {
    const engagement = movement.instrument.engagements.find((e) => engagementId(e) === id);
    if (engagement) return [engagement.driver, engagement.driven];
    const display = movement.instrument.displays?.find((d) => d.id === id);
    if (!display) return [id];
    const parts = movement.instrument.arbors.find((a) => a.id === display.arbor)?.parts ?? [];
    return parts.filter((p) => p.kind === "pointer").map((p) => p.id).concat(display.arbor);
  });
}

/** Where to look: the finding's own place, else between the first two of its things, else on the first. */
export function placeOf(finding: Finding, movement: Movement): Vec | null {
  if (finding.at) return [finding.at.x, finding.at.y, finding.at.z];
  const ends = thingsIn(finding, movement).map((id) => middleOf(id, movement)).filter((p) => p !== null);
  const [a, b = a] = ends;
  if (!a || !b) return null;
  const share = reachOf(finding, movement);
  return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), (a[2] + b[2]) / 2];
}

/** Index of the arbor that a thing moves with; −1: the frame. */
export function arborOf(id: string, movement: Movement): number {
  return movement.partIndex.get(id)?.arbor ?? movement.arborIndex.get(id) ?? -1;
}

function middleOf(id: string, movement: Movement): Vec | null {
  const { frame } = movement.instrument;
  const worked = movement.arbors[arborOf(id, movement)];
  const part = worked?.arbor.parts.find((p) => p.id === id);
  if (worked && part) return [worked.x, worked.y, part.z + part.thickness / 2];
  if (worked) return [worked.x, worked.y, (worked.arbor.foot + worked.arbor.head) / 2];
  const pillar = frame.pillars.find((p) => p.id === id);
  if (pillar) return [pillar.x, pillar.y, (pillar.from + pillar.to) / 2];
  const plate = frame.plates.find((p) => p.id === id);
  return plate ? [0, 0, plate.z + plate.thickness / 2] : null;
}

/** An engaged pair meets where its pitch circles do, as a share of the way from the first axis to the second. */
function reachOf(finding: Finding, movement: Movement): number {
  const [a, b] = thingsIn(finding, movement).map((id) => movement.teeth.get(id));
  if (!a || !b) return 0.5;
  if (a.internal || b.internal) return a.count === b.count ? 0.5 : a.count / (a.count - b.count);
  return a.count / (a.count + b.count);
}
