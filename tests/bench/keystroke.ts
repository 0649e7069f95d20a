// What the page works out between a key and the picture: a figure typed into a field of the file, up to the findings and
// the elevation that follow; and one frame of a drag in plan and of one in height. At 12, 30, 60 and 120 arbors, each beside the first.
import { dragArbor, examine, replanted, sweptThings, workOut, type Instrument, type Movement, type Sheet } from "../../geometry/index.ts";
import { raisePart } from "../../src/commands/heights.ts";
import { faultWith, setField } from "../../src/commands/edit.ts";
import { isRefused, type Outcome } from "../../src/commands/command.ts";
import { typedFigure } from "../../src/commands/typed.ts";
import { NO_HISTORY, stepped } from "../../src/state/history.ts";
import { layRow } from "../../src/sheets/calliper/row.ts";
import { engagementRows } from "../../src/sheets/depth.ts";
import { generated } from "../fixtures/generated.ts";
import { figure, leastMs, table } from "./measure.ts";

const SIZES = [12, 30, 60, 120];
const ROUNDS = 30;
/** Pixels of the elevation on the ordinary sheet. */
const ROOM = { width: 464, height: 170 };

export function benchKeystroke(): string {
  const rows: string[][] = [["arbors", "reading ms", "command", "history", "worked out", "examined", "view", "keystroke ms", "growth", "checksum"]];
  const frames: string[][] = [["arbors", "in plan ms", "growth", "in height ms", "growth", "examined besides ms", "checksum mm"]];
  let first: Frames & { keystroke: number } | null = null;
  for (const size of SIZES) {
    const instrument = generated(size), keys = keystroke(instrument), moved = drags(instrument);
    const keystrokeMs = Object.values(keys.ms).reduce((sum, ms) => sum + ms, 0);
    first ??= { ...moved, keystroke: keystrokeMs };
    rows.push([`${size}`, ...Object.values(keys.ms).map(figure), figure(keystrokeMs), `${(keystrokeMs / first.keystroke).toFixed(1)} ×`, keys.checksum]);
    frames.push([
      `${size}`, figure(moved.plan), `${(moved.plan / first.plan).toFixed(1)} ×`, figure(moved.height), `${(moved.height / first.height).toFixed(1)} ×`, figure(moved.examined),
      moved.checksum.toFixed(4),
    ]);
  }
  return `${table("From a key to the findings: the height of a part typed", rows)}\n${table("A frame of a drag, without the examination that goes on beside it", frames)}`;
}

/** Each stage by itself; all of it is done at every key once the figure is kept, and the reading of it at every key before. */
function keystroke(instrument: Instrument) {
  const path = ["arbors", 1, "parts", 0, "z"], text = "2.5*16/2 + 1";
  const typed = typedFigure(text, "length");
  const to = "value" in typed ? typed.value : NaN;
  const next = done(setField.run(instrument, { path, to })), movement = workOut(next), sheet = examine(movement, { all: false });
  const ms = {
    reading: leastMs(ROUNDS, () => { typedFigure(text, "length"); faultWith(instrument, path, to); }),
    command: leastMs(ROUNDS, () => { setField.run(instrument, { path, to }); }),
    history: leastMs(ROUNDS, () => { stepped(NO_HISTORY, instrument, next, "raised"); }),
    worked: leastMs(ROUNDS, () => { workOut(next); }),
    examined: leastMs(ROUNDS, () => { examine(movement, { all: false }); }),
    view: leastMs(ROUNDS, () => { view(movement, sheet); }),
  };
  return { ms, checksum: `${sheet.counts.foul}/${sheet.counts.tight}/${sheet.counts.free}` };
}

interface Frames { readonly plan: number; readonly height: number; readonly examined: number; readonly checksum: number }

/** The page's own thread draws while the examination, if it takes long, goes on beside it. */
function drags(instrument: Instrument): Frames {
  const movement = workOut(instrument), sheet = examine(movement, { all: false });
  const last = movement.arbors[movement.arbors.length - 1], part = instrument.arbors[1]?.parts[0];
  if (!last || !part) throw new Error("there is nothing to drag");
  let turn = 0, checksum = 0;
  const plan = leastMs(ROUNDS, () => {
    const to = { x: last.x + 2 * Math.cos(++turn), y: last.y + 2 * Math.sin(turn) };
    const moved = replanted(movement, dragArbor(movement, last.id, to, "in gear").places);
    view(moved, sheet);
    checksum += moved.arbors[moved.arbors.length - 1]?.x ?? 0;
  });
  const height = leastMs(ROUNDS, () => {
    const moved = workOut(done(raisePart.run(instrument, { part: part.id, z: part.z + 0.01 * (++turn % 50) })));
    view(moved, sheet);
    checksum += moved.arbors[1]?.arbor.parts[0]?.z ?? 0;
  });
  return { plan, height, examined: leastMs(ROUNDS, () => { examine(movement, { all: false }); }), checksum };
}

/** What the Calliper works out for itself of a movement and its sheet. */
function view(movement: Movement, sheet: Sheet): void {
  engagementRows(movement, sheet);
  layRow(movement, sweptThings(movement), ROOM);
}

function done(outcome: Outcome): Instrument {
  if (isRefused(outcome)) throw new Error(outcome.refused);
  return outcome.instrument;
}
