import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Instrument, puttingTogether, workOut } from "../../geometry/index.ts";
import { hungIn } from "../../src/sheets/together/hold.ts";
import { frameOf, solidsOf } from "../../src/sheets/together/picture.ts";

const movementOf = (name: string) => workOut(JSON.parse(readFileSync(`public/instruments/${name}.instrument.json`, "utf8")) as Instrument);

describe("the steps in the movement", () => {
  it("hide exactly what is not in yet, and less at every step", () => {
    for (const name of ["estuary-dial", "going-train", "small-tellurian"]) {
      const movement = movementOf(name), together = puttingTogether(movement), hung = hungIn(movement, together);
      expect(hung.length).toBe(together.steps.length);
      hung.forEach((h, i) => {
        expect(h.ids).toEqual(together.steps[i]!.ids);
        for (const [k, step] of together.steps.entries()) for (const id of step.ids) expect(h.hidden.has(id)).toBe(k > i);
        for (const id of h.hidden) if (i > 0) expect(hung[i - 1]!.hidden.has(id)).toBe(true);
      });
    }
  });
  it("hang clear by more than the lift that is needed, from the side they come from", () => {
    const movement = movementOf("estuary-dial"), together = puttingTogether(movement);
    hungIn(movement, together).forEach((h, i) => expect(h.by).toBeGreaterThan(together.steps[i]!.lift));
  });
  it("are drawn small from the lowest up, and all of it fits the picture", () => {
    const solids = solidsOf(movementOf("estuary-dial")), { scale, x, y } = frameOf(solids, 88, 66);
    for (let i = 1; i < solids.length; i++) expect(solids[i]!.z0).toBeGreaterThanOrEqual(solids[i - 1]!.z0);
    for (const s of solids) expect(Math.abs(s.radius * scale)).toBeLessThanOrEqual(44);
    expect(Number.isFinite(x) && Number.isFinite(y) && scale > 0).toBe(true);
  });
});
