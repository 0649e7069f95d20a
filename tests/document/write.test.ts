// Writing: a steady order, every field kept.
import { describe, expect, it } from "vitest";
import { readInstrument, writeInstrument } from "../../src/document/index.ts";
import { fullest } from "./files.ts";
import type { Loose } from "./files.ts";

/** The same with the fields of every object the other way round. */
const turned = (value: Loose): Loose =>
  Array.isArray(value) ? value.map(turned)
    : typeof value === "object" && value !== null ? Object.fromEntries(Object.entries(value).reverse().map(([k, v]) => [k, turned(v)]))
      : value;

const rewritten = (file: Loose): string => {
  const r = readInstrument(JSON.stringify(file));
  return r.ok ? writeInstrument(r.instrument) : JSON.stringify(r.refused);
};

describe("writing", () => {
  it("[READ13] gives back all that was read, unknown fields too", () => {
    const file = { ...fullest(), harbour: { quay: [1, 2, { mark: null }], "": true } };
    file.arbors[0].parts[0].colour = "blue";
    expect(JSON.parse(rewritten(file))).toEqual(file);
  });

  it("[READ13] does not depend on the order in which fields came", () => {
    expect(rewritten(turned(fullest()))).toBe(rewritten(fullest()));
    expect(Object.keys(JSON.parse(rewritten(turned(fullest())))).slice(0, 4)).toEqual(["endshake", "name", "notes", "practice"]);
  });

  it("[READ13] writes the same text again after reading it", () => {
    expect(rewritten(JSON.parse(rewritten(fullest())))).toBe(rewritten(fullest()));
  });

  it("[READ13] puts what fits on one line and indents the rest by two spaces", () => {
    const text = rewritten(fullest());
    expect(text).toContain('\n        { "id": "A1", "kind": "wheel", "teeth": 60, "z": 5, "thickness": 1.5 },\n');
    expect(text).toContain('"backlash": [0.04, 0.2]');
    expect(text).toContain('\n  "engagements": [\n    { "driver": "A1", "driven": "B1" },\n');
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(140);
    expect(text.endsWith("}\n")).toBe(true);
  });
});
