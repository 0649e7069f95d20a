import { describe, expect, it } from "vitest";
import { heatFindings } from "../../../geometry/examine/heat.ts";
import { dividingFindings } from "../../../geometry/examine/dividing.ts";
import type { Collet, Division, Instrument, Join } from "../../../geometry/instrument.ts";
import type { Movement } from "../../../geometry/movement.ts";
import { suggestedHeats } from "../../../geometry/workshop/heats.ts";

const collet = (id: string, join?: Join): Collet => ({ id, kind: "collet", z: 0, thickness: 1, diameter: 5, ...(join ? { join } : {}) });
const arbor = (...parts: Collet[]) => ({ id: "A", diameter: 2, foot: 0, head: 20, parts });
const movementOf = (arbors: Instrument["arbors"], division?: Division): Movement => {
  const instrument = { endshake: 1, name: "", frame: { plates: [], pillars: [] }, arbors, engagements: [],
    input: { arbor: "A", days: 1, sense: "clockwise" }, ...(division ? { division } : {}) } satisfies Instrument;
  return { instrument, arbors: arbors.map((a) => ({ arbor: a })) } as unknown as Movement;
};
const heats = (...joins: Join[]) => heatFindings(movementOf([arbor(...joins.map((j, i) => collet(`k${i}`, j)))])).map((f) => f.severity);

describe("heat", () => {
  // Source of the order of grades: soft 190 < easy 723 < medium 765 < hard 778 °C (EN ISO 17672 and makers' tables, from memory; check-values 8.2).
  it("[HEAT1] a soft joint made before a silver one is undone; made after it, it is free", () => {
    expect(heats({ by: "soft solder", order: 1 }, { by: "silver solder", order: 2 })).toEqual(["foul"]);
    expect(heats({ by: "silver solder", order: 1 }, { by: "soft solder", order: 2 })).toEqual(["free"]);
    expect(heats({ by: "silver solder", order: 1, solidus: 745, liquidus: 778 }, { by: "silver solder", order: 2, solidus: 705, liquidus: 723 })).toEqual(["free"]);
  });
  it("[HEAT1] at the limit itself it is a foul, less than 20 K under it tight, 20 K free", () => {
    const later = (liquidus: number) => heats({ by: "silver solder", order: 1 }, { by: "silver solder", order: 2, liquidus });
    expect(later(630)).toEqual(["foul"]);
    expect(later(611)).toEqual(["tight"]);
    expect(later(610)).toEqual(["free"]);
  });
  it("[HEAT2] an adhesive sets cold and fails at 150; cold joins neither heat nor suffer", () => {
    expect(heats({ by: "adhesive", order: 1 }, { by: "soft solder", order: 2 })).toEqual(["foul"]);
    expect(heats({ by: "soft solder", order: 1 }, { by: "adhesive", order: 2 })).toEqual([]);
    expect(heats({ by: "rivet", order: 1 }, { by: "silver solder", order: 2 })).toEqual([]);
  });
  it("[HEAT3] equal orders are one heat; a join without an order is not judged", () => {
    expect(heats({ by: "soft solder", order: 1 }, { by: "silver solder", order: 1 })).toEqual([]);
    expect(heats({ by: "soft solder" }, { by: "silver solder", order: 2 })).toEqual([]);
  });
  it("[HEAT4] the suggested order is hottest first, then what heat would spoil last", () => {
    const a = arbor(collet("glue", { by: "adhesive" }), collet("soft", { by: "soft solder" }), collet("silver", { by: "silver solder" }), collet("pin", { by: "pin" }));
    expect(suggestedHeats(a).map((j) => j.part)).toEqual(["silver", "soft", "pin", "glue"]);
  });
});

describe("dividing", () => {
  const wheel = { id: "w", kind: "wheel" as const, z: 0, thickness: 1, teeth: 96 };
  const pinion = { id: "p", kind: "pinion" as const, z: 2, thickness: 1, leaves: 8 };
  const found = (division?: Division) => dividingFindings(movementOf([{ id: "A", diameter: 2, foot: 0, head: 9, parts: [wheel, pinion] }], division))
    .map((f) => `${f.between[0]} ${f.severity}`);
  it("[DIV5] is examined only where the maker has a head, a plain list of circles being one plate", () => {
    expect(found()).toEqual([]);
    expect(found({ ratio: 40, circles: [16, 18] })).toEqual(["w free", "p free"]);
    expect(found({ ratio: 40, circles: [[16], [18]] })).toEqual(["w tight", "p free"]);
  });
});
