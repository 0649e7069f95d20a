// npm run -s plans -- FILE --out FOLDER [--size A4|A3|Letter] [--formats PDF,SVG,DXF,STL,3MF,glTF,CSV] [--kerf 0.2] [--issued 2026-01-13] [--drawn NAME] [--zip]
// Writes the plans and everything else that leaves the workshop into a folder; with --zip as one archive in it. `-` reads standard input.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { readInstrument } from "../document/index.ts";
import { PAPER, type PaperSize } from "../paper/drawing.ts";
import { exportSteps, type HowToExport } from "../paper/files/export.ts";
import type { OutFile } from "../paper/files/file.ts";
import { FONT_FILES } from "../paper/files/fonts.ts";
import { type Format, FORMATS } from "../paper/files/formats.ts";
import type { Fonts } from "../paper/files/pdf.ts";
import { zipOf } from "../paper/files/zip.ts";
import { CallFault, command, readWords } from "./words.ts";

await command(async () => {
  const { plain, options } = readWords(process.argv.slice(2), ["--out", "--size", "--formats", "--kerf", "--issued", "--drawn"], ["--zip"]);
  const out = options.get("--out");
  if (plain.length !== 1 || out === undefined) throw new CallFault("one file and a folder are wanted: plans -- FILE --out FOLDER");
  const file = plain[0] ?? "", read = readInstrument(textOf(file));
  if (!read.ok) {
    process.stderr.write(`${file} is refused:\n${read.refused.map((f) => `  ${f.path || "the file"}: found ${f.found}, expected ${f.expected}`).join("\n")}\n`);
    return 2;
  }
  const files: OutFile[] = [];
  for await (const step of exportSteps(read.instrument, fontsOnDisk(), howOf(options))) {
    if (options.has("--zip")) files.push(step.file);
    else write(out, step.file);
    process.stdout.write(`${step.file.name}\n`);
  }
  if (options.has("--zip")) write(out, { name: "plans.zip", bytes: zipOf(files) });
  return 0;
});

function howOf(options: ReadonlyMap<string, string>): HowToExport {
  const size = options.get("--size") ?? "A4", kerf = Number(options.get("--kerf") ?? 0), formats = options.get("--formats")?.split(",") ?? FORMATS;
  if (!(size in PAPER)) throw new CallFault(`--size is one of ${Object.keys(PAPER).join(", ")}, not ${size}`);
  if (!(kerf >= 0 && kerf <= 10)) throw new CallFault(`--kerf wants mm from 0 to 10, not ${options.get("--kerf")}`);
  const unknown = formats.find((f) => !(FORMATS as readonly string[]).includes(f));
  if (unknown !== undefined) throw new CallFault(`--formats are ${FORMATS.join(", ")}, not ${unknown}`);
  return {
    size: size as PaperSize, kerf, formats: formats as readonly Format[],
    ...(options.has("--issued") ? { issued: options.get("--issued")! } : {}), ...(options.has("--drawn") ? { drawn: options.get("--drawn")! } : {}),
  };
}

function textOf(file: string): string {
  try {
    return readFileSync(file === "-" ? 0 : file, "utf8");
  } catch {
    throw new CallFault(`${file} cannot be read`);
  }
}

function fontsOnDisk(): Fonts {
  const find = createRequire(import.meta.url);
  return Object.fromEntries(Object.entries(FONT_FILES).map(([face, file]) => [face, new Uint8Array(readFileSync(find.resolve(file)))])) as unknown as Fonts;
}

function write(folder: string, { name, bytes }: OutFile): void {
  const at = join(folder, name);
  mkdirSync(dirname(at), { recursive: true });
  writeFileSync(at, bytes);
}
