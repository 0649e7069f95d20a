// Every rule of geometry/SPEC.md is held by a test that names it, and every name in a test is a rule.
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const root = resolve(import.meta.dirname, "..");
const rules = [...readFileSync(join(root, "geometry/SPEC.md"), "utf8").matchAll(/^- \*\*([A-Z]+\d+)\*\*/gm)].map((m) => m[1] ?? "");
const cited = readdirSync(join(root, "tests"), { recursive: true, encoding: "utf8" })
  .filter((f) => /\.test\.tsx?$/.test(f) && f !== "spec.test.ts")
  .flatMap((f) => [...readFileSync(join(root, "tests", f), "utf8").matchAll(/["'`]((?:\[[A-Z]+\d+\] ?)+)/g)])
  .flatMap((m) => [...(m[1] ?? "").matchAll(/\[([A-Z]+\d+)\]/g)].map((r) => r[1] ?? ""));

describe("the rules of SPEC.md", () => {
  it("stand there once each", () => {
    expect(rules.length).toBeGreaterThan(40);
    expect(rules.filter((r, i) => rules.indexOf(r) !== i)).toEqual([]);
  });
  it("are each held by a test", () => {
    expect(rules.filter((r) => !cited.includes(r))).toEqual([]);
  });
  it("are what the tests cite", () => {
    expect(cited.filter((c) => !rules.includes(c))).toEqual([]);
  });
});
