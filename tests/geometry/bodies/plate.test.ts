import { describe, expect, it } from "vitest";
import { axisOf, standingAxis } from "../../../geometry/bodies/axis.ts";
import { edgeDistance, farthestOfOutline, leastEdgeDistance, nearestOnEdge } from "../../../geometry/bodies/plate.ts";
import { metalRound, platesInPlan, roomInOpenings } from "../../../geometry/bodies/openings.ts";
import type { Plate, PlateOutline } from "../../../geometry/instrument.ts";
import { ratio } from "../../../geometry/numeric/ratio.ts";
import { arborOf, handmade, instrumentOf } from "../../fixtures/handmade.ts";
import { sourceOf } from "../../fixtures/random.ts";

const ROUNDING_MM = 1e-9;
const near = (value: number, expected: number, tolerance = ROUNDING_MM) => expect(Math.abs(value - expected)).toBeLessThan(tolerance);

const circle: PlateOutline = { circle: { diameter: 20, x: 3, y: 1 } };
const rectangle: PlateOutline = { rectangle: { width: 20, height: 10, x: 2 } };
const lShape: PlateOutline = { polygon: [[0, 0], [20, 0], [20, 8], [8, 8], [8, 20], [0, 20]] };

/** An axis carried round (x, y) at a radius. */
function carriedAxis(x: number, y: number, radius: number) {
  const movement = handmade(instrumentOf({ arbors: [
    arborOf("C", x, y), arborOf("S", x + radius, y, { rides: { on: "C", radius, angle: 0 } }),
  ] }), { C: ratio(1, 7) });
  return axisOf(movement, 1);
}

describe("a plate in plan", () => {
  it("[BODY10] a place is as far from the edge as its nearest point, negative inside", () => {
    near(edgeDistance(circle, 3, 1), -10);
    near(edgeDistance(circle, 3, 16), 5);
    near(edgeDistance(rectangle, 2, 1), -4);
    near(edgeDistance(rectangle, 15, 9), 5);
    near(edgeDistance(lShape, 10, 11), Math.hypot(2, 3) > 2 ? 2 : 3);
    near(edgeDistance(lShape, 4, 4), -4);
    near(edgeDistance(lShape, 7, 7), -Math.hypot(1, 1));
  });

  it("[BODY10] whichever way round a polygon is drawn, the answer is one", () => {
    const source = sourceOf(7);
    const back: PlateOutline = { polygon: [...lShape.polygon].reverse() };
    for (let i = 0; i < 200; i++) {
      const x = source.between(-5, 25), y = source.between(-5, 25);
      near(edgeDistance(lShape, x, y), edgeDistance(back, x, y));
    }
  });

  it("[BODY10] the nearest point on the edge is as far away as the distance says", () => {
    const source = sourceOf(11);
    for (const outline of [circle, rectangle, lShape])
      for (let i = 0; i < 100; i++) {
        const x = source.between(-15, 25), y = source.between(-15, 25), p = nearestOnEdge(outline, x, y);
        near(Math.hypot(p.x - x, p.y - y), Math.abs(edgeDistance(outline, x, y)));
        near(edgeDistance(outline, p.x, p.y), 0);
      }
  });

  it("[BODY11] an axis carried round is taken where it comes deepest over the plate", () => {
    const source = sourceOf(3);
    for (const outline of [circle, rectangle, lShape])
      for (let i = 0; i < 40; i++) {
        const x = source.between(-20, 30), y = source.between(-20, 30), r = source.between(0.5, 12);
        let sampled = Infinity;
        for (let k = 0; k < 20_000; k++) {
          const a = (2 * Math.PI * k) / 20_000;
          sampled = Math.min(sampled, edgeDistance(outline, x + r * Math.cos(a), y + r * Math.sin(a)));
        }
        const least = leastEdgeDistance(outline, carriedAxis(x, y, r));
        expect(least).toBeLessThanOrEqual(sampled + ROUNDING_MM);
        near(least, sampled, 0.002);
      }
  });

  it("[BODY11] a rectangle cut by the circle of a carried axis: the depth by hand", () => {
    near(leastEdgeDistance({ rectangle: { width: 40, height: 4 } }, carriedAxis(0, 7, 6)), -1, 1e-8);
    near(leastEdgeDistance({ rectangle: { width: 40, height: 4 } }, carriedAxis(0, 12, 6)), 4, 1e-8);
  });

  it("[BODY12] wobble reaches to the farthest point of an outline", () => {
    near(farthestOfOutline(rectangle, standingAxis(2, 0)), Math.hypot(10, 5));
    near(farthestOfOutline(circle, standingAxis(0, 1)), 13);
    near(farthestOfOutline(lShape, standingAxis(0, 0)), Math.hypot(20, 8));
  });

  it("[EDGE1] metal round a hole is counted to the nearest edge, of the outline or of an opening", () => {
    const plate: Plate = { id: "p", z: 0, thickness: 2, outline: rectangle, openings: [{ x: 6, y: 0, diameter: 4 }] };
    const inPlan = platesInPlan([plate]).get("p")!;
    near(metalRound(inPlan, 2, 0, 0.5), 1.5);
    near(metalRound(inPlan, -6, 0, 0.5), 1.5);
    near(metalRound(inPlan, -1, 0, 0.5), 4.5);
    near(metalRound(inPlan, 6, 0, 0.5), -2 - 0.5);
  });

  it("[EDGE1] [GAP3] however many openings a plate has, the nearest counts, and the one that an axis stands in", () => {
    const source = sourceOf(19);
    const openings = Array.from({ length: 40 }, () => ({ x: source.between(-30, 30), y: source.between(-30, 30), diameter: source.between(1, 9) }));
    const plate: Plate = { id: "p", z: 0, thickness: 2, outline: { circle: { diameter: 70 } }, openings };
    const inPlan = platesInPlan([plate]).get("p")!;
    for (let i = 0; i < 300; i++) {
      const x = source.between(-40, 40), y = source.between(-40, 40);
      const to = openings.map((o) => Math.hypot(o.x - x, o.y - y) - o.diameter / 2);
      near(metalRound(inPlan, x, y, 0.5), Math.min(35 - Math.hypot(x, y), ...to) - 0.5);
      near(roomInOpenings(plate, inPlan.openings, standingAxis(x, y)), -Math.min(...to));
    }
  });
});
