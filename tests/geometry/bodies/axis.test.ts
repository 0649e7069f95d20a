import { describe, expect, it } from "vitest";
import { axisOf, axisReach, ownReach, placeReach, standingAxis } from "../../../geometry/bodies/axis.ts";
import type { Arbor } from "../../../geometry/instrument.ts";
import { ratio, type Ratio } from "../../../geometry/numeric/ratio.ts";
import { arborOf, handmade, instrumentOf } from "../../fixtures/handmade.ts";

const ROUNDING_MM = 1e-9;
const near = (value: number, expected: number, tolerance = ROUNDING_MM) => expect(Math.abs(value - expected)).toBeLessThan(tolerance);

const stud = (id: string, on: string, x: number, y: number, cx: number, cy: number): Arbor =>
  arborOf(id, x, y, { rides: { on, radius: Math.hypot(x - cx, y - cy), angle: (Math.atan2(y - cy, x - cx) * 180) / Math.PI } });

/** Axes of a carrier C at (10, 0) with two studs on it, one stud on another carrier, and one on a stud. */
function carried(rates: Record<string, Ratio | null>) {
  const movement = handmade(instrumentOf({ arbors: [
    arborOf("C", 10, 0), stud("S", "C", 10, 7, 10, 0), stud("T", "C", 4, 0, 10, 0), arborOf("D", 40, 5), stud("U", "D", 43, 9, 40, 5),
    stud("V", "S", 12, 7, 10, 7), arborOf("pipe", 12, 7, { rides: { on: "V", radius: 0, angle: 0 } }),
  ] }), rates);
  return (id: string) => axisOf(movement, movement.arborIndex.get(id)!);
}

describe("axes that are carried round", () => {
  it("[BODY8] an axis on a turning carrier comes as near as its circle does and as far", () => {
    const axis = carried({ C: ratio(1, 3) });
    near(axisReach(axis("S"), standingAxis(0, 0)).least, 3);
    near(axisReach(axis("S"), standingAxis(0, 0)).greatest, 17);
    near(placeReach(axis("S"), 10, 2).least, 5);
    near(ownReach(axis("S")).greatest, 7);
  });

  it("[BODY8] a carrier that does not turn, with rate 0, without a rate or fixed, carries nothing round", () => {
    for (const rate of [ratio(0), null]) {
      const axis = carried({ C: rate });
      near(axisReach(axis("S"), standingAxis(10, 0)).least, 7);
      near(axisReach(axis("S"), standingAxis(0, 0)).greatest, Math.hypot(10, 7));
      expect(axis("S").swings).toEqual([]);
    }
  });

  it("[BODY9] two studs on one carrier keep their distance", () => {
    const axis = carried({ C: ratio(2, 7) });
    near(axisReach(axis("S"), axis("T")).least, Math.hypot(6, 7));
    near(axisReach(axis("S"), axis("T")).greatest, Math.hypot(6, 7));
    near(axisReach(axis("S"), axis("C")).least, 7);
    near(axisReach(axis("V"), axis("S")).greatest, 2);
  });

  it("[BODY9] studs on carriers that turn at different rates meet where their circles are nearest", () => {
    const axis = carried({ C: ratio(1, 3), D: ratio(-2, 5) });
    near(axisReach(axis("S"), axis("U")).least, Math.hypot(30, 5) - 7 - 5);
    near(axisReach(axis("S"), axis("U")).greatest, Math.hypot(30, 5) + 7 + 5);
  });

  it("[BODY9] studs on carriers that turn at one rate keep their angle to one another", () => {
    const axis = carried({ C: ratio(1, 3), D: ratio(1, 3) });
    const swing = Math.hypot(0 - 3, 7 - 4);
    near(axisReach(axis("S"), axis("U")).least, Math.hypot(30, 5) - swing);
    near(axisReach(axis("S"), axis("U")).greatest, Math.hypot(30, 5) + swing);
  });

  it("[BODY8] nested carriers add their arms, and a pipe goes with what it rides on", () => {
    const axis = carried({ C: ratio(1, 3), S: ratio(5, 4) });
    near(ownReach(axis("V")).least, 5);
    near(ownReach(axis("V")).greatest, 9);
    expect(axis("pipe")).toEqual(axis("V"));
  });

  it("[BODY8] [BODY9] at every turn the true distance lies between least and greatest, and reaches both", () => {
    const rates = { C: ratio(331, 997), D: ratio(-401, 1009), S: ratio(643, 1013) };
    const axis = carried(rates);
    const at = (id: string, turns: number) => {
      const a = axis(id);
      return a.swings.reduce((p, s) => {
        const [n, d] = s.rate.split("/").map(Number) as [number, number | undefined];
        const t = 2 * Math.PI * (n / (d ?? 1)) * turns, c = Math.cos(t), z = Math.sin(t);
        return { x: p.x + c * s.x - z * s.y, y: p.y + z * s.x + c * s.y };
      }, { x: a.x, y: a.y });
    };
    for (const [a, b] of [["V", "U"], ["S", "U"], ["V", "D"], ["S", "T"], ["V", "T"]] as const) {
      const { least, greatest } = axisReach(axis(a), axis(b));
      let low = Infinity, high = 0;
      for (let i = 0; i < 40_000; i++) {
        const p = at(a, i * 0.0413), q = at(b, i * 0.0413), d = Math.hypot(p.x - q.x, p.y - q.y);
        low = Math.min(low, d);
        high = Math.max(high, d);
      }
      expect(low).toBeGreaterThanOrEqual(least - ROUNDING_MM);
      expect(high).toBeLessThanOrEqual(greatest + ROUNDING_MM);
      near(low, least, 0.05);
      near(high, greatest, 0.05);
    }
  });
});
