// What the worker does for Export: an instrument in, the one file out that was asked for.
import type { Instrument } from "../../geometry/index.ts";
import { exportSteps, type HowToExport } from "../paper/files/export.ts";
import type { OutFile } from "../paper/files/file.ts";
import type { Format } from "../paper/files/formats.ts";
import type { Fonts } from "../paper/files/pdf.ts";
import { zipOf } from "../paper/files/zip.ts";

export interface Exporting {
  readonly kind: "files";
  readonly instrument: Instrument;
  readonly how: HowToExport & { readonly formats: readonly Format[] };
}

/** One file alone goes as it is; several go as one archive. The words that go with an archive stay out of a single file. */
export async function exported({ instrument, how }: Exporting, fonts: Fonts, told: (done: number) => void): Promise<OutFile> {
  const files: OutFile[] = [];
  for await (const { done, file } of exportSteps(instrument, fonts, how)) {
    files.push(file);
    told(done);
  }
  const alone = files.length === 2 ? files[1] : undefined;
  return alone ?? { name: "plans.zip", bytes: zipOf(files) };
}
