// npm run -s numbers -- --wanted RATIO --within ERROR --engagements N [--wheels 30-144] [--pinions 6-20]
//                       [--sense same|contrary] [--most N] [--json]
import { decimalRatio, largestOf, findTrains, ratio, teethTotal, writeRatio, type FoundTrains, type Ratio } from "../../geometry/index.ts";
import { CallFault, command, readWords, wholeNumber } from "./words.ts";

await command(() => {
  const { plain, options } = readWords(process.argv.slice(2),
    ["--wanted", "--within", "--engagements", "--wheels", "--pinions", "--sense", "--most"], ["--json"]);
  if (plain.length) throw new CallFault(`every limit has a name: what is ${plain[0]}?`);
  const wanted = readRatio(needed(options, "--wanted"), "--wanted");
  const engagements = wholeNumber(needed(options, "--engagements"), "--engagements", 1);
  const counts = [...readRange(options.get("--wheels") ?? "30-144", "--wheels"), ...readRange(options.get("--pinions") ?? "6-20", "--pinions")];
  const most = options.get("--most");
  const found = admits(options.get("--sense"), engagements)
    ? findTrains({ wanted, within: readRatio(needed(options, "--within"), "--within"), engagements, counts,
        ...(most === undefined ? {} : { most: wholeNumber(most, "--most", 1) }) })
    : { exhaustive: true, trains: [], says: `${engagements} outside engagements turn the other way round; one more or one less is wanted.` };
  process.stdout.write(options.has("--json") ? asJson(found) : asTable(found));
  if (found.says) process.stderr.write(`${found.says}\n`);
  return found.says && !found.exhaustive && found.trains.length === 0 ? 2 : 0;
});

/** Outside engagements turn the sense about: an even number keeps it. */
function admits(sense: string | undefined, engagements: number): boolean {
  if (sense === undefined) return true;
  if (sense !== "same" && sense !== "contrary") throw new CallFault(`--sense is same or contrary, not ${sense}`);
  return (engagements % 2 === 0) === (sense === "same");
}

function asJson(found: FoundTrains): string {
  const trains = found.trains.map(({ drivers, driven, ratio: r, error }) => ({ drivers, driven, ratio: writeRatio(r), error }));
  return `${JSON.stringify({ exhaustive: found.exhaustive, trains })}\n`;
}

function asTable(found: FoundTrains): string {
  const rows = found.trains.map((t, i) => [String(i + 1), t.drivers.map((d, k) => `${d}/${t.driven[k]}`).join(" × "),
    writeRatio(t.ratio), t.error.toExponential(3), String(teethTotal(t)), String(largestOf(t))]);
  const table = [["", "wheels over pinions", "ratio", "error", "teeth", "largest"], ...rows];
  const widths = table[0]?.map((_, c) => Math.max(...table.map((r) => (r[c] ?? "").length))) ?? [];
  const lines = table.map((r) => r.map((cell, c) => (c === 1 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0))).join("  "));
  const head = found.exhaustive ? `Complete: every train within these limits, ${rows.length}` : `${rows.length} trains, not complete`;
  return `${head}\n${lines.join("\n")}\n`;
}

function needed(options: ReadonlyMap<string, string>, name: string): string {
  const value = options.get(name);
  if (value === undefined) throw new CallFault(`${name} is wanted`);
  return value;
}

/** p/q, or a written decimal. */
function readRatio(text: string, name: string): Ratio {
  const parts = text.split("/");
  if (parts.length > 2 || parts.some((p) => !/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i.test(p.trim())))
    throw new CallFault(`${name} wants a ratio such as 191/23 or 29.530588853, not ${text}`);
  const [p = ratio(0), q = ratio(1)] = parts.map((part) => decimalRatio(part.trim()));
  if (q.n === 0n) throw new CallFault(`${name} has 0 under the line`);
  return p.div(q);
}

function readRange(text: string, name: string): number[] {
  const match = /^(\d+)(?:-(\d+))?$/.exec(text);
  const from = Number(match?.[1]), to = Number(match?.[2] ?? match?.[1]);
  if (!match || from < 1 || to > 100_000) throw new CallFault(`${name} wants a range of counts such as 30-144, not ${text}`);
  if (to < from) throw new CallFault(`${name} ${text} is an empty range: the least comes first`);
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}
