import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";

const FILE = "public/instruments/going-train.instrument.json";
const run = (argv: readonly string[], input = "") => spawnSync(process.execPath, ["src/cli/run.mjs", "depth", ...argv], { encoding: "utf8", input });

describe("depth in the terminal", () => {
  it("[DEPTH22] gives every engagement in the order of the file, each with the published fields in their order", () => {
    const { status, stdout, stderr } = run([FILE, "--json"]);
    expect([status, stderr]).toEqual([0, ""]);
    const all = JSON.parse(stdout);
    expect(all.map((d: { id: string }) => d.id)).toEqual(["W1-C1", "C2-T1", "T2-X1", "M1-K1", "K2-H1"]);
    expect(Object.keys(all[0])).toEqual([
      "id", "distance", "computed", "state", "backlash", "contactRatio", "contact", "rate", "lead", "tipClearance", "butting", "window", "holeTolerance", "says",
    ]);
    expect(Object.keys(all[0].window)).toEqual(["nearest", "farthest", "nearestWanted", "farthestWanted"]);
  });
  it("[DEPTH22] takes one engagement, and another distance for it", () => {
    const [usual] = JSON.parse(run([FILE, "W1-C1", "--json"]).stdout), [near] = JSON.parse(run([FILE, "W1-C1", "--distance", "45.4", "--json"]).stdout);
    expect([usual.distance, near.distance]).toEqual([45.5, 45.4]);
    expect([usual.state, near.state]).toEqual(["right", "deep"]);
    expect(near.window).toEqual(usual.window);
    expect(near.holeTolerance).toBeLessThan(0);
  });
  it("[DEPTH22] writes a table and the words where no JSON is asked for", () => {
    const { stdout } = run([FILE]);
    expect(stdout).toMatch(/^engagement +stands +computed +state/);
    expect(stdout).toContain("W1 and C1 stand at a right depth");
  });
  it("[DEPTH22] ends with 2 where the file is refused or the call cannot be answered", () => {
    const refused = run(["-", "--json"], "{}");
    expect(refused.status).toBe(2);
    expect(JSON.parse(refused.stdout).refused.length).toBeGreaterThan(0);
    for (const argv of [[], [FILE, "nobody"], [FILE, "--distance", "wide"], ["nowhere.json"]]) {
      const { status, stdout, stderr } = run(argv);
      expect([status, stdout]).toEqual([2, ""]);
      expect(stderr.split("\n")).toHaveLength(2);
    }
  });
});
