import { describe, expect, it } from "vitest";
import type { Arbor, Collet, Join } from "../../../geometry/instrument.ts";
import { heatLadder } from "../../../geometry/workshop/ladder.ts";

const collet = (id: string, join?: Join): Collet => ({ id, kind: "collet", z: 0, thickness: 1, diameter: 5, ...(join ? { join } : {}) });
const arbor = (...parts: Collet[]): Arbor => ({ id: "A", diameter: 2, foot: 0, head: 20, parts });

describe("the ladder of heats", () => {
  const ladder = heatLadder(arbor(collet("pressed", { by: "press", order: 1 }), collet("riveted", { by: "rivet", order: 1 }), collet("soft", { by: "soft solder", order: 2 }),
    collet("silver", { by: "silver solder", order: 3 }), collet("pinned", { by: "pin" }), collet("loose")));
  const rungOf = (part: string) => ladder.rungs.find((r) => r.joins.some((j) => j.part === part))!;

  it("[HEAT5] has every join once, the later the farther across, those of no order last", () => {
    expect(ladder.rungs.flatMap((r) => r.joins.map((j) => j.part)).sort()).toEqual(["pinned", "pressed", "riveted", "silver", "soft"]);
    expect(ladder.heats).toEqual([1, 2, 3, null].map((order, i) => ({ order, across: (i + 0.5) / 4 })));
    expect(["pressed", "soft", "silver", "pinned"].map((p) => rungOf(p).across)).toEqual([0.125, 0.375, 0.625, 0.875]);
  });
  it("[HEAT5] has each from where it lets go to where it flows, cold ones at the warmth of the room and together", () => {
    expect(rungOf("silver")).toMatchObject({ lowC: 630, highC: 660 });
    expect(rungOf("soft")).toMatchObject({ lowC: 183, highC: 190 });
    expect(rungOf("pressed")).toBe(rungOf("riveted"));
    expect(rungOf("pressed")).toMatchObject({ lowC: 20, highC: 20 });
    expect(ladder.topC).toBeGreaterThan(660);
    expect(ladder.degrees).toEqual([0, 200, 400, 600]);
  });
  it("[HEAT5] has a limit from what an earlier join bears to the heat that passes it, and none where none does", () => {
    expect(ladder.limits.map(({ from, to, bearsC, heatC, says }) => ({ from, to, bearsC, heatC, says })))
      .toEqual([{ from: 0.375, to: 0.625, bearsC: 183, heatC: 660, says: "silver at 660 °C undoes soft, which bears 183 °C" }]);
    expect(heatLadder(arbor(collet("silver", { by: "silver solder", order: 1 }), collet("soft", { by: "soft solder", order: 2 }))).limits).toEqual([]);
    const near = heatLadder(arbor(collet("a", { by: "silver solder", order: 1 }), collet("b", { by: "silver solder", order: 2, solidus: 600, liquidus: 615 })));
    expect(near.limits.map((l) => l.says)).toEqual(["b at 615 °C comes within 15 K of a, which bears 630 °C"]);
  });
  it("[HEAT5] of an arbor without joins is empty", () => {
    expect(heatLadder(arbor(collet("loose")))).toMatchObject({ heats: [], rungs: [], limits: [], suggested: [] });
  });
});
