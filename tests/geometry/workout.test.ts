// The movement as a whole: its shape, a replanted one against one worked out anew, and time.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../geometry/instrument.ts";
import { dragArbor } from "../../geometry/planting/drag.ts";
import { withPlaces } from "../../geometry/planting/places.ts";
import { replanted, workOut } from "../../geometry/workout.ts";
import { arbor, gear, instrument, pin, pipeOn, slot, studOn, wheel } from "./train/made.ts";

const at = (x: number, y: number) => ({ x, y });

/** A bit of everything: a train, a pipe, an epicyclic in line, a pin and slot, an arbor left to the solver. */
const everything: Instrument = instrument([
  arbor("A", [wheel("a", 40)], at(0, 0)), arbor("B", [wheel("b", 45), wheel("b2", 20), pin("n", 6)], at(42.5, 0)), arbor("P", [wheel("p", 30)], pipeOn("A")),
  arbor("S", [wheel("s", 20)], at(42.5, 60)), arbor("C", [wheel("c", 60)], at(42.5, 60)), arbor("K", [wheel("k", 20)], studOn("C", 20, 10)),
  arbor("D", [slot("d")], at(45, 0)), arbor("X", [wheel("x", 24)]), arbor("Y", [wheel("y", 33)]),
], [gear("a", "b"), gear("b2", "c"), gear("s", "k"), gear("a", "x"), gear("x", "y"), gear("p", "y", { ease: 0.1 })], { couplings: [{ kind: "pin and slot", driver: "n", driven: "d" }] });

describe("a movement", () => {
  it("[PLANT11] gives of every engagement the distance as it stands and as computed, with ease", () => {
    const eased = workOut(instrument([arbor("A", [wheel("a", 40)], at(0, 0)), arbor("B", [wheel("b", 45)], at(42, 1))], [gear("a", "b", { ease: 0.2 })])).engagements[0];
    expect(eased.distance).toBeCloseTo(Math.hypot(42, 1), 12);
    expect(eased.computed).toBeCloseTo(42.7, 12);
    expect(eased).toMatchObject({ id: "a-b", driverArbor: 0, drivenArbor: 1, carrier: null, steadyDistance: true });
  });

  it("[PLANT11] gives of a carried pair the distance with the input at 0", () => {
    const made = workOut(instrument([arbor("S", [wheel("s", 16)], at(1, 2)), arbor("C", [], at(1, 2)), arbor("K", [wheel("k", 16)], studOn("C", 15.5, 77))], [gear("s", "k")]));
    expect(made.engagements[0].distance).toBeCloseTo(15.5, 12);
    expect(made.engagements[0].carrier).toBe(1);
  });

  it("[PLANT12] replanted is exactly what working out the changed instrument gives, also where axes come in line or a pin leaves its slot's axis", () => {
    const before = workOut(everything);
    const ids = everything.arbors.map((a) => a.id);
    const spot = fc.oneof(fc.constantFrom(0, 42.5, 45, 60), fc.double({ min: -90, max: 90, noNaN: true }));
    fc.assert(fc.property(fc.array(fc.tuple(fc.constantFrom(...ids), spot, spot), { maxLength: 4 }), (moves) => {
      const places = new Map(moves.map(([id, x, y]) => [id, { x, y }]));
      expect(replanted(before, places)).toEqual(workOut(withPlaces(everything, places)));
    }), { seed: 12, numRuns: 300 });
  });

  it("[PLANT12] a drag step replanted equals working everything out again", () => {
    const before = workOut(everything);
    for (const [id, way] of [["B", "in gear"], ["A", "in gear"], ["S", "trying"], ["X", "in gear"], ["D", "trying"]] as const) {
      const { places } = dragArbor(before, id, at(30, 22), way);
      expect(replanted(before, places)).toEqual(workOut(withPlaces(everything, places)));
    }
  });

  it("[PLANT13] turning and mirroring an instrument turns and mirrors every settled place and keeps distances and shakes", () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 6.28, noNaN: true }), fc.boolean(), (rad, mirror) => {
      const side = mirror ? -1 : 1;
      const moved = ({ x, y }: { x: number; y: number }) => at(Math.cos(rad) * x - side * Math.sin(rad) * y, Math.sin(rad) * x + side * Math.cos(rad) * y);
      const made = instrument(everything.arbors.filter((a) => !["X", "Y"].includes(a.id)), everything.engagements.slice(0, 3));
      const turned = workOut({
        ...made, arbors: made.arbors.map((a) => ({
          ...a, ...(a.x === undefined || a.y === undefined ? {} : moved({ x: a.x, y: a.y })),
          ...(a.rides && { rides: { ...a.rides, angle: side * a.rides.angle + (rad * 180) / Math.PI } }),
        })),
      });
      const plain = workOut(made);
      plain.arbors.forEach((a, i) => {
        expect(turned.arbors[i].x).toBeCloseTo(moved(a).x, 9);
        expect(turned.arbors[i].y).toBeCloseTo(moved(a).y, 9);
        expect(turned.arbors[i].shake).toEqual(a.shake);
      });
      plain.engagements.forEach((e, i) => expect(turned.engagements[i].distance).toBeCloseTo(e.distance, 9));
    }), { seed: 13, numRuns: 50 });
  });
});
