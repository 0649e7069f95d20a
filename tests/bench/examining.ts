// Working out and examining whole instruments of 15 to 2,000 arbors, and one step of a drag at 60.
import { dragArbor, examine, replanted, workOut, type Sheet } from "../../geometry/index.ts";
import { generated } from "../fixtures/generated.ts";
import { figure, medianMs, table } from "./measure.ts";

const SIZES = [15, 60, 240, 1000, 2000];
const SIXTY = 60;

export function benchExamining(): string {
  const rows: string[][] = [["arbors", "parts", "worked out ms", "examined ms", "together, per n log n", "checksum"]];
  let first = 0;
  for (const size of SIZES) {
    const instrument = generated(size);
    const parts = instrument.arbors.reduce((sum, a) => sum + a.parts.length, 0);
    const rounds = size > 500 ? 3 : size > 100 ? 6 : 20;
    const movement = workOut(instrument);
    const worked = medianMs(rounds, () => workOut(instrument));
    const examined = medianMs(rounds, () => examine(movement));
    const perNLogN = (worked + examined) / (size * Math.log2(size));
    first ||= perNLogN;
    rows.push([`${size}`, `${parts}`, figure(worked), figure(examined), `${(perNLogN / first).toFixed(2)} ×`, checksumOf(examine(movement))]);
  }
  return `${table("Examining, from the instrument to the sheet", rows)}\n${dragTable()}`;
}

/** One step of a drag: new places, the movement planted anew and its sheet. */
function dragTable(): string {
  const movement = workOut(generated(SIXTY));
  const last = movement.arbors[SIXTY - 1];
  if (last === undefined) throw new Error("there is no arbor to drag");
  let turn = 0, sheet = examine(movement);
  const ms = medianMs(20, () => {
    const to = { x: last.x + 2 * Math.cos(++turn), y: last.y + 2 * Math.sin(turn) };
    sheet = examine(replanted(movement, dragArbor(movement, last.id, to, "in gear").places));
  });
  return table(`One step of a drag at ${SIXTY} arbors`, [["step ms", "checksum"], [figure(ms), checksumOf(sheet)]]);
}

/** Counts, and the sum of all figures of the findings. */
function checksumOf({ counts, findings }: Sheet): string {
  const sum = findings.reduce((s, f) => s + (f.gap ?? 0) + (f.worst ?? 0), 0);
  return `${counts.foul}/${counts.tight}/${counts.free} ${sum.toFixed(6)}`;
}
