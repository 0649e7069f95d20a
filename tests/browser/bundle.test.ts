import { readdirSync, readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";

const FOLDER = "dist/assets";
const MOST_BYTES = 340_000;

/** The chunk of this name, as it was built. */
const chunk = (name: string): string => {
  const found = readdirSync(FOLDER).filter((f) => f.startsWith(`${name}-`) && f.endsWith(".js"));
  if (found.length !== 1) throw new Error(`one chunk called ${name} was expected, not ${found.length}`);
  return found[0]!;
};

/** A chunk and everything that it cannot run without. */
function closure(file: string, into = new Set<string>()): Set<string> {
  if (into.has(file)) return into;
  into.add(file);
  const text = readFileSync(`${FOLDER}/${file}`, "utf8");
  for (const [, needed] of text.matchAll(/(?:import|from)\s*"\.\/([^"]+\.js)"/g)) closure(needed!, into);
  return into;
}

describe("the JavaScript to the first picture", () => {
  it("is at most 340 kB gzip: the page and the movement", () => {
    const html = readFileSync("dist/index.html", "utf8");
    const entry = /src="\.\/assets\/([^"]+\.js)"/.exec(html)?.[1];
    expect(entry).toBeDefined();
    const files = closure(chunk("MovementView"), closure(entry!));
    const bytes = [...files].reduce((sum, f) => sum + gzipSync(readFileSync(`${FOLDER}/${f}`)).length, 0);
    expect(files.size).toBeGreaterThan(3);
    expect(bytes).toBeGreaterThan(100_000);
    expect(bytes).toBeLessThanOrEqual(MOST_BYTES);
  });

  it("leaves the examiner, the refusal and every sheet for later", () => {
    const first = closure(chunk("MovementView"), closure(chunk("index")));
    for (const later of ["examining", "Findings", "Refusal", "Beginning", "Numbers", "Calliper", "Depthing", "Dials", "Together", "Workshop", "Making"]) expect([...first]).not.toContain(chunk(later));
  });
});
