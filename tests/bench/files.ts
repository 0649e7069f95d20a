// Files for the workshop: all sheets drawn, and every format with what it needs, of the estuary dial and of a made-up
// instrument of 60 arbors. A first run beside the measured one warms up; the checksum is of the bytes, which are the same
// on every machine. Sheets count as what they are as data.
import { readFileSync } from "node:fs";
import { createHash } from "node:crypto";
import type { Instrument } from "../../geometry/instrument.ts";
import { filesOf } from "../../src/paper/files/export.ts";
import { steady } from "../../src/paper/files/file.ts";
import { FONT_FILES } from "../../src/paper/files/fonts.ts";
import { FORMATS } from "../../src/paper/files/formats.ts";
import type { Fonts } from "../../src/paper/files/pdf.ts";
import { plansOf } from "../../src/paper/plans.ts";
import { generated } from "../fixtures/generated.ts";
import { figure, table } from "./measure.ts";

/** Sines differ in their last bit from engine to engine. */
const steadily = (_: string, value: unknown): unknown => (typeof value === "number" ? steady(value) : value);

export async function benchFiles(): Promise<string> {
  const fonts = Object.fromEntries(Object.entries(FONT_FILES).map(([face, file]) => [face, new Uint8Array(readFileSync(`node_modules/${file}`))])) as unknown as Fonts;
  const dial = JSON.parse(readFileSync("public/instruments/estuary-dial.instrument.json", "utf8")) as Instrument, rows: string[][] = [];
  for (const [name, instrument] of [["estuary dial", dial], ["60 arbors", generated(60)]] as const) {
    await filesOf(instrument, fonts, { formats: ["STL"] });
    plansOf(instrument);
    const began = performance.now(), sheets = plansOf(instrument), tookMs = performance.now() - began, data = JSON.stringify(sheets.map((s) => s.pages), steadily);
    rows.push([`${name}, all sheets`, figure(tookMs), `${sheets.length}`, figure(data.length / 1e6), createHash("sha256").update(data).digest("hex").slice(0, 8)]);
    for (const format of FORMATS) {
      const start = performance.now(), files = await filesOf(instrument, fonts, { formats: [format] }), ms = performance.now() - start;
      const sum = createHash("sha256");
      for (const f of files) sum.update(f.bytes);
      rows.push([`${name}, ${format}`, figure(ms), `${files.length - 1}`, figure(files.reduce((n, f) => n + f.bytes.length, 0) / 1e6), sum.digest("hex").slice(0, 8)]);
    }
  }
  return table("Files for the workshop", [["", "ms", "files, sheets", "MB", "checksum"], ...rows]);
}
