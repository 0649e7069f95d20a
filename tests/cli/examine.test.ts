import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";

const FREE = "public/instruments/estuary-dial.instrument.json";
const FOULED = "public/instruments/estuary-dial-first-draft.instrument.json";
const folder = mkdtempSync(join(tmpdir(), "examine-"));
afterAll(() => rmSync(folder, { recursive: true }));

const run = (argv: readonly string[], input = "") => spawnSync(process.execPath, ["src/cli/run.mjs", "examine", ...argv], { encoding: "utf8", input });
const written = (name: string, text: string): string => {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
};
const broken = written("broken.json", JSON.stringify({ ...JSON.parse(readFileSync(FREE, "utf8")), engagements: [{ driver: "A1", driven: "nobody" }], name: 7 }));

describe("the examiner's sheet in the terminal", () => {
  it("[CLI1] [CLI2] the exit status is 0 where nothing fouls and 1 where something does; JSON alone is on standard output", () => {
    const free = run([FREE, "--json"]), fouled = run([FOULED, "--json"]);
    expect([free.status, fouled.status]).toEqual([0, 1]);
    expect([free.stderr, fouled.stderr]).toEqual(["", ""]);
    const sheet = JSON.parse(fouled.stdout);
    expect(Object.keys(sheet)).toEqual(["endshake", "name", "arbors", "engagements", "displays", "findings", "assembly", "counts", "unknown"]);
    expect(sheet.counts.foul).toBe(sheet.findings.filter((f: { severity: string }) => f.severity === "foul").length);
    expect(sheet.findings.find((f: { code: string }) => f.code === "gap")).toMatchObject({ between: expect.any(Array), way: expect.any(String), gap: expect.any(Number), worst: expect.any(Number), wanted: expect.any(Number) });
  });

  it("[CLI1] a refused file gives status 2, every fault on standard error, and with --json on standard output too", () => {
    const plain = run([broken]), json = run([broken, "--json"]);
    expect([plain.status, json.status]).toEqual([2, 2]);
    expect(plain.stdout).toBe("");
    expect(plain.stderr).toContain("name");
    expect(plain.stderr).toContain("engagements[0].driven");
    expect(JSON.parse(json.stdout).refused.map((f: { path: string }) => f.path).sort()).toEqual(expect.arrayContaining(["engagements[0].driven", "name"]));
  });

  it("[MOVE8] --until takes turns or days, and refuses anything else by name", () => {
    const [turns, days] = [["--until", "1000"], ["--until", "1000d"]].map((how) => run([FREE, "--json", ...how]));
    expect([turns!.status, days!.status]).toEqual([0, 0]);
    // One turn of this dial's crank is a day.
    expect(JSON.parse(turns!.stdout)).toEqual(JSON.parse(days!.stdout));
    expect(run([FREE, "--until", "5", "--until", "6"]).stderr).toContain("--until is said twice");
    const wrong = run([FREE, "--until", "soon"]);
    expect([wrong.status, wrong.stdout]).toEqual([2, ""]);
    expect(wrong.stderr).toContain("soon");
  });

  it("[CLI3] several files give a list in their order, and the gravest status of them all", () => {
    const done = run([FREE, FOULED, broken, "--json"]);
    expect(done.status).toBe(2);
    const [free, fouled, refused] = JSON.parse(done.stdout);
    expect([free.counts.foul, fouled.counts.foul > 0, refused.refused.length > 0]).toEqual([0, true, true]);
    expect(run([FREE, FOULED]).status).toBe(1);
  });

  it("[CLI4] - reads standard input; fields that were not understood are named", () => {
    const text = JSON.stringify({ ...JSON.parse(readFileSync(FREE, "utf8")), colour: "red" });
    const done = run(["-", "--json"], text);
    expect(done.status).toBe(0);
    expect(JSON.parse(done.stdout).unknown).toEqual(["colour"]);
  });

  it("[CLI2] --all lists what is free, and the counts stay", () => {
    const brief = JSON.parse(run([FREE, "--json"]).stdout), all = JSON.parse(run([FREE, "--json", "--all"]).stdout);
    expect(all.counts).toEqual(brief.counts);
    expect(all.findings.length).toBe(all.counts.foul + all.counts.tight + all.counts.free);
  });

  it("[CLI5] the plain sheet gives each severity its shape and word, and every line keeps within the page", () => {
    const { stdout } = run([FOULED]);
    expect(stdout).toMatch(/◆ \d+ foul {3}◢ \d+ tight {3}● \d+ free/);
    expect(stdout).toMatch(/◆ foul {2}gap/);
    expect(stdout).toContain("Engagements");
    for (const line of stdout.split("\n").slice(0, stdout.split("\n").indexOf("Displays"))) expect(line.length).toBeLessThanOrEqual(100);
  });

  it("[CLI6] a file that is not there, an option that is none and a call without a file give status 2 and no stack trace", () => {
    for (const argv of [["nowhere.json"], [FREE, "--colour"], []]) {
      const done = run(argv);
      expect(done.status).toBe(2);
      expect(done.stderr.length).toBeGreaterThan(10);
      expect(done.stderr).not.toMatch(/\n\s+at /);
    }
  });
});
