// npm run -s depth -- FILE [ENGAGEMENT] [--distance MM] [--json]
// How every engaged pair runs, or the one that is named, as it stands or at another distance. Exit status 0; 2 where the
// file is refused or the call cannot be answered. FILE - reads standard input.
import { readFileSync } from "node:fs";
import { depthingOf, workOut, type Depthing, type Instrument } from "../../geometry/index.ts";
import { readInstrument, type Fault } from "../document/index.ts";
import { CallFault, command, readWords } from "./words.ts";

await command(() => {
  const { plain, options } = readWords(process.argv.slice(2), ["--distance"], ["--json"]);
  const [file, engagement, ...more] = plain;
  if (file === undefined || more.length > 0) throw new CallFault("one file is wanted, and at most one engagement: depth -- FILE [ENGAGEMENT] [--distance MM] [--json]");
  const distanceMm = options.has("--distance") ? lengthOf(options.get("--distance") ?? "") : undefined;
  const read = readInstrument(textOf(file));
  if (!read.ok) return refuse(file, read.refused, options.has("--json"));
  const depthings = depthingsOf(read.instrument, engagement, distanceMm);
  process.stdout.write(options.has("--json") ? `${JSON.stringify(depthings, null, 2)}\n` : asTable(depthings));
  return 0;
});

function textOf(file: string): string {
  try {
    return readFileSync(file === "-" ? 0 : file, "utf8");
  } catch {
    throw new CallFault(`there is no file ${file} that can be read`);
  }
}

function lengthOf(text: string): number {
  const mm = Number(text);
  if (text.trim() === "" || !Number.isFinite(mm) || mm < 0) throw new CallFault(`--distance wants a length in mm, not ${text}`);
  return mm;
}

function refuse(file: string, faults: readonly Fault[], json: boolean): number {
  if (json) process.stdout.write(`${JSON.stringify({ refused: faults }, null, 2)}\n`);
  const lines = faults.map((f) => `  ${f.path === "" ? "the file" : f.path}: found ${f.found}, expected ${f.expected}`);
  process.stderr.write(`${file === "-" ? "Standard input" : file} is refused:\n${lines.join("\n")}\n`);
  return 2;
}

function depthingsOf(instrument: Instrument, engagement: string | undefined, distanceMm: number | undefined): Depthing[] {
  const movement = workOut(instrument);
  const chosen = movement.engagements.flatMap((e, i) => (engagement === undefined || e.id === engagement ? [i] : []));
  if (engagement !== undefined && chosen.length === 0)
    throw new CallFault(`there is no engagement ${engagement}; there are ${movement.engagements.map((e) => e.id).join(", ")}`);
  return chosen.map((i) => depthingOf(movement, i, distanceMm));
}

function asTable(depthings: readonly Depthing[]): string {
  if (depthings.length === 0) return "No parts are engaged.\n";
  const head = ["engagement", "stands", "computed", "state", "backlash", "ratio", "begins", "ends", "rate", "lead ′", "tip", "works", "wanted", "hole ±"];
  const range = (a: number | null, b: number | null, places: number) => (a === null && b === null ? "–" : `${figure(a, places)}…${figure(b, places)}`);
  const rows = depthings.map((d) => [
    d.id, figure(d.distance, 3), figure(d.computed, 3), d.state ?? "–", range(d.backlash.tightest, d.backlash.slackest, 3),
    figure(d.contactRatio, 2), figure(d.contact.begins, 2), figure(d.contact.ends, 2), range(d.rate.least, d.rate.most, 3),
    range(d.lead.least, d.lead.most, 1), figure(d.tipClearance, 3), range(d.window.nearest, d.window.farthest, 2),
    range(d.window.nearestWanted, d.window.farthestWanted, 2), figure(d.holeTolerance, 3),
  ]);
  const widths = head.map((h, c) => Math.max(h.length, ...rows.map((r) => r[c].length)));
  const line = (cells: readonly string[]) => cells.map((cell, c) => (c === 0 || c === 3 ? cell.padEnd(widths[c]) : cell.padStart(widths[c]))).join("  ").trimEnd();
  return `${[line(head), ...rows.map(line), "", ...depthings.map((d) => d.says)].join("\n")}\n`;
}

function figure(value: number | null, places: number): string {
  return value === null ? "–" : value.toFixed(places);
}
