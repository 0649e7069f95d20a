// The examiner's sheet in the terminal: `examine FILE … [--json] [--all] [--until TURNS|DAYSd]`. Exit status 0: nothing fouls; 1: something
// does; 2: refused, or a call that cannot be answered. Of several files the gravest counts. `-` reads standard input.
import { readFileSync } from "node:fs";
import { examine, workOut, type Sheet } from "../../geometry/index.ts";
import { readInstrument, type Fault } from "../document/index.ts";
import { sheetText } from "./sheet-text.ts";

const USAGE = "usage: npm run -s examine -- FILE … [--json] [--all] [--until 1000 | --until 365250d]   (FILE - reads standard input)";

interface Call {
  readonly files: readonly string[];
  readonly json: boolean;
  readonly all: boolean;
  /** Follow true outlines only so far; null: round the whole cycle. */
  readonly until: { readonly value: number; readonly days: boolean } | null;
}

type Answer =
  | { readonly ok: true; readonly file: string; readonly sheet: Sheet & { readonly unknown: readonly string[] } }
  | { readonly ok: false; readonly file: string; readonly refused: readonly Fault[] };

const call = readCall(process.argv.slice(2));
if (typeof call === "string") {
  process.stderr.write(`${call}\n${USAGE}\n`);
  process.exitCode = 2;
} else {
  const answers = call.files.map((file) => answerFor(file, call));
  for (const answer of answers) if (!answer.ok) process.stderr.write(refusalText(answer.file, answer.refused));
  process.stdout.write(call.json ? jsonOf(answers) : textOf(answers));
  process.exitCode = Math.max(...answers.map(statusOf));
}

function readCall(argv: readonly string[]): Call | string {
  const asked = argv.indexOf("--until");
  const until = asked < 0 ? null : readUntil(argv[asked + 1] ?? "");
  if (typeof until === "string") return until;
  const rest = argv.filter((_, i) => asked < 0 || (i !== asked && i !== asked + 1));
  const files = rest.filter((a) => a === "-" || !a.startsWith("-"));
  const unknown = rest.find((a) => a.startsWith("-") && !["-", "--json", "--all"].includes(a));
  if (unknown === "--until") return "--until is said twice";
  if (unknown !== undefined) return `there is no option ${unknown}`;
  if (files.length === 0) return "no file was named";
  return { files, json: rest.includes("--json"), all: rest.includes("--all"), until };
}

/** "1000" is turns of the input, "365250d" days of what it shows. */
function readUntil(text: string): Call["until"] | string {
  const read = /^(\d+(?:\.\d+)?)(d?)$/.exec(text);
  return read ? { value: Number(read[1]), days: read[2] === "d" } : `--until wants turns (1000) or days (365250d), not "${text}"`;
}

function answerFor(file: string, { all, until }: Call): Answer {
  let text: string;
  try {
    text = readFileSync(file === "-" ? 0 : file, "utf8");
  } catch {
    return { ok: false, file, refused: [{ path: "", found: "no file that can be read", expected: "an instrument file" }] };
  }
  const read = readInstrument(text);
  if (!read.ok) return { ok: false, file, refused: read.refused };
  const turns = until === null ? {} : { until: until.days ? until.value / read.instrument.input.days : until.value };
  return { ok: true, file, sheet: { ...examine(workOut(read.instrument), { all, thorough: true, ...turns }), unknown: read.unknown } };
}

function statusOf(answer: Answer): number {
  return answer.ok ? (answer.sheet.counts.foul > 0 ? 1 : 0) : 2;
}

function jsonOf(answers: readonly Answer[]): string {
  const values = answers.map((a) => (a.ok ? a.sheet : { refused: a.refused }));
  return `${JSON.stringify(values.length === 1 ? values[0] : values, null, 2)}\n`;
}

function textOf(answers: readonly Answer[]): string {
  return answers.flatMap((a) => (a.ok ? [sheetText(a.sheet, a.sheet.unknown)] : [])).join("\n\n");
}

function refusalText(file: string, faults: readonly Fault[]): string {
  const name = file === "-" ? "Standard input" : file;
  const lines = faults.map((f) => `  ${f.path === "" ? "the file" : f.path}: found ${f.found}, expected ${f.expected}`);
  return `${name} is refused, ${faults.length === 1 ? "one fault" : `${faults.length} faults`}:\n${lines.join("\n")}\n`;
}
