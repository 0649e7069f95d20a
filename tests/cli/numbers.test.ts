import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";

const run = (...argv: string[]) => spawnSync(process.execPath, ["src/cli/run.mjs", ...argv], { encoding: "utf8" });

describe("numbers in the terminal", () => {
  it("[NUM2] gives the trains as JSON, best first, each set once", () => {
    const done = run("numbers", "--wanted", "60", "--within", "0", "--engagements", "2", "--json");
    const { exhaustive, trains } = JSON.parse(done.stdout);
    expect(done.status).toBe(0);
    expect(exhaustive).toBe(true);
    expect(trains).toContainEqual({ drivers: [64, 60], driven: [8, 8], ratio: "60", error: 0 });
    expect(new Set(trains.map((t: { drivers: number[]; driven: number[] }) => `${t.drivers}/${t.driven}`)).size).toBe(trains.length);
  });

  it("[NUM2] a sense that so many outside engagements cannot give is an empty list, proved", () => {
    const contrary = run("numbers", "--wanted", "60", "--within", "0", "--engagements", "2", "--sense", "contrary", "--json");
    expect(JSON.parse(contrary.stdout)).toEqual({ exhaustive: true, trains: [] });
  });

  it("[NUM5] a call that cannot be answered says why in one line", () => {
    for (const argv of [["--wanted", "1/0"], ["--wanted", "2"], ["--wanted", "2", "--within", "0", "--engagements", "1", "--wheels", "x"],
      ["--wanted", "2", "--within", "0", "--engagements", "1", "--wheels", "60-30"], ["--colour", "red"]]) {
      const done = run("numbers", ...argv);
      expect(done.status).toBe(2);
      expect(done.stderr.trim().split("\n")).toHaveLength(1);
    }
  });
});

describe("dividing in the terminal", () => {
  it("[DIV1] [DIV2] [DIV3] gives the three ways as JSON", () => {
    const sheet = JSON.parse(run("dividing", "51", "--json").stdout);
    expect(sheet.plain).toEqual([]);
    expect(sheet.compound).toContainEqual({ turns: 0, a: { circle: 15, holes: 10 }, b: { circle: 17, holes: 2 } });
    expect(sheet.differential).toContainEqual({ settingFor: 50, circle: 20, turns: 0, holes: 16, ratio: "-4/5", gears: [32, 40] });
  });

  it("[DIV2] plates are parted by a stroke, and compound keeps to one plate", () => {
    const compound = (circles: string) => JSON.parse(run("dividing", "51", "--circles", circles, "--json").stdout).compound.length;
    expect(compound("15,17")).toBeGreaterThan(0);
    expect(compound("15/17")).toBe(0);
  });
});
