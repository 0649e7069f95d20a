import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part } from "../../../geometry/instrument.ts";
import { faultsOfMesh } from "../../../geometry/mesh/faults.ts";
import { pivotHolesOf } from "../../../geometry/mesh/frame.ts";
import { meshOf } from "../../../geometry/mesh/things.ts";
import { volumeMmCu } from "../../../geometry/mesh/measures.ts";
import { stand } from "../depth/stand.ts";
import { harbour } from "./harbour.ts";

const size = fc.double({ min: 0.05, max: 30, noNaN: true }), place = fc.double({ min: -20, max: 20, noNaN: true });

describe("bare arbors and plates", () => {
  it("[MESH1] an arbor is closed whatever its pivots, squares and bore (seed 77)", () => {
    const pivot = fc.record({ diameter: size, length: fc.double({ min: 0, max: 40, noNaN: true }), plate: fc.constant("x") });
    const square = fc.record({ kind: fc.constant("square"), z: place, thickness: size, across: size, taper: fc.constant(1) });
    fc.assert(fc.property(place, size, size, fc.option(pivot), fc.option(pivot), fc.array(square, { maxLength: 3 }), fc.option(size), (foot, length, diameter, low, high, squares, bore) => {
      const parts = squares.map((s, i) => ({ ...s, id: `Q${i}` }) as Part);
      const movement = stand({
        arbors: [{ id: "A", x: 0, y: 0, diameter, foot, head: foot + length, parts, pivots: { ...(low ? { foot: low } : {}), ...(high ? { head: high } : {}) }, ...(bore ? { bore } : {}) }],
        engagements: [],
      });
      const mesh = meshOf(movement, "A", { chordMm: 0.02 });
      expect(mesh === null ? ["no mesh"] : faultsOfMesh(mesh)).toEqual([]);
    }), { seed: 77, numRuns: 800 });
  });
  it("[MESH1] a plate is closed whatever its outline and openings (seed 78)", () => {
    const bare = harbour();
    const openings = fc.array(fc.record({ x: place, y: place, diameter: size }), { maxLength: 12 });
    const outline = fc.oneof(
      fc.record({ circle: fc.record({ diameter: size }) }), fc.record({ rectangle: fc.record({ width: size, height: size, x: place }) }),
      fc.constant({ polygon: [[-20, -20], [-20, 20], [0, 5], [20, 20], [20, -20]] as const }),
    );
    fc.assert(fc.property(outline, openings, (shape, open) => {
      const instrument = { ...bare.instrument, frame: { plates: [{ id: "back", z: 0, thickness: 2, outline: shape, openings: open }], pillars: [] } };
      const mesh = meshOf({ ...bare, instrument }, "back", { chordMm: 0.02 });
      expect(mesh === null ? ["no mesh"] : faultsOfMesh(mesh)).toEqual([]);
    }), { seed: 78, numRuns: 800 });
  });
  it("[MESH6] a plate has a hole of pivot and sideshake for each pivot in it, and the widest of those that run together", () => {
    const movement = harbour();
    const back = movement.instrument.frame.plates[0]!;
    expect(pivotHolesOf(movement, back)).toEqual([{ x: 0, y: 0, radius: (1.6 + 0.03) / 2 }]);
    const mesh = meshOf(movement, "back", { chordMm: 0.001 });
    // The opening of 8 at the edge breaks it and is not drawn; that of 20 is.
    const wanted = 3 * Math.PI * (70 ** 2 - 10 ** 2 - (1.63 / 2) ** 2);
    expect(mesh === null ? NaN : Math.abs(volumeMmCu(mesh) / wanted - 1)).toBeLessThan(1e-4);
  });
});
