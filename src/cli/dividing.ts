// npm run -s dividing -- COUNT [--ratio 40] [--circles 15,16,…/21,23,…] [--gears 24,28,…] [--json]
import { divide, ORDINARY_HEAD, writeRatio, type Dividing } from "../../geometry/index.ts";
import { CallFault, command, readWords, wholeNumber } from "./words.ts";

await command(() => {
  const { plain, options } = readWords(process.argv.slice(2), ["--ratio", "--circles", "--gears"], ["--json"]);
  if (plain.length !== 1) throw new CallFault("one count is wanted, such as 96");
  const count = wholeNumber(plain[0] ?? "", "the count", 1);
  const circles = options.get("--circles"), gears = options.get("--gears");
  const found = divide(count, {
    ratio: wholeNumber(options.get("--ratio") ?? String(ORDINARY_HEAD.ratio), "--ratio", 1),
    plates: circles === undefined ? ORDINARY_HEAD.plates : circles.split("/").map((plate) => list(plate, "--circles")),
    gears: gears === undefined ? ORDINARY_HEAD.gears : list(gears, "--gears"),
  });
  process.stdout.write(options.has("--json") ? asJson(found) : asWords(count, found));
  return 0;
});

function list(text: string, name: string): number[] {
  return text.split(",").filter((t) => t.trim() !== "").map((t) => wholeNumber(t.trim(), name, 1));
}

function asJson(found: Dividing): string {
  const differential = found.differential.map((s) => ({ ...s, ratio: writeRatio(s.ratio) }));
  return `${JSON.stringify({ ...found, differential })}\n`;
}

function asWords(count: number, found: Dividing): string {
  const turns = (n: number) => (n === 1 ? "1 turn" : `${n} turns`);
  const signed = (holes: number, circle: number) => `${holes < 0 ? "−" : "+"} ${Math.abs(holes)} of ${circle}`;
  const lines = [`Dividing ${count}`];
  if (found.plain.length) lines.push("  plain:", ...found.plain.map((s) => `    ${turns(s.turns)} and ${s.holes} holes of ${s.circle}`));
  if (found.compound.length) lines.push("  compound, both circles of one plate:",
    ...found.compound.map((s) => `    ${turns(s.turns)} ${signed(s.a.holes, s.a.circle)} ${signed(s.b.holes, s.b.circle)}`));
  if (found.differential.length) lines.push("  differential, spindle to plate:", ...found.differential.map((s) =>
    `    set for ${s.settingFor}: ${turns(s.turns)} and ${s.holes} of ${s.circle}; gears ${s.gears.join(", ")}, ratio ${writeRatio(s.ratio)}, the plate ${s.ratio.s < 0n ? "against" : "with"} the crank`));
  if (lines.length === 1) lines.push("  this head does not give it: not plainly, nor compound, nor by two or four of the change gears");
  return `${lines.join("\n")}\n`;
}
