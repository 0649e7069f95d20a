// Working ranges of solders and gaps for them, held against what is published of them. What is from memory says so.
import { describe, expect, it } from "vitest";
import type { Arbor, Collet, Join, Wheel } from "../../../geometry/instrument.ts";
import { housingFigures } from "../../../geometry/workshop/housing.ts";
import { heatPairs, joinHeat, suggestedHeats } from "../../../geometry/workshop/heats.ts";
import { seatOf } from "../../../geometry/workshop/seats.ts";

const collet = (id: string, join: Join): Collet => ({ id, kind: "collet", z: 0, thickness: 1, diameter: 5, join });
const heatOf = (join: Join) => joinHeat(collet("k", join))!;
const arbor = (...parts: (Collet | Wheel)[]): Arbor => ({ id: "A", diameter: 3, foot: 0, head: 20, parts });

describe("solders", () => {
  it("[HEAT2] soft solder is tin-lead 60/40: 183 to 190 °C (EN ISO 9453, the upper figure from memory; 183 to 188 in public tables)", () => {
    const { undoneAt, heatedTo } = heatOf({ by: "soft solder" });
    expect(undoneAt).toBe(183);
    expect(heatedTo).toBe(190);
    // A joint is brought at least to where the alloy of the public tables flows.
    expect(heatedTo!).toBeGreaterThanOrEqual(188);
  });
  it("[HEAT2] silver solder is Ag 155: 630 to 660 °C (EN ISO 17672, from memory)", () => {
    expect(heatOf({ by: "silver solder" })).toMatchObject({ undoneAt: 630, heatedTo: 660 });
  });
  it("[HEAT2] soft and silver solder lie on their own sides of 450 °C, which parts soldering from brazing (ISO 857-2)", () => {
    expect(heatOf({ by: "soft solder" }).heatedTo!).toBeLessThan(450);
    expect(heatOf({ by: "silver solder" }).undoneAt!).toBeGreaterThan(450);
  });
  it("[HEAT2] retaining compound bears 150 °C (service limit in a maker’s public data sheet)", () => {
    expect(heatOf({ by: "adhesive" })).toMatchObject({ heatedTo: null, undoneAt: 150 });
  });
  it("[HEAT2] no usual solder melts brass: CZ121 begins to at 876.7 °C (1610 °F, makers’ public data)", () => {
    expect(heatOf({ by: "silver solder" }).heatedTo!).toBeLessThan((1610 - 32) / 1.8 - 20);
  });

  // Jewellers' easy 705–723, medium 720–765, hard 745–778 °C (from memory of makers' tables); hardest first, then falling
  // grades (common practice, in print since the jewellers' handbooks).
  const GRADES: readonly (readonly [string, Join])[] = [
    ["easy", { by: "silver solder", solidus: 705, liquidus: 723 }], ["hard", { by: "silver solder", solidus: 745, liquidus: 778 }], ["soft", { by: "soft solder" }], ["medium", { by: "silver solder", solidus: 720, liquidus: 765 }],
  ];
  it("[HEAT4] grades are suggested hardest first, whatever order they are filed in", () => {
    expect(suggestedHeats(arbor(...GRADES.map(([id, join]) => collet(id, join)))).map((j) => j.part)).toEqual(["hard", "medium", "easy", "soft"]);
  });
  it("[HEAT1] hard before easy bears it; medium after hard does not, since it flows at 765 °C and hard lets go at 745 °C", () => {
    const margin = (earlier: string, later: string) => {
      const of = (name: string, order: number) => collet(name, { ...GRADES.find(([n]) => n === name)![1], order });
      return heatPairs(arbor(of(earlier, 1), of(later, 2)))[0]!.marginK;
    };
    expect(margin("hard", "easy")).toBe(745 - 723);
    expect(margin("easy", "soft")).toBe(705 - 190);
    expect(margin("hard", "medium")).toBe(745 - 765);
    expect(margin("soft", "easy")).toBe(183 - 723);
  });
});

describe("gaps", () => {
  const wheel = (by: Join["by"]): Wheel => ({ id: "W", kind: "wheel", teeth: 40, z: 2, thickness: 2, join: { by } });
  const clearance = (by: Join["by"]) => {
    const { bore, shaft } = seatOf(arbor(wheel(by)), wheel(by));
    return { least: bore!.lower - shaft!.upper, most: bore!.upper - shaft!.lower };
  };
  // Capillary gaps a side: silver brazing 0.05 to 0.15, soft solder 0.05 to 0.13 mm (from memory of joining handbooks).
  it.each([["silver solder", 0.05, 0.15], ["soft solder", 0.05, 0.13]] as const)("[SHOP6] for %s lie from %d to %d mm a side", (by, least, most) => {
    expect(clearance(by).least / 2).toBeGreaterThanOrEqual(least - 1e-12);
    expect(clearance(by).most / 2).toBeLessThanOrEqual(most);
  });
  it("[SHOP6] for retaining compound are filled by one that fills 0.15 mm (a maker’s public data sheet)", () => {
    expect(clearance("adhesive").least).toBeGreaterThan(0);
    expect(clearance("adhesive").most).toBeLessThanOrEqual(0.15);
  });
  it("[SHOP8] between disc and hoop of a case lie in the same range", () => {
    const { solderGap } = housingFigures({ insideDiameter: 150, floor: 0, rim: 40, wall: 2 }).fabricated;
    expect(solderGap).toBeGreaterThanOrEqual(0.05);
    expect(solderGap).toBeLessThanOrEqual(0.13);
  });
});
