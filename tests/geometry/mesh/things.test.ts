import { describe, expect, it } from "vitest";
import { meshOf, thingsOf } from "../../../geometry/mesh/things.ts";
import { faultsOfMesh } from "../../../geometry/mesh/faults.ts";
import { harbour } from "./harbour.ts";

describe("the things of a movement", () => {
  it("[MESH1] [MESH6] have a closed mesh each, at coarse and at fine chords", () => {
    const movement = harbour();
    const faults = thingsOf(movement).flatMap(({ id }) => [0.2, 0.01, 0.002].flatMap((chordMm) => {
      const mesh = meshOf(movement, id, { chordMm });
      return mesh === null ? [`${id}: none`] : faultsOfMesh(mesh).map((f) => `${id} at ${chordMm}: ${f}`);
    }));
    expect(faults).toEqual([]);
  });
  it("[MESH6] come in a steady order: plates, pillars, case, then each arbor and its parts", () => {
    const things = thingsOf(harbour());
    expect(things.map((t) => t.id).slice(0, 8)).toEqual(["back", "front", "cock", "P1", "case", "A", "A1", "A2"]);
    expect(things.filter((t) => t.kind === "pipe").map((t) => t.id)).toEqual(["C"]);
    expect(meshOf(harbour(), "nothing of that name")).toBe(null);
  });
});
