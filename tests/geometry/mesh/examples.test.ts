// Every published example, as it is drawn.
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../../geometry/instrument.ts";
import { faultsOfMesh } from "../../../geometry/mesh/faults.ts";
import { meshOf, thingsOf } from "../../../geometry/mesh/things.ts";
import { workOut } from "../../../geometry/workout.ts";

const folder = resolve(import.meta.dirname, "../../../public/instruments");
const files = readdirSync(folder).filter((f) => f.endsWith(".instrument.json"));

describe("the published examples", () => {
  it("[MESH6] are there", () => expect(files.length).toBeGreaterThan(2));
  for (const file of files)
    it(`[MESH1] [MESH6] ${file}: every thing has a closed mesh`, () => {
      const movement = workOut(JSON.parse(readFileSync(join(folder, file), "utf8")) as Instrument);
      const things = thingsOf(movement);
      expect(new Set(things.map((t) => t.id)).size).toBe(things.length);
      expect(things.flatMap(({ id }) => {
        const mesh = meshOf(movement, id, { chordMm: 0.03 });
        return mesh === null ? [`${id}: none`] : faultsOfMesh(mesh).map((f) => `${id}: ${f}`);
      })).toEqual([]);
    });
});
