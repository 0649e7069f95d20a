// Everything that leaves the workshop, one file after another, so that a page can show how far it is and stop.
import { examine, type Instrument, meshOf, type Movement, thingsOf, workOut } from "../../../geometry/index.ts";
import type { PlanSheet } from "../drawing.ts";
import { listOf, type PlanOptions } from "../plans.ts";
import { drawingSvg } from "../svg.ts";
import { tableCsv } from "./csv.ts";
import { cuttingDxf, cutIds } from "./cutting.ts";
import { drawingDxf } from "./dxf.ts";
import { distinct, fileName, foulWords, type OutFile, textFile } from "./file.ts";
import { type Format, FORMATS } from "./formats.ts";
import { movementGlb } from "./glb.ts";
import { type Fonts, plansPdf } from "./pdf.ts";
import { meshStl } from "./stl.ts";
import { movementThreeMf } from "./three-mf.ts";

export interface HowToExport extends PlanOptions {
  /** All where absent. */
  readonly formats?: readonly Format[];
  /** mm taken away by the cut, for the outlines to cut by. 0 where absent. */
  readonly kerf?: number;
}

export interface ExportStep {
  /** 0 to 1. */
  readonly done: number;
  readonly file: OutFile;
}

/** What the kernel and the sheets of one export share. */
interface Work { readonly movement: Movement; readonly sheets: readonly PlanSheet[]; readonly says: readonly string[]; readonly kerf: number; readonly fonts: Fonts }

/** Every file in turn; the sheets are drawn first. */
export async function* exportSteps(instrument: Instrument, fonts: Fonts, how: HowToExport = {}): AsyncGenerator<ExportStep, void, void> {
  const movement = workOut(instrument), { foul } = examine(movement).counts, formats = how.formats ?? FORMATS;
  const sheets = formats.some((f) => f === "PDF" || f === "SVG" || f === "DXF" || f === "CSV") ? listOf(movement, how, foul).map((l) => l.draw()) : [];
  const work: Work = { movement, sheets, says: [foulWords(foul)].filter((w) => w !== ""), kerf: how.kerf ?? 0, fonts };
  yield { done: 0, file: textFile("read-me.txt", readMe(work, formats)) };
  for (const [i, format] of formats.entries()) {
    let k = 0;
    for await (const file of MAKERS[format](work)) yield { done: (i + 1 - 1 / (1 + ++k)) / formats.length, file };
  }
}

/** All files at once. */
export async function filesOf(instrument: Instrument, fonts: Fonts, how: HowToExport = {}): Promise<OutFile[]> {
  const files: OutFile[] = [];
  for await (const { file } of exportSteps(instrument, fonts, how)) files.push(file);
  return files;
}

type Maker = (work: Work) => Iterable<OutFile> | AsyncIterable<OutFile>;

const MAKERS: Readonly<Record<Format, Maker>> = {
  async *PDF({ movement, sheets, fonts }) { yield { name: "plans.pdf", bytes: await plansPdf(movement.instrument.name, sheets, fonts) }; },
  *SVG({ sheets }) { for (const { name, page } of pagesOf(sheets)) yield textFile(`svg/${name}.svg`, drawingSvg(page)); },
  *DXF({ movement, sheets, says, kerf }) {
    for (const { name, page } of pagesOf(sheets)) yield textFile(`dxf/${name}.dxf`, drawingDxf(page));
    const ids = cutIds(movement);
    for (const [i, name] of distinct(ids.map(fileName)).entries()) {
      const text = cuttingDxf(movement, ids[i]!, kerf, says);
      if (text !== null) yield textFile(`cutting/${name}.dxf`, text);
    }
  },
  *STL({ movement, says }) {
    const things = thingsOf(movement), names = distinct(things.map((t) => fileName(t.id)));
    for (const [i, thing] of things.entries()) {
      const mesh = meshOf(movement, thing.id);
      if (mesh) yield { name: `stl/${names[i]!}.stl`, bytes: meshStl(mesh, `${says.length > 0 ? "INSTRUMENT FOULS. " : ""}mm. ${thing.kind} ${thing.id}`) };
    }
  },
  *"3MF"({ movement, says }) { yield { name: "parts.3mf", bytes: movementThreeMf(movement, says) }; },
  *glTF({ movement, says }) { yield { name: "movement.glb", bytes: movementGlb(movement, says) }; },
  *CSV({ sheets, says }) {
    const tables = sheets.flatMap((s) => s.tables), names = distinct(tables.map((t) => fileName(t.id)));
    for (const [i, table] of tables.entries()) yield textFile(`csv/${names[i]!}.csv`, tableCsv(table, says));
  },
};

/** Every page with its place in the plans before its name, so that a folder lists them in order. */
function pagesOf(sheets: readonly PlanSheet[]) {
  return sheets.flatMap((sheet, i) => sheet.pages.map((page, k) => ({
    name: `${String(i + 1).padStart(3, "0")}-${fileName(sheet.id)}${sheet.pages.length > 1 ? `-${k + 1}` : ""}`, page,
  })));
}

const WORDS: Readonly<Record<Format, string>> = {
  PDF: "plans.pdf  all sheets, at the scale written on each when printed without fitting to the page",
  SVG: "svg/  every page of the plans, mm on the paper",
  DXF: "dxf/  every page of the plans, mm on the paper, a layer for each line kind; cutting/  outlines of flat parts and plates at full size, layer CUT with kerf",
  STL: "stl/  every part, mm, about its own axis, lowest point at 0",
  "3MF": "parts.3mf  every part by name, laid out on a plate",
  glTF: "movement.glb  the whole, by name, with an animation that turns the input",
  CSV: "csv/  every table",
};

function readMe({ movement, sheets, says, kerf }: Work, formats: readonly Format[]): string {
  const cautions = [...new Set(sheets.flatMap((s) => s.cautions))];
  return [
    movement.instrument.name, "", ...(says.length > 0 ? [...says, ""] : []), ...formats.map((f) => WORDS[f]), ...(formats.includes("DXF") ? [`Kerf: ${kerf} mm.`] : []),
    ...(cautions.length > 0 ? ["", "Cautions", ...cautions] : []), "",
  ].join("\n");
}
