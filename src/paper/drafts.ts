// All sheets of a movement, in the order in which a maker turns them over.
import {
  arborFigures, columnsOf, cotterFigures, cutterList, facesOf, heatLadder, heatTable, housingFigures, isPiece, isToothed, joinHeat, type Movement, partsList, pieceFigures, planThings, plateFigures, puttingTogether,
  settingTable, stockList, trainLines, wheelFigures, windowsOf, type PlateFigures,
} from "../../geometry/index.ts";
import type { Draft } from "./draft.ts";
import { arborDraft } from "./sheets/arbor.ts";
import { dialDraft } from "./sheets/dial.ts";
import { explodedDraft } from "./sheets/exploded.ts";
import { heatsDraft } from "./sheets/heats.ts";
import { calliperDraft, elevationDraft, generalDraft, layoutOf } from "./sheets/layout.ts";
import { assemblyDraft, cuttersDraft, partsDraft, settingDraft, trainDraft } from "./sheets/lists.ts";
import { cotterDraft, housingDraft, pieceDraft, pillarsDraft } from "./sheets/pieces.ts";
import { plateDraft, templateDraft } from "./sheets/plate.ts";
import { wheelDraft } from "./sheets/wheel.ts";

export function draftsOf(movement: Movement): Draft[] {
  const { instrument } = movement, { frame } = instrument, windows = windowsOf(movement);
  const all = movement.arbors.flatMap((a) => a.arbor.parts);
  const wheels = all.filter(isToothed).map((p) => wheelFigures(movement, p.id, windows)).filter((w) => w !== null);
  const plates = frame.plates.map((p) => plateFigures(movement, p.id, windows)).filter((p) => p !== null);
  const layout = layoutOf(movement, planThings(movement)), columns = columnsOf(movement), parts = partsList(movement, windows), heats = heatTable(movement);
  const ladders = instrument.arbors.filter((a) => a.parts.some((p) => joinHeat(p)?.heatedTo != null)).map(heatLadder);
  const together = puttingTogether(movement), steps = together.steps.map(({ title, says, ids }) => ({ title, says, ids }));
  const shakes = movement.arbors.map((a) => ({ id: a.id, ...a.shake }));
  return [
    generalDraft(layout), calliperDraft(layout), ...(columns.length > 0 ? [elevationDraft(columns, layout, shakes)] : []),
    trainDraft(trainLines(movement), displayLines(movement)),
    ...wheels.filter((w) => w.kind === "wheel").map(wheelDraft),
    ...wheels.filter((w) => w.kind !== "wheel").map(wheelDraft),
    ...movement.arbors.map((_, i) => arborDraft(arborFigures(movement, i))),
    ...all.filter(isPiece).map((p) => pieceFigures(movement, p.id)).filter((f) => f !== null).map(pieceDraft),
    ...cotters(movement),
    ...plates.map(plateDraft), ...plates.map(templateDraft),
    ...(frame.pillars.length > 0 ? [pillarsDraft(frame.pillars)] : []),
    ...(frame.case ? [housingDraft(housingFigures(frame.case))] : []),
    ...facesOf(movement).map(dialDraft),
    ...(heats.length > 0 ? [heatsDraft(heats, ladders)] : []),
    assemblyDraft(steps),
    ...(layout.things.length > 0 ? [explodedDraft(movement, together)] : []),
    partsDraft(parts, stockList(parts)),
    cuttersDraft(cutterList(movement), drillsOf(plates)),
    ...(movement.displays.length > 0 ? [settingDraft(movement.displays.map((d) => d.name), instrument.displays?.find((d) => d.epoch)?.epoch ?? null, settingTable(movement))] : []),
  ];
}

const displayLines = (movement: Movement) => movement.displays.map((d) => ({
  name: d.name, arbor: movement.arbors[d.arbor]!.id, days: d.days, wanted: d.wanted, degreesPerYear: d.degreesPerYear, yearsToOneDegree: d.yearsToOneDegree, sense: d.sense,
}));

const cotters = (movement: Movement): Draft[] => movement.arbors.flatMap((a, i) => a.arbor.parts.flatMap((p) =>
  p.kind === "square" && p.slot ? [cotterDraft(p.id, arborFigures(movement, i), cotterFigures(p.across, p.taper, p.thickness, p.slot))] : []));

/** Diameters of all holes, each with how many there are of it. */
function drillsOf(plates: readonly PlateFigures[]): (readonly [number, number])[] {
  const counts = new Map<string, number>();
  for (const h of plates.flatMap((p) => p.holes)) counts.set(h.diameter.toFixed(2), (counts.get(h.diameter.toFixed(2)) ?? 0) + 1);
  return [...counts].map(([d, n]) => [Number(d), n] as const).sort((a, b) => a[0] - b[0]);
}
