// Shapes kept and given up, lifting apart, dials and the bound of a movement. Lengths in mm.
import { describe, expect, it, vi } from "vitest";
import { workOut } from "../../geometry/index.ts";
import { boundOf } from "../../scenes/bound.ts";
import { leastApart, ringGeometry } from "../../scenes/dials/face.ts";
import { ringsOf } from "../../scenes/dials/rings.ts";
import { createLibrary } from "../../scenes/solids/library.ts";
import { liftsOf } from "../../scenes/solids/lift.ts";
import { HARBOUR_DIAL } from "./gallery/harbour-dial.ts";

const movement = workOut(HARBOUR_DIAL);
const assembly = [["B"], ["A"], ["C"], ["D"], ["H"], ["J"], ["E"], ["F"], ["G"]];

describe("the library of shapes", () => {
  const shape = () => ({ dispose: vi.fn<() => void>() });

  it("makes a shape once for its content and keeps it from layout to layout", () => {
    const library = createLibrary<ReturnType<typeof shape>>(), make = vi.fn(shape);
    const first = library.take("wheel", make);
    expect(library.take("wheel", make)).toBe(first);
    library.close();
    expect(library.take("wheel", make)).toBe(first);
    library.close();
    expect(make).toHaveBeenCalledTimes(1);
    expect(first.dispose).not.toHaveBeenCalled();
  });

  it("disposes once what a layout no longer takes, and everything when emptied", () => {
    const library = createLibrary<ReturnType<typeof shape>>();
    const wheel = library.take("wheel", shape), pinion = library.take("pinion", shape);
    library.close();
    library.take("pinion", shape);
    library.close();
    expect([wheel.dispose.mock.calls.length, pinion.dispose.mock.calls.length]).toEqual([1, 0]);
    library.empty();
    expect([wheel.dispose.mock.calls.length, pinion.dispose.mock.calls.length, library.size]).toEqual([1, 1, 0]);
  });
});

describe("lifting apart", () => {
  const lifts = liftsOf(movement, { assembly });
  const up = (id: string) => lifts.arbors[movement.arborIndex.get(id) ?? -1] ?? NaN;

  it("raises what goes in later higher, pipes over what they ride on, the lowest plate not at all", () => {
    expect(["B", "C", "D", "H", "G"].map(up)).toEqual([...["B", "C", "D", "H", "G"].map(up)].sort((a, b) => a - b));
    expect(up("E")).toBeGreaterThan(up("A"));
    expect(up("F")).toBeGreaterThan(up("E"));
    expect(lifts.plates.get("back")).toBe(0);
    expect(lifts.plates.get("front")).toBeGreaterThan(up("G"));
    expect(lifts.highestMm).toBe(Math.max(...lifts.arbors));
  });

  it("has an answer without any order, and for no arbors at all", () => {
    const none = liftsOf(movement, { assembly: [] });
    expect(none.arbors.every((x) => Number.isFinite(x) && x > 0)).toBe(true);
    const empty = workOut({ ...HARBOUR_DIAL, arbors: HARBOUR_DIAL.arbors.slice(0, 1), engagements: [], displays: [] });
    expect(liftsOf(empty, { assembly: [] }).arbors.every(Number.isFinite)).toBe(true);
  });
});

describe("dials", () => {
  const rings = ringsOf(movement);

  it("nest about one axis by the lengths of their pointers, none over another", () => {
    const central = rings.filter((r) => r.x === 0 && r.y === 0);
    expect(central.map((r) => r.display)).toEqual(["moon", "tide", "hour"]);
    for (const [i, ring] of central.entries()) {
      expect(ring.outsideMm).toBeGreaterThan(ring.insideMm);
      expect(ring.insideMm).toBeGreaterThan(central[i - 1]?.outsideMm ?? 0);
    }
  });

  it("lie under the lowest pointer of their axis and over the front plate", () => {
    for (const ring of rings) {
      const pointers = movement.arbors.filter((a) => a.x === ring.x && a.y === ring.y).flatMap((a) => a.arbor.parts.filter((p) => p.kind === "pointer"));
      expect(ring.z + ring.thickness).toBeLessThan(Math.min(...pointers.map((p) => p.z)));
      expect(ring.z).toBeGreaterThanOrEqual(34.5);
    }
  });

  it("lie on a plate that would be in their way", () => {
    const near = workOut({ ...HARBOUR_DIAL, frame: { ...HARBOUR_DIAL.frame, plates: [...HARBOUR_DIAL.frame.plates,
      { id: "dial", z: 41, thickness: 1.4, outline: { circle: { diameter: 120 } } }] } });
    for (const ring of ringsOf(near).filter((r) => r.x === 0)) expect(ring.z).toBeGreaterThanOrEqual(42.4);
  });

  it("are lettered by the room between the nearest two letters", () => {
    expect(leastApart([0.9, 0.1, 0.4])).toBeCloseTo(0.2, 12);
    expect([leastApart([]), leastApart([0.3])]).toEqual([1, 1]);
  });

  it("have a body whose faces look outward", () => {
    const ring = rings[0]!, shape = ringGeometry(ring, 48);
    const at = shape.getAttribute("position"), normal = shape.getAttribute("normal"), index = shape.getIndex()!;
    for (let i = 0; i < index.count; i += 3) {
      const [a, b, c] = [index.getX(i), index.getX(i + 1), index.getX(i + 2)] as const;
      const u = [at.getX(b) - at.getX(a), at.getY(b) - at.getY(a), at.getZ(b) - at.getZ(a)] as const;
      const v = [at.getX(c) - at.getX(a), at.getY(c) - at.getY(a), at.getZ(c) - at.getZ(a)] as const;
      const facing = (u[1] * v[2] - u[2] * v[1]) * normal.getX(a) + (u[2] * v[0] - u[0] * v[2]) * normal.getY(a) + (u[0] * v[1] - u[1] * v[0]) * normal.getZ(a);
      expect(facing).toBeGreaterThan(0);
    }
  });
});

describe("the bound of a movement", () => {
  it("holds plates, pillars, arbors and dials, and grows with the lifting", () => {
    const lifts = liftsOf(movement, { assembly });
    const bound = boundOf(movement, lifts, 0), lifted = boundOf(movement, lifts, 1);
    const outermost = Math.max(58, ...ringsOf(movement).map((r) => Math.hypot(r.x, r.y) + r.outsideMm));
    expect(bound.radiusMm).toBeGreaterThanOrEqual(58);
    expect(bound.radiusMm).toBeLessThanOrEqual(outermost + 1e-9);
    expect([bound.lowMm, bound.highMm]).toEqual([-2.5, 51]);
    expect(lifted.highMm).toBeGreaterThan(bound.highMm + 30);
  });

  it("reaches the corners of square plates, wherever they are, and has an answer for nothing at all", () => {
    const bare = { arbors: [], engagements: [], displays: [] };
    const plate = { id: "back", z: 0, thickness: 2, outline: { rectangle: { width: 60, height: 80, x: 5, y: -7 } } };
    const of = (frame: typeof HARBOUR_DIAL.frame) => {
      const made = workOut({ ...HARBOUR_DIAL, ...bare, frame });
      return boundOf(made, liftsOf(made, { assembly: [] }), 0);
    };
    expect(of({ plates: [plate], pillars: [] })).toEqual({ x: 5, y: -7, radiusMm: 50, lowMm: 0, highMm: 2 });
    expect(of({ plates: [], pillars: [] }).radiusMm).toBeGreaterThan(0);
  });
});
