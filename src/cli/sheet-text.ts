// The examiner's sheet set in plain text: counts, findings gravest first, then displays, engagements and arbors in
// tables whose figures stand under one another.
import type { Finding, Severity, Sheet } from "../../geometry/index.ts";

const SHAPE: Record<Severity, string> = { foul: "◆", tight: "◢", free: "●" };
const WIDTH = 92;

export function sheetText(sheet: Sheet, unknown: readonly string[] = []): string {
  const blocks = [
    [sheet.name, `${SHAPE.foul} ${sheet.counts.foul} foul   ${SHAPE.tight} ${sheet.counts.tight} tight   ${SHAPE.free} ${sheet.counts.free} free`],
    sheet.findings.length === 0 ? ["Nothing fouls and nothing is tight."] : sheet.findings.flatMap(findingLines),
    titled("Displays", displayTable(sheet)),
    titled("Engagements", engagementTable(sheet)),
    titled("Arbors", arborTable(sheet)),
    sheet.assembly.length === 0 ? [] : ["Goes in, in this order", ...wrapped(sheet.assembly.map((group) => group.join(" with ")).join(", "), "  ")],
    unknown.length === 0 ? [] : ["Kept but not understood", ...unknown.map((path) => `  ${path}`)],
  ];
  return `${blocks.filter((b) => b.length > 0).map((b) => b.join("\n")).join("\n\n")}\n`;
}

function findingLines(finding: Finding): string[] {
  const { severity, code, way, gap, worst, wanted, says, remedies, when } = finding;
  const figures = [
    ...(gap === undefined ? [] : [`as drawn ${figure(gap)}`]), ...(worst === undefined ? [] : [`at worst ${figure(worst)}`]),
    ...(wanted === undefined ? [] : [`wanted ${figure(wanted)}`]),
  ];
  const head = `${SHAPE[severity]} ${severity.padEnd(5)} ${code.padEnd(11)}`;
  return [
    `${head} ${way === undefined ? "" : way.padEnd(6)} ${figures.map((f) => f.padEnd(19)).join("")}`.trimEnd(),
    ...wrapped(says, "    "),
    ...(when ? wrapped(`First at turn ${plain(when.turns)}; nearest at turn ${plain(when.nearest.turns)} with ${figure(when.nearest.gap).trim()} mm; comes round every ${when.every} turns`, "    ") : []),
    ...remedies.flatMap((r) => wrapped(`cure: ${r.says}`, "    ")),
  ];
}

const titled = (title: string, rows: readonly (readonly string[])[]): string[] =>
  rows.length < 2 ? [] : [title, ...aligned(rows).map((row) => `  ${row}`)];

const displayTable = ({ displays }: Sheet): string[][] => [
  ["", "rate", "days", "wanted", "°/year", "sense", "lost °"],
  ...displays.map((d) => [
    d.id, minus(d.rate ?? "–"), long(d.days), long(d.wanted), d.degreesPerYear === null ? "–" : plain(d.degreesPerYear, 4), d.sense ?? "–",
    d.lostMotion === null ? "–" : plain(d.lostMotion, 3),
  ]),
];

const engagementTable = ({ engagements }: Sheet): string[][] => [
  ["", "stands at", "computed", "backlash", "contact", "overlap"],
  ...engagements.map((e) => [e.id, short(e.distance), short(e.computed), short(e.backlash), short(e.contactRatio), short(e.faceOverlap)]),
];

const arborTable = ({ arbors }: Sheet): string[][] => [
  ["", "x", "y", "placed", "rate", "days", "up", "down"],
  ...arbors.map((a) => [a.id, short(a.x), short(a.y), a.planted, minus(a.rate ?? "–"), long(a.days), short(a.up), short(a.down)]),
];

/** First column to the left, the rest to the right. */
function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => (row[c] ?? "").length)));
  return rows.map((row) => row.map((cell, c) => (c === 0 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0))).join("  ").trimEnd());
}

function wrapped(text: string, indent: string): string[] {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(" ")) {
    if (line.length + word.length > WIDTH && line.trim() !== "") {
      lines.push(line.trimEnd());
      line = indent;
    }
    line += `${word} `;
  }
  return [...lines, line.trimEnd()];
}

/** A real minus sign, and the decimals under one another. */
const figure = (v: number): string => minus(v.toFixed(3)).padStart(8);
const short = (v: number | null): string => (v === null ? "–" : minus(v.toFixed(3)));
const long = (v: number | null): string => (v === null ? "–" : minus(v.toFixed(6)));
const plain = (v: number, decimals = 4): string => minus(String(Number(v.toFixed(decimals))));
const minus = (text: string): string => text.replace("-", "−");
