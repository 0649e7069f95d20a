// What the exporting worker tells: how far it is, at the end the one file that was asked for, or why there is none.
import type { Instrument } from "../../geometry/index.ts";
import { exportSteps, type HowToExport } from "../paper/files/export.ts";
import type { OutFile } from "../paper/files/file.ts";
import type { Format } from "../paper/files/formats.ts";
import type { Fonts } from "../paper/files/pdf.ts";
import { zipOf } from "../paper/files/zip.ts";

export interface Exporting {
  readonly instrument: Instrument;
  readonly fonts: Fonts;
  readonly how: HowToExport & { readonly formats: readonly Format[] };
}

export type ExportTold = { readonly done: number } | { readonly file: OutFile } | { readonly fault: string };

/** One file alone goes as it is; several go as one archive. The words that go with an archive stay out of a single file. */
export async function exported({ instrument, fonts, how }: Exporting, told: (done: number) => void): Promise<OutFile> {
  const files: OutFile[] = [];
  for await (const { done, file } of exportSteps(instrument, fonts, how)) {
    files.push(file);
    told(done);
  }
  const alone = files.length === 2 ? files[1] : undefined;
  return alone ?? { name: "plans.zip", bytes: zipOf(files) };
}
