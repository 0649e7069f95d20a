// The published schema against the definition and against its outside reader, ajv.
import { resolve } from "node:path";
import Ajv from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { instrumentSchema } from "../../src/document/schema.ts";
import { layOut } from "../../src/document/write.ts";
import fc from "fast-check";
import { readInstrument } from "../../src/document/index.ts";
import { fullest, leavesOf, put, smallest } from "./files.ts";

const published = resolve(import.meta.dirname, "../../public/instrument.schema.json");

/** Every property of a schema, wherever it stands, with the path to it. */
function properties(schema: unknown, path = ""): [string, Record<string, unknown>][] {
  if (typeof schema !== "object" || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) =>
    key === "properties"
      ? Object.entries(value as Record<string, Record<string, unknown>>).flatMap(([name, s]): [string, Record<string, unknown>][] =>
          [[`${path}.${name}`, s], ...properties(s, `${path}.${name}`)])
      : key === "if" || key === "then" ? [] : properties(value, path));
}

describe("the published schema", () => {
  it("[READ12] is the one the definition gives (after a change: npx vitest run tests/document/schema.test.ts -u)", async () => {
    await expect(layOut(instrumentSchema())).toMatchFileSnapshot(published);
  });

  it("[READ12] says what every field means", () => {
    const all = properties(instrumentSchema());
    expect(all.length).toBeGreaterThan(200);
    expect(all.filter(([, s]) => typeof s["description"] !== "string" || s["description"] === "").map(([path]) => path)).toEqual([]);
  });

  it("[READ12] is a schema of draft 2020-12 that accepts what the reader accepts and refuses what it can say", () => {
    const validate = new Ajv({ strict: true, strictTypes: false, strictRequired: false }).compile(instrumentSchema());
    expect(validate(smallest())).toBe(true);
    const wrong = (change: (file: ReturnType<typeof smallest>) => void) => {
      const file = smallest();
      change(file);
      return validate(file);
    };
    expect(wrong((f) => { f.arbors[0].parts[0].teeth = 2; })).toBe(false);
    expect(wrong((f) => { delete f.arbors[0].x; })).toBe(false);
    expect(wrong((f) => { f.arbors[0].id = "case"; })).toBe(false);
    expect(wrong((f) => { f.arbors[0].parts[0].internal = true; })).toBe(false);
    expect(wrong((f) => { f.frame.plates[0].outline = {}; })).toBe(false);
    expect(wrong((f) => { f.input.sense = "sunwise"; })).toBe(false);
    expect(wrong((f) => { f.endshake = 2; })).toBe(false);
    expect(wrong((f) => { f.colour = "kept"; })).toBe(true);
  });

  it("[READ12] accepts whatever the reader accepts", () => {
    const validate = new Ajv({ strict: true, strictTypes: false, strictRequired: false }).compile(instrumentSchema());
    let taken = 0, refused = 0;
    const values = fc.constantFrom(0, -1, 1, 2.5, 3, 2001, 1e5, "A", "clockwise", "case", true, null, [], {}, [1, 2]);
    const places = leavesOf(fullest());
    fc.assert(fc.property(fc.nat(places.length - 1), fc.boolean(), values, (pick, parent, value) => {
      const file = fullest();
      const keys = places[pick]?.keys ?? [];
      put(file, keys.slice(0, Math.max(1, keys.length - (parent ? 1 : 0))), value);
      const ok = readInstrument(JSON.stringify(file)).ok;
      if (ok) taken++; else refused++;
      if (ok) expect(validate(file), JSON.stringify(validate.errors)).toBe(true);
    }), { seed: 20260102, numRuns: 1500 });
    expect(Math.min(taken, refused)).toBeGreaterThan(50);
  });
});
