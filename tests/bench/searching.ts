// Searching for places and for levels at 12, 30 and 60 arbors. Places: those of a long train are hidden (all but every
// sixth arbor) and sought; beside it stand the places that were hidden, and the planting without a search. Levels: the
// height is set against the one given. Times are paired with examining the same instrument in the same run.
import { examine, findHeights, findPlaces, workOut, type Arbor, type Instrument } from "../../geometry/index.ts";
import { generated } from "../fixtures/generated.ts";
import { figure, medianMs, table } from "./measure.ts";

const SIZES = [12, 30, 60];
const TRIES = 40;
const STEADY_EVERY = 6;

export function benchSearching(): string {
  return `${placesTable()}\n${heightsTable()}`;
}

function placesTable(): string {
  const rows = [["arbors", "search ms", "growth", "of examining once", "fouls found", "hidden", "without a search", "spare mm found", "hidden", "checksum mm"]];
  let first = 0;
  for (const size of SIZES) {
    const known = generated(size), bare = hidden(known);
    const examined = medianMs(6, () => examine(workOut(known)));
    const start = performance.now();
    const found = findPlaces(bare, { seed: 1, tries: TRIES });
    const ms = performance.now() - start;
    const given = findPlaces(withSteady(known), { tries: 0 });
    first ||= ms;
    rows.push([
      `${size}`, figure(ms), `${(ms / first).toFixed(1)} ×`, `${figure(ms / examined)} ×`, `${found.counts.foul}`, `${given.counts.foul}`, `${examine(workOut(bare)).counts.foul}`,
      (found.spare ?? 0).toFixed(3), (given.spare ?? 0).toFixed(3), sumOfPlaces(found.instrument).toFixed(4),
    ]);
  }
  return table(`Searching for places, ${TRIES} beginnings`, rows);
}

function heightsTable(): string {
  const rows = [["arbors", "search ms", "growth", "of examining once", "height mm", "given", "proved", "fouls", "given", "checksum mm"]];
  let first = 0;
  for (const size of SIZES) {
    const given = generated(size);
    const examined = medianMs(6, () => examine(workOut(given)));
    const start = performance.now();
    const found = findHeights(given, { seed: 1, branches: 4000 });
    const ms = performance.now() - start;
    const [back, front] = given.frame.plates;
    if (back === undefined || front === undefined) throw new Error("there are no two plates");
    first ||= ms;
    rows.push([
      `${size}`, figure(ms), `${(ms / first).toFixed(1)} ×`, `${figure(ms / examined)} ×`, (found.height ?? 0).toFixed(3), (front.z - back.z - back.thickness).toFixed(3), found.proved ? "yes" : "no",
      `${found.counts.foul}`, `${examine(workOut(given)).counts.foul}`, sumOfHeights(found.instrument).toFixed(4),
    ]);
  }
  return table("Searching for levels", rows);
}

const isSteady = (i: number): boolean => i % STEADY_EVERY === 0;

const withSteady = (instrument: Instrument): Instrument =>
  ({ ...instrument, arbors: instrument.arbors.map((a, i) => (isSteady(i) ? { ...a, steady: true } : a)) });

const hidden = (instrument: Instrument): Instrument => ({
  ...instrument, arbors: instrument.arbors.map(({ x, y, ...a }, i): Arbor => (isSteady(i) && x !== undefined && y !== undefined ? { ...a, x, y, steady: true } : a)),
});

const sumOfPlaces = (instrument: Instrument): number => instrument.arbors.reduce((sum, a) => sum + (a.x ?? 0) + (a.y ?? 0), 0);
const sumOfHeights = (instrument: Instrument): number => instrument.arbors.reduce((sum, a) => sum + a.parts.reduce((s, p) => s + p.z, a.head), 0);
